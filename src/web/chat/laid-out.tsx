import { Hidden, useSay, WordsField } from './pieces.tsx'
import type { ChangeForm, LaidOutPage } from './view-laid-out.ts'

/** The quilt laid out, before it is sewn: to look at, and to say yes or what to change. */
export function LaidOutView({ page }: { page: LaidOutPage }) {
  const say = useSay()
  const { state, photos, note, wish, yes, change, refused } = page
  return (
    <main id="main" class="sheet" tabIndex={-1} data-laid-out={state}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('laid_out.title')}
        </h1>
        <p class="laid-out-standing" role="status">
          {page.standing}
        </p>
        {refused && (
          <p class="errors" role="alert">
            {refused}
          </p>
        )}
        {wish !== null && (
          <div class="laid-out-wish">
            <p>
              <strong>{say('laid_out.wish')}</strong>
            </p>
            <p class="typed" dir="auto">
              {wish}
            </p>
          </div>
        )}
        <ul class="laid-out-photos">
          {photos.map(({ id, view, alt }) => (
            <li key={id}>
              <a href={view}>
                <img src={view} alt={alt} />
              </a>
            </li>
          ))}
        </ul>
        {note && (
          <div class="laid-out-note">
            <p>
              <strong>{say('laid_out.note')}</strong>
            </p>
            <p class="typed" dir="auto">
              {note}
            </p>
          </div>
        )}
        <p class="hint">{say('laid_out.about')}</p>
      </section>
      {yes !== null && (
        <section class="card" aria-labelledby="yes-title">
          <h2 id="yes-title">{say('laid_out.yes_title')}</h2>
          <p>{say('laid_out.yes_help')}</p>
          <form method="post" action={page.postTo}>
            <Hidden fields={page.hidden} />
            <button
              type="submit"
              class="button main"
              name="answer"
              value="yes"
              data-act="laid-out-yes"
            >
              {yes}
            </button>
          </form>
        </section>
      )}
      {change && (
        <section class="card" aria-labelledby="change-title">
          <h2 id="change-title">{say('laid_out.change_title')}</h2>
          {change.folded ? (
            <details class="laid-out-after" open={change.error !== null}>
              <summary>{say('laid_out.change_after_all')}</summary>
              <Change page={page} change={change} />
            </details>
          ) : (
            <Change page={page} change={change} />
          )}
        </section>
      )}
      <p class="asides">
        {page.ways.map(({ label, href }) => (
          <a key={href} class="aside-link" href={href}>
            {label}
          </a>
        ))}
      </p>
    </main>
  )
}

function Change({ page, change }: { page: LaidOutPage; change: ChangeForm }) {
  const say = useSay()
  const { text, error, longest } = change
  return (
    <form method="post" action={page.postTo} noValidate>
      <Hidden fields={page.hidden} />
      <WordsField
        id="field-text"
        name="text"
        label={say('laid_out.change')}
        value={text}
        rows={4}
        hint={say('messages.longest', { longest })}
        refused={error}
      />
      <button
        type="submit"
        class="button second"
        name="answer"
        value="change"
        data-act="laid-out-change"
      >
        {say('laid_out.change_send')}
      </button>
    </form>
  )
}
