import { h } from 'preact'
import { describedBy, Hidden, useSay } from '../chat/pieces.tsx'
import { Field } from './embed.tsx'
import type { ShopField, ShopPage } from './view-shop.ts'

/** The shop as customers see it: its fields, how it will read and look, and the way to a draft. */
export function ShopView({ page }: { page: ShopPage }) {
  const say = useSay()
  return (
    <main id="main" class="list owner embed" tabIndex={-1}>
      <h1>{page.title}</h1>
      {page.error && (
        <p class="refusal" role="alert">
          {page.error}
        </p>
      )}
      <p>{say('desk.shop.lead')}</p>
      <form method="post" action={page.postTo}>
        <Hidden fields={{ csrf: page.csrf }} />
        <section class="card" aria-labelledby="words-title">
          <h2 id="words-title">{say('desk.shop.words')}</h2>
          {page.words.map((field) => (
            <Words key={field.name} field={field} />
          ))}
        </section>
        <section class="card" aria-labelledby="look-title">
          <h2 id="look-title">{say('desk.shop.look')}</h2>
          {page.look.map((field) => (
            <Field key={field.name} field={field} />
          ))}
          {page.advice.map((sentence) => (
            <p key={sentence} class="notice" role="status">
              {sentence}
            </p>
          ))}
        </section>
        <div class="go">
          <button type="submit" name="act" value="show" class="button second">
            {say('desk.shop.show')}
          </button>
          <button type="submit" name="act" value="draft" class="button main">
            {say('desk.shop.draft')}
          </button>
        </div>
      </form>
      <section class="card" aria-labelledby="read-title">
        <h2 id="read-title">{say('desk.shop.read')}</h2>
        <p>
          <strong>{page.shown.name}</strong>
        </p>
        <p>{page.shown.tagline}</p>
        <p>{page.shown.contact}</p>
        <address>
          {page.shown.address.map((line) => (
            <span key={line} class="shop-line">
              {line}
            </span>
          ))}
        </address>
        <ul>
          {page.shown.policies.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="preview-title">
        <h2 id="preview-title">{say('desk.embed.preview')}</h2>
        <p class="hint">{say('desk.shop.preview_help')}</p>
        <script src={page.preview.script} async />
        {h(
          'pieceworth-intake',
          page.preview.attributes,
          <a href={page.preview.href}>{page.preview.label}</a>,
        )}
      </section>
    </main>
  )
}

function Words({ field: { name, label, hint, value, lines, error } }: { field: ShopField }) {
  const about = {
    id: name,
    name,
    'aria-invalid': error ? ('true' as const) : undefined,
    'aria-describedby': describedBy(hint && `${name}-hint`, error && `${name}-error`),
  }
  return (
    <div class="field">
      <label class="legend" for={name}>
        {label}
      </label>
      {hint && (
        <p class="hint" id={`${name}-hint`}>
          {hint}
        </p>
      )}
      {error && (
        <p class="refusal" id={`${name}-error`}>
          {error}
        </p>
      )}
      {lines === 1 ? (
        <input {...about} type="text" maxLength={500} value={value} autocomplete="off" />
      ) : (
        <textarea {...about} rows={lines} maxLength={8000} value={value} />
      )}
    </div>
  )
}
