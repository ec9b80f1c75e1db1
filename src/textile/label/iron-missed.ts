import { ironStems } from '../languages/known-names.ts'
import type { Item } from './items.ts'
import { lettersApart } from './spelling.ts'
import { isLevelWord, isNot, type Verb, verbOf } from './verbs.ts'
import { careWords, isLabelWord, once } from './vocabulary.ts'

/** Verbs of care in one word. */
const careVerbs = once(() => {
  const terms = [...careWords().all()].filter(
    ({ words }) => words.length === 1 && shortestVerb.test(words[0]!),
  )
  const ofKind = (holds: (verb: Verb) => boolean): readonly string[] =>
    terms.flatMap((term) => (holds(verbOf(term)?.verb ?? 'other') ? term.words : []))
  return {
    iron: ofKind((verb) => verb === 'iron'),
    others: ofKind((verb) => verb !== 'iron' && verb !== 'other'),
  }
})

/** Shorter words are soon another. */
const shortestVerb = /^[a-z]{5,}$/

/** Letters of an ironing word from which on two may be misread; below it, one. */
const twoSlipsFrom = 7

/** Longer words are an ironing word at most where half of its letters are right. */
const shortWord = 6

/**
 * Whether a word that was not read may be an ironing word: "repsser", "never rn", "do not irkm", or one of a
 * language that is not read here.
 */
export const missesIron = (items: readonly Item[]): boolean =>
  items.some((item, at) => {
    if (item.kind !== 'word' || !/\p{L}{2}/u.test(item.raw) || isLabelWord(item.text)) return false
    const isAny = (words: readonly string[]) => words.some((word) => isNear(item.text, word))
    if (ironStems.some((stem) => item.text.startsWith(stem)) || isAny(careVerbs().iron)) return true
    return isLed(items[at - 1]) && !isAny(careVerbs().others) && mayBeIron(item.text)
  })

const mayBeIron = (read: string): boolean =>
  read.length <= shortWord || careVerbs().iron.some((word) => isHalf(read, word))

const isHalf = (read: string, word: string): boolean => {
  const most = Math.ceil(word.length / 2)
  return lettersApart(read, word, most) <= most
}

/** A ban or a level that stands right before belongs to the word. */
const isLed = (before: Item | undefined): boolean =>
  before !== undefined && (isLevelWord(before) || isNot(before))

const isNear = (read: string, word: string): boolean => {
  const most = word.length >= twoSlipsFrom ? 2 : 1
  return lettersApart(read, word, most) <= most
}
