import { describedBy, useSay } from '../chat/pieces.tsx'
import { deskPaths } from './paths.ts'
import type { NumbersPage } from './view-numbers.ts'

/** What the owner counts, and what can be taken along. */
export function NumbersView({ page }: { page: NumbersPage }) {
  const say = useSay()
  return (
    <main id="main" class="list owner" tabIndex={-1}>
      <h1>{page.title}</h1>
      <PeriodForm page={page} />
      {page.over.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {page.empty && <p class="card empty">{page.empty}</p>}
      {page.groups.map(({ title, what, rows }) => (
        <section key={title} class="card" aria-label={title}>
          <h2>{title}</h2>
          <p class="hint">{what}</p>
          {rows.length === 0 && <p>{say('desk.numbers.none')}</p>}
          <dl class="owner-counts">
            {rows.map(({ name, value, note }) => (
              <div key={name}>
                <dt>
                  {name}
                  {note && <span class="hint">{note}</span>}
                </dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
      <section class="card" aria-labelledby="export-title">
        <h2 id="export-title">{say('desk.numbers.export')}</h2>
        <p class="help">{say('desk.numbers.export_what')}</p>
        <ul class="owner-list">
          {page.exports.map(({ href, label, what }) => (
            <li key={href}>
              <a href={href} download={label}>
                {label}
              </a>
              <span class="hint">{what}</span>
            </li>
          ))}
        </ul>
      </section>
    </main>
  )
}

function PeriodForm({ page: { from, to, error } }: { page: NumbersPage }) {
  const say = useSay()
  return (
    <form class="card owner-period" method="get" action={deskPaths.numbers}>
      {error && (
        <p class="refusal" id="refusal" role="alert">
          {error}
        </p>
      )}
      {(['from', 'to'] as const).map((name) => (
        <div key={name} class="field">
          <label class="legend" for={`field-${name}`}>
            {say(`desk.numbers.${name}`)}
          </label>
          <input
            type="date"
            id={`field-${name}`}
            name={name}
            value={name === 'from' ? from : to}
            aria-describedby={describedBy(error && 'refusal')}
          />
        </div>
      ))}
      <button type="submit" class="button second">
        {say('desk.numbers.show')}
      </button>
    </form>
  )
}
