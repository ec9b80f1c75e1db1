import type { LabelReading } from '../reading.ts'
import { fibreNamed, namesFibre } from './names-fibre.ts'

/** So many names are tried at most: a label in many languages has lost more than one share. */
const mostTried = 24

/**
 * The lines with the one share that is missing put before a name that has none, in every place that is worth a
 * try: what the others leave of 100. None where no part, or more than one, falls short. It holds only where it
 * makes the shares a whole, and never for sure.
 */
export function withLostShare(lines: readonly string[], { blocks }: LabelReading): string[][] {
  if (blocks.length === 0) return withAll(lines)
  const short = blocks.filter(({ total }) => total !== 100)
  const rest = 100 - (short[0]?.total ?? 100)
  // Tenths of shares add up a little beside what they are.
  const share = Math.round(rest * 10) / 10
  if (short.length !== 1 || share <= 0) return []
  return lines
    .flatMap((line, at) =>
      [...line.matchAll(/\p{L}{3,}/gu)]
        .filter(({ 0: word, index }) => namesFibre(word) && isBare(line, index, word.length))
        .map(({ index }) =>
          lines.with(at, `${line.slice(0, index)}${share}% ${line.slice(index)}`),
        ),
    )
    .slice(0, mostTried)
}

/** What may be left of a share: a digit, a percent sign, or signs that are read for them. */
const restOfShare = /\d|%|(?<![\p{L}\d])(?:[xX]|[1IlO]{1,3})(?![\p{L}\d])/u

/** A line of one word: the share that stood at its far end, in a column of its own, was not seen. */
const oneWord = /^\P{L}*\p{L}+\P{L}*$/u

/** Where no share was read at all, each name the whole: a label of one fibre says so over and over. */
function withAll(lines: readonly string[]): string[][] {
  const names = (line: string): readonly string[] =>
    (line.match(/\p{L}{3,}/gu) ?? []).filter(namesFibre)
  const naming = lines.filter((line) => names(line).length > 0)
  const areShares = naming.every(
    (line) => names(line).length === 1 && (restOfShare.test(line) || oneWord.test(line)),
  )
  const fibres = new Set(naming.map((line) => fibreNamed(names(line)[0] ?? '')))
  if (naming.length < oftenEnough || !areShares || fibres.size > 1) return []
  return [lines.map((line) => (naming.includes(line) ? `100% ${names(line)[0]}` : line))]
}

/** So many lines name the one fibre at least: a single one may speak of something else. */
const oftenEnough = 2

/** No number stands right before or behind it. */
const isBare = (line: string, index: number, length: number): boolean =>
  !/[\d%]\W*$/.test(line.slice(0, index)) && !/^\W*\d/.test(line.slice(index + length))
