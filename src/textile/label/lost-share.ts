import type { LabelReading } from '../reading.ts'
import { namesFibre } from './names-fibre.ts'

/** So many names are tried at most: a label in many languages has lost more than one share. */
const mostTried = 24

/**
 * The lines with the one share that is missing put before a name that has none, in every place that is worth a
 * try: what the others leave of 100. None where no part, or more than one, falls short. It holds only where it
 * makes the shares a whole, and never for sure.
 */
export function withLostShare(lines: readonly string[], { blocks }: LabelReading): string[][] {
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

/** No number stands right before or behind it. */
const isBare = (line: string, index: number, length: number): boolean =>
  !/[\d%]\W*$/.test(line.slice(0, index)) && !/^\W*\d/.test(line.slice(index + length))
