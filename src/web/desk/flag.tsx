import { Hidden, useSay } from '../chat/pieces.tsx'
import type { FlagForm } from './view.ts'

/** What stands of one reason, and the buttons to decide of it. `about` is the reason itself, for who cannot see it. */
export function DecideFlag({ form, about, id }: { form: FlagForm; about: string; id: string }) {
  const say = useSay()
  const { standing, postTo } = form
  return (
    <div class="flag-decision">
      {standing && (
        <p class={`standing standing-${standing.verdict}`}>
          <strong>{standing.words}</strong> <span class="by">{standing.by}</span>
          {standing.reason && <span class="typed"> {standing.reason}</span>}
        </p>
      )}
      {postTo && (
        <details>
          <summary>
            {say(standing ? 'desk.flag.again' : 'desk.flag.decide')}
            <span class="unseen"> {about}</span>
          </summary>
          <form method="post" action={postTo}>
            <Hidden fields={{ csrf: form.csrf, knew: String(form.seen) }} />
            <label for={id}>{say('desk.reason.label')}</label>
            <textarea id={id} name="reason" rows={2} />
            <div class="verdicts">
              {form.buttons.map(({ value, label }) => (
                <button
                  key={value}
                  type="submit"
                  name="verdict"
                  value={value}
                  class="button second"
                >
                  {label}
                </button>
              ))}
            </div>
          </form>
        </details>
      )}
    </div>
  )
}
