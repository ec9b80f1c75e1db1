import { fold } from './clean.ts'
import { isLabelWord } from './vocabulary.ts'

/**
 * Natural logarithms of how much likelier a label prints this than any other signs of that length: our own
 * measure, tuned on drawn labels (test/labels).
 */
const weights = {
  /** A word that labels print, of five letters or more; a shorter one less, by its length. */
  word: 4,
  wholeWordFrom: 5,
  share: 2.5,
  /** A percent sign with no number from 1 to 100 before it. */
  loosePercent: -1.5,
  /** A digit beside a letter in one word, or a sign within one. */
  mixed: -2,
} as const

const shares = /(?<![\d.,])(\d{1,3}(?:[.,]\d)?) ?%(?![\d%])/g
const withinWords = /\p{L}[!|#$&](?=\p{L})|#/gu
const besideLetters = /\p{L}(?=\d)|\d(?=\p{L})/gu

/** By how much likelier this text is on a label than other signs of its length, as a natural logarithm. */
export function likelihoodOnLabel(text: string): number {
  let weight = weights.mixed * countOf(text, withinWords)
  for (const [word] of text.matchAll(/[\p{L}\d]+/gu))
    if (/\d/.test(word) && /\p{L}{2}/u.test(word))
      weight += weights.mixed * countOf(word, besideLetters)
  for (const [word] of text.matchAll(/\p{L}{3,}/gu))
    if (isLabelWord(fold(word)))
      weight += weights.word * Math.min(1, word.length / weights.wholeWordFrom)
  const whole = [...text.matchAll(shares)].filter(([, share]) => isShare(share!)).length
  return weight + weights.share * whole + weights.loosePercent * (countOf(text, /%/g) - whole)
}

const isShare = (number: string): boolean => {
  const value = Number(number.replace(',', '.'))
  return value > 0 && value <= 100
}

const countOf = (text: string, pattern: RegExp): number => text.match(pattern)?.length ?? 0
