import type { ComponentChildren } from 'preact'
import { useSay } from './pieces.tsx'
import type { Frame } from './view.ts'

/** The whole document around a page. */
export function Shell({
  frame,
  title,
  look,
  scripts,
  children,
}: {
  frame: Frame
  title: string
  look: string
  scripts: readonly string[]
  children: ComponentChildren
}) {
  return (
    <html lang={frame.language}>
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        {/* The shop's own first page may be found; nobody's pile may. */}
        {look !== 'start' && <meta name="robots" content="noindex" />}
        <title>{`${title} · ${frame.shop.name}`}</title>
        <link rel="stylesheet" href={frame.style} />
        {frame.look && <link rel="stylesheet" href={frame.look} />}
        {/* Not deferred: what it dresses is never seen undressed. */}
        <script src={frame.framedScript} />
        {scripts.map((script) => (
          <script key={script} src={script} defer />
        ))}
      </head>
      <body class={`look-${look}`}>
        <Head frame={frame} />
        {frame.notice && (
          <div class="notice" role="status">
            {frame.notice}
          </div>
        )}
        {frame.asked && (
          <div class="notice">
            <a href={frame.asked.href}>{frame.asked.label}</a>
          </div>
        )}
        {children}
        <Foot frame={frame} />
        <Live />
      </body>
    </html>
  )
}

/** What is read aloud, and what a script may have to say while an answer is under way. */
function Live() {
  const say = useSay()
  return (
    <div
      id="live"
      class="unseen"
      aria-live="polite"
      data-sending={say('wire.sending')}
      data-offline={say('wire.offline')}
      data-busy={say('wire.busy')}
      data-sent={say('wire.sent')}
    />
  )
}

function Head({ frame }: { frame: Frame }) {
  const say = useSay()
  return (
    <>
      <a class="skip" href="#main">
        {say('page.skip')}
      </a>
      <header class="head">
        <p class="shop">
          {frame.homeHref ? <a href={frame.homeHref}>{frame.shop.name}</a> : frame.shop.name}
        </p>
        {frame.saveHref ? (
          <a href={frame.saveHref}>{say('page.save')}</a>
        ) : (
          <Languages frame={frame} />
        )}
      </header>
    </>
  )
}

// Above where a visitor arrives, below once they are under way: a phone's head holds one thing well.
function Languages({ frame }: { frame: Frame }) {
  const say = useSay()
  const others = frame.languages.filter(({ code }) => code !== frame.language)
  if (others.length === 0) return null
  return (
    <nav class="languages" aria-label={say('page.languages')}>
      {others.map(({ code, name, href }) => (
        <a key={code} href={href} lang={code} hreflang={code}>
          {name}
        </a>
      ))}
    </nav>
  )
}

function Foot({ frame }: { frame: Frame }) {
  const say = useSay()
  const { name, email, phone } = frame.shop
  return (
    <footer class="foot">
      <p>
        {say('page.questions')} {email && <a href={`mailto:${email}`}>{email}</a>}
        {email && phone && ' · '}
        {phone && <a href={`tel:${phone.replaceAll(' ', '')}`}>{phone}</a>}
        {!email && !phone && name}
      </p>
      {frame.saveHref && <Languages frame={frame} />}
    </footer>
  )
}
