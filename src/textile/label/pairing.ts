import type { Element, FibreElement, NumberElement, WordElement } from './elements.ts'

export interface Pair {
  readonly share: NumberElement
  readonly fibre: FibreElement
  readonly detail: string | null
  /** The share stands before its name. */
  readonly shareFirst: boolean
}

export interface Pairing {
  readonly pairs: readonly Pair[]
  readonly numbersLeft: readonly LeftNumber[]
  readonly fibresLeft: readonly FibreElement[]
  /** All of these in the order of the label. */
  readonly told: readonly Told[]
  /** The shares stand apart from the names, in columns. */
  readonly apart: boolean
}

/** A share with its name, or one of the two alone. */
export type Told = Pair | LeftNumber | FibreElement

export interface LeftNumber {
  readonly share: NumberElement
  /** A word beside it that is not known; null where there is none. */
  readonly name: string | null
  /** Speaks of what the fibre is made of ("30 % recycled"), not of a fibre. */
  readonly qualifies: boolean
}

interface Place {
  readonly at: number
  readonly element: NumberElement | FibreElement | WordElement
}

/**
 * Gives each share the fibre beside it, in whichever order they stand, at the least cost of gaps. `turned`: what it
 * costs besides where they stand in another order than the first.
 */
export function pairUp(elements: readonly Element[], bareNumbers: boolean, turned = 0.05): Pairing {
  const places = elements.flatMap((element, at): Place[] => {
    if (element.kind === 'fibre') return [{ at, element }]
    if (element.kind === 'word' && /\p{L}{2}/u.test(element.raw)) return [{ at, element }]
    const counts =
      element.kind === 'number' &&
      (element.percent || bareNumbers) &&
      element.value > 0 &&
      element.value <= 100
    return counts ? [{ at, element }] : []
  })
  const columns = inColumns(
    places.filter(({ element }) => element.kind !== 'word'),
    elements,
  )
  if (columns) return columns
  return cheapest(places, elements, turned)
}

/** A way of reading the places so far, and the one it grew from. */
interface Path {
  readonly cost: number
  /** Places read. */
  readonly read: number
  /** The place that the last one was paired with. */
  readonly partner: Place | null
  /** The last name, or one of the same fibre right before it, has its share. */
  readonly settled: boolean
  readonly before: Path | null
}

/** The same fibre in several languages needs one share; a name without any costs dearly. */
function cheapest(places: readonly Place[], elements: readonly Element[], turned: number): Pairing {
  const paths: Path[][] = [...places.map(() => []), []]
  paths[0]!.push({ cost: 0, read: 0, partner: null, settled: true, before: null })
  const numberFirst = places.find(isReal)?.element.kind === 'number'
  for (let i = 0; i < places.length; i++) {
    for (const path of cheapestOfEach(paths[i]!)) {
      paths[i + 1]!.push(skipped(path, places))
      for (let j = i + 1; j < places.length && j <= i + 4; j++) {
        const gap = pairCost(places[i]!, places[j]!, elements)
        const other = (places[i]!.element.kind === 'number') === numberFirst ? 0 : turned
        if (gap < Infinity) paths[j + 1]!.push(joined(path, places, j, gap + other))
        if (isReal(places[j]!)) break
      }
    }
  }
  const ends = paths[places.length]!.map((path) => ({
    path,
    cost: path.cost + debt(path, places),
  }))
  const best = ends.reduce((a, b) => (b.cost < a.cost ? b : a))
  return traced(best.path, places, elements)
}

const isReal = ({ element }: Place): boolean => element.kind !== 'word'

const cheapestOfEach = (paths: readonly Path[]): Path[] =>
  [true, false].flatMap((settled) => {
    const same = paths.filter((path) => path.settled === settled)
    return same.length > 0 ? [same.reduce((a, b) => (b.cost < a.cost ? b : a))] : []
  })

/** The place before that is no unknown word, looking past a few of those. */
function realBefore(places: readonly Place[], i: number): Place | undefined {
  for (let at = i - 1; at >= Math.max(0, i - 4); at--) if (isReal(places[at]!)) return places[at]
  return undefined
}

function continues(places: readonly Place[], i: number): boolean {
  const before = realBefore(places, i)
  return before !== undefined && sameFibre(before, places[i]!)
}

/** What a name that never found its share costs. */
function debt(path: Path, places: readonly Place[]): number {
  if (path.settled) return 0
  const element = realBefore(places, path.read)?.element
  return element?.kind === 'fibre' && (element.doubt === 'spelling' || element.code) ? 2 : 5
}

function skipped(path: Path, places: readonly Place[]): Path {
  const { element } = places[path.read]!
  const grown = { read: path.read + 1, partner: null, before: path }
  if (element.kind === 'word') return { ...grown, cost: path.cost, settled: path.settled }
  if (element.kind === 'fibre' && continues(places, path.read))
    return { ...grown, cost: path.cost + 0.3, settled: path.settled }
  const cost = path.cost + debt(path, places)
  if (element.kind === 'fibre') return { ...grown, cost: cost + 0.3, settled: false }
  return {
    ...grown,
    cost: cost + (element.percent ? numberCost(places, path.read, element.value) : 0.5),
    settled: true,
  }
}

function numberCost(places: readonly Place[], i: number, value: number): number {
  const beside = [places[i - 1]?.element, places[i + 1]?.element]
  return beside.some((other) => other?.kind === 'number' && other.value === value) ? 1 : 5
}

function joined(path: Path, places: readonly Place[], last: number, gap: number): Path {
  const owed = continues(places, path.read) ? 0 : debt(path, places)
  return {
    cost: path.cost + owed + gap,
    read: last + 1,
    partner: places[path.read]!,
    settled: true,
    before: path,
  }
}

