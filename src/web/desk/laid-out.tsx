import { useSay } from '../chat/pieces.tsx'
import { Refused } from './custody-pieces.tsx'
import { Section } from './record.tsx'
import type { LaidOutPage } from './view-record.ts'

/** The quilt of a pile laid out on the table, for its customer to say yes to. */
export function LaidOutView({ page }: { page: LaidOutPage }) {
  const say = useSay()
  const { links, standing, wish, section, hidden } = page
  return (
    <main id="main" class="list custody record laid-out" tabIndex={-1}>
      <nav class="onward" aria-label={say('laid_out.desk.links')}>
        {links.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </nav>
      <h1>{page.title}</h1>
      <p class={standing.asks ? 'card now-apart' : 'now-at'} role="status">
        {standing.text}
      </p>
      {wish !== null && (
        <div class="card">
          <h2>{say('laid_out.desk.wish')}</h2>
          <p class="typed" dir="auto">
            {wish}
          </p>
        </div>
      )}
      <Refused sentence={page.refused} />
      <Section section={section} hidden={hidden} />
    </main>
  )
}
