import { useSay } from '../chat/pieces.tsx'
import type { CustodyHomePage, CustodyMapPage, LocatedLine } from './view-custody.ts'

/** Where is it: one field for a scanner or a hand, and what needs somebody now. */
export function CustodyHomeView({ page }: { page: CustodyHomePage }) {
  const say = useSay()
  return (
    <main id="main" class="list custody" tabIndex={-1}>
      <h1>{page.title}</h1>
      <form method="get" action="/desk/custody" class="card seek">
        <label class="legend" for="seek">
          {say('custody.home.label')}
        </label>
        <p class="hint" id="seek-hint">
          {page.lead}
        </p>
        <div class="seek-row">
          <input
            type="text"
            id="seek"
            name="q"
            value={page.asked}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            aria-describedby="seek-hint"
            // A hand scanner types into what has the focus.
            autofocus
          />
          <button type="submit" class="button main">
            {say('custody.home.go')}
          </button>
        </div>
      </form>
      {page.found && (
        <section class="card" aria-labelledby="found">
          <h2 id="found">{page.found.heading}</h2>
          <Located lines={page.lines} />
          {page.found.more && <p class="hint">{say('custody.home.more')}</p>}
        </section>
      )}
      <section class="card" aria-labelledby="overdue">
        <h2 id="overdue">
          {page.overdue.length > 0
            ? say('custody.home.overdue', { count: page.overdue.length })
            : say('custody.home.no_overdue')}
        </h2>
        {page.overdue.length > 0 && (
          <ul class="located">
            {page.overdue.map(({ text, href }) => (
              <li key={href}>
                <a href={href}>{text}</a>
              </li>
            ))}
          </ul>
        )}
      </section>
      <Standing
        title={say('custody.home.waiting')}
        none={say('custody.home.no_waiting')}
        id="waiting"
        lines={page.waiting}
      />
      <Standing
        title={say('custody.home.apart')}
        none={say('custody.home.no_apart')}
        id="apart"
        lines={page.apart}
      />
      <nav class="onward" aria-label={page.title}>
        {page.links.map(({ label, href }) => (
          <a key={href} class="button second" href={href}>
            {label}
          </a>
        ))}
      </nav>
    </main>
  )
}

function Standing({
  title,
  none,
  id,
  lines,
}: {
  title: string
  none: string
  id: string
  lines: readonly LocatedLine[]
}) {
  return (
    <section class="card" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {lines.length === 0 ? <p class="hint">{none}</p> : <Located lines={lines} />}
    </section>
  )
}

export function Located({ lines }: { lines: readonly LocatedLine[] }) {
  return (
    <ul class="located">
      {lines.map(({ code, href, name, customer, at, moved }) => (
        <li key={href}>
          <a href={href}>
            <span class="located-code">{code}</span>
            <span class="located-name">
              {name}
              {customer && ` · ${customer}`}
            </span>
            <span class="located-at">{at}</span>
            <span class="hint">{moved}</span>
          </a>
        </li>
      ))}
    </ul>
  )
}

/** Every state and move, drawn from the tables that the code goes by. */
export function CustodyMapView({ page }: { page: CustodyMapPage }) {
  const say = useSay()
  return (
    <main id="main" class="list custody" tabIndex={-1}>
      <p class="onward">
        <a href={page.back.href}>{page.back.label}</a>
      </p>
      <h1>{page.title}</h1>
      <p class="help">{say('custody.map.lead')}</p>
      {page.maps.map(({ kind, svg, legend }) => (
        <section key={kind} class="card custody-map" aria-label={kind}>
          <h2>{kind}</h2>
          <div
            class="custody-drawing"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard.
            tabIndex={0}
            // toSvg makes it from our own marks and escapes every text.
            dangerouslySetInnerHTML={{ __html: svg }}
          />
          <ul class="custody-legend">
            {legend.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      ))}
    </main>
  )
}
