import { Hidden, useSay } from '../chat/pieces.tsx'
import type { RolesForm } from './view-roles.ts'
import type { Choice } from './view-what-if.ts'

/** A box to tick for each role; `id` tells them from those of other forms on the page. */
export function RoleBoxes(field: {
  id: string
  choices: readonly Choice[]
  checked: readonly string[]
}) {
  const { id, choices, checked } = field
  return (
    <div class="options-short role-boxes">
      {choices.map(({ value, label }) => (
        <div key={value} class="option">
          <input
            type="checkbox"
            id={`${id}-${value}`}
            name="plays"
            value={value}
            checked={checked.includes(value)}
          />
          <label for={`${id}-${value}`}>{label}</label>
        </div>
      ))}
    </div>
  )
}

/** Where a garment may go, and behind it the form to say so. */
export function GarmentRoles({ form }: { form: RolesForm }) {
  const say = useSay()
  const { n, title, standing, postTo, csrf, seen, choices, checked } = form
  return (
    <details class="garment-roles">
      <summary>
        {say('desk.plan.roles.open')} <span class="garment-roles-now">{standing}</span>
      </summary>
      <form method="post" action={postTo}>
        <Hidden fields={{ csrf, seen: String(seen) }} />
        <fieldset>
          <legend>{title}</legend>
          <RoleBoxes id={`plays-${n}`} choices={choices} checked={checked} />
        </fieldset>
        <p class="hint">{say('desk.plan.roles.hint')}</p>
        <button type="submit" class="button second">
          {say('desk.plan.roles.save')}
        </button>
      </form>
    </details>
  )
}
