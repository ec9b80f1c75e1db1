import { OptionRow } from './answering.tsx'
import { errorOf, FieldRefusal, useSay } from './pieces.tsx'
import type { Answering, Question } from './view.ts'
import type { MarkedPhoto, SpotShown } from './view-question.ts'

/** Photos to mark spots on, and the marks: each is a field of the form until the question is answered. */
export function SpotFields({
  question,
  answering,
}: {
  question: Question
  answering: Extract<Answering, { kind: 'spots' }>
}) {
  const say = useSay()
  const { photos, options, spots, against } = answering
  const postTo = `${question.postTo}#spots`
  return (
    <div class="field spots" id="spots">
      <SpotsAgainst against={against} />
      <FieldRefusal field="spots" sentence={errorOf(question.errors, 'spots')} />
      <fieldset class="options options-short" id="field-spots" tabIndex={-1}>
        <legend>{say('spots.what')}</legend>
        {options.map((option) => (
          <OptionRow key={option.value} option={option} type="radio" name="what" drawing={null} />
        ))}
      </fieldset>
      <SpotPhotos photos={photos} columns={6} formaction={postTo} />
      <p class="legend" id="spots-told">
        {say('spots.marked', { count: spots.length })}
      </p>
      {spots.length > 0 && <SpotList spots={spots} formaction={postTo} />}
    </div>
  )
}

/** That marks say worse of the cloth than was said of it before. */
function SpotsAgainst({ against }: Pick<Extract<Answering, { kind: 'spots' }>, 'against'>) {
  const say = useSay()
  if (against.length === 0) return null
  return (
    <div class="seen-advice" role="status">
      {against.map(({ kind, sentence }) => (
        <p key={kind}>
          <input type="hidden" name="against" value={kind} />
          <strong>{sentence}</strong>
        </p>
      ))}
      <p>{say('spots.against_next')}</p>
    </div>
  )
}

/** The first photo open, and any that has marks; the others behind a line each. */
export function SpotPhotos({
  photos,
  columns,
  formaction,
}: {
  photos: readonly MarkedPhoto[]
  columns: number
  formaction?: string
}) {
  const say = useSay()
  const grid = (marked: MarkedPhoto, n: number) => (
    <SpotGrid marked={marked} n={n} columns={columns} {...(formaction && { formaction })} />
  )
  return (
    <>
      {photos.map((marked, i) =>
        i === 0 ? (
          <div key={marked.photo.id}>{grid(marked, 1)}</div>
        ) : (
          <details key={marked.photo.id} class="spot-more" open={marked.marks.length > 0}>
            <summary>{say('spots.more', { n: i + 1 })}</summary>
            {grid(marked, i + 1)}
          </details>
        ),
      )}
    </>
  )
}

/** Rows of places that are no lower than wide, as many as the picture is tall. */
const rowsOf = ({ width, height }: MarkedPhoto, columns: number): number =>
  Math.min(2 * columns, Math.max(2, Math.floor((columns * height) / width)))

/** A photo under a grid of places: a place is chosen and the button pressed; with a script a tap marks it at once. */
function SpotGrid({
  marked,
  n,
  columns,
  formaction,
}: {
  marked: MarkedPhoto
  n: number
  columns: number
  formaction?: string
}) {
  const say = useSay()
  const { id } = marked.photo
  const rows = rowsOf(marked, columns)
  return (
    <fieldset class="spot-photo">
      <legend>{say('spots.photo', { n })}</legend>
      <MarkedPicture marked={marked}>
        <div class={`spot-cells spot-cells-${columns}`} data-spot-photo={id} data-columns={columns}>
          {Array.from({ length: rows * columns }, (_, cell) => {
            const [row, column] = [Math.floor(cell / columns), cell % columns]
            const at = (part: number, of: number) => Math.round(((part + 0.5) / of) * 1000) / 1000
            return (
              <input
                key={cell}
                type="radio"
                name="cell"
                id={`cell-${n}-${cell}`}
                value={`${id}:${at(column, columns)}:${at(row, rows)}`}
                aria-label={say('spots.cell', { row: row + 1, rows, column: column + 1, columns })}
              />
            )
          })}
        </div>
      </MarkedPicture>
      <p class="hint spot-hint">{say('spots.here_hint')}</p>
      <button
        type="submit"
        name="mark"
        value="yes"
        class="button second"
        {...(formaction && { formaction })}
      >
        {say('spots.here')}
        <span class="unseen"> {say('spots.photo', { n })}</span>
      </button>
    </fieldset>
  )
}

/** A photo with its marks drawn on it, each a number in a ring. */
export function MarkedPicture({
  marked: { photo, width, height, marks },
  children,
}: {
  marked: MarkedPhoto
  children?: preact.ComponentChildren
}) {
  const tall = (1000 * height) / width
  return (
    <div class="spot-picture">
      <img src={photo.view} alt={photo.alt} width={width} height={height} />
      <svg viewBox={`0 0 1000 ${Math.round(tall)}`} aria-hidden="true">
        {marks.map(({ n, x, y }) => (
          <g key={n} transform={`translate(${Math.round(x * 1000)} ${Math.round(y * tall)})`}>
            <circle class="spot-under" r="52" />
            <circle class="spot-over" r="52" />
            <text y="22">{n}</text>
          </g>
        ))}
      </svg>
      {children}
    </div>
  )
}

function SpotList({ spots, formaction }: { spots: readonly SpotShown[]; formaction: string }) {
  const say = useSay()
  const choosable = spots.some(({ parts }) => parts.length > 1)
  return (
    <>
      {choosable && <p class="hint">{say('spots.part_hint')}</p>}
      <ol class="spot-list">
        {spots.map((spot) => (
          <li key={spot.value}>
            <input type="hidden" name="spot" value={spot.value} />
            <strong>{spot.words}</strong>
            <SpotPart spot={spot} />
            <button
              type="submit"
              name="unmark"
              value={spot.n - 1}
              class="button quiet"
              formaction={formaction}
            >
              {say('spots.remove')}
              <span class="unseen"> {spot.words}</span>
            </button>
          </li>
        ))}
      </ol>
    </>
  )
}

/** The part that a mark lies in: as proposed, or chosen by name. */
export function SpotPart({ spot: { n, words, parts, part } }: { spot: SpotShown }) {
  const say = useSay()
  if (parts.length < 2) return <input type="hidden" name="part" value={part} />
  return (
    <label class="spot-part" for={`part-${n}`}>
      <span>
        {say('spots.part')}
        <span class="unseen"> {words}</span>
      </span>
      <select id={`part-${n}`} name="part">
        {parts.map(({ value, label }) => (
          <option key={value} value={value} selected={value === part}>
            {label}
          </option>
        ))}
      </select>
    </label>
  )
}
