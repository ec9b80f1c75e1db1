import { EstimateSection } from './estimate.tsx'
import { ActButton, Cautions, useSay } from './pieces.tsx'
import { QuiltSection } from './quilt.tsx'
import { Answers, Thread } from './tag.tsx'
import { SoFar } from './tally.tsx'
import type { ReviewPage } from './view.ts'

/** Everything once more before the pile is confirmed. */
export function ReviewView({ page }: { page: ReviewPage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('review.title')}
        </h1>
        <p class="help">{say('review.help')}</p>
        <SoFar tally={page.tally} />
        <Cautions texts={page.cautions} />
        {page.open.length > 0 && (
          <div class="caution" role="note">
            <strong>{say('review.open')}</strong>
            <ul>
              {page.open.map(({ label, href }) => (
                <li key={href}>
                  <a href={href}>{label}</a>
                </li>
              ))}
            </ul>
          </div>
        )}
        <div class="acts">
          {page.confirm && <ActButton action={page.confirm} look="main" />}
          <a class="button second" href={page.backHref}>
            {say('review.back')}
          </a>
        </div>
        {page.confirm && <p class="hint">{say('review.after')}</p>}
      </section>
      <QuiltSection quilts={page.quilts} />
      <section aria-labelledby="thread-title">
        <h2 id="thread-title">{say('thread.name')}</h2>
        <Thread tags={page.tags} fold={false} />
      </section>
      {page.estimate && <EstimateSection estimate={page.estimate} />}
      {page.pileAnswers.length > 0 && (
        <section class="card" aria-labelledby="pile-title">
          <h2 id="pile-title">{say('gather.pile')}</h2>
          <Answers answers={page.pileAnswers} about={null} />
        </section>
      )}
    </main>
  )
}
