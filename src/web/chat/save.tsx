import { describedBy, ErrorSummary, errorOf, FieldRefusal, Hidden, useSay } from './pieces.tsx'
import type { SavePage } from './view.ts'

/** The link to come back with, and a way to have it mailed. */
export function SaveView({ page }: { page: SavePage }) {
  const say = useSay()
  return (
    <main id="main" class="sheet" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title" tabIndex={-1}>
          {say('save.title')}
        </h1>
        <ErrorSummary errors={page.errors} />
        {page.mailedTo && (
          <p class="done" role="status">
            {say('save.mailed', { email: page.mailedTo })}
          </p>
        )}
        <p class="help">{say('save.help')}</p>
        <p class="keep-link">
          <a href={page.keepLink}>{page.keepLink}</a>
        </p>
        <p class="hint">{page.holds}</p>
        {page.mail && <MailForm page={page} />}
        <p class="asides">
          <a class="aside-link" href={page.yoursHref}>
            {say('save.yours')}
          </a>
          <a class="aside-link" href={page.backHref}>
            {say('save.back')}
          </a>
        </p>
      </section>
    </main>
  )
}

function MailForm({ page }: { page: SavePage }) {
  const say = useSay()
  const refused = errorOf(page.errors, 'email')
  return (
    <form method="post" action={page.mail!.postTo} noValidate>
      <Hidden fields={page.mail!.hidden} />
      <div class="field">
        <label class="legend" for="field-email">
          {say('save.email')}
        </label>
        <FieldRefusal field="email" sentence={refused} />
        <input
          id="field-email"
          type="email"
          name="email"
          value={page.email}
          autoComplete="email"
          aria-describedby={describedBy(refused && 'error-email')}
          aria-invalid={refused ? true : undefined}
        />
      </div>
      <button
        type="submit"
        name="act"
        value={page.mail!.act}
        data-act={page.mail!.act}
        class="button main"
      >
        {say(`acts.${page.mail!.act}`)}
      </button>
    </form>
  )
}
