import { describedBy, Hidden, useSay } from '../chat/pieces.tsx'
import type { HandedLink, PeoplePage, PersonShown } from './view-people.ts'
import type { Choice } from './view-what-if.ts'

/** Everybody with an account, and what the owner may do with it. */
export function PeopleView({ page }: { page: PeoplePage }) {
  const say = useSay()
  return (
    <main id="main" class="list owner" tabIndex={-1}>
      <h1>{page.title}</h1>
      {page.error && (
        <p class="refusal" id="refusal" role="alert">
          {page.error}
        </p>
      )}
      {page.handed && <Handed link={page.handed} />}
      <p>{say('desk.people.lead')}</p>
      <ul class="people">
        {page.people.map((person) => (
          <li key={person.id} class="card">
            <PersonCard person={person} roles={page.roles} />
          </li>
        ))}
      </ul>
      <AddForm page={page} />
    </main>
  )
}

function Handed({ link }: { link: HandedLink }) {
  const say = useSay()
  return (
    <section class="card handed" role="status">
      <p>{link.sentence}</p>
      <label class="legend" for="handed">
        {link.label}
      </label>
      <textarea id="handed" readOnly rows={4} value={link.url} />
      <p class="hint">{say('desk.people.mail')}</p>
    </section>
  )
}

function PersonCard({ person, roles }: { person: PersonShown; roles: readonly Choice[] }) {
  const say = useSay()
  const { id, name, email, role, marks, lines, closed, seen } = person
  return (
    <>
      <h2>{name}</h2>
      <p class="person-line">
        <strong>{role}</strong>
        {marks.map((mark) => (
          <span key={mark} class="mark">
            {mark}
          </span>
        ))}
      </p>
      <p class="typed">{email}</p>
      <p class="hint">{lines.join(' · ')}</p>
      <details>
        <summary>{person.change}</summary>
        <form method="post" action={person.roleAt} class="owner-row">
          <Hidden fields={seen} />
          <div class="field">
            <label class="legend" for={`role-${id}`}>
              {say('desk.people.role')}
            </label>
            <RoleSelect id={`role-${id}`} roles={roles} picked={person.rolePicked} />
          </div>
          <button type="submit" class="button second">
            {say('desk.people.save_role')}
          </button>
        </form>
        {closed ? (
          <Act to={person.reopenAt} seen={seen} name={name} words="reopen" hint={null} />
        ) : (
          <>
            <Act to={person.linkAt} seen={seen} name={name} words="link" hint="link_hint" />
            <Act to={person.closeAt} seen={seen} name={name} words="close" hint="close_hint" />
          </>
        )}
      </details>
    </>
  )
}

function Act(form: {
  to: string
  seen: PersonShown['seen']
  name: string
  words: 'reopen' | 'link' | 'close'
  hint: 'link_hint' | 'close_hint' | null
}) {
  const say = useSay()
  return (
    <form method="post" action={form.to} class="owner-act">
      <Hidden fields={form.seen} />
      <button type="submit" class="button second">
        {say(`desk.people.${form.words}`)}
        <span class="unseen"> {form.name}</span>
      </button>
      {form.hint && <span class="hint">{say(`desk.people.${form.hint}`)}</span>}
    </form>
  )
}

function RoleSelect(field: { id: string; roles: readonly Choice[]; picked: string }) {
  return (
    <select id={field.id} name="role">
      {field.roles.map(({ value, label }) => (
        <option key={value} value={value} selected={value === field.picked}>
          {label}
        </option>
      ))}
    </select>
  )
}

function AddForm({ page: { form, roles, error } }: { page: PeoplePage }) {
  const say = useSay()
  const about = describedBy(error && 'refusal')
  return (
    <section class="card" aria-labelledby="add-title">
      <h2 id="add-title">{say('desk.people.add')}</h2>
      <p class="help">{say('desk.people.add_hint')}</p>
      <form method="post" action={form.postTo} noValidate>
        <Hidden fields={{ csrf: form.csrf }} />
        <div class="field">
          <label class="legend" for="field-name">
            {say('desk.people.name')}
          </label>
          <input
            type="text"
            id="field-name"
            name="name"
            value={form.name}
            autoComplete="off"
            aria-describedby={about}
          />
        </div>
        <div class="field">
          <label class="legend" for="field-email">
            {say('desk.fields.email')}
          </label>
          <input
            type="email"
            id="field-email"
            name="email"
            value={form.email}
            autoComplete="off"
            aria-describedby={about}
          />
        </div>
        <div class="field">
          <label class="legend" for="field-role">
            {say('desk.people.role')}
          </label>
          <RoleSelect id="field-role" roles={roles} picked={form.role} />
        </div>
        <button type="submit" class="button main">
          {say('desk.people.send')}
        </button>
      </form>
    </section>
  )
}
