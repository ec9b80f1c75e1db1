import { family, near, totalOf } from './blocks.ts'
import type { FibreElement, NumberElement } from './elements.ts'
import { isPair, type Pair, type Told } from './pairing.ts'
import { lettersApart } from './spelling.ts'

/** What stands for one share of the make-up: the share with its name, or as much as was read of them. */
interface Entry {
  readonly share: NumberElement | null
  readonly fibre: FibreElement | null
  /** Both, where they stand together. */
  readonly pair: Pair | null
  readonly told: readonly Told[]
}

/** A stretch of entries that tells a make-up again. */
export interface Repeat {
  readonly of: readonly Pair[]
  readonly told: readonly Told[]
  /** By share of the make-up: the pair that tells it here, word for word. */
  readonly exact: readonly (Pair | null)[]
  /** Shares that are told otherwise here, or not at all. */
  readonly flaws: number
  /** Of those, shares whose number is told and whose name could not be read. */
  readonly unnamed: number
  /** Of those, shares that are missing, number and name. */
  readonly missing: number
  /** Of those, shares whose number is another. */
  readonly others: number
}

/** What is told, cut into repetitions of known make-ups and the rest. */
export interface Cut {
  readonly repeats: readonly Repeat[]
  readonly rest: readonly Told[]
  /** In flaws. */
  readonly cost: number
}

/** As the shares and names were paired over the whole stretch. */
const paired = (told: readonly Told[]): Entry[] =>
  told.map((one): Entry => {
    if (isPair(one)) return { share: one.share, fibre: one.fibre, pair: one, told: [one] }
    const [share, fibre] = 'name' in one ? [one.share, null] : [null, one]
    return { share, fibre, pair: null, told: [one] }
  })

/**
 * Each share with the name right beside it on one side, or alone. Where a number was lost, pairs over the whole
 * stretch may all have moved along by one.
 */
function pairedLocally(told: readonly Told[], shareFirst: boolean): Entry[] {
  const halves = told.flatMap((one): Entry[] => {
    if (!isPair(one)) return paired([one])
    const share: Entry = { share: one.share, fibre: null, pair: null, told: [one] }
    const fibre: Entry = { share: null, fibre: one.fibre, pair: null, told: [one] }
    return one.shareFirst ? [share, fibre] : [fibre, share]
  })
  const entries: Entry[] = []
  for (let at = 0; at < halves.length; at++) {
    const [half, next] = [halves[at]!, halves[at + 1]]
    const [first, second] = shareFirst ? [half, next] : [next, half]
    if (first?.share && second?.fibre && !hasUnreadName(first)) {
      const all = [...new Set([...half.told, ...next!.told])]
      const whole = all.length === 1 ? all.find(isPair) : undefined
      const made = { share: first.share, fibre: second.fibre, detail: null, shareFirst }
      entries.push({ ...made, pair: whole ?? made, told: all })
      at++
    } else entries.push(half)
  }
  return entries
}

const hasUnreadName = ({ told }: Entry): boolean =>
  told.some((one) => 'name' in one && one.name !== null)

/** The same name in another language, "cotton/coton", stands with its share. */
const withoutEchoes = (entries: readonly Entry[]): Entry[] =>
  entries.filter(
    ({ share, fibre }, at) =>
      share !== null ||
      ![entries[at - 1], entries[at + 1]].some(
        (beside) =>
          beside?.pair && fibre && family(beside.pair.fibre.fibre) === family(fibre.fibre),
      ),
  )

/** The make-ups that sum to 100 among what is told, each name once, in the order that they are met. */
export function wholesIn(told: readonly Told[]): Pair[][] {
  const wholes: Pair[][] = []
  for (let from = 0; from < told.length && wholes.length < mostWholes; from++) {
    const open: Pair[] = []
    for (const one of told.slice(from)) {
      if (!isPair(one) || open.some(({ fibre }) => fibre.fibre === one.fibre.fibre)) break
      open.push(one)
      const total = totalOf(open)
      if (near(total) && !wholes.some((whole) => inOrder(whole, open))) wholes.push(open)
      if (total >= 100) break
    }
  }
  return wholes
}

