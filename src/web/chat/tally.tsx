import { GradeMark, useSay } from './pieces.tsx'
import type { Grade, Tally } from './view.ts'

const grades: readonly Grade[] = ['sound', 'care', 'eyes', 'home']

export function TallyLine({ tally }: { tally: Tally }) {
  const say = useSay()
  return (
    <p class="tally">
      <strong>{say('tally.soFar')}</strong> {say('tally.garments', { count: tally.garments })}
      {tally.enough && <strong class="enough"> {say('tally.enough')}</strong>}
      {tally.advice && ` ${tally.advice}`}
    </p>
  )
}

/** What the pile makes so far. The script looks again while the plan behind it is not settled. */
export function SoFar({ tally }: { tally: Tally }) {
  const say = useSay()
  const { counted, advice } = tally
  return (
    <div
      class="so-far"
      id="so-far"
      aria-live="polite"
      {...(counted !== 'settled' && { 'data-unsettled': tally.againHref })}
    >
      <TallyGrades tally={tally} />
      {tally.enough && <p class="enough">{say('tally.enough')}</p>}
      {advice && <p class="help">{advice}</p>}
      {counted === 'roughly' && (
        <p class="hint">
          {say('count.laying')} <a href={tally.againHref}>{say('count.again')}</a>
        </p>
      )}
    </div>
  )
}

/** How many garments of each grade; grades that none has are left out. */
function TallyGrades({ tally }: { tally: Tally }) {
  const present = grades.filter((grade) => tally.byGrade[grade] > 0)
  if (present.length === 0) return null
  return (
    <ul class="by-grade">
      {present.map((grade) => (
        <li key={grade}>
          <strong>{tally.byGrade[grade]}</strong> <GradeMark grade={grade} />
        </li>
      ))}
    </ul>
  )
}
