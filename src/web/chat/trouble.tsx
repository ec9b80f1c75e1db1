import { useSay } from './pieces.tsx'
import type { TroublePage } from './view.ts'

/** What went wrong and the next best thing; the code small, for whoever helps. */
export function TroubleView({ page }: { page: TroublePage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1} data-trouble={page.trouble} data-code={page.code}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say(`trouble.${page.trouble}`)}
        </h1>
        <p class="help">{page.sentence}</p>
        <p>{say('trouble.kept')}</p>
        {page.ways.length > 0 && (
          <div class="acts">
            {page.ways.map(({ label, href }) => (
              <a key={href} class="button second" href={href}>
                {label}
              </a>
            ))}
          </div>
        )}
        <p class="hint">{say('trouble.code', { code: page.toName })}</p>
      </section>
    </main>
  )
}