/** No label has so many make-ups; the time stays bounded. */
const mostWholes = 24

const inOrder = (a: readonly Pair[], b: readonly Pair[]): boolean =>
  a.length === b.length && a.every((pair, at) => same(pair, b[at]!))

export const same = (a: Pair, b: Pair): boolean =>
  a.share.value === b.share.value && family(a.fibre.fibre) === family(b.fibre.fibre)

/** What it costs to leave an entry to no repetition, in flaws. */
const restCost = 3
/** A make-up of another part is taken only where the part's own fits worse, in flaws. */
const foreignCost = 0.25

interface Step {
  readonly cost: number
  readonly from: number
  readonly repeat: Repeat | null
}

/** Cuts what one stretch of the label tells into repetitions of the make-ups, with the fewest flaws. */
export function cutInto(
  told: readonly Told[],
  own: readonly Pair[] | null,
  foreign: readonly (readonly Pair[])[],
): Cut {
  // Names on the wrong side of their shares would make other make-ups out of the same numbers.
  const ways = [true, false].filter((shareFirst) =>
    (own ?? foreign.flat()).every((pair) => pair.shareFirst === shareFirst),
  )
  return [paired(told), ...ways.map((shareFirst) => pairedLocally(told, shareFirst))]
    .map((entries) => cutEntries(withoutEchoes(entries), own, foreign))
    .reduce((a, b) => (b.cost < a.cost ? b : a))
}

function cutEntries(
  entries: readonly Entry[],
  own: readonly Pair[] | null,
  foreign: readonly (readonly Pair[])[],
): Cut {
  const steps: Step[] = [{ cost: 0, from: 0, repeat: null }]
  const makeUps = [...(own ? [own] : []), ...foreign]
  for (let to = 1; to <= entries.length; to++) {
    let best: Step = { cost: steps[to - 1]!.cost + restCost, from: to - 1, repeat: null }
    for (const makeUp of makeUps)
      for (let from = to - 1; from >= Math.max(0, to - makeUp.length - 1); from--) {
        const repeat = repeatOf(entries.slice(from, to), makeUp)
        if (!repeat) continue
        const cost = steps[from]!.cost + repeat.flaws + (makeUp === own ? 0 : foreignCost)
        if (cost < best.cost) best = { cost, from, repeat }
      }
    steps.push(best)
  }
  const repeats: Repeat[] = []
  const rest: Told[] = []
  for (let at = entries.length; at > 0; at = steps[at]!.from) {
    const { repeat } = steps[at]!
    if (repeat) repeats.unshift(repeat)
    else rest.unshift(...entries[at - 1]!.told)
  }
  return { repeats, rest, cost: steps.at(-1)!.cost }
}

/** How the entries tell the make-up, share by share; null where they tell something else. */
function repeatOf(entries: readonly Entry[], of: readonly Pair[]): Repeat | null {
  const told = entries.flatMap((entry) => entry.told)
  const pairs = entries.flatMap(({ pair }) => pair ?? [])
  const turned = of.map((pair) => pairs.find((other) => same(pair, other)) ?? null)
  if (pairs.length === entries.length && pairs.length === of.length && turned.every(Boolean))
    return { of, told, exact: turned, ...noFlaws }
  return alignedTo(entries, of, told)
}

const noFlaws = { flaws: 0, unnamed: 0, missing: 0, others: 0 }

type Line = Pick<Repeat, 'exact' | keyof typeof noFlaws>

