import type { Replies } from '../../flow/grammar.ts'
import {
  fibresRead,
  partsRead,
  ticksRead,
  type WordPart,
  wordParts,
  wordsCheck,
} from '../../intake/own-words.ts'
import type { Say } from '../../words/words.ts'
import type { Reader } from './present-garment.ts'
import { listWords } from './present-swatch.ts'

const isPart = (value: string): value is WordPart =>
  (wordParts as readonly string[]).includes(value)

const asksForMarks = (question: string): question is 'history' | 'details' =>
  question === 'history' || question === 'details'

/** Options that the garment's own line ticks while a question has no answer. */
export function proposedByWords(question: string, replies: Replies): readonly string[] {
  if (replies[question]) return []
  if (question === wordsCheck) {
    return [...partsRead(replies)].flatMap(([part, { sure }]) => (sure ? [part] : []))
  }
  return asksForMarks(question) ? ticksRead(replies, question) : []
}

/** A part of the line as the page that confirms it tells it: "Size: L", and the words behind it. */
export function readAs(
  question: string,
  value: string,
  replies: Replies,
  { language }: Reader,
): { readonly label: string; readonly help: string } | null {
  const read = question === wordsCheck && isPart(value) ? partsRead(replies).get(value) : undefined
  if (!read) return null
  const { say } = language
  const given = typeof read.given === 'string' ? [read.given] : read.given
  const words = given.map((one) => say(`intake.${value}.options.${one}`))
  return {
    label: say('own_words.part', {
      part: say(`intake.${wordsCheck}.options.${value}`),
      value: listWords(words, language),
    }),
    help: say(read.sure ? 'own_words.because' : 'own_words.unsure', { words: read.because }),
  }
}

/** Above a question that the garment's own line has begun to answer. */
export function ownWordsIn(question: string, replies: Replies, say: Say): string | null {
  if (replies[question]) return null
  if (question === 'label' && fibresRead(replies) !== '') return say('own_words.label')
  return asksForMarks(question) && ticksRead(replies, question).length > 0
    ? say('own_words.ticked')
    : null
}
