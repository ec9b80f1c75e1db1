import { OptionRow } from './answering.tsx'
import { LabelPhotoField } from './label-photo.tsx'
import { describedBy, errorOf, FieldRefusal, useSay } from './pieces.tsx'
import type { Answering, Question } from './view.ts'

const founds = ['words', 'signs', 'none'] as const
const irons = ['hot', 'warm', 'cool', 'none', 'absent'] as const

interface Asked {
  readonly question: Question
  readonly answering: Extract<Answering, { kind: 'label' }>
}

/** A care label: what there is of it, its words, and its ironing line. Words stand where they are read. */
export function LabelFields({ question, answering }: Asked) {
  const say = useSay()
  const { photo } = answering
  const refused = errorOf(question.errors, 'iron')
  return (
    <>
      {photo && <LabelPhotoField question={question} photo={photo} />}
      {photo && <Words question={question} answering={answering} />}
      <Found question={question} answering={answering} />
      {!photo && <Words question={question} answering={answering} />}
      <fieldset
        class="options options-signs"
        id="field-iron"
        tabIndex={-1}
        aria-describedby={describedBy('iron-hint', refused && 'error-iron')}
      >
        <legend>{say('label.iron')}</legend>
        <p class="hint" id="iron-hint">
          {say('label.ironHint')}
        </p>
        <FieldRefusal field="iron" sentence={refused} />
        {irons.map((value) => (
          <OptionRow
            key={value}
            type="radio"
            name="iron"
            drawing={`iron-${value}`}
            option={{
              value,
              label: say(`label.irons.${value}`),
              help: null,
              chosen: answering.iron === value,
            }}
          />
        ))}
      </fieldset>
    </>
  )
}

function Found({ question, answering }: Asked) {
  const say = useSay()
  const refused = errorOf(question.errors, 'found')
  return (
    <fieldset
      class="options"
      id="field-found"
      tabIndex={-1}
      aria-describedby={describedBy(refused && 'error-found')}
    >
      <legend>{say('label.found')}</legend>
      <FieldRefusal field="found" sentence={refused} />
      {founds.map((value) => (
        <OptionRow
          key={value}
          type="radio"
          name="found"
          drawing={null}
          option={{
            value,
            label: say(`label.founds.${value}`),
            help: null,
            chosen: answering.found === value,
          }}
        />
      ))}
    </fieldset>
  )
}

/** Enough to see a label whole, unless it is a very long one. */
const rowsFor = (words: string): number => Math.min(14, Math.max(4, words.split('\n').length + 1))

function Words({ question, answering }: Asked) {
  const say = useSay()
  const refused = errorOf(question.errors, 'words')
  return (
    <div class="field">
      <label class="legend" for="field-words">
        {say('label.words')}
      </label>
      <p class="hint" id="words-hint">
        {say('label.wordsHint')}
      </p>
      <FieldRefusal field="words" sentence={refused} />
      <textarea
        id="field-words"
        name="words"
        rows={answering.photo ? rowsFor(answering.words) : 3}
        maxLength={answering.longest}
        spellcheck={false}
        aria-describedby={describedBy('words-hint', refused && 'error-words')}
        aria-invalid={refused ? true : undefined}
      >
        {answering.words}
      </textarea>
      {answering.photo?.typed && <TypedBefore words={answering.photo.typed} />}
    </div>
  )
}

/** What a reading took the place of in the field above; it comes along with every form. */
function TypedBefore({ words }: { words: string }) {
  const say = useSay()
  return (
    <div class="typed-before">
      <p class="hint">{say('label.photo.typed')}</p>
      <p class="label-lines">{words}</p>
      <input type="hidden" name="typed" value={words} />
    </div>
  )
}
