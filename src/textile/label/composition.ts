import type { Block, ProblemCode } from '../reading.ts'
import { type Element, elementsOf } from './elements.ts'
import { areRepeated } from './excuse.ts'
import type { Item } from './items.ts'
import { type Merged, mergeParts } from './merge.ts'
import { nylonTypes } from './nylon.ts'
import { doubtsIn, namesFibre, partOf } from './parts.ts'
import { regionsOf } from './regions.ts'
import { guessSections } from './section-guess.ts'
import { doubtsAmong } from './unread.ts'

export interface Composition {
  readonly blocks: readonly Block[]
  readonly problems: ReadonlySet<ProblemCode>
}

// From the strictest way to the loosest; a looser one is taken only where it alone adds up.
const waysToRead = [
  { codes: false, bare: false },
  { codes: true, bare: false },
  { codes: false, bare: true },
  { codes: true, bare: true },
] as const

/** The make-up that a label's words tell. */
export function compositionOf(items: readonly Item[]): Composition {
  const readings: Attempt[] = []
  for (const ways of waysToRead) {
    const reading = read(items, ways)
    if (reading.left === 0 && isWhole(reading.composition)) return reading.composition
    readings.push(reading)
  }
  const whole = readings.find(({ composition }) => isWhole(composition))
  if (whole) return whole.composition
  // Numbers without a percent sign count only where they add up.
  const signed = readings.filter((_, at) => !waysToRead[at]!.bare)
  return signed.reduce((a, b) => (b.shares > a.shares ? b : a)).composition
}

interface Attempt {
  readonly composition: Composition
  readonly shares: number
  /** Percentages that found no fibre. */
  readonly left: number
}

const isWhole = ({ blocks }: Composition): boolean =>
  blocks.length > 0 && blocks.every(({ complete }) => complete)

function read(items: readonly Item[], ways: { codes: boolean; bare: boolean }): Attempt {
  const elements = guessSections(nylonTypes(elementsOf(items, ways)))
  const parts = regionsOf(elements).map((region) => partOf(region, ways.bare))
  const merged = parts.some(namesFibre) ? mergeParts(parts) : none
  const { blocks, problems: found, repeats, confirmed } = merged
  const problems = new Set<ProblemCode>(found)
  if (isGuess(elements)) problems.add('guessed')
  const explained = new Set(repeats.flat().flatMap(({ told }) => told))
  for (const part of parts)
    for (const doubt of doubtsIn(part, explained, confirmed.has(part))) problems.add(doubt)
  const pairs = parts.flatMap((part) => part.pairs)
  const doubts = doubtsAmong(elements, pairs)
  for (const doubt of doubts.problems) problems.add(doubt)
  if (!areRepeated(doubts.unread, elements, repeats)) problems.add('words_unread')
  weigh(blocks, elements, problems)
  const left = parts.flatMap(({ pairing }) => pairing.numbersLeft)
  return {
    composition: { blocks, problems },
    shares: parts.reduce((sum, { pairing }) => sum + pairing.pairs.length, 0),
    left: left.filter((one) => !explained.has(one)).length,
  }
}

const none: Merged = { blocks: [], problems: new Set(), repeats: [], confirmed: new Set() }

/** "I think", or a question mark beside what is told. */
const isGuess = (elements: readonly Element[]): boolean =>
  elements.some(
    ({ kind, raw }, at) =>
      kind === 'hedge' ||
      kind === 'likeness' ||
      (raw === '?' &&
        elements
          .slice(Math.max(0, at - 2), at)
          .some((told) => told.kind === 'fibre' || told.kind === 'number')),
  )

function weigh(
  blocks: readonly Block[],
  elements: readonly Element[],
  problems: Set<ProblemCode>,
): void {
  if (blocks.length === 0) {
    problems.add(elements.some(({ kind }) => kind === 'fibre') ? 'shares_missing' : 'no_fibres')
    problems.delete('fibre_unexplained')
  }
  for (const { total, complete } of blocks) {
    if (!complete) problems.add('total_not_100')
    else if (Math.abs(total - 100) > 0.2) problems.add('total_near_100')
  }
}
