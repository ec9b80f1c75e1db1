import type { Block, ProblemCode } from '../reading.ts'
import { blockOf, groupPairs, isEither, totalOf } from './blocks.ts'
import { type Element, elementsOf, type FibreElement, type NumberElement } from './elements.ts'
import type { Item } from './items.ts'
import { nylonTypes } from './nylon.ts'
import { type LeftNumber, type Pair, type Pairing, pairUp } from './pairing.ts'
import { type Region, regionsOf } from './regions.ts'
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
  const elements = nylonTypes(elementsOf(items, ways))
  const problems = new Set<ProblemCode>()
  if (isGuess(elements)) problems.add('guessed')
  const parts = regionsOf(elements).map((region) => partOf(region, ways.bare, problems))
  const blocks = parts.some(namesFibre) ? mergeParts(parts, problems) : []
  const pairs = parts.flatMap((part) => part.pairs)
  for (const doubt of doubtsAmong(elements, pairs)) problems.add(doubt)
  weigh(blocks, elements, problems)
  return {
    composition: { blocks, problems },
    shares: parts.reduce((sum, { pairing }) => sum + pairing.pairs.length, 0),
    left: parts.reduce((sum, { pairing }) => sum + pairing.numbersLeft.length, 0),
  }
}

const namesFibre = ({ pairs }: Part): boolean =>
  pairs.some(({ fibre }) => fibre.fibre !== 'other' || fibre.doubt !== 'name_unknown')

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

interface Part {
  readonly sections: readonly string[]
  readonly pairing: Pairing
  readonly pairs: readonly Pair[]
}

function partOf(region: Region, bare: boolean, problems: Set<ProblemCode>): Part {
  const pairing = pairUp(region.elements, bare)
  const pairs = [
    ...pairing.pairs,
    ...pureFibres(region.elements, pairing),
    ...unknownNames(pairing),
  ]
  if (pairing.apart) problems.add('pairing')
  if (region.unclear) problems.add('section_unclear')
  if (region.elements.some(({ kind }) => kind === 'variant') && pairs.length > 0)
    problems.add('alternatives')
  for (const left of pairing.numbersLeft)
    if (!isExplained(left, pairs)) problems.add('number_unexplained')
  for (const fibre of pairing.fibresLeft)
    if (!isNamed(fibre, pairs)) problems.add('fibre_unexplained')
  return { sections: region.sections, pairing, pairs }
}

/** "Pure wool", "all cotton", where no share is given. */
function pureFibres(elements: readonly Element[], pairing: Pairing): Pair[] {
  if (pairing.pairs.length > 0 || pairing.numbersLeft.length > 0) return []
  const found: FibreElement[] = []
  for (const [at, element] of elements.entries()) {
    if (element.kind === 'fibre' && element.pure) found.push(element)
    if (element.kind !== 'pure') continue
    const next = elements
      .slice(at + 1)
      .find(({ kind }) => kind !== 'line' && kind !== 'detail' && kind !== 'pure')
    const before = elements[at - 1]
    if (next?.kind === 'fibre') found.push(next)
    else if (before?.kind === 'fibre') found.push(before)
  }
  const [first] = found
  if (!first || !pairing.fibresLeft.every(({ fibre }) => fibre === first.fibre)) return []
  return [{ share: allOfIt, fibre: first, detail: null }]
}

const allOfIt: NumberElement = { kind: 'number', value: 100, percent: true, raw: '100' }

/** A share whose name is not known, where it alone is missing from the whole. */
function unknownNames({ pairs, numbersLeft }: Pairing): Pair[] {
  const named = numbersLeft.filter((left) => left.name !== null)
  const left = named.filter(({ share }) => !pairs.some((pair) => pair.share.value === share.value))
  if (left.length === 0) return []
  const sum = totalOf(pairs) + left.reduce((total, { share }) => total + share.value, 0)
  if (Math.abs(sum - 100) > 0.2) return []
  return left.map(({ share, name }) => ({
    share,
    fibre: { kind: 'fibre', fibre: 'other', raw: name!, languages: [], doubt: 'name_unknown' },
    detail: name!,
  }))
}

// Another language, not known here, repeats a share; or a share tells how much of a fibre is recycled.
const isExplained = ({ share, name, qualifies }: LeftNumber, pairs: readonly Pair[]): boolean =>
  pairs.some((pair) => pair.share === share) ||
  qualifies ||
  (name !== null && pairs.some((pair) => pair.share.value === share.value))

const isNamed = ({ fibre, doubt, code }: FibreElement, pairs: readonly Pair[]): boolean =>
  doubt === 'spelling' || code === true || pairs.some((pair) => pair.fibre.fibre === fibre)

function mergeParts(parts: readonly Part[], problems: Set<ProblemCode>): Block[] {
  const bySection = new Map<string | null, Pair[]>()
  for (const { sections, pairs } of parts) {
    const names = sections.length > 0 ? sections : [null]
    for (const name of names) bySection.set(name, [...(bySection.get(name) ?? []), ...pairs])
  }
  const blocks: Block[] = []
  for (const [section, pairs] of bySection) {
    const grouped = groupPairs(pairs)
    for (const problem of grouped.problems) problems.add(problem)
    for (const group of grouped.groups) {
      for (const { fibre } of group) if (fibre.doubt) problems.add(fibre.doubt)
      if (group.some(isEither)) problems.add('name_ambiguous')
      blocks.push(blockOf(section, group))
    }
  }
  return withoutEcho(blocks)
}

/** Shares that stand before the first part's name and are told again under it are the same ones. */
function withoutEcho(blocks: readonly Block[]): Block[] {
  const [first, ...rest] = blocks
  if (!first || first.section !== null || rest.length !== 1) return [...blocks]
  return sameShares(first, rest[0]!) ? rest : [...blocks]
}

const sameShares = (a: Block, b: Block): boolean =>
  a.fibres.length === b.fibres.length &&
  a.fibres.every(({ fibre, percent }) =>
    b.fibres.some((other) => other.fibre === fibre && other.percent === percent),
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
