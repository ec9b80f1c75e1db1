import { Hidden, useSay } from '../chat/pieces.tsx'
import type { RolesForm } from './view-roles.ts'
import type { Choice } from './view-what-if.ts'

/** A box to tick for each role. */
export function RoleBoxes(field: {
  name: string
  choices: readonly Choice[]
  checked: readonly string[]
}) {
  const { name, choices, checked } = field
  return (
    <div class="role-boxes">
      {choices.map(({ value, label }) => (
        <label key={value} class="role-box">
          <input type="checkbox" name={name} value={value} checked={checked.includes(value)} />
          {label}
        </label>
      ))}
    </div>
  )
}

/** Where a garment may go, and behind it the form to say so. */
export function GarmentRoles({ form }: { form: RolesForm }) {
  const say = useSay()
  const { title, standing, postTo, csrf, seen, choices, checked } = form
  return (
    <details class="garment-roles">
      <summary>
        {say('desk.plan.roles.open')} <span class="garment-roles-now">{standing}</span>
      </summary>
      <form method="post" action={postTo}>
        <Hidden fields={{ csrf, seen: String(seen) }} />
        <fieldset>
          <legend>{title}</legend>
          <RoleBoxes name="plays" choices={choices} checked={checked} />
        </fieldset>
        <p class="hint">{say('desk.plan.roles.hint')}</p>
        <button type="submit" class="button second">
          {say('desk.plan.roles.save')}
        </button>
      </form>
    </details>
  )
}
