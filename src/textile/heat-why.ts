import { fibreOf } from './fibres.ts'
import {
  elastaneAllowance,
  type FibreHeat,
  heatFigures,
  heatOf,
  isAllowance,
  isKnown,
  labelAllowsHeat,
  otherFibresMost,
  shareOf,
} from './heat.ts'
import type { IronFact } from './iron.ts'
import type { Block, FibreShare } from './reading.ts'

/** Why the fibres bear what they bear. */
export type HeatReason =
  /** A fibre that bears no iron is named, however little of it. */
  | 'no-iron-fibre'
  | 'no-shares'
  | 'not-100-percent'
  | 'fibre-not-known'
  | 'too-many-others'
  | 'coldest-fibre'
  /** Nothing but elastane that is not counted. */
  | 'nothing-counts'

/** Why a little elastane was left out of account, or was not. */
export type ElastaneReason =
  | 'none-named'
  | 'left-out'
  | 'more-than-allowed'
  | 'label-allows-no-heat'

/** A share of a fibre as it was weighed. `ironMaxC` is a sole-plate limit in °C; 0: no iron. */
export interface WeighedShare extends Pick<FibreShare, 'fibre' | 'percent'> {
  readonly ironMaxC: number
  readonly counts: boolean
  readonly source: string
}

export interface WeighedBlock extends Pick<Block, 'section' | 'total' | 'complete'> {
  readonly shares: readonly WeighedShare[]
  readonly elastane: {
    readonly percent: number
    readonly allowedPercent: number
    readonly leftOut: boolean
    readonly because: ElastaneReason
    readonly source: string
  }
  readonly others: {
    readonly percent: number
    readonly allowedPercent: number
    readonly source: string
  }
}

/** What the fibres bear, with all that was weighed. `setBy` is one of the shares, or null. */
export interface HeatWhy extends FibreHeat {
  readonly because: HeatReason
  /** The label's own ironing line, which decides on a little elastane. */
  readonly iron: IronFact
  readonly blocks: readonly WeighedBlock[]
}

const sourceOf = (figure: string): string =>
  heatFigures.find((one) => one.figure === figure)!.source

function elastaneReason(block: Block, iron: IronFact): ElastaneReason {
  const percent = shareOf('elastane', block)
  if (percent === 0) return 'none-named'
  if (percent > elastaneAllowance) return 'more-than-allowed'
  return labelAllowsHeat(iron) ? 'left-out' : 'label-allows-no-heat'
}

function weighedBlock(block: Block, iron: IronFact): WeighedBlock {
  const because = elastaneReason(block, iron)
  return {
    section: block.section,
    total: block.total,
    complete: block.complete,
    shares: block.fibres.map((share) => {
      const { ironMaxC, source } = fibreOf(share.fibre)
      const counts = ironMaxC === 0 || !(labelAllowsHeat(iron) && isAllowance(share, block))
      return { fibre: share.fibre, percent: share.percent, ironMaxC, counts, source }
    }),
    elastane: {
      percent: shareOf('elastane', block),
      allowedPercent: elastaneAllowance,
      leftOut: because === 'left-out',
      because,
      source: sourceOf('heat/elastane allowance'),
    },
    others: {
      percent: shareOf('other', block),
      allowedPercent: otherFibresMost,
      source: sourceOf('heat/other fibres, most'),
    },
  }
}

function reasonOf({ heat, setBy }: FibreHeat, blocks: readonly Block[]): HeatReason {
  if (setBy) return heat === 'none' ? 'no-iron-fibre' : 'coldest-fibre'
  const doubtful = blocks.find((block) => !isKnown(block))
  if (blocks.length === 0 || doubtful?.fibres.length === 0) return 'no-shares'
  if (!doubtful) return 'nothing-counts'
  if (!doubtful.complete) return 'not-100-percent'
  return doubtful.fibres.some(({ fibre }) => fibre === 'unknown')
    ? 'fibre-not-known'
    : 'too-many-others'
}

/** The heat of `heatOf`, and how each share was weighed for it. */
export function heatWhy(blocks: readonly Block[], iron: IronFact): HeatWhy {
  const found = heatOf(blocks, iron)
  return {
    ...found,
    because: reasonOf(found, blocks),
    iron,
    blocks: blocks.map((block) => weighedBlock(block, iron)),
  }
}
