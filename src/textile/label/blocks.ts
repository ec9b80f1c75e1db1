import { type Figure, memory, practice } from '../../base/figure.ts'
import type { FibreKey } from '../fibres.ts'
import type { Block, FibreShare, ProblemCode } from '../reading.ts'
import type { Pair } from './pairing.ts'

type Group = readonly Pair[]

export interface Grouped {
  readonly groups: readonly Group[]
  readonly problems: readonly ProblemCode[]
}

/** Shares printed to a tenth may miss 100 by this much, percent. */
const roundingPercent = 0.2
export const near = (total: number): boolean => Math.abs(total - 100) <= roundingPercent

/** A part whose shares miss 100 by no more is taken as whole, percent; a nearer miss is told. */
export const wholeWithin = 3
export const totalOf = (pairs: readonly Pair[]): number =>
  Math.round(pairs.reduce((sum, { share }) => sum + share.value, 0) * 100) / 100

/** The make-ups that one part's shares tell: one, however many languages print it. */
export function groupPairs(pairs: readonly Pair[]): Grouped {
  if (pairs.length === 0) return { groups: [], problems: [] }
  const { full, rest } = cutAtHundred(pairs)
  const whole = full.length > 0 ? distinct(full) : []
  const explained = rest.every((pair) =>
    whole.some((group) => group.some((known) => same(known, pair))),
  )
  if (whole.length === 1 && explained) return { groups: whole, problems: [] }

  const once = withoutRepeats(pairs)
  if (near(totalOf(once))) return { groups: [once], problems: [] }
  if (whole.length > 0 && explained) return { groups: whole, problems: [disagreement(whole)] }
  if (whole.length > 0) return { groups: whole, problems: ['languages_disagree'] }
  return { groups: [once], problems: [] }
}

/** Two make-ups in one language are alternatives; in several languages a contradiction. */
function disagreement(groups: readonly Group[]): ProblemCode {
  const [first, ...others] = groups.flat().map(({ fibre }) => fibre.languages)
  const shared = first!.some((code) => others.every((codes) => codes.includes(code)))
  return shared ? 'alternatives' : 'languages_disagree'
}

function cutAtHundred(pairs: readonly Pair[]): { full: Pair[][]; rest: readonly Pair[] } {
  const full: Pair[][] = []
  let open: Pair[] = []
  for (const pair of pairs) {
    open.push(pair)
    if (near(totalOf(open))) {
      full.push(open)
      open = []
    } else if (totalOf(open) > 100) return { full: [], rest: pairs }
  }
  return { full, rest: open }
}

function distinct(groups: readonly Pair[][]): Pair[][] {
  const found: Pair[][] = []
  for (const group of groups)
    if (!found.some((other) => other.length === group.length && alike(other, group)))
      found.push(group)
  return found
}

function alike(a: readonly Pair[], b: readonly Pair[]): boolean {
  const left = [...b]
  return a.every((pair) => {
    const at = left.findIndex((other) => same(pair, other))
    if (at >= 0) left.splice(at, 1)
    return at >= 0
  })
}

const same = (a: Pair, b: Pair): boolean =>
  a.share.value === b.share.value && family(a.fibre.fibre) === family(b.fibre.fibre)

// One label may say "wool" in one language and "virgin wool" in another, or give polyamide its number once.
const families: Partial<Record<FibreKey, FibreKey>> = {
  virgin_wool: 'wool',
  nylon6: 'polyamide',
  nylon66: 'polyamide',
  polyurethane: 'elastane',
}
export const family = (fibre: FibreKey): FibreKey => families[fibre] ?? fibre

function withoutRepeats(pairs: readonly Pair[]): Pair[] {
  const once: Pair[] = []
  for (const pair of pairs) if (!once.some((known) => same(known, pair))) once.push(pair)
  return once
}

/** The one word of Japanese and Korean stands for elastane up to here, percent. */
const mostElastane = 30

export const shareFigures: readonly Figure[] = [
  {
    figure: 'label/shares whole within',
    value: wholeWithin,
    unit: 'percent',
    source: `16 CFR 303.43, a fibre may be off by three points (${memory})`,
  },
  {
    figure: 'label/shares exact within',
    value: roundingPercent,
    unit: 'percent',
    source: practice,
  },
  {
    figure: 'label/elastane by its Japanese or Korean name, most',
    value: mostElastane,
    unit: 'percent',
    source: memory,
  },
]

const eitherName: ReadonlySet<string> = new Set(['ポリウレタン', '폴리우레탄'])

/** The word may be either fibre, and the share does not tell which. */
export const isEither = ({ fibre, share }: Pair): boolean =>
  eitherName.has(fibre.raw) && share.value > mostElastane && share.value < 100

/** Japanese and Korean use one word for elastane and polyurethane; a small share is elastane. */
function settled({ fibre, share, detail }: Pair, alone: boolean): FibreShare {
  const key: FibreKey = eitherName.has(fibre.raw)
    ? !alone && share.value <= mostElastane
      ? 'elastane'
      : 'polyurethane'
    : fibre.fibre
  return { fibre: key, percent: share.value, ...(detail ? { detail } : {}) }
}

export function blockOf(section: string | null, group: Group): Block {
  const total = totalOf(group)
  return {
    section,
    fibres: group.map((pair) => settled(pair, group.length === 1)),
    total,
    complete: Math.abs(total - 100) <= wholeWithin,
  }
}
