import type { Figure } from '../base/figure.ts'
import type { Facts } from './facts.ts'

/** How a finished quilt may be washed, the mildest last. */
export const washes = ['gentle', 'hand', 'none'] as const
export type Wash = (typeof washes)[number]

/** How it may be dried, the mildest last. Never in a tumble dryer: one film or one stretchy piece is enough. */
export const dryings = ['line', 'flat'] as const
export type Drying = (typeof dryings)[number]

/** The warmest water of each way, °C; null: no water. */
export const washC: Readonly<Record<Wash, number | null>> = { gentle: 30, hand: 40, none: null }

const standard = 'ISO 3758:2012, care labelling by symbols, as in national guides (secondary)'

export const careFigures: readonly Figure[] = [
  { figure: 'care/gentle wash at most', value: washC.gentle, unit: '°C', source: standard },
  { figure: 'care/hand wash at most', value: washC.hand, unit: '°C', source: standard },
]

/** A garment that is in the quilt, as far as its washing goes. */
export interface PieceCare {
  readonly n: number
  readonly facts: Facts
  /** The hottest sole, °C; null: no iron. */
  readonly ceilingC: number | null
  /** Signs that were picked off its label: "wash-hand", "dry-flat". */
  readonly signs: readonly string[]
}

export interface FinishedCare {
  readonly wash: Wash
  readonly drying: Drying
  readonly ceilingC: number | null
  /** Numbers of the garments that decide, in the order of the list; empty: bought cloth alone. */
  readonly washBy: readonly number[]
  readonly ironBy: readonly number[]
}

type Test = (facts: Facts, signs: readonly string[]) => boolean

/**
 * What water would harm: what was never washed, hides and fur, what is historic or falls apart, ties (cut on the
 * bias, often acetate without a label), dye that runs. Common practice, no source.
 */
const noWater: Test = (facts, signs) =>
  signs.includes('wash-none') ||
  facts.wash === 'never' ||
  ['leather', 'fur'].includes(facts.surface) ||
  facts.age === 'historic' ||
  facts.wear === 'shattered' ||
  facts.kind === 'tie' ||
  facts.bleed === 'bleeds'

/**
 * What a drum would wear: what nobody knows to have been washed or to keep its dye, thin, old, fine, open or
 * stuck-on things. What is not known counts as the worse. Common practice, no source.
 */
const byHand: Test = (facts, signs) =>
  signs.includes('wash-hand') ||
  facts.wash === 'unwashed' ||
  facts.bleed === 'untested' ||
  ['thin', 'holes', 'unknown'].includes(facts.wear) ||
  ['old', 'unknown'].includes(facts.age) ||
  ['fine', 'padded', 'unknown'].includes(facts.weight) ||
  ['loose-knit', 'pile', 'film', 'unknown'].includes(facts.surface) ||
  ['film', 'unknown'].includes(facts.printMake) ||
  ['meltable', 'glued', 'unknown'].includes(facts.trims) ||
  ['none', 'unknown'].includes(facts.heat)

export const washOf = ({ facts, signs }: Pick<PieceCare, 'facts' | 'signs'>): Wash =>
  noWater(facts, signs) ? 'none' : byHand(facts, signs) ? 'hand' : 'gentle'

const isFlat = ({ facts, signs }: PieceCare): boolean =>
  signs.includes('dry-flat') ||
  washOf({ facts, signs }) !== 'gentle' ||
  ['knit', 'loose-knit'].includes(facts.surface) ||
  facts.stretch !== 'none'

const heatOf = ({ ceilingC }: PieceCare): number => ceilingC ?? 0

/** The finished quilt's care: of its pieces the least washable decides, and the coldest for the iron. */
export function finishedCare(pieces: readonly PieceCare[]): FinishedCare {
  const rank = (piece: PieceCare): number => washes.indexOf(washOf(piece))
  const mildest = Math.max(0, ...pieces.map(rank))
  const coldest = Math.min(...pieces.map(heatOf))
  return {
    wash: washes[mildest]!,
    drying: pieces.some(isFlat) ? 'flat' : 'line',
    ceilingC: pieces.length > 0 && coldest > 0 ? coldest : null,
    washBy: mildest === 0 ? [] : pieces.filter((one) => rank(one) === mildest).map(({ n }) => n),
    ironBy: pieces.filter((one) => heatOf(one) === coldest).map(({ n }) => n),
  }
}
