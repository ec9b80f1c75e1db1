import { passwordLimits } from '../../desk/passwords.ts'
import { describedBy, Hidden, useSay } from '../chat/pieces.tsx'
import type { DoorPage } from './view.ts'

const fields = {
  'sign-in': ['email', 'password'],
  welcome: ['name', 'email', 'password'],
  password: ['email', 'password'],
} as const

type Name = (typeof fields)['welcome'][number]

const types = { name: 'text', email: 'email' } as const

/** What a browser may fill in. */
const known = {
  'sign-in': { name: 'name', email: 'username', password: 'current-password' },
  welcome: { name: 'name', email: 'email', password: 'new-password' },
  password: { name: 'name', email: 'username', password: 'new-password' },
} as const

const words = { 'sign-in': 'sign_in', welcome: 'welcome', password: 'choose_password' } as const

/** The forms before the desk: signing in, the owner's first visit, and choosing a password. */
export function DoorView({ page }: { page: DoorPage }) {
  const say = useSay()
  const key = `desk.${words[page.page]}`
  return (
    <main id="main" class="door" tabIndex={-1}>
      <section class="card" aria-labelledby="title">
        <h1 id="title">{say(`${key}.title`)}</h1>
        {page.error && (
          <p class="refusal" id="refusal" role="alert">
            {page.error}
          </p>
        )}
        <p class="help">{say(`${key}.help`, { name: page.name })}</p>
        <form method="post" action={page.postTo} noValidate>
          <Hidden fields={page.hidden} />
          {fields[page.page].map((name) => (
            <Field key={name} name={name} page={page} />
          ))}
          <button type="submit" class="button main">
            {say(`${key}.send`)}
          </button>
        </form>
      </section>
    </main>
  )
}

function Field({ name, page }: { name: Name; page: DoorPage }) {
  const say = useSay()
  const hinted = page.page !== 'sign-in' && name === 'password'
  // Whose password it is stands there to be seen, and for what keeps passwords.
  const readOnly = page.page === 'password' && name === 'email'
  const about = {
    id: `field-${name}`,
    autoComplete: known[page.page][name],
    'aria-describedby': describedBy(page.error && 'refusal', hinted && 'password-hint'),
    required: true,
    readOnly,
  }
  return (
    <div class="field">
      <label class="legend" for={about.id}>
        {say(`desk.fields.${name}`)}
      </label>
      {hinted && (
        <p class="hint" id="password-hint">
          {say('desk.fields.password_hint', { shortest: passwordLimits.shortest })}
        </p>
      )}
      {name === 'password' ? (
        <input type="password" name={name} {...about} />
      ) : (
        <input type={types[name]} list={undefined} name={name} value={page[name]} {...about} />
      )}
    </div>
  )
}
