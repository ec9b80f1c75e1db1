import { Hidden, useSay, WordsField } from '../chat/pieces.tsx'
import type { CountPage } from './view-custody.ts'

/** Everything that should be in the house, by place, to be ticked when it is seen. */
export function CountView({ page }: { page: CountPage }) {
  const say = useSay()
  const { form, newest } = page
  return (
    <main id="main" class="list custody" tabIndex={-1}>
      <h1>{page.title}</h1>
      {newest && (
        <section class="card" aria-label={newest.line}>
          <p>
            <strong>{newest.line}</strong>
          </p>
          <p>{page.notSeen}</p>
          <ul class="located">
            {newest.missing.map(({ label, href }) => (
              <li key={href}>
                <a href={href}>{label}</a>
              </li>
            ))}
          </ul>
        </section>
      )}
      <form method="post" action={form.postTo} class="card">
        <Hidden fields={{ csrf: form.csrf, idem: form.idem }} />
        <p class="help">{page.lead}</p>
        {page.places.map(({ place, things }) => (
          <fieldset key={place} class="count-place">
            <legend>{place}</legend>
            {things.map(({ value, label }) => (
              <label key={value} class="choice">
                <input type="checkbox" name="seen" value={value} />
                <span>{label}</span>
              </label>
            ))}
          </fieldset>
        ))}
        <WordsField id="count-note" name="note" label={say('custody.count.note')} />
        <button type="submit" class="button main">
          {say('custody.count.save')}
        </button>
      </form>
      {!newest && <p class="hint">{say('custody.count.none')}</p>}
      {page.earlier.length > 0 && (
        <section class="card" aria-labelledby="earlier">
          <h2 id="earlier">{say('custody.count.earlier')}</h2>
          <ul class="shut">
            {page.earlier.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      )}
    </main>
  )
}
