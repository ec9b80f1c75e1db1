import type { EstimatePaper } from '../../papers/estimate-paper.ts'
import { useSay } from './pieces.tsx'

/** What it is likely to cost, between which bounds, what that hangs on. Never a promise, and it says so. */
export function EstimateSection({ estimate }: { estimate: EstimatePaper }) {
  const say = useSay()
  const { low, likely, high } = estimate
  return (
    <section class="card estimate" aria-labelledby="estimate-title">
      <h2 id="estimate-title">{say('estimate.title')}</h2>
      <p class="likely">
        {say('estimate.likely')} <strong>{likely}</strong>
      </p>
      <p class="range">{say('estimate.range', { low, high })}</p>
      <p class="hint">{say('estimate.noPromise')}</p>
      {estimate.lines.length > 0 && <EstimateLines estimate={estimate} />}
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
    </section>
  )
}

/** What an estimate is made of, a line each. */
export function EstimateLines({ estimate }: { estimate: EstimatePaper }) {
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
      <tbody>
        {estimate.lines.map(({ label, amount, note }) => (
          <tr key={label}>
            <th scope="row">
              {label}
              {note && <span class="line-note">{note}</span>}
            </th>
            <td>{amount}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
