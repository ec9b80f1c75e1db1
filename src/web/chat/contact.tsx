import { describedBy, errorOf, FieldRefusal, useSay } from './pieces.tsx'
import type { Answering, Question } from './view.ts'

const fields = [
  { name: 'name', type: 'text', complete: 'name', hint: false },
  { name: 'email', type: 'email', complete: 'email', hint: true },
  { name: 'phone', type: 'tel', complete: 'tel', hint: true },
] as const

export function ContactFields({
  question,
  answering,
}: {
  question: Question
  answering: Extract<Answering, { kind: 'contact' }>
}) {
  const say = useSay()
  return (
    <>
      {fields.map(({ name, type, complete, hint }) => {
        const refused = errorOf(question.errors, name)
        return (
          <div class="field" key={name}>
            <label class="legend" for={`field-${name}`}>
              {say(`contact.${name}`)}
            </label>
            {hint && (
              <p class="hint" id={`${name}-hint`}>
                {say(`contact.${name}Hint`)}
              </p>
            )}
            <FieldRefusal field={name} sentence={refused} />
            <input
              id={`field-${name}`}
              type={type}
              // Without a list the types allow no input whose type varies.
              list={undefined}
              name={name}
              value={answering[name]}
              autoComplete={complete}
              aria-describedby={describedBy(hint && `${name}-hint`, refused && `error-${name}`)}
              aria-invalid={refused ? true : undefined}
            />
          </div>
        )
      })}
    </>
  )
}
