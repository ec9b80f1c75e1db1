import type { Figure } from '../base/figure.ts'
import type { Facts, Size } from '../garment/facts.ts'
import { type Flat, flatOf, smallest } from '../garment/garment-sizes.ts'
import {
  figureOf,
  type Panel,
  panelFigures,
  type Rect,
  type Trim,
} from '../garment/panel-losses.ts'
import { holeFigures } from '../garment/panel-spots.ts'
import { flatMeasures, type GarmentSize, panelsOf } from '../garment/panels.ts'
import type { Spot } from '../garment/spots.ts'
import type { Extent } from './layout.ts'
import { enoughFrom, pieceCount, piecesOf, yardstick, yieldFigures, yieldOf } from './yield.ts'

/** Where a number stands among the figures, and its source. */
export type Named = Pick<Figure, 'figure' | 'source'>

/** One panel, inches: as it lies in the garment, what its edges cost, what is left, and what is lost in it. */
export interface PanelWhy {
  readonly name: Panel['name']
  readonly count: number
  readonly from: Extent
  readonly off: readonly (Trim & Named)[]
  readonly left: Extent
  readonly lost: readonly (Rect & Named)[]
  /** Small squares of all its copies. */
  readonly pieces: number
}

/** What a garment's yield follows from. A graphic, and stains that nobody marked on a picture, take nothing off here. */
export interface ClothWhy {
  readonly kind: Facts['kind']
  readonly size: GarmentSize
  /** An untold size is counted as a small one; null where only measuring tells. */
  readonly countedAs: Size | 'measured' | null
  readonly flat: (Flat & { readonly source: string }) | null
  readonly wear: Facts['wear']
  readonly panels: readonly PanelWhy[]
  readonly piece: Extent & Named
  readonly pieces: number
  readonly enoughFrom: { readonly pieces: number } & Named
  readonly yield: Facts['yield']
}

const named = (figure: string): Named => {
  const found = [...panelFigures, ...holeFigures, ...yieldFigures].find(
    (one) => one.figure === figure,
  )!
  return { figure, source: found.source }
}

const panelWhy = (panel: Panel): PanelWhy => ({
  name: panel.name,
  count: panel.count,
  from: panel.from ?? { w: panel.w, h: panel.h },
  off: (panel.off ?? []).map((trim) => ({ ...trim, ...named(figureOf[trim.what]) })),
  left: { w: panel.w, h: panel.h },
  lost: panel.defects.map((lost) => ({ ...lost, ...named(figureOf[lost.what ?? 'hole']) })),
  pieces: pieceCount(panel, yardstick),
})

function countedAs(kind: Facts['kind'], size: GarmentSize): ClothWhy['countedAs'] {
  if (!flatMeasures(kind, size)) return null
  if (typeof size === 'object') return 'measured'
  return size === 'unknown' ? smallest(kind) : size
}

function flatWhy(kind: Facts['kind'], size: GarmentSize): ClothWhy['flat'] {
  if (typeof size === 'object') return { ...size, source: 'measured on the garment' }
  return flatOf(kind, size === 'unknown' ? smallest(kind) : size)
}

/** The panels behind a yield, each number with where it comes from. */
export function clothWhy(
  kind: Facts['kind'],
  size: GarmentSize,
  { wear }: Pick<Facts, 'wear'>,
  spots: readonly Spot[] = [],
): ClothWhy {
  const panels = panelsOf(kind, size, { wear }, spots)
  const pieces = piecesOf(panels, yardstick)
  return {
    kind,
    size,
    countedAs: countedAs(kind, size),
    flat: flatWhy(kind, size),
    wear,
    panels: panels.map(panelWhy),
    piece: { ...yardstick, ...named('yield/small square') },
    pieces,
    enoughFrom: { pieces: enoughFrom, ...named('yield/enough from') },
    yield: panels.length === 0 ? 'unknown' : yieldOf(pieces),
  }
}