function traced(end: Path, places: readonly Place[], elements: readonly Element[]): Pairing {
  const told: Told[] = []
  for (let path: Path | null = end; path?.before; path = path.before) {
    const place = places[path.read - 1]!
    const number = [path.partner, place].find((one) => one?.element.kind === 'number')
    if (path.partner && isReal(path.partner) && isReal(place))
      told.unshift(pairOf(path.partner, place, elements))
    else if (number) told.unshift(...leftNumber(number, elements))
    else if (place.element.kind === 'fibre') told.unshift(place.element)
  }
  return {
    pairs: told.filter(isPair),
    numbersLeft: told.filter((one): one is LeftNumber => 'name' in one),
    fibresLeft: told.filter((one): one is FibreElement => 'kind' in one),
    told,
    apart: false,
  }
}

export const isPair = (told: Told): told is Pair => 'share' in told && 'fibre' in told

const furthest = 12

function pairCost(a: Place, b: Place, elements: readonly Element[]): number {
  if (a.element.kind === b.element.kind) return Infinity
  const unknown = !isReal(a) || !isReal(b)
  if (unknown && a.element.kind !== 'number' && b.element.kind !== 'number') return Infinity
  let cost = unknown ? unknownNameCost : 0
  let unknownWords = 0
  for (let at = a.at + 1; at < b.at; at++) {
    const between = elements[at]!
    if (between.kind === 'word' && ++unknownWords > (unknown ? 0 : 4)) return Infinity
    cost += gapCosts[between.kind] ?? markCost(between.raw)
    if (cost > furthest) return Infinity
  }
  return cost
}

const unknownNameCost = 2.5

const gapCosts: Partial<Record<Element['kind'], number>> = {
  line: 0.9,
  word: 1.4,
  detail: 0,
  filler: 0,
  pure: 0,
  or: 4,
  variant: 4,
  excluded: Infinity,
  decoyBefore: Infinity,
  decoyAfter: Infinity,
  section: Infinity,
  number: 1,
}

function markCost(mark: string): number {
  if (/[,;.•·|、，。]/.test(mark)) return 3
  if (mark === '/') return 2
  return mark === ')' ? 0.5 : 0.2
}

function pairOf(a: Place, b: Place, elements: readonly Element[]): Pair {
  const [share, fibre] =
    a.element.kind === 'number'
      ? [a.element, b.element as FibreElement]
      : [b.element as NumberElement, a.element as FibreElement]
  const shareFirst = a.element === share
  const fibreAt = shareFirst ? b.at : a.at
  return { share, fibre, detail: fibre.detail ?? detailBeside(elements, fibreAt), shareFirst }
}

function detailBeside(elements: readonly Element[], at: number): string | null {
  const words: string[] = []
  for (let before = at - 1; isDetail(elements[before]); before--)
    words.unshift(elements[before]!.raw)
  for (let after = at + 1; isDetail(elements[after]); after++) words.push(elements[after]!.raw)
  return words.length > 0 ? words.join(' ').toLowerCase() : null
}

const isDetail = (element: Element | undefined): boolean => element?.kind === 'detail'

const looseMarks = /[-:(*®™]/

/** What stands right after a number that found no fibre, or else right before it. */
function leftNumber({ element: share, at }: Place, elements: readonly Element[]): LeftNumber[] {
  if (share.kind !== 'number' || !share.percent) return []
  let qualifies = false
  for (const step of [1, -1]) {
    let next = at + step
    for (; ; next += step) {
      const element = elements[next]
      if (element?.kind === 'detail') qualifies = true
      const passes =
        element?.kind === 'filler' ||
        element?.kind === 'detail' ||
        (element?.kind === 'line' && step === 1)
      if (!passes && !(element?.kind === 'mark' && looseMarks.test(element.raw))) break
    }
    const element = elements[next]
    if (element?.kind === 'word' && /\p{L}{2}/u.test(element.raw))
      return [{ share, name: element.raw, qualifies }]
  }
  return [{ share, name: null, qualifies }]
}

/** "Cotton/polyester 60/40": all shares together and all names together, told in the same order. */
function inColumns(places: readonly Place[], elements: readonly Element[]): Pairing | null {
  const runs: Place[][] = []
  for (const place of places) {
    const run = runs.at(-1)
    const last = run?.at(-1)
    if (!run || last!.element.kind !== place.element.kind) runs.push([place])
    else if (!sameFibre(last!, place)) run.push(place)
  }
  if (runs.length < 2 || runs.length % 2 === 1) return null
  const pairs: Pair[] = []
  let slashed = true
  for (let at = 0; at < runs.length; at += 2) {
    const [first, second] = [runs[at]!, runs[at + 1]!]
    if (first.length < 2 || first.length !== second.length) return null
    const shares = first[0]!.element.kind === 'number' ? first : second
    const sum = shares.reduce((total, { element }) => total + (element as NumberElement).value, 0)
    if (Math.abs(sum - 100) > 0.5) return null
    slashed &&= [first, second].every((run) => allSlashed(run, elements))
    pairs.push(...first.map((place, i) => pairOf(place, second[i]!, elements)))
  }
  return { pairs, numbersLeft: [], fibresLeft: [], told: pairs, apart: !slashed }
}

const sameFibre = (a: Place, b: Place): boolean =>
  a.element.kind === 'fibre' && b.element.kind === 'fibre' && a.element.fibre === b.element.fibre

const allSlashed = (run: readonly Place[], elements: readonly Element[]): boolean =>
  elements
    .slice(run[0]!.at, run.at(-1)!.at)
    .every((element) => element.kind !== 'line' && element.kind !== 'word')
