import { useSay } from '../chat/pieces.tsx'
import type { CalendarPage } from './view-agree.ts'

/** The weeks to come: hours promised of hours there are, and the piles they go to. */
export function CalendarView({ page }: { page: CalendarPage }) {
  const say = useSay()
  return (
    <main id="main" class="list calendar" tabIndex={-1}>
      <h1>{page.title}</h1>
      <p class="hint">{page.help}</p>
      {page.late.map((sentence) => (
        <p key={sentence} class="card caution" role="note">
          {sentence}
        </p>
      ))}
      <ol class="weeks">
        {page.weeks.map(({ week, hours, percent, working, due }) => (
          <li key={week} class="card">
            <h2>{week}</h2>
            <p>
              {hours}
              <progress class="week-bar" value={percent} max={100} aria-label={hours} />
            </p>
            <Piles label={say('desk.calendar.working')} piles={working} />
            <Piles label={say('desk.calendar.due')} piles={due} />
          </li>
        ))}
      </ol>
    </main>
  )
}

function Piles({
  label,
  piles,
}: {
  label: string
  piles: CalendarPage['weeks'][number]['working']
}) {
  if (piles.length === 0) return null
  return (
    <p class="week-piles">
      {label}{' '}
      {piles.map((pile) => (
        <a key={pile.href} href={pile.href}>
          {pile.label}
        </a>
      ))}
    </p>
  )
}
