import { useSay } from '../chat/pieces.tsx'
import type { DeskBetter, DeskGarment } from './view.ts'

/** What might be found out or done so that a garment does better, and what each answer would come to. */
export function BetterSteps({ garment }: { garment: DeskGarment }) {
  const say = useSay()
  const { better, together } = garment
  if (better.length === 0 && !together) return null
  return (
    <details class="facts better">
      <summary>{say('desk.better.title', { count: better.length })}</summary>
      {together && <p class="together">{together}</p>}
      {better.map((step) => (
        <OneStep key={step.act} step={step} />
      ))}
    </details>
  )
}

function OneStep({ step }: { step: DeskBetter }) {
  const say = useSay()
  return (
    <div data-better={step.act}>
      <p>
        <strong>{step.by}</strong> {step.text}
        {step.now.length > 0 && (
          <span class="because">
            {say('desk.better.now')} {step.now.join('; ')}
          </span>
        )}
      </p>
      <table class="fact-table">
        <caption class="unseen">{step.text}</caption>
        <thead>
          <tr>
            <th scope="col">{say('desk.better.if')}</th>
            <th scope="col">{say('desk.better.best')}</th>
          </tr>
        </thead>
        <tbody>
          {step.chances.map(({ turned, grade, press }) => (
            <tr key={turned}>
              <th scope="row">{turned}</th>
              <td>
                <strong>{grade}</strong> {press}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
