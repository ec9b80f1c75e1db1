import { Hidden, useSay, WordsField } from './pieces.tsx'
import type { LeavePage } from './view-status.ts'

/** What will happen when a pile is taken back, and the button that does it. */
export function LeaveView({ page }: { page: LeavePage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1} data-leave={page.kind}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say(`leave.${page.kind}.title`)}
        </h1>
        <ul>
          {page.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <form method="post" action={page.postTo} noValidate>
          <Hidden fields={page.hidden} />
          {page.reason !== null && (
            <WordsField
              id="field-reason"
              name="reason"
              label={say('leave.reason')}
              value={page.reason}
              rows={3}
              refused={page.refusal}
            />
          )}
          <div class="acts">
            <button type="submit" class="button main" data-act={`${page.kind}-pile`}>
              {say(`leave.${page.kind}.send`)}
            </button>
            <a class="button second" href={page.backHref}>
              {say('leave.back')}
            </a>
          </div>
        </form>
      </section>
    </main>
  )
}
