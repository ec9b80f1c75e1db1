import { drawings } from '../../papers/drawings/index.ts'
import { ContactFields } from './contact.tsx'
import { LabelFields } from './label.tsx'
import { PhotoFields } from './photos.tsx'
import { describedBy, errorOf, FieldRefusal, OptionWords, Picture, useSay } from './pieces.tsx'
import { SpotFields } from './spots.tsx'
import { Swatch } from './swatch.tsx'
import type { Answering, Option, Question } from './view.ts'

/** The inputs of a question, by its kind. Plain named inputs; nothing needs a script. */
export function AnswerFields({ question }: { question: Question }) {
  const { answering } = question
  switch (answering.kind) {
    case 'choice':
    case 'confirm':
      return <Options question={question} options={answering.options} type="radio" />
    case 'many':
      return <Options question={question} options={answering.options} type="checkbox" />
    case 'symbols':
      return <Symbols question={question} options={answering.options} />
    case 'number':
      return <NumberField question={question} answering={answering} />
    case 'text':
      return <TextField question={question} answering={answering} />
    case 'label':
      return <LabelFields question={question} answering={answering} />
    case 'photo':
      return <PhotoFields question={question} answering={answering} />
    case 'spots':
      return <SpotFields question={question} answering={answering} />
    case 'contact':
      return <ContactFields question={question} answering={answering} />
  }
}

type Of<K extends Answering['kind']> = Extract<Answering, { kind: K }>

/** Ids that tell of the question as a whole: its help, and a refusal of its answer. */
function about(question: Question): string | undefined {
  return describedBy(
    question.help && 'help',
    errorOf(question.errors, 'value') && 'error-value',
    question.answering.kind === 'number' && 'bounds',
  )
}

function Options({
  question,
  options,
  type,
}: {
  question: Question
  options: readonly Option[]
  type: 'radio' | 'checkbox'
}) {
  const say = useSay()
  const pictured = options.some((option) => drawingOf(question, option))
  const coloured = options.some(({ swatch }) => swatch)
  // Many pictured options make a sheet of tiles; many short ones stand side by side, colours closer.
  const short =
    options.length > 6 && options.every((option) => option.label.length < 16 && !option.help)
  return (
    <fieldset
      class={`options${pictured ? ' options-tiles' : short ? ' options-short' : ''}${coloured ? ' options-colours' : ''}`}
      id="field-value"
      tabIndex={-1}
      aria-labelledby="title"
      aria-describedby={about(question)}
    >
      <FieldRefusal field="value" sentence={errorOf(question.errors, 'value')} />
      {type === 'checkbox' && <p class="hint">{say('question.many')}</p>}
      {question.tap && (
        <p class="hint" id="tap-hint" hidden>
          {say(`question.tap.${question.tap}`)}
        </p>
      )}
      {options.map((option) => (
        <OptionRow
          key={option.value}
          option={option}
          type={type}
          name="value"
          drawing={drawingOf(question, option)}
          sends={question.tap === 'each' || (question.tap === 'none' && option.value === 'none')}
        />
      ))}
    </fieldset>
  )
}

function drawingOf(question: Question, option: Option): string | null {
  if (option.drawing) return option.drawing
  const byItself = question.id === 'kind' || question.answering.kind === 'symbols'
  return byItself && drawings[option.value] ? option.value : null
}

export function OptionRow({
  option,
  type,
  name,
  drawing,
  sends = false,
}: {
  option: Omit<Option, 'drawing'>
  type: 'radio' | 'checkbox'
  name: string
  drawing: string | null
  /** A tap on it may send the form, where there is a script. */
  sends?: boolean
}) {
  const id = `${name}-${option.value}`
  return (
    <div class="option" {...(sends && { 'data-sends': '' })}>
      <input
        type={type}
        id={id}
        name={name}
        value={option.value}
        checked={option.chosen}
        aria-describedby={option.help ? `${id}-help` : undefined}
      />
      <label for={id}>
        {drawing && <Picture name={drawing} />}
        {option.swatch && <Swatch colours={option.swatch} />}
        <OptionWords id={id} option={option} />
      </label>
    </div>
  )
}

/** A sign's first word says what it speaks of: `iron-warm` of ironing. */
const groupOf = ({ value }: Option): string => value.split('-')[0]!

function Symbols({ question, options }: { question: Question; options: readonly Option[] }) {
  const say = useSay()
  const groups = [...new Set(options.map(groupOf))]
  return (
    <fieldset
      class="symbols"
      id="field-value"
      tabIndex={-1}
      aria-labelledby="title"
      aria-describedby={about(question)}
    >
      <FieldRefusal field="value" sentence={errorOf(question.errors, 'value')} />
      {groups.map((group) => (
        <fieldset key={group} class="options options-tiles">
          <legend>{say(`signs.${group}`)}</legend>
          {options
            .filter((option) => groupOf(option) === group)
            .map((option) => (
              <OptionRow
                key={option.value}
                option={option}
                type="checkbox"
                name="value"
                drawing={drawingOf(question, option)}
              />
            ))}
        </fieldset>
      ))}
      <p class="hint">{say('signs.ours')}</p>
    </fieldset>
  )
}

function NumberField({ question, answering }: { question: Question; answering: Of<'number'> }) {
  const say = useSay()
  const { value, min, max, step, unit } = answering
  const refused = errorOf(question.errors, 'value')
  // A browser shows nothing in a number field that holds other text, and the text would be lost.
  const isNumber = value === '' || /^-?\d+([.]\d+)?$/.test(value)
  const shared = {
    id: 'field-value',
    // The plain keys of many a phone have no decimal point.
    inputMode: step < 1 ? 'decimal' : 'numeric',
    name: 'value',
    value,
    autoComplete: 'off',
    'aria-labelledby': 'title unit',
    'aria-describedby': about(question),
    'aria-invalid': refused ? true : undefined,
    step,
    ...(min !== null && { min }),
    ...(max !== null && { max }),
  } as const
  return (
    <div class="field">
      <FieldRefusal field="value" sentence={refused} />
      <div class="measure">
        {isNumber ? <input {...shared} type="number" /> : <input {...shared} type="text" />}
        <span id="unit">{unit.label}</span>
      </div>
      <input type="hidden" name="unit" value={unit.value} />
      {(min !== null || max !== null) && (
        <p class="hint" id="bounds">
          {bounds(say, min, max)}
        </p>
      )}
    </div>
  )
}

function bounds(say: ReturnType<typeof useSay>, min: number | null, max: number | null): string {
  if (min !== null && max !== null) return say('question.between', { min, max })
  if (min !== null) return say('question.atLeast', { min })
  return say('question.atMost', { max: max! })
}

function TextField({ question, answering }: { question: Question; answering: Of<'text'> }) {
  const refused = errorOf(question.errors, 'value')
  const shared = {
    id: 'field-value',
    name: 'value',
    maxLength: answering.longest,
    'aria-labelledby': 'title',
    'aria-describedby': about(question),
    'aria-invalid': refused ? true : undefined,
  } as const
  return (
    <div class="field">
      <FieldRefusal field="value" sentence={refused} />
      {answering.lines ? (
        <textarea {...shared} rows={4}>
          {answering.value}
        </textarea>
      ) : (
        <input {...shared} type="text" value={answering.value} autoComplete="off" />
      )}
    </div>
  )
}
