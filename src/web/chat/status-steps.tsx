import { useSay } from './pieces.tsx'
import type { StatusShown } from './view-status.ts'

/** Where the pile is on its way, the days that count, and what changed since it was confirmed before. */
export function StatusSteps({ status }: { status: StatusShown }) {
  const say = useSay()
  return (
    <section class="card" aria-labelledby="status-title">
      <h2 id="status-title">{say('status.title')}</h2>
      <ol class="way">
        {status.steps.map(({ id, label, state, day }) => (
          <li
            key={id}
            class={`way-${state}`}
            data-step={id}
            aria-current={state === 'now' ? 'step' : undefined}
          >
            <span class="way-label">
              {label}
              <span class="unseen"> {say(`status.states.${state}`)}</span>
            </span>
            {day && <span class="way-day">{day}</span>}
          </li>
        ))}
      </ol>
      {status.days.length > 0 && (
        <dl class="terms">
          {status.days.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
      {status.changed && (
        <div class="changed">
          <h3>{status.changed.title}</h3>
          <ul>
            {status.changed.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      )}
    </section>
  )
}
