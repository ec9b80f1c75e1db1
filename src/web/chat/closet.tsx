import { Hidden, Picture, useSay } from './pieces.tsx'
import { Thread } from './tag.tsx'
import { TallyLine } from './tally.tsx'
import type { ClosetPage, EarlyTold } from './view-closet.ts'

/** Many garments at once: a line each, or a tap on what each is. */
export function ClosetView({ page }: { page: ClosetPage }) {
  const say = useSay()
  return (
    <div class="table">
      {page.tags.length > 0 && (
        <nav class="aside" aria-label={say('thread.name')}>
          <Thread tags={page.tags} fold />
        </nav>
      )}
      <main id="main" tabIndex={-1}>
        <section class="card" aria-labelledby="title">
          <h1 id="title" tabIndex={-1}>
            {say('closet.title')}
          </h1>
          {page.early.length > 0 && <Early page={page} />}
          <Next page={page} />
          <Lines page={page} />
          <a class="aside-link" href={page.backHref}>
            {say('review.back')}
          </a>
        </section>
        {page.tally && <TallyLine tally={page.tally} />}
      </main>
    </div>
  )
}

/** What is told early, worst first. */
function Early({ page }: { page: ClosetPage }) {
  const say = useSay()
  return (
    <>
      <h2>{say('closet.early')}</h2>
      <ul class="early">
        {page.early.map((told) => (
          <OneEarly key={told.n} told={told} garmentsTo={page.garmentsTo} />
        ))}
      </ul>
    </>
  )
}

function OneEarly({ told, garmentsTo }: { told: EarlyTold; garmentsTo: string }) {
  const say = useSay()
  return (
    <li data-early={told.grade}>
      <strong>
        {say(`closet.${told.grade}`, {
          garment: say('screening.garment', { n: told.n, name: told.name }),
        })}
      </strong>
      <p>{told.sentence}</p>
      {told.next && <p>{told.next}</p>}
      {told.dropHidden && (
        <form method="post" action={garmentsTo} class="act">
          <Hidden fields={told.dropHidden} />
          <button
            type="submit"
            name="act"
            value="drop-garment"
            data-act="drop-garment"
            class="button second"
          >
            {say('closet.keepHome')}
            <span class="unseen"> {told.name}</span>
          </button>
        </form>
      )}
    </li>
  )
}

/** What is to be done with those that are told already. */
function Next({ page: { added, waiting, goOnHref } }: { page: ClosetPage }) {
  const say = useSay()
  return (
    <>
      {added && (
        <p class="closet-added" role="status">
          {say('closet.added', { name: added })}
        </p>
      )}
      {waiting && (
        <p>
          <a class="button main" href={waiting.href}>
            {say('closet.look', { count: waiting.count })}
          </a>
        </p>
      )}
      {goOnHref && (
        <p>
          <a class="button main" href={goOnHref}>
            {say('closet.goOn')}
          </a>
        </p>
      )}
    </>
  )
}

function Lines({ page }: { page: ClosetPage }) {
  const say = useSay()
  return (
    <form method="post" action={page.postTo} noValidate data-closet="lines">
      <Hidden fields={page.hidden} />
      <div class="field">
        <label class="legend" for="field-lines">
          {say('closet.lines')}
        </label>
        <p class="hint" id="lines-hint">
          {say('closet.help', { most: page.most })}
        </p>
        {page.refusal && (
          <p class="refusal" id="error-lines" role="alert">
            <span class="unseen">{say('page.error')} </span>
            {page.refusal}
          </p>
        )}
        <textarea
          id="field-lines"
          name="lines"
          rows={6}
          aria-describedby={page.refusal ? 'lines-hint error-lines' : 'lines-hint'}
          aria-invalid={page.refusal ? true : undefined}
        >
          {page.lines}
        </textarea>
      </div>
      <div class="go">
        <button type="submit" name="act" value="add-lines" data-act="add-lines" class="button main">
          {say('closet.add')}
        </button>
      </div>
      <fieldset>
        <legend>{say('closet.kinds')}</legend>
        <ul class="closet-kinds">
          {page.kinds.map(({ value, label }) => (
            <li key={value}>
              <button
                type="submit"
                name="kind"
                value={value}
                class="closet-kind"
                data-act="add-kind"
              >
                <Picture name={value} />
                {label}
              </button>
            </li>
          ))}
        </ul>
      </fieldset>
    </form>
  )
}
