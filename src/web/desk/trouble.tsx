import { useSay } from '../chat/pieces.tsx'
import type { TroublePage } from './view.ts'

export function TroubleView({ page }: { page: TroublePage }) {
  const say = useSay()
  return (
    <main id="main" class="door" tabIndex={-1} data-trouble={page.code}>
      <section class="card" aria-labelledby="title">
        <h1 id="title">{say('desk.trouble.title')}</h1>
        <p>{page.sentence}</p>
        <p>
          <a class="button second" href={page.way.href}>
            {page.way.label}
          </a>
        </p>
        <p class="hint">{say('trouble.code', { code: page.toName })}</p>
      </section>
    </main>
  )
}
