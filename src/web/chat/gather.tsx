import { TalkSection } from './messages.tsx'
import { ActButton, Cautions, useSay } from './pieces.tsx'
import { QuiltFold } from './quilt.tsx'
import { Answers, Thread } from './tag.tsx'
import { SoFar } from './tally.tsx'
import type { GatherPage, Said } from './view.ts'

/** Between two garments: what there is so far, and what may be done next. */
export function GatherView({ page }: { page: GatherPage }) {
  const say = useSay()
  const { tally } = page
  return (
    <div class="table table-gather">
      <main id="main" tabIndex={-1}>
        <TalkSection talk={page.talk} />
        <section class="card" aria-labelledby="title">
          <h1 id="title" tabIndex={-1}>
            {say('gather.title', { count: tally.garments })}
          </h1>
          <SoFar tally={tally} />
          <Cautions texts={page.cautions} />
          <div class="acts">
            {page.actions.map((action, i) => (
              <ActButton key={action.act} action={action} look={i === 0 ? 'main' : 'second'} />
            ))}
            {page.closetHref && (
              <a class="button quiet" href={page.closetHref}>
                {say('gather.closet')}
              </a>
            )}
          </div>
        </section>
        {page.quilts && <QuiltFold quilts={page.quilts} />}
        <PileAnswers answers={page.pileAnswers} />
      </main>
      {page.tags.length > 0 && (
        <section class="aside" aria-labelledby="thread-title">
          <h2 id="thread-title">{say('thread.name')}</h2>
          <Thread tags={page.tags.toReversed()} fold={false} />
        </section>
      )}
    </div>
  )
}

export function PileAnswers({ answers }: { answers: readonly Said[] }) {
  const say = useSay()
  if (answers.length === 0) return null
  return (
    <details class="said">
      <summary>{say('gather.pile')}</summary>
      <Answers answers={answers} about={null} />
    </details>
  )
}
