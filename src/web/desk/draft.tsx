import { describedBy, Hidden, useSay } from '../chat/pieces.tsx'
import type { Link } from './view.ts'
import type { ChangeShown, DraftPage, TryPage } from './view-draft.ts'

const Back = ({ link }: { link: Link }) => (
  <p>
    <a class="owner-try" href={link.href}>
      {link.label}
    </a>
  </p>
)

/** The form to try a file otherwise: its text pasted or sent along. */
export function TryView({ page }: { page: TryPage }) {
  const say = useSay()
  return (
    <main id="main" class="list owner" tabIndex={-1}>
      <Back link={page.back} />
      <h1>{page.title}</h1>
      {page.error && (
        <p class="refusal" id="refusal" role="alert">
          {page.error}
        </p>
      )}
      <p>{say('desk.drafts.form.lead')}</p>
      {page.besides && <p class="notice">{page.besides}</p>}
      <form class="card" method="post" action={page.postTo} encType="multipart/form-data">
        <Hidden fields={{ csrf: page.csrf, base: page.base }} />
        <div class="field">
          <label class="legend" for="field-name">
            {say('desk.drafts.form.name')}
          </label>
          <p class="hint" id="name-hint">
            {say('desk.drafts.form.name_hint')}
          </p>
          <input
            type="text"
            id="field-name"
            name="name"
            list="names"
            value={page.name}
            autoComplete="off"
            aria-describedby={describedBy(page.error && 'refusal', 'name-hint')}
          />
          <datalist id="names">
            {page.names.map((name) => (
              <option key={name} value={name} />
            ))}
          </datalist>
        </div>
        <div class="field">
          <label class="legend" for="field-text">
            {say('desk.drafts.form.text')}
          </label>
          <textarea
            id="field-text"
            name="text"
            rows={20}
            spellcheck={false}
            class="owner-text"
            value={page.text}
          />
        </div>
        <div class="field">
          <label class="legend" for="field-upload">
            {say('desk.drafts.form.upload')}
          </label>
          <input type="file" id="field-upload" name="upload" accept=".yaml,.yml,text/plain" />
        </div>
        <button type="submit" class="button main">
          {say('desk.drafts.form.send')}
        </button>
      </form>
    </main>
  )
}

/** What a draft would change. */
export function DraftView({ page }: { page: DraftPage }) {
  const say = useSay()
  return (
    <main id="main" class="list owner" tabIndex={-1}>
      <Back link={page.back} />
      <h1>{page.title}</h1>
      <p class="hint">{page.by}</p>
      <p class="notice" role="status">
        {page.state}
      </p>
      {page.again && (
        <p>
          <a class="button second" href={page.again.href}>
            {page.again.label}
          </a>
        </p>
      )}
      <Findings findings={page.findings} />
      <Counts page={page} />
      {page.changes.map((change) => (
        <Change key={change.title} change={change} />
      ))}
      {page.unlisted && <p class="hint">{page.unlisted}</p>}
      {page.agreed && <p>{page.agreed}</p>}
      <section class="card" aria-labelledby="live-title">
        <h2 id="live-title">{say('desk.drafts.live')}</h2>
        <p class="help">{say('desk.drafts.live_help')}</p>
        <ul class="owner-list">
          {page.files.map(({ link, place }) => (
            <li key={link.href}>
              <a href={link.href}>{link.label}</a>
              <span class="hint">{place}</span>
            </li>
          ))}
        </ul>
        <a class="button second" href={page.also.href}>
          {page.also.label}
        </a>
      </section>
    </main>
  )
}

function Findings({ findings }: Pick<DraftPage, 'findings'>) {
  const say = useSay()
  if (findings.length === 0) return null
  return (
    <section class="card" aria-labelledby="findings-title">
      <h2 id="findings-title">{say('desk.drafts.findings')}</h2>
      <ul class="owner-list">
        {findings.map(({ where, message }) => (
          <li key={`${where} ${message}`}>
            <strong>{where}</strong>
            <span class="typed">{message}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function Counts({ page: { counts, prices } }: { page: DraftPage }) {
  const say = useSay()
  if (counts.length === 0) return null
  return (
    <section class="card" aria-labelledby="counts-title">
      <h2 id="counts-title">{say('desk.drafts.counted')}</h2>
      <dl class="owner-counts">
        {counts.map(({ name, count }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{count}</dd>
          </div>
        ))}
      </dl>
      {prices && <p class="hint">{prices}</p>}
    </section>
  )
}

function Change({ change: { title, href, lines, garments } }: { change: ChangeShown }) {
  return (
    <section class="card draft-change" aria-label={title}>
      <h2>{href ? <a href={href}>{title}</a> : title}</h2>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <ul class="owner-list">
        {garments.map(({ name, lines: told }) => (
          <li key={name}>
            <strong>{name}</strong>
            {told.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </li>
        ))}
      </ul>
    </section>
  )
}
