import type { Facts, Size } from './facts.ts'
import { type Flat, flatOf, smallest } from './garment-sizes.ts'

/** Inches; x across and y down from the panel's upper left corner. */
export interface Rect {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** A piece of cloth after teardown. `count` alike panels; defects take no piece of the quilt. */
export interface Panel {
  readonly name: 'front' | 'half-front' | 'back' | 'sleeve' | 'leg' | 'cloth' | 'tie-end'
  readonly w: number
  readonly h: number
  readonly count: number
  readonly defects: readonly Rect[]
}

/** As on the label, or laid flat and measured. */
export type GarmentSize = Size | Flat

// Cloth is never promised: panels are rounded down to the quarter inch, defects up.
const down = (inches: number): number => Math.max(0, Math.floor(inches * 4 + 1e-9) / 4)
const up = (inches: number): number => Math.ceil(inches * 4 - 1e-9) / 4

/** Lost with the side seams, each side, inches: 2 to 3 cm, from memory; half of it on baby clothes. */
const sideLoss = (widthIn: number): number => (widthIn < 12 ? 0.5 : 1)

/** Lost with shoulder seam and hem together, inches. Common practice, no source. */
const hemLoss = (lengthIn: number): number => (lengthIn < 16 ? 1 : 1.5)

const corners = (w: number, at: { w: number; h: number; y: number }): Rect[] => {
  const [cw, ch] = [up(at.w), up(at.h)]
  const y = down(at.y)
  return [
    { x: 0, y, w: cw, h: ch },
    { x: w - cw, y, w: cw, h: ch },
  ]
}

/** A hole in the middle of the width. */
const middle = (w: number, hole: { w: number; h: number; y: number }): Rect => {
  const hw = up(hole.w)
  return { x: down((w - hw) / 2), y: hole.y, w: hw + 0.25, h: up(hole.h) }
}

/**
 * Shares of a body's width and length that armholes, neckline and sleeves take.
 * Common practice, no source.
 */
const shape = {
  armhole: { w: 0.1, h: 0.3 },
  neck: { w: 0.38, front: 0.2, back: 0.08 },
  shortSleeve: { w: 0.6, h: 0.24 },
  longSleeve: { w: 0.7, h: 0.85 },
  cap: { w: 0.18, h: 0.3 },
  cuff: { w: 0.15, h: 0.4 },
  legTaper: { w: 0.15, h: 0.5 },
  legOpening: { w: 0.3, h: 0.25 },
}

const bodyExtent = ({ widthIn, lengthIn }: Flat) => ({
  w: down(widthIn - 2 * sideLoss(widthIn)),
  h: down(lengthIn - hemLoss(lengthIn)),
})

const armholes = (w: number, h: number): Rect[] =>
  corners(w, { w: w * shape.armhole.w, h: h * shape.armhole.h, y: 0 })

function whole(
  flat: Flat,
  side: 'front' | 'back',
  more: (w: number, h: number) => Rect[] = () => [],
): Panel {
  const { w, h } = bodyExtent(flat)
  const neck = middle(w, {
    w: flat.widthIn * shape.neck.w,
    h: flat.widthIn * shape.neck[side],
    y: 0,
  })
  return { name: side, w, h, count: 1, defects: [...armholes(w, h), neck, ...more(w, h)] }
}

/** One of two fronts beside a placket. The armhole lies at the left, the neckline at the right. */
function halfFronts(flat: Flat, pocket: boolean): Panel[] {
  const { w: full, h } = bodyExtent(flat)
  const w = down(full / 2 - placketIn)
  const neckW = up((flat.widthIn * shape.neck.w) / 2)
  const half: Panel = {
    name: 'half-front',
    w,
    h,
    count: 1,
    defects: [
      armholes(full, h)[0]!,
      { x: w - neckW, y: 0, w: neckW, h: up(flat.widthIn * shape.neck.front) },
    ],
  }
  const pocketAt = { x: down((w - pocketIn.w) / 2), y: down(h * 0.22), ...pocketIn }
  if (!pocket || w < pocketIn.w) return [{ ...half, count: 2 }]
  return [half, { ...half, defects: [...half.defects, pocketAt] }]
}

/** Cloth lost to each side of a button band or zip, inches. Common practice, no source. */
const placketIn = 1.5

/** A chest pocket: unfaded cloth and needle holes, inches. Common practice, no source. */
const pocketIn = { w: 5, h: 6 }

function sleeves(flat: Flat, length: 'shortSleeve' | 'longSleeve'): Panel {
  const w = down(flat.widthIn * shape[length].w)
  const h = down(flat.widthIn * shape[length].h)
  const cap = corners(w, { w: w * shape.cap.w, h: h * shape.cap.h, y: 0 })
  const cuff = corners(w, { w: w * shape.cuff.w, h: h * shape.cuff.h, y: h * (1 - shape.cuff.h) })
  return {
    name: 'sleeve',
    w,
    h,
    count: 2,
    defects: length === 'longSleeve' ? [...cap, ...cuff] : cap,
  }
}

function legs({ widthIn, lengthIn }: Flat): Panel[] {
  const w = down(widthIn - 1.5 * sideLoss(widthIn))
  const h = down(lengthIn - 2)
  const taper = corners(w, {
    w: w * shape.legTaper.w,
    h: h * shape.legTaper.h,
    y: h * (1 - shape.legTaper.h),
  })
  return [{ name: 'leg', w, h, count: 4, defects: taper }]
}

const legOpenings = (w: number, h: number): Rect[] =>
  corners(w, {
    w: w * shape.legOpening.w,
    h: h * shape.legOpening.h,
    y: h * (1 - shape.legOpening.h),
  })

/** A zip or button opening from the neck, and the pouch of a hoodie. Common practice, no source. */
const neckOpening = (w: number, h: number): Rect[] => [middle(w, { w: 3, h: h * 0.3, y: 0 })]
const pouch = (w: number, h: number): Rect[] => [
  middle(w, { w: w * 0.65, h: h * 0.32, y: down(h * 0.64) }),
]

const plain = (flat: Flat, name: Panel['name'], lost: number, count = 1): Panel => ({
  name,
  w: down(flat.widthIn - lost),
  h: down(flat.lengthIn - lost),
  count,
  defects: [],
})

const knitTop = (flat: Flat, length: 'shortSleeve' | 'longSleeve'): Panel[] => [
  whole(flat, 'front'),
  whole(flat, 'back'),
  sleeves(flat, length),
]

const openTop = (flat: Flat, length: 'shortSleeve' | 'longSleeve', pocket: boolean): Panel[] => [
  ...halfFronts(flat, pocket),
  whole(flat, 'back'),
  sleeves(flat, length),
]

/** Waistband and hem off, inches. Common practice, no source. */
const skirtPanels = ({ widthIn, lengthIn }: Flat): Panel[] => [
  plain({ widthIn: widthIn - 1, lengthIn: lengthIn - 2 }, 'cloth', 1, 2),
]

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
  thermal: (flat) => knitTop(flat, 'longSleeve'),
  'button-shirt': (flat) => openTop(flat, 'longSleeve', true),
  blouse: (flat) => openTop(flat, 'shortSleeve', false),
  jeans: legs,
  trousers: legs,
  skirt: skirtPanels,
  dress: (flat) => [whole(flat, 'front'), whole(flat, 'back')],
  pyjamas: (flat) => openTop(flat, 'longSleeve', true),
  'baby-suit': (flat) => [whole(flat, 'front', legOpenings), whole(flat, 'back', legOpenings)],
  blanket: (flat) => [plain(flat, 'cloth', 1)],
  tie: (flat) => [
    { ...plain(flat, 'tie-end', 0), defects: tieTip(flat.widthIn, flat.lengthIn) },
    plain({ widthIn: flat.widthIn * 0.55, lengthIn: flat.lengthIn * 0.85 }, 'tie-end', 0),
  ],
  scarf: (flat) => [plain(flat, 'cloth', 1)],
  apron: (flat) => [plain(flat, 'cloth', 2)],
  uniform: (flat) => openTop(flat, 'longSleeve', true),
  swimwear: (flat) => [whole(flat, 'front', legOpenings), whole(flat, 'back', legOpenings)],
  coat: (flat) => openTop(flat, 'longSleeve', false),
  other: () => [],
}

