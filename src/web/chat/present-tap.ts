import type { Question } from '../../flow/grammar.ts'
import { paths } from './paths.ts'
import type { Reader } from './present-garment.ts'
import type { Asking } from './present-question.ts'
import { replyWords } from './said.ts'
import type { JustSaid, Option, Question as Shown } from './view-question.ts'

/** Answers that are weighed, and never sent by a tap alone. */
const weighed: readonly string[] = ['sharing', 'leftovers']

const choices: readonly Question['kind'][] = ['choice', 'confirm']

export function tapOf({ question }: Asking, options: readonly Option[]): Shown['tap'] {
  if (weighed.includes(question.id)) return null
  if (choices.includes(question.kind)) return 'each'
  return question.kind === 'many' && options.some(({ value }) => value === 'none') ? 'none' : null
}

/** The answer before, where it was picked: what was typed or sent as a file is long, and found among all that was said. */
export function justOf({ item, before, replies }: Asking, reader: Reader): JustSaid | null {
  const reply = before && replies[before.id]
  if (!reply || !(before.kind === 'many' || choices.includes(before.kind))) return null
  const { say, locale } = reader.language
  return {
    words: say('question.just', {
      asked: say(`intake.${before.id}.short`),
      said: replyWords(before, reply, say, locale),
    }),
    href: paths.question(reader.key, item, before.id),
  }
}
