import { OfferWords } from '../chat/offer.tsx'
import { Hidden, useSay, WordsField } from '../chat/pieces.tsx'
import { AgreeCardView } from './agree-card.tsx'
import type { DeskOfferPage } from './view-agree.ts'

type Form = NonNullable<DeskOfferPage['form']>

/** An offer in the making: what is added and taken off, the terms, and the whole as it would be sent. */
export function OfferDeskView({ page }: { page: DeskOfferPage }) {
  return (
    <main id="main" class="list offer-desk" tabIndex={-1}>
      <h1>{page.title}</h1>
      <p class="onward">
        <a href={page.back.href}>{page.back.label}</a>
      </p>
      <div class="card">
        <AgreeCardView card={page.card} />
      </div>
      {page.closed && <p class="card empty">{page.closed}</p>}
      {page.form && <OfferForm page={page} form={page.form} />}
    </main>
  )
}

function OfferForm({ page, form }: { page: DeskOfferPage; form: Form }) {
  const say = useSay()
  return (
    <form method="post" action={form.postTo} class="card" noValidate>
      <Hidden fields={form.hidden} />
      {page.refusal && (
        <p class="errors" role="alert">
          {page.refusal}
        </p>
      )}
      <fieldset>
        <legend>{say('desk.offer.amendments')}</legend>
        <p class="hint">{say('desk.offer.amendments_help', { currency: form.currency })}</p>
        {form.rows.map((row, i) => (
          <div key={i} class="amendment">
            <Field name="label" n={i} value={row.label} label={say('desk.offer.what')} />
            <Field name="amount" n={i} value={row.amount} label={say('desk.offer.amount')} />
            <Field name="reason" n={i} value={row.reason} label={say('desk.offer.why')} />
          </div>
        ))}
      </fieldset>
      <fieldset class="offer-terms">
        <legend>{say('desk.offer.terms')}</legend>
        <Field
          name="deposit"
          value={form.deposit}
          label={say('desk.offer.deposit')}
          hint={form.depositHint}
        />
        <Field name="validDays" value={form.validDays} label={say('desk.offer.valid')} />
        <Field
          name="promised"
          value={form.promised}
          label={say('desk.offer.promised')}
          hint={say('desk.offer.promised_help')}
        />
        <Field name="overReason" value={form.overReason} label={say('desk.offer.over')} />
      </fieldset>
      <WordsField
        id="offer-note"
        name="note"
        label={say('desk.offer.note')}
        value={form.note}
        rows={3}
      />
      {page.preview.length > 0 && <Preview preview={page.preview} />}
      <p class="acts">
        <button
          type="submit"
          name="act"
          value="preview"
          class={`button ${page.canSend ? 'second' : 'main'}`}
        >
          {say('desk.offer.preview')}
        </button>
        {page.canSend && (
          <button type="submit" name="act" value="send" class="button main">
            {say('desk.offer.send')}
          </button>
        )}
      </p>
    </form>
  )
}

function Field({
  name,
  label,
  value,
  hint,
  n,
}: {
  name: string
  label: string
  value: string
  hint?: string
  n?: number
}) {
  const id = `offer-${name}${n === undefined ? '' : `-${n}`}`
  return (
    <div class={`field field-${name}`}>
      <label class="legend" for={id}>
        {label}
        {n !== undefined && <span class="unseen"> {n + 1}</span>}
      </label>
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <input
        id={id}
        type="text"
        name={name}
        value={value}
        aria-describedby={hint ? `${id}-hint` : undefined}
      />
    </div>
  )
}

function Preview({ preview }: Pick<DeskOfferPage, 'preview'>) {
  const say = useSay()
  return (
    <section aria-labelledby="preview-title">
      <h2 id="preview-title">{say('desk.offer.shown')}</h2>
      <div class="offer-previews">
        {preview.map(({ name, lang, paper }) => (
          <div key={lang} lang={lang}>
            <h3>{name}</h3>
            <OfferWords paper={paper} />
          </div>
        ))}
      </div>
    </section>
  )
}