/** The pointed end of a tie. */
const tieTip = (w: number, h: number): Rect[] =>
  corners(down(w), { w: w / 2, h: w / 2, y: h - w / 2 })

/** A hole nobody has placed yet, with its weak rim, inches. Common practice, no source. */
const holeIn = 4

/**
 * From the edge, inches: one and a half small squares, so that the hole falls into the pieces and not
 * into the cloth that is left over between them.
 */
const holeAtIn = 7.5

const holeFrom = (side: number): number =>
  side >= holeAtIn + holeIn ? side - holeAtIn - holeIn : down(Math.max(0, side - holeIn) / 2)

const areaOf = ({ w, h }: Panel): number => w * h

/** One copy of the largest panel gets the hole; of two as large the back, which has no pouch. */
function pierced(panels: readonly Panel[]): Panel[] {
  const largest = panels.reduce((most, one) => (areaOf(one) >= areaOf(most) ? one : most))
  const hole = { x: holeFrom(largest.w), y: holeFrom(largest.h), w: holeIn, h: holeIn }
  const worn = { ...largest, count: 1, defects: [...largest.defects, hole] }
  const rest = { ...largest, count: largest.count - 1 }
  return panels.flatMap((panel) =>
    panel !== largest ? [panel] : rest.count > 0 ? [worn, rest] : [worn],
  )
}

const flatMeasures = (kind: Facts['kind'], size: GarmentSize): Flat | null =>
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
