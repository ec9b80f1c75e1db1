import type { ComponentChildren } from 'preact'
import { Hidden, useSay } from '../chat/pieces.tsx'
import { deskPaths } from './paths.ts'
import type { Frame, Tab } from './view-frame.ts'

/** The whole document around a page of the desk. */
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
  const say = useSay()
  return (
    <html lang={frame.language}>
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="robots" content="noindex" />
        <title>{`${title} · ${say('desk.name')} · ${frame.shop}`}</title>
        <link rel="stylesheet" href={frame.style} />
        {scripts.map((script) => (
          <script key={script} src={script} defer />
        ))}
      </head>
      <body class={`desk desk-${look}`}>
        <a class="skip" href="#main">
          {say('page.skip')}
        </a>
        <Head frame={frame} />
        {children}
      </body>
    </html>
  )
}

const Tabs = ({ tabs }: { tabs: readonly Tab[] }) => (
  <>
    {tabs.map(({ label, href, current }) => (
      <a key={href} href={href} aria-current={current ? 'page' : undefined}>
        {label}
      </a>
    ))}
  </>
)

/** Opens without a script; whoever is on one of its pages sees so from outside. */
function More({ tabs }: { tabs: readonly Tab[] }) {
  const say = useSay()
  if (tabs.length === 0) return null
  const here = tabs.find(({ current }) => current)
  return (
    <details class="more">
      <summary aria-current={here && 'true'}>{here?.label ?? say('desk.places.more')}</summary>
      <div class="more-places">
        <Tabs tabs={tabs} />
      </div>
    </details>
  )
}

function Head({ frame }: { frame: Frame }) {
  const say = useSay()
  return (
    <header class="head">
      <p class="shop">
        {frame.visitor ? <a href={deskPaths.queue}>{say('desk.name')}</a> : say('desk.name')}
      </p>
      {frame.places.length > 0 && (
        <nav class="places" aria-label={say('desk.places.name')}>
          <Tabs tabs={frame.places} />
          <More tabs={frame.more} />
        </nav>
      )}
      <div class="tools">
        {frame.languages.map(({ code, name, href }) => (
          <a key={code} href={href} lang={code} hreflang={code}>
            {name}
          </a>
        ))}
        {frame.visitor && (
          <form method="post" action={deskPaths.signOut}>
            <Hidden fields={{ csrf: frame.visitor.csrf }} />
            <span class="visitor">{frame.visitor.name}</span>
            <button type="submit" class="button quiet">
              {say('desk.sign_out')}
            </button>
          </form>
        )}
      </div>
      {frame.tabs.length > 0 && (
        <nav class="tabs" aria-label={say('desk.tabs.name')}>
          <Tabs tabs={frame.tabs} />
        </nav>
      )}
    </header>
  )
}
