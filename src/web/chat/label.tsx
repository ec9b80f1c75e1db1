import { OptionRow } from './answering.tsx'
import { describedBy, errorOf, FieldRefusal, useSay } from './pieces.tsx'
import type { Answering, Question } from './view.ts'

const founds = ['words', 'signs', 'none'] as const
const irons = ['hot', 'warm', 'cool', 'none', 'absent'] as const

/** A care label: what there is of it, its words, and its ironing line. */
export function LabelFields({
  question,
  answering,
}: {
  question: Question
  answering: Extract<Answering, { kind: 'label' }>
}) {
  const say = useSay()
  const refused = (field: 'words' | 'found' | 'iron') => errorOf(question.errors, field)
  return (
    <>
      <fieldset
        class="options"
        id="field-found"
        tabIndex={-1}
        aria-describedby={describedBy(refused('found') && 'error-found')}
      >
        <legend>{say('label.found')}</legend>
        <FieldRefusal field="found" sentence={refused('found')} />
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
      <div class="field">
        <label class="legend" for="field-words">
          {say('label.words')}
        </label>
        <p class="hint" id="words-hint">
          {say('label.wordsHint')}
        </p>
        <FieldRefusal field="words" sentence={refused('words')} />
        <textarea
          id="field-words"
          name="words"
          rows={3}
          maxLength={answering.longest}
          spellcheck={false}
          aria-describedby={describedBy('words-hint', refused('words') && 'error-words')}
          aria-invalid={refused('words') ? true : undefined}
        >
          {answering.words}
        </textarea>
      </div>
      <fieldset
        class="options options-signs"
        id="field-iron"
        tabIndex={-1}
        aria-describedby={describedBy('iron-hint', refused('iron') && 'error-iron')}
      >
        <legend>{say('label.iron')}</legend>
        <p class="hint" id="iron-hint">
          {say('label.ironHint')}
        </p>
        <FieldRefusal field="iron" sentence={refused('iron')} />
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
