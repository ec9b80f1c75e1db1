import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { toSvg } from '../../papers/drawing.ts'
import { drawings } from '../../papers/drawings/index.ts'
import type { Say } from '../../words/words.ts'
import type { Action, FieldError, Grade } from './view.ts'

const Words = createContext<Say | null>(null)

/** Gives every part of a page its language. */
export const Speaking = Words.Provider

export function useSay(): Say {
  const say = useContext(Words)
  if (!say) throw new Error('A part of a page was rendered outside of <Speaking>.')
  return say
}

/** A drawing by name. With `told` it is described to who cannot see it; else words stand beside it. */
export function Picture({ name, told = false }: { name: string; told?: boolean }) {
  const say = useSay()
  const drawing = drawings[name]
  if (!drawing) return null
  const svg = toSvg(drawing, { title: told ? say(`drawings.${name}`) : null })
  return (
    <span
      class={`picture ${told ? 'picture-wide' : ''}`}
      // toSvg makes it from our own marks and escapes every text.
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  )
}

export function GradeMark({ grade }: { grade: Grade }) {
  const say = useSay()
  return (
    <span class={`grade grade-${grade}`}>
      <Picture name={`grade-${grade}`} />
      {say(`grades.${grade}`)}
    </span>
  )
}

export const Hidden = ({ fields }: { fields: Readonly<Record<string, string>> }) => (
  <>
    {Object.entries(fields).map(([name, value]) => (
      <input key={name} type="hidden" name={name} value={value} />
    ))}
  </>
)

/** A form of one button. `about` names the thing acted on, for who hears the button alone. */
export function ActButton({
  action,
  look = 'quiet',
  about,
}: {
  action: Action
  look?: 'main' | 'second' | 'quiet'
  about?: string
}) {
  const say = useSay()
  return (
    <form
      method="post"
      action={action.postTo}
      class="act"
      {...(action.act === 'start' && { 'data-start': 'intake' })}
    >
      <Hidden fields={action.hidden} />
      <button
        type="submit"
        name="act"
        value={action.act}
        data-act={action.act}
        class={`button ${look}`}
      >
        {say(`acts.${action.act}`)}
        {about && <span class="unseen"> {about}</span>}
      </button>
    </form>
  )
}

export function Cautions({ texts }: { texts: readonly string[] }) {
  const say = useSay()
  if (texts.length === 0) return null
  return (
    <div class="caution" role="note">
      <strong>{say('page.caution')}</strong>
      {texts.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </div>
  )
}

/** Every refusal of the form, each a link to its field. Focused by the script when a page brings one. */
export function ErrorSummary({ errors }: { errors: readonly FieldError[] }) {
  const say = useSay()
  if (errors.length === 0) return null
  return (
    <div class="errors" id="errors" role="alert" tabIndex={-1}>
      <strong>{say('page.errors', { count: errors.length })}</strong>
      <ul>
        {errors.map(({ field, sentence }) => (
          <li key={field}>
            <a href={`#field-${field}`}>{sentence}</a>
          </li>
        ))}
      </ul>
    </div>
  )
}

export const errorOf = (errors: readonly FieldError[], field: FieldError['field']) =>
  errors.find((error) => error.field === field)?.sentence ?? null

export function FieldRefusal({ field, sentence }: { field: string; sentence: string | null }) {
  const say = useSay()
  if (!sentence) return null
  return (
    <p class="refusal" id={`error-${field}`}>
      <span class="unseen">{say('page.error')} </span>
      {sentence}
    </p>
  )
}

/** Ids that describe a field, those that are there. */
export const describedBy = (...ids: (string | false | null)[]): string | undefined =>
  ids.filter(Boolean).join(' ') || undefined

/** What may be picked, in words: `help` stands under it, and the input is described by it. */
export const OptionWords = ({
  id,
  option: { label, help },
}: {
  id: string
  option: { readonly label: string; readonly help: string | null }
}) => (
  <span class="option-words">
    {label}
    {help && (
      <span class="option-help" id={`${id}-help`}>
        {help}
      </span>
    )}
  </span>
)

/** A field for words of any length. `about` is told with its label, for who hears it alone. */
export const WordsField = ({
  id,
  name,
  label,
  about,
  value = '',
  rows = 2,
  required = false,
  hint,
  refused = null,
}: {
  id: string
  name: string
  label: string
  about?: string
  value?: string
  rows?: number
  required?: boolean
  hint?: string | null
  refused?: string | null
}) => (
  <div class="field">
    <label class="legend" for={id}>
      {label}
      {about && <span class="unseen"> {about}</span>}
    </label>
    <FieldRefusal field={id} sentence={refused} />
    <textarea
      id={id}
      name={name}
      rows={rows}
      required={required}
      aria-describedby={describedBy(hint ? `${id}-hint` : null, refused && `error-${id}`)}
      aria-invalid={refused ? true : undefined}
    >
      {value}
    </textarea>
    {hint && (
      <p class="hint" id={`${id}-hint`}>
        {hint}
      </p>
    )}
  </div>
)

/** A sum a row: what it is for, and how much. */
export const SumRows = ({ sums }: { sums: readonly { label: string; amount: string }[] }) => (
  <>
    {sums.map(({ label, amount }) => (
      <tr key={label}>
        <th scope="row">{label}</th>
        <td>{amount}</td>
      </tr>
    ))}
  </>
)
