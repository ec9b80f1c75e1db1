import type { EstimatePaper } from '../../papers/estimate-paper.ts'
import { useSay } from './pieces.tsx'

/** What it is likely to cost, between which bounds, what that hangs on. Never a promise, and it says so. */
export function EstimateSection({ estimate }: { estimate: EstimatePaper }) {
  const say = useSay()
  const { low, likely, high, quilt, grounds } = estimate
  return (
    <section class="card estimate" aria-labelledby="estimate-title">
      <h2 id="estimate-title">{say('estimate.title')}</h2>
      <p class="quilt-line">{quilt}</p>
      <p class="likely">
        {say('estimate.likely')} <strong>{likely}</strong>
      </p>
      {low !== high && <p class="range">{say('estimate.range', { low, high })}</p>}
      <p class="hint">{say('estimate.noPromise')}</p>
      <p class="hint">{grounds}</p>
      {estimate.groups.length > 0 && <EstimateLines estimate={estimate} />}
      {estimate.reasons.length > 0 && (
        <>
          <h3>{say('estimate.hangsOn')}</h3>
          <ul>
            {estimate.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </>
      )}
      {estimate.terms.length > 0 && (
        <dl class="terms">
          {estimate.terms.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
      <HowCounted how={estimate.how} />
    </section>
  )
}

/** What an estimate is made of: groups with their sums, and a line each. */
export function EstimateLines({ estimate }: { estimate: Pick<EstimatePaper, 'groups'> }) {
  const say = useSay()
  return (
    <table class="lines">
      <caption class="unseen">{say('estimate.lines')}</caption>
      <thead class="unseen">
        <tr>
          <th scope="col">{say('estimate.what')}</th>
          <th scope="col">{say('estimate.amount')}</th>
        </tr>
      </thead>
      {estimate.groups.map((group) => (
        <tbody key={group.label}>
          <tr class="line-group">
            <th scope="rowgroup">{group.label}</th>
            <td>{group.amount}</td>
          </tr>
          {group.lines.map(({ label, amount, note }) => (
            <tr key={label}>
              <th scope="row">
                {label}
                {note && <span class="line-note">{note}</span>}
              </th>
              <td>{amount}</td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  )
}

/** How each line was counted, folded until somebody asks. */
function HowCounted({ how }: { how: EstimatePaper['how'] }) {
  const say = useSay()
  if (how.length === 0) return null
  return (
    <details class="how-counted">
      <summary>{say('estimate.how')}</summary>
      <Workings how={how} />
    </details>
  )
}

/** The formula behind each line, with what went into it. */
export function Workings({ how }: { how: EstimatePaper['how'] }) {
  return (
    <dl class="terms">
      {how.map(({ label, sentences }) => (
        <div key={label}>
          <dt>{label}</dt>
          {sentences.map((sentence) => (
            <dd key={sentence}>{sentence}</dd>
          ))}
        </div>
      ))}
    </dl>
  )
}
