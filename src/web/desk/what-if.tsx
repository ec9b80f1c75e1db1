import { Hidden, useSay } from '../chat/pieces.tsx'
import { RoleBoxes } from './roles.tsx'
import type {
  Choice,
  WayCell,
  WayForm,
  WayHead,
  WayMark,
  WayRow,
  WhatIfPage,
} from './view-what-if.ts'

/** The pile as it stands, and other ways beside it. */
export function WhatIfView({ page }: { page: WhatIfPage }) {
  const say = useSay()
  return (
    <main id="main" class="plan what-if" tabIndex={-1}>
      <p class="onward">
        {page.back.map(({ label, href }) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </p>
      <div class="card pile">
        <h1 id="title">
          {page.title} <span class="quilt">{page.quilt}</span>
        </h1>
        <p class="hint">{say('desk.what_if.help')}</p>
        {page.refused.length > 0 && (
          <div class="caution" role="note">
            {page.refused.map((words) => (
              <p key={words}>{words}</p>
            ))}
          </div>
        )}
        {page.again && (
          <p class="plan-state">
            {say('desk.what_if.may_change')} <a href={page.again.href}>{page.again.label}</a>
          </p>
        )}
      </div>
      <Ways heads={page.heads} rows={page.rows} />
      <TakeUp page={page} />
      {page.form ? (
        <Further form={page.form} />
      ) : (
        <p class="hint what-if-full">{say('desk.what_if.full')}</p>
      )}
    </main>
  )
}

/** One of the ways becomes the pile's own. */
function TakeUp({ page: { heads, takeUp } }: { page: WhatIfPage }) {
  const say = useSay()
  const ways = heads.filter(({ way }) => way !== null)
  if (!takeUp || (ways.length === 0 && !takeUp.error)) return null
  const { postTo, csrf, seen, reason, error } = takeUp
  return (
    <section class="card take-up" aria-labelledby="take-up-title">
      <h2 id="take-up-title">{say('desk.what_if.take_up.title')}</h2>
      <form method="post" action={postTo}>
        <Hidden fields={{ csrf, seen: String(seen) }} />
        {error && (
          <p class="refusal" id="take-up-error" role="alert">
            {error}
          </p>
        )}
        <label class="legend" for="take-up-reason">
          {say('desk.reason.label')}
        </label>
        <p class="hint" id="take-up-hint">
          {say('desk.what_if.take_up.help')}
        </p>
        <textarea
          id="take-up-reason"
          name="reason"
          rows={2}
          aria-describedby={error ? 'take-up-error take-up-hint' : 'take-up-hint'}
          aria-invalid={error ? true : undefined}
        >
          {reason}
        </textarea>
        <div class="verdicts">
          {ways.map(({ name, changes, way }) => (
            <button key={name} type="submit" name="way" value={way!} class="button second">
              {say('desk.what_if.take_up.button', { way: name })}
              <span class="unseen"> {changes.join(', ')}</span>
            </button>
          ))}
        </div>
      </form>
    </section>
  )
}

function Ways({ heads, rows }: { heads: readonly WayHead[]; rows: readonly WayRow[] }) {
  const say = useSay()
  return (
    <section class="card" aria-labelledby="ways-title">
      <h2 id="ways-title">{say('desk.what_if.beside')}</h2>
      <table class="fact-table ways">
        <thead>
          <tr>
            <td />
            {heads.map((head) => (
              <Head key={head.name} head={head} />
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, cells }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {cells.map((cell, n) => (
                <Cell key={heads[n]!.name} cell={cell} way={heads[n]!.name} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Head({ head }: { head: WayHead }) {
  const { name, changes, away } = head
  return (
    <th scope="col">
      <span class="way-name">{name}</span>
      {changes.map((words) => (
        <span key={words} class="way-change">
          {words}
        </span>
      ))}
      {away && (
        <a class="way-away" href={away.href}>
          {away.label}
        </a>
      )}
    </th>
  )
}

const signs = { better: '+', worse: '–' } as const

/** Better or worse, by sign and words. */
export const MarkWords = ({ mark }: { mark: WayMark }) => (
  <strong class={`way-mark way-${mark.side}`}>
    <span aria-hidden="true">{signs[mark.side]}</span> {mark.text}
  </strong>
)

function Cell({ cell, way }: { cell: WayCell; way: string }) {
  const { lines, mark } = cell
  return (
    <td data-column={way}>
      <div>
        {lines.map((line) => (
          <span key={line} class="plan-size">
            {line}
          </span>
        ))}
        {mark && <MarkWords mark={mark} />}
      </div>
    </td>
  )
}

function Further({ form }: { form: WayForm }) {
  const say = useSay()
  const { action, tries, from, selects, roles } = form
  return (
    <section class="card" aria-labelledby="further-title">
      <h2 id="further-title">{say('desk.what_if.form.title')}</h2>
      <form method="get" action={action} class="way-form">
        {tries.map((one) => (
          <input key={one} type="hidden" name="try" value={one} />
        ))}
        <div class="way-fields">
          {from.length > 0 && (
            <Select id="from" name="from" label={say('desk.what_if.form.from')} choices={from} />
          )}
          {selects.map(({ id, label, choices }) => (
            <Select key={id} id={id} name="and" label={label} choices={choices} />
          ))}
        </div>
        {roles && (
          <fieldset class="way-roles">
            <legend>{say('desk.what_if.form.roles')}</legend>
            <Select
              id="of"
              name="of"
              label={say('desk.what_if.form.of')}
              choices={roles.garments}
            />
            <RoleBoxes id="way-plays" choices={roles.roles} checked={[]} />
            <p class="hint">{say('desk.plan.roles.hint')}</p>
          </fieldset>
        )}
        <button type="submit" name="add" value="1" class="button main">
          {say('desk.what_if.form.add')}
        </button>
      </form>
    </section>
  )
}

function Select(field: { id: string; name: string; label: string; choices: readonly Choice[] }) {
  const { id, name, label, choices } = field
  return (
    <p class="field">
      <label class="legend" for={`way-${id}`}>
        {label}
      </label>
      <select id={`way-${id}`} name={name}>
        {choices.map(({ value, label: words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </p>
  )
}
