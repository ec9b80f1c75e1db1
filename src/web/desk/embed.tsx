import { h } from 'preact'
import { describedBy, useSay } from '../chat/pieces.tsx'
import { deskPaths } from './paths.ts'
import type { EmbedField, EmbedPage } from './view-embed.ts'

/** How the intake comes onto the shop's own site: its looks, the lines to copy, and how it will be seen. */
export function EmbedView({ page }: { page: EmbedPage }) {
  const say = useSay()
  const { preview } = page
  return (
    <main id="main" class="list owner embed" tabIndex={-1}>
      <h1>{page.title}</h1>
      <p>{say('desk.embed.lead')}</p>
      <form class="card owner-row" method="get" action={deskPaths.embed}>
        {page.fields.map((field) => (
          <Field key={field.name} field={field} />
        ))}
        <div class="field">
          <label class="legend" for="in">
            {say('desk.embed.language')}
          </label>
          <select id="in" name="in">
            {page.languages.map(({ value, label, picked }) => (
              <option key={value} value={value} selected={picked}>
                {label}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" class="button">
          {say('desk.embed.show')}
        </button>
      </form>
      {page.advice.map((sentence) => (
        <p key={sentence} class="notice" role="status">
          {sentence}
        </p>
      ))}
      <section class="card" aria-labelledby="copy-title">
        <h2 id="copy-title">{say('desk.embed.copy')}</h2>
        <p class="help">{say('desk.embed.copy_help')}</p>
        <label class="unseen" for="snippet">
          {say('desk.embed.copy')}
        </label>
        <textarea
          id="snippet"
          class="code"
          readOnly
          rows={page.snippet.split('\n').length + 1}
          spellcheck={false}
          value={page.snippet}
        />
      </section>
      <section class="card" aria-labelledby="allowed-title">
        <h2 id="allowed-title">{say('desk.embed.allowed')}</h2>
        <p>{page.allowed.sentence}</p>
        {page.allowed.origins.length > 0 && (
          <ul>
            {page.allowed.origins.map((origin) => (
              <li key={origin} class="typed">
                {origin}
              </li>
            ))}
          </ul>
        )}
        <p>{say('desk.embed.policy')}</p>
        <ul class="code-lines">
          {page.directives.map((directive) => (
            <li key={directive}>
              <code>{directive}</code>
            </li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="preview-title">
        <h2 id="preview-title">{say('desk.embed.preview')}</h2>
        <p class="hint">{say('desk.embed.preview_help')}</p>
        <script src={preview.script} async />
        {h('pieceworth-intake', preview.attributes, <a href={preview.href}>{preview.label}</a>)}
      </section>
    </main>
  )
}

/** A field for one part of the look. */
export function Field({ field: { name, label, hint, value, error } }: { field: EmbedField }) {
  return (
    <div class="field">
      <label class="legend" for={name}>
        {label}
      </label>
      <p class="hint" id={`${name}-hint`}>
        {hint}
      </p>
      {error && (
        <p class="refusal" id={`${name}-error`}>
          {error}
        </p>
      )}
      <input
        id={name}
        name={name}
        type="text"
        maxLength={120}
        value={value}
        autocomplete="off"
        spellcheck={false}
        aria-invalid={error ? 'true' : undefined}
        aria-describedby={describedBy(`${name}-hint`, error && `${name}-error`)}
      />
    </div>
  )
}
