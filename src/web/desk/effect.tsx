import { EstimateLines, Workings } from '../chat/estimate.tsx'
import { GradeMark, useSay } from '../chat/pieces.tsx'
import type { Effect } from './view.ts'

/** What the pile makes of the quilt: cloth at hand, cloth wanted, and the price. */
export function EffectPanel({ effect }: { effect: Effect }) {
  return (
    <>
      <h2 id="effect-title">{effect.title}</h2>
      <ul class="by-grade">
        {effect.grades.map(({ grade, count }) => (
          <li key={grade}>
            <strong>{count}</strong> <GradeMark grade={grade} />
          </li>
        ))}
      </ul>
      {effect.sentences.map((words) => (
        <p key={words} class="short-line">
          {words}
        </p>
      ))}
      <p class="hint">
        {effect.counted}{' '}
        {effect.again && (
          <a class="look-again" href={effect.again.href}>
            {effect.again.label}
          </a>
        )}
      </p>
      <Pieces pieces={effect.pieces} />
      <Price effect={effect} />
    </>
  )
}

function Pieces({ pieces }: { pieces: Effect['pieces'] }) {
  const say = useSay()
  if (pieces.rows.length === 0) return null
  return (
    <table class="lines">
      <caption class="unseen">{say('desk.effect.pieces')}</caption>
      <thead>
        <tr>
          <th scope="col">{say(`desk.effect.by.${pieces.by}`)}</th>
          <th scope="col">{say('desk.effect.have')}</th>
          <th scope="col">{say('desk.effect.want')}</th>
        </tr>
      </thead>
      <tbody>
        {pieces.rows.map(({ name, have, want }) => (
          <tr key={name} class={have < want ? 'short' : undefined}>
            <th scope="row">{name}</th>
            <td>{have}</td>
            <td>{want}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Price({ effect }: { effect: Effect }) {
  const say = useSay()
  const { estimate, lines } = effect
  if (!estimate) return <p class="hint">{say('desk.effect.no_estimate')}</p>
  return (
    <div class="price">
      <p class="likely">
        {say('estimate.likely')} <strong>{estimate.likely}</strong>
      </p>
      {estimate.range && <p class="range">{estimate.range}</p>}
      {estimate.was && <p class="hint">{estimate.was}</p>}
      {lines && (
        <details>
          <summary>{say('estimate.lines')}</summary>
          <p class="hint">{lines.grounds}</p>
          <EstimateLines estimate={lines} />
          <ul class="width">
            {lines.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
          <Workings how={lines.how} />
        </details>
      )}
    </div>
  )
}
