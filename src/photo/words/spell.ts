import type { PicturedLine } from '../../textile/label-lines.ts'
import { gapIn, isBare, likeliestWays, type Step, type Way } from './beam.ts'

/** A line as read. */
export interface ReadLine {
  readonly text: string
  /** How likely each letter is that is the likeliest at its place, gaps left out, 0 to 1. */
  readonly letters: readonly number[]
  /** How sure its least sure word is, 0 to 1. */
  readonly sure: number
  /** The line with another number in one place, each with how sure that number is; the likeliest first. */
  readonly others: readonly PicturedLine[]
}

/** By how much likelier than any other letters a text is on what is read: a natural logarithm. */
export type Weigh = (text: string) => number

/** Two words are parted where a gap is so likely between their letters. */
const clearGap = 0.3
/** Ways that a word is followed in, and one with digits, whose mistakes tell more. */
const ways = { word: 24, number: 64 }
/** A way that is so much less likely than the likeliest is none, whatever it would say. */
const notBelow = 1 / 30
/** Of the ways to read a number, those less likely are not told. */
const leastOther = 0.02
/** Chinese, Japanese and Korean signs, and wide forms of Latin ones. */
const wide = /[\u2e80-\u9fff\uac00-\ud7af\uff00-\uffef]/u
/** On a line of Latin letters such a sign stands only where it is so likely. */
const surelyWide = 0.8

/**
 * The words of a line: each the way in which it is read that is likeliest, given what such words say
 * (`weigh`). Numbers are weighed with the word before them: a percent sign may stand apart.
 */
export function spelled(line: readonly Step[], weigh: Weigh): ReadLine {
  const steps = inOneScript(line)
  const words: Word[] = []
  for (const part of partsOf(steps)) {
    const before = words.at(-1)
    const word = wordOf(part, before ? textOf(before) : '', weigh)
    if (word) words.push(word)
  }
  return {
    text: words.map(textOf).join(' '),
    letters: lettersOf(steps).map(({ likely }) => likely),
    sure: Math.min(1, ...words.map(({ ways: [best], letters }) => Math.max(best!.share, letters))),
    others: othersOf(words),
  }
}

interface Word {
  /** The ways to read it, the best first, each with its share of all. */
  readonly ways: readonly { readonly text: string; readonly share: number }[]
  /** The least likely letter of the best. */
  readonly letters: number
}

const textOf = ({ ways: [best] }: Word): string => best!.text

function wordOf(steps: readonly Step[], before: string, weigh: Weigh): Word | null {
  let found = likeliestWays(steps, ways.word)
  if (found.some(({ text }) => /\d/.test(text))) found = likeliestWays(steps, ways.number)
  const most = Math.max(...found.map(({ likely }) => likely))
  const alone = weigh(before)
  const worth = ({ text, likely }: Way): number =>
    likely * Math.exp(weigh(before === '' ? text : `${before} ${text}`) - alone)
  const weighed = found
    .filter(({ likely }) => likely >= most * notBelow)
    .map((way) => ({ way, worth: worth(way) }))
    .sort((a, b) => b.worth - a.worth)
  const best = weighed[0]?.way
  if (!best || best.text === '') return null
  const untold = Math.max(0, 1 - found.reduce((sum, { likely }) => sum + likely, 0))
  const all = weighed.reduce((sum, one) => sum + one.worth, untold)
  return {
    ways: weighed.map((one) => ({ text: one.way.text, share: one.worth / all })),
    letters: Math.min(1, ...best.letters),
  }
}

/** The letters that are likeliest at their places, with the steps where each begins. */
function lettersOf(steps: readonly Step[]): { readonly at: number; readonly likely: number }[] {
  let before = ''
  return steps.flatMap(([best], at) => {
    const { letter, likely } = best ?? { letter: '', likely: 0 }
    const isNew = letter !== before && !isBare(letter)
    before = letter
    return isNew ? [{ at, likely }] : []
  })
}

/** The steps of each word: parted where a gap is likeliest, if it is likely enough. */
function partsOf(steps: readonly Step[]): (readonly Step[])[] {
  const letters = lettersOf(steps)
  const parts: (readonly Step[])[] = []
  let from = 0
  for (const [n, { at }] of letters.entries()) {
    const before = letters[n - 1]
    if (!before || gapIn(steps.slice(before.at + 1, at)) <= clearGap) continue
    const cut = widestGap(steps, before.at + 1, at)
    parts.push(steps.slice(from, cut))
    from = cut
  }
  return [...parts, steps.slice(from)]
}

function widestGap(steps: readonly Step[], from: number, to: number): number {
  const gap = (at: number): number =>
    isBare(steps[at]![0]?.letter ?? '') ? gapIn([steps[at]!]) : 0
  let best = from
  for (let at = from; at < to; at += 1) if (gap(at) > gap(best)) best = at
  return best
}

function inOneScript(steps: readonly Step[]): readonly Step[] {
  const best = steps.flatMap(([first]) => (first && !isBare(first.letter) ? [first.letter] : []))
  const wideOnes = best.filter((letter) => wide.test(letter)).length
  if (best.length - wideOnes <= 2 * wideOnes) return steps
  return steps.map((step) =>
    step.filter(({ letter, likely }) => likely >= surelyWide || !wide.test(letter)),
  )
}

/** The numbers of a text, one after another. */
export const digitsOf = (text: string): string => (text.match(/\d+/g) ?? []).join()

function othersOf(words: readonly Word[]): PicturedLine[] {
  return words
    .flatMap((word, n) =>
      word.ways
        .slice(1)
        .filter(
          ({ text, share }) => share >= leastOther && digitsOf(text) !== digitsOf(textOf(word)),
        )
        .map(({ text, share }) => ({
          text: words.map((one, at) => (at === n ? text : textOf(one))).join(' '),
          sure: share,
        })),
    )
    .sort((a, b) => b.sure - a.sure)
}
