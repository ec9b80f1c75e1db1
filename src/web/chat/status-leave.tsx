import { useSay } from './pieces.tsx'
import type { StatusShown } from './view-status.ts'

/** To change the pile or to take it back. */
export function StatusLeave({ leave }: Pick<StatusShown, 'leave'>) {
  const say = useSay()
  if (!leave) return null
  return (
    <section class="card asides-of-status" aria-labelledby="leave-title">
      <h2 id="leave-title">{say('status.leave_title')}</h2>
      <p>{leave.text}</p>
      <p class="acts">
        {leave.links.map(({ label, href }) => (
          <a key={href} class="button second" href={href}>
            {label}
          </a>
        ))}
      </p>
    </section>
  )
}
