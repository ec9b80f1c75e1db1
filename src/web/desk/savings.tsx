import { useSay } from '../chat/pieces.tsx'
import type { SavingsPart, ShownSavings } from './view-savings.ts'

/** What would save cloth: closed until it is asked for, as only further plans tell. */
export function Savings({ savings }: { savings: SavingsPart }) {
  const say = useSay()
  const link = savings.state === 'open' ? savings.close : savings.open
  return (
    <section class="card plan-savings" id="plan-savings" aria-labelledby="savings-title">
      <h2 id="savings-title">{say('desk.savings.title')}</h2>
      {savings.state === 'open' ? (
        <Lines savings={savings} />
      ) : (
        <p class="hint">{say('desk.savings.help')}</p>
      )}
      <p class="plan-to-print">
        <a href={link.href}>{link.label}</a>
      </p>
    </section>
  )
}

function Lines({ savings }: { savings: ShownSavings }) {
  const { lines, notes, again } = savings
  return (
    <>
      {lines.length > 0 && (
        <ul class="savings">
          {lines.map(({ words, sure }) => (
            <li key={words}>
              {words} <span class="by">{sure}</span>
            </li>
          ))}
        </ul>
      )}
      {notes.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {again && (
        <p class="plan-to-print">
          <a href={again.href}>{again.label}</a>
        </p>
      )}
    </>
  )
}
