import type { Facts, Size } from './facts.ts'
import { type Flat, flatOf, smallest } from './garment-sizes.ts'
import type { Panel, Rect } from './panel-losses.ts'
import {
  apronPanels,
  backZip,
  knitTop,
  legOpenings,
  legs,
  neckOpening,
  openTop,
  plain,
  pouch,
  skirtPanels,
  sleeves,
  tieEnds,
  vent,
  waistSeam,
  whole,
} from './panel-shapes.ts'
import { worn } from './panel-spots.ts'
import type { Spot } from './spots.ts'

export type { Panel, Rect }

/** As on the label, or laid flat and measured. */
export type GarmentSize = Size | Flat

const byKind: Readonly<Record<Facts['kind'], (flat: Flat) => Panel[]>> = {
  tshirt: (flat) => knitTop(flat, 'shortSleeve'),
  'long-sleeve': (flat) => knitTop(flat, 'longSleeve'),
  polo: (flat) => [
    whole(flat, 'front', neckOpening),
    whole(flat, 'back'),
    sleeves(flat, 'shortSleeve'),
  ],
  jersey: (flat) => knitTop(flat, 'shortSleeve'),
  sweatshirt: (flat) => knitTop(flat, 'longSleeve'),
  hoodie: (flat) => [whole(flat, 'front', pouch), whole(flat, 'back'), sleeves(flat, 'longSleeve')],
  jumper: (flat) => knitTop(flat, 'longSleeve'),
  thermal: (flat) => [
    whole(flat, 'front', neckOpening),
    whole(flat, 'back'),
    sleeves(flat, 'longSleeve'),
  ],
  'button-shirt': (flat) => openTop(flat, 'longSleeve', { on: 1, at: 'chest' }),
  blouse: (flat) => openTop(flat, 'shortSleeve', { on: 0, at: 'chest' }),
  jeans: legs,
  trousers: legs,
  skirt: skirtPanels,
  dress: (flat) => [whole(flat, 'front', waistSeam), whole(flat, 'back', backZip)],
  pyjamas: (flat) => openTop(flat, 'longSleeve', { on: 1, at: 'chest' }),
  'baby-suit': (flat) => [whole(flat, 'front', legOpenings), whole(flat, 'back', legOpenings)],
  blanket: (flat) => [plain(flat, 'cloth', 'cloth')],
  tie: tieEnds,
  scarf: (flat) => [plain(flat, 'cloth', 'cloth')],
  apron: apronPanels,
  uniform: (flat) => openTop(flat, 'shortSleeve', { on: 2, at: 'chest' }),
  swimwear: (flat) => [whole(flat, 'front', legOpenings), whole(flat, 'back', legOpenings)],
  coat: (flat) => openTop(flat, 'longSleeve', { on: 2, at: 'hip' }, vent),
  other: () => [],
}

/** What a garment of that size measures laid flat, inches; null where only measuring tells. */
export const flatMeasures = (kind: Facts['kind'], size: GarmentSize): Flat | null =>
  typeof size === 'object' ? size : flatOf(kind, size === 'unknown' ? smallest(kind) : size)

/**
 * The panels a garment gives after teardown, seams off, and less what holes and marked spots cost. Empty where
 * only measuring tells.
 */
export function panelsOf(
  kind: Facts['kind'],
  size: GarmentSize,
  { wear }: Partial<Pick<Facts, 'wear'>> = {},
  spots: readonly Spot[] = [],
): Panel[] {
  const flat = flatMeasures(kind, size)
  if (!flat) return []
  const panels = byKind[kind](flat).filter(({ w, h }) => w > 0 && h > 0)
  return worn(kind, panels, wear, spots)
}
