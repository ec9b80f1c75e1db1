import type { ProblemCode } from '../reading.ts'
import { totalOf } from './blocks.ts'
import type { Element, FibreElement, NumberElement } from './elements.ts'
import { type LeftNumber, type Pair, type Pairing, pairUp, type Told } from './pairing.ts'
import type { Region } from './regions.ts'

/** What one stretch of the label tells of the parts that it names. */
export interface Part {
  readonly region: Region
  readonly pairing: Pairing
  readonly pairs: readonly Pair[]
  /** Most shares had been taken for those of the names on their other side. */
  readonly turned: boolean
}

/** What it costs to pair on the side on which the first name does not stand, where that left both ends alone. */
const turnedBack = 2

export function partOf(region: Region, bare: boolean): Part {
  const found = pairUp(region.elements, bare)
  const turned = isTurned(region.elements, found.pairs)
  const pairing = turned ? pairUp(region.elements, bare, turnedBack) : found
  const pairs = [
    ...pairing.pairs,
    ...pureFibres(region.elements, pairing),
    ...unknownNames(pairing),
  ]
  return { region, pairing, pairs, turned }
}

export const namesFibre = ({ pairs }: Part): boolean =>
  pairs.some(({ fibre }) => fibre.fibre !== 'other' || fibre.doubt !== 'name_unknown')

/** What is doubtful in the part itself, but for what `explained` holds, and its name where that is `confirmed`. */
export function doubtsIn(
  { region, pairing, pairs, turned }: Part,
  explained: ReadonlySet<Told>,
  confirmed: boolean,
): ProblemCode[] {
  const problems: ProblemCode[] = []
  if (pairing.apart || mayTurn(region.elements) || turned) problems.push('pairing')
  if (region.unclear && !confirmed) problems.push('section_unclear')
  if (region.elements.some(({ kind }) => kind === 'variant') && pairs.length > 0)
    problems.push('alternatives')
  if (pairing.numbersLeft.some((left) => !explained.has(left) && !isExplained(left, pairs)))
    problems.push('number_unexplained')
  if (pairing.fibresLeft.some((fibre) => !explained.has(fibre) && !isNamed(fibre, pairs)))
    problems.push('fibre_unexplained')
  return problems
}

/**
 * "Nylon ⏎ 60 % polyester 40 % ⏎ nylon …": the first name stands alone on its line, and the share below it has
 * another name right behind it. Its own share may have been lost, and every share belong to its other side.
 */
function mayTurn(elements: readonly Element[]): boolean {
  const lines = linesOf(elements)
  const first = lines.findIndex((line) => line.some(isToldOf))
  const [name, ...more] = (lines[first] ?? []).filter(isToldOf)
  const [share, other] = (lines[first + 1] ?? []).filter(isToldOf)
  const shares = elements.filter(isPercentage)
  return (
    name?.kind === 'fibre' &&
    more.length === 0 &&
    share !== undefined &&
    isPercentage(share) &&
    other?.kind === 'fibre' &&
    other.fibre !== name.fibre &&
    shares.length > 1
  )
}

/**
 * "74 % cotton 26 % wool … 74 % cotton … wool", of which the shares stand before their names, and most were taken
 * for those of the names before them: the share at the one end and the name at the other are left alone.
 */
function isTurned(elements: readonly Element[], pairs: readonly Pair[]): boolean {
  const told = elements.filter(isToldOf)
  const [first, last] = [told[0], told.at(-1)]
  if (!first || !last || first.kind === last.kind) return false
  const along = pairs.filter(({ shareFirst }) => shareFirst === (first.kind === 'number'))
  return 2 * along.length < pairs.length
}

const isPercentage = (element: Element): boolean => element.kind === 'number' && element.percent

const isToldOf = (element: Element): boolean => element.kind === 'fibre' || isPercentage(element)

function linesOf(elements: readonly Element[]): Element[][] {
  const lines: Element[][] = [[]]
  for (const element of elements)
    if (element.kind === 'line') lines.push([])
    else lines.at(-1)!.push(element)
  return lines
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
  return [{ share: allOfIt, fibre: first, detail: null, shareFirst: true }]
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
    shareFirst: true,
  }))
}

// Another language, not known here, repeats a share; or a share tells how much of a fibre is recycled.
const isExplained = ({ share, name, qualifies }: LeftNumber, pairs: readonly Pair[]): boolean =>
  pairs.some((pair) => pair.share === share) ||
  qualifies ||
  (name !== null && pairs.some((pair) => pair.share.value === share.value))

const isNamed = ({ fibre, doubt, code }: FibreElement, pairs: readonly Pair[]): boolean =>
  doubt === 'spelling' || code === true || pairs.some((pair) => pair.fibre.fibre === fibre)