function alignedTo(
  entries: readonly Entry[],
  of: readonly Pair[],
  told: readonly Told[],
): Repeat | null {
  // rows[i] is the best way to tell the first shares with the first i entries.
  let rows: (Line | null)[] = entries.map(() => null)
  rows = [{ exact: [], ...noFlaws }, ...rows]
  for (const pair of of) {
    const next: (Line | null)[] = []
    for (let i = 0; i <= entries.length; i++) {
      const ways = [
        grown(rows[i], { missing: 1 }, null),
        i > 0 ? grown(rows[i - 1], flawOf(entries[i - 1]!, pair), entries[i - 1]!) : null,
        i > 1 && isParted(entries[i - 2]!, entries[i - 1]!, pair)
          ? grown(rows[i - 2], {}, null)
          : null,
      ]
      next.push(ways.reduce(fewer, null))
    }
    rows = next
  }
  const line = rows[entries.length]
  const holds = line && line.missing < of.length && otherThanNames(line) < Math.max(2, of.length)
  if (holds && line.flaws <= 1) return { of, told, ...line }
  if (losesOne(entries, of)) return { of, told, exact: [], ...noFlaws, flaws: 1 }
  return holds ? { of, told, ...line } : null
}

/** Flaws beside the names that could not be read. */
export const otherThanNames = ({ flaws, unnamed }: Pick<Repeat, 'flaws' | 'unnamed'>): number =>
  flaws - unnamed

/** One number or one name was lost, so that each behind it was given to its neighbour. */
function losesOne(entries: readonly Entry[], of: readonly Pair[]): boolean {
  const shares = entries.flatMap(({ share }) => (share ? [share.value] : []))
  const names = entries.flatMap(({ fibre }) => (fibre ? [family(fibre.fibre)] : []))
  const told = [shares.length, names.length].sort((a, b) => a - b)
  if (of.length < 2 || told[0] !== of.length - 1 || told[1] !== of.length) return false
  return (
    isAmong(
      shares,
      of.map(({ share }) => share.value),
    ) &&
    isAmong(
      names,
      of.map(({ fibre }) => family(fibre.fibre)),
    )
  )
}

/** All in their order, with others between or not. */
function isAmong<T>(few: readonly T[], all: readonly T[]): boolean {
  let found = 0
  for (const one of all) if (one === few[found]) found++
  return found === few.length
}

const fewer = (a: Line | null, b: Line | null): Line | null =>
  a && (!b || a.flaws <= b.flaws) ? a : b

type Flaw = Partial<Pick<Repeat, 'unnamed' | 'missing' | 'others'>>

/** `flaw` is null where the entry cannot stand for the share. */
function grown(
  line: Line | null | undefined,
  flaw: Flaw | null | 'none',
  entry: Entry | null,
): Line | null {
  if (!line || flaw === null) return null
  const pair = entry?.pair ?? null
  if (flaw === 'none') return { ...line, exact: [...line.exact, pair] }
  const { unnamed = 0, missing = 0, others = 0 } = flaw
  return {
    exact: [...line.exact, null],
    flaws: line.flaws + 1,
    unnamed: line.unnamed + unnamed,
    missing: line.missing + missing,
    others: line.others + others,
  }
}

function flawOf({ share, fibre }: Entry, pair: Pair): Flaw | null | 'none' {
  const sameName = fibre !== null && family(fibre.fibre) === family(pair.fibre.fibre)
  const sameShare = share?.value === pair.share.value
  if (sameName && sameShare) return 'none'
  if (sameName) {
    if (!share) return {}
    return isSlip(share.value, pair.share.value) ? { others: 1 } : null
  }
  // A name that was guessed from its letters, or is a code of two, may be anything.
  const unread = fibre === null || fibre.doubt === 'spelling' || fibre.code === true
  return sameShare && unread ? { unnamed: 1 } : null
}

/** The number and the name stand side by side and were not taken for a pair. */
const isParted = (a: Entry, b: Entry, pair: Pair): boolean =>
  [
    [a, b],
    [b, a],
  ].some(
    ([left, right]) =>
      left!.fibre === null &&
      right!.share === null &&
      left!.share?.value === pair.share.value &&
      right!.fibre !== null &&
      family(right!.fibre.fibre) === family(pair.fibre.fibre),
  )

/** One sign is another, is missing or was added. */
const isSlip = (read: number, meant: number): boolean =>
  lettersApart(String(read), String(meant), 1) <= 1
