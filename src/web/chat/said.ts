import { inchWords } from '../../base/units.ts'
import type { Question, Reply, SpotValue, Value } from '../../flow/grammar.ts'
import type { Say } from '../../words/words.ts'

const list = (items: readonly string[], language: string): string =>
  new Intl.ListFormat(language, { type: 'conjunction' }).format(items)

const optionWords = (question: Question, option: string, say: Say): string =>
  say(`intake.${question.id}.options.${option}`)

function labelWords(value: Extract<Value, { found: string }>, say: Say): string {
  if (value.found !== 'words') return say(`said.label.${value.found}`)
  return value.iron
    ? say('said.label.words_and_iron', { words: value.words, iron: say(`said.iron.${value.iron}`) })
    : value.words
}

function spotValueWords(question: Question, { what, part }: SpotValue, say: Say): string {
  const named = optionWords(question, what, say)
  return part ? say('spots.with_part', { what: named, part: say(`spots.parts.${part}`) }) : named
}

function valueWords(question: Question, value: Value, say: Say, language: string): string {
  if (typeof value === 'string') {
    return question.kind === 'text' ? value : optionWords(question, value, say)
  }
  if (Array.isArray(value)) {
    if (question.kind === 'photo') return say('said.photos', { count: value.length })
    if (question.kind === 'spots') {
      const spots = (value as readonly SpotValue[]).map((spot) =>
        spotValueWords(question, spot, say),
      )
      return list(spots, language)
    }
    return list(
      (value as readonly string[]).map((option) => optionWords(question, option, say)),
      language,
    )
  }
  if ('amount' in value) return `${inchWords(value.amount)} ${say(`intake.units.${value.unit}`)}`
  if ('found' in value) return labelWords(value, say)
  return [(value as { name: string }).name, (value as { email: string }).email].join(', ')
}

/** A reply in the reader's words: the answer, "passed over", or "left to a person". */
export function replyWords(question: Question, reply: Reply, say: Say, language: string): string {
  if ('skipped' in reply) return say('said.skipped')
  if ('asked' in reply) {
    return reply.asked === '' ? say('said.asked') : say('said.asked_note', { note: reply.asked })
  }
  return valueWords(question, reply.given, say, language)
}
