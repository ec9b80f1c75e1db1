import { type Figure, memory, practice } from '../base/figure.ts'
import { type FibreKey, fibreOf } from './fibres.ts'
import { type IronFact, solePlateLimits } from './iron.ts'
import type { Block, FibreShare, LabelReading } from './reading.ts'

/** What the fibres bear: the garment fact `heat`, and the fibre that sets it. */
export interface FibreHeat {
  readonly heat: 'hot' | 'warm' | 'cool' | 'none' | 'unknown'
  readonly setBy: FibreKey | null
}

/** Elastane to here is an allowance, percent. Common practice, no source. */
export const elastaneAllowance = 10

/** "Other fibres" together, percent: Regulation (EU) 1007/2011, Art. 9 (from memory, unverified). */
export const otherFibresMost = 15

export const heatFigures: readonly Figure[] = [
  {
    figure: 'heat/elastane allowance',
    value: elastaneAllowance,
    unit: 'percent',
    source: practice,
  },
  {
    figure: 'heat/other fibres, most',
    value: otherFibresMost,
    unit: 'percent',
    source: `Regulation (EU) 1007/2011, Art. 9 (${memory})`,
  },
]

const unknown: FibreHeat = { heat: 'unknown', setBy: null }

/**
 * The most heat-sensitive fibre that matters in any part of the garment, lining too. A little elastane
 * counts only where the label does not itself say warm or hot. Anything not known is `unknown`, unless
 * a fibre that bears no iron is named beside it.
 */
export function heatOf(blocks: readonly Block[], iron: IronFact): FibreHeat {
  const barred = blocks.flatMap(({ fibres }) => fibres).find((share) => ceiling(share) === 0)
  if (barred) return { heat: 'none', setBy: barred.fibre }
  if (blocks.length === 0 || blocks.some((block) => !isKnown(block))) return unknown
  const counted = blocks.flatMap((block) =>
    block.fibres.filter((share) => !(labelAllowsHeat(iron) && isAllowance(share, block))),
  )
  if (counted.length === 0) return unknown
  const coldest = counted.reduce((a, b) => (ceiling(b) < ceiling(a) ? b : a))
  return { heat: heatAt(ceiling(coldest)), setBy: coldest.fibre }
}

/** The label itself says that a warm or a hot iron may come. */
export const labelAllowsHeat = (iron: IronFact): boolean => iron === 'warm' || iron === 'hot'

export const isKnown = (block: Block): boolean =>
  block.complete &&
  block.fibres.length > 0 &&
  block.fibres.every(({ fibre }) => fibre !== 'unknown') &&
  shareOf('other', block) <= otherFibresMost

export const isAllowance = ({ fibre }: FibreShare, block: Block): boolean =>
  fibre === 'elastane' && shareOf('elastane', block) <= elastaneAllowance

export const shareOf = (key: FibreKey, block: Block): number =>
  block.fibres.reduce((sum, { fibre, percent }) => (fibre === key ? sum + percent : sum), 0)

const ceiling = ({ fibre }: FibreShare): number => fibreOf(fibre).ironMaxC

const heatAt = (limit: number): FibreHeat['heat'] =>
  solePlateLimits.find(({ limitC }) => limitC === limit)?.level ?? 'none'

/** The garment fact `iron`; null stands for "there is no label". */
export function ironFact(reading: Pick<LabelReading, 'iron'> | null): IronFact {
  if (reading === null) return 'missing'
  return reading.iron.level ?? 'silent'
}
