import { photoFiles } from '../limits.ts'
import type { Ticked } from './view-custody.ts'

/** Places to choose from, for every field of a page that has this id as its list. */
export const Places = ({ places }: { places: readonly string[] }) => (
  <datalist id="places">
    {places.map((place) => (
      <option key={place} value={place} />
    ))}
  </datalist>
)

export function PlaceField({
  id,
  name = 'place',
  label,
  value = '',
  required = false,
}: {
  id: string
  name?: string
  label: string
  value?: string
  required?: boolean
}) {
  return (
    <div class="field">
      <label class="legend" for={id}>
        {label}
      </label>
      <input type="text" id={id} name={name} value={value} list="places" required={required} />
    </div>
  )
}

export function TextField({
  id,
  name,
  label,
  value = '',
  type = 'text',
}: {
  id: string
  name: string
  label: string
  value?: string
  type?: 'text' | 'number' | 'date'
}) {
  return (
    <div class="field">
      <label class="legend" for={id}>
        {label}
      </label>
      {type === 'number' ? (
        <input type="number" id={id} name={name} value={value} step="0.01" min="0" />
      ) : type === 'date' ? (
        <input type="date" id={id} name={name} value={value} />
      ) : (
        <input type="text" id={id} name={name} value={value} />
      )}
    </div>
  )
}

/** Photos, as a phone or a folder has them. */
export const PhotoField = ({
  id,
  name,
  label,
  multiple = false,
}: {
  id: string
  name: string
  label: string
  multiple?: boolean
}) => (
  <div class="field">
    <label class="legend" for={id}>
      {label}
    </label>
    <input type="file" id={id} name={name} accept={photoFiles} multiple={multiple} />
  </div>
)

export function Choices({
  id,
  name,
  legend,
  type,
  options,
  chosen,
}: {
  id: string
  name: string
  legend: string
  type: 'radio' | 'checkbox'
  options: readonly Ticked[]
  chosen: readonly string[]
}) {
  return (
    <fieldset class="choices">
      <legend>{legend}</legend>
      {options.map(({ value, label }) => (
        <label key={value} class="choice" for={`${id}-${value}`}>
          <input
            type={type}
            id={`${id}-${value}`}
            name={name}
            value={value}
            checked={chosen.includes(value)}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  )
}

export const Refused = ({ sentence }: { sentence: string | null }) =>
  sentence && (
    <p class="refusal" role="alert">
      {sentence}
    </p>
  )
