import { type Figure, practice } from '../base/figure.ts'
import type { Facts, Size } from './facts.ts'
import { type Flat, flatOf, smallest } from './garment-sizes.ts'
import { down, type Panel, type Rect } from './panel-losses.ts'
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

/** A hole nobody has placed yet, with its weak rim, inches. Common practice, no source. */
const holeIn = 4

/**
 * From the edge, inches: one and a half small squares, so that the hole falls into the pieces and not
 * into the cloth that is left over between them.
 */
const holeAtIn = 7.5

/** Half a small square above the hem, inches, where all above it is lost anyway. */
const nearEdgeIn = 2.5

export const holeFigures: readonly Figure[] = [
  { figure: 'panels/hole with its rim', value: holeIn, unit: 'in', source: practice },
  { figure: 'panels/hole from the edge', value: holeAtIn, unit: 'in', source: practice },
  { figure: 'panels/hole above the hem', value: nearEdgeIn, unit: 'in', source: practice },
]

const holeFrom = (side: number): number =>
  side >= holeAtIn + holeIn ? side - holeAtIn - holeIn : down(Math.max(0, side - holeIn) / 2)

const overlap = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h

/** Where the hole costs cloth: not within what is lost anyway, as long as there is such a place. */
function holeOf({ w, h, defects }: Panel): Rect {
  const [x, y] = [holeFrom(w), holeFrom(h)]
  const places = [x, w - holeIn - x].flatMap((left) =>
    [y, h - holeIn - y, Math.max(0, h - holeIn - nearEdgeIn)].map(
      (top): Rect => ({ what: 'hole', x: left, y: top, w: holeIn, h: holeIn }),
    ),
  )
  return places.find((at) => !defects.some((lost) => overlap(at, lost))) ?? places[0]!
}

const areaOf = ({ w, h }: Panel): number => w * h

/** One copy of the largest panel gets the hole; of two as large the back, which has no pouch. */
function pierced(panels: readonly Panel[]): Panel[] {
  const largest = panels.reduce((most, one) => (areaOf(one) >= areaOf(most) ? one : most))
  const worn = { ...largest, count: 1, defects: [...largest.defects, holeOf(largest)] }
  const rest = { ...largest, count: largest.count - 1 }
  return panels.flatMap((panel) =>
    panel !== largest ? [panel] : rest.count > 0 ? [worn, rest] : [worn],
  )
}

/** What a garment of that size measures laid flat, inches; null where only measuring tells. */
export const flatMeasures = (kind: Facts['kind'], size: GarmentSize): Flat | null =>
  typeof size === 'object' ? size : flatOf(kind, size === 'unknown' ? smallest(kind) : size)

/**
 * The panels a garment gives after teardown, seams off. Empty where only measuring tells. A hole whose
 * place is not known is laid into the largest panel.
 */
export function panelsOf(
  kind: Facts['kind'],
  size: GarmentSize,
  { wear }: Partial<Pick<Facts, 'wear'>> = {},
): Panel[] {
  const flat = flatMeasures(kind, size)
  if (!flat) return []
  const panels = byKind[kind](flat).filter(({ w, h }) => w > 0 && h > 0)
  const isWorn = wear === 'holes' || wear === 'shattered' || wear === 'unknown'
  return isWorn && panels.length > 0 ? pierced(panels) : panels
}
