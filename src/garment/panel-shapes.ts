import { type Figure, memory, practice } from '../base/figure.ts'
import type { Flat } from './garment-sizes.ts'

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

// Cloth is never promised: panels are rounded down to the quarter inch, defects up.
export const down = (inches: number): number => Math.max(0, Math.floor(inches * 4 + 1e-9) / 4)
const up = (inches: number): number => Math.ceil(inches * 4 - 1e-9) / 4

/** Lost with the side seams, each side, inches: 2 to 3 cm, from memory; half of it on baby clothes. */
const sideLossIn = { baby: 0.5, other: 1 }
const sideLoss = (widthIn: number): number => sideLossIn[widthIn < 12 ? 'baby' : 'other']

/** Lost with shoulder seam and hem together, inches. Common practice, no source. */
const hemLossIn = { short: 1, other: 1.5 }
const hemLoss = (lengthIn: number): number => hemLossIn[lengthIn < 16 ? 'short' : 'other']

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
  tieTaper: { w: 0.15, h: 0.4 },
  bib: { w: 0.28, h: 0.35 },
  apronPocket: { w: 0.4, h: 0.25, y: 0.4 },
  neckZip: { h: 0.45 },
  waist: { y: 0.4 },
  hemVent: { h: 0.3 },
  skirtZip: { h: 0.35 },
  neckPlacket: { h: 0.3 },
  pouch: { w: 0.65, h: 0.32, y: 0.64 },
}

const bodyExtent = ({ widthIn, lengthIn }: Flat) => ({
  w: down(widthIn - 2 * sideLoss(widthIn)),
  h: down(lengthIn - hemLoss(lengthIn)),
})

const armholes = (w: number, h: number): Rect[] =>
  corners(w, { w: w * shape.armhole.w, h: h * shape.armhole.h, y: 0 })

export function whole(
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

/** How many of the two fronts carry a pocket, and whether it sits on the chest or at the hip. */
export interface Pockets {
  readonly on: 0 | 1 | 2
  readonly at: keyof typeof pocketAt
}

/** One of two fronts beside a placket. The armhole lies at the left, the neckline at the right. */
function halfFronts(flat: Flat, { on, at }: Pockets): Panel[] {
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
  if (on === 0 || w < pocketIn.w) return [{ ...half, count: 2 }]
  const pocket = { x: down((w - pocketIn.w) / 2), y: down(h * pocketAt[at]), ...pocketIn }
  const pocketed = { ...half, count: on, defects: [...half.defects, pocket] }
  return on === 2 ? [pocketed] : [half, pocketed]
}

/** Cloth lost to each side of a button band or zip, inches. Common practice, no source. */
const placketIn = 1.5

/** A leg's two seams, as a multiple of a side seam's loss; its hem with the crotch, inches. */
const legLossIn = { w: 1.5, h: 2 }

/** A patch pocket: unfaded cloth and needle holes, inches. Common practice, no source. */
const pocketIn = { w: 5, h: 6 }

/** Where a pocket begins, as a share of the length. Common practice, no source. */
const pocketAt = { chest: 0.22, hip: 0.6 }

/** A shirt's yoke is two layers with a seam below: its depth at the top of the back, inches. */
const yokeIn = 4.5

/** A zip, placket or vent with its turned edges, and the seam that joins bodice and skirt, inches. */
const zipIn = 3
const waistSeamIn = 1

const inches = (figure: string, value: unknown, source = practice): Figure => ({
  figure: `panels/${figure}`,
  value,
  unit: 'in',
  source,
})

export const panelFigures: readonly Figure[] = [
  inches('lost with the side seams', sideLossIn, memory),
  inches('lost with shoulder and hem', hemLossIn),
  inches('button band', placketIn),
  inches('patch pocket', pocketIn),
  inches('yoke', yokeIn),
  inches('lost with the leg seams (times a side seam) and hem', legLossIn),
  inches('zip, placket or vent', zipIn),
  inches('waist seam', waistSeamIn),
  {
    figure: 'panels/patch pocket, share of the length above it',
    value: pocketAt,
    source: practice,
  },
  ...Object.entries(shape).map(([name, value]) => ({
    figure: `panels/${name}, shares of the body`,
    value,
    source: practice,
  })),
]

export function sleeves(flat: Flat, length: 'shortSleeve' | 'longSleeve'): Panel {
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

export function legs({ widthIn, lengthIn }: Flat): Panel[] {
  const w = down(widthIn - legLossIn.w * sideLoss(widthIn))
  const h = down(lengthIn - legLossIn.h)
  const taper = corners(w, {
    w: w * shape.legTaper.w,
    h: h * shape.legTaper.h,
    y: h * (1 - shape.legTaper.h),
  })
  return [{ name: 'leg', w, h, count: 4, defects: taper }]
}

export const legOpenings = (w: number, h: number): Rect[] =>
  corners(w, {
    w: w * shape.legOpening.w,
    h: h * shape.legOpening.h,
    y: h * (1 - shape.legOpening.h),
  })

/** A zip or button opening from the neck, and the pouch of a hoodie. Common practice, no source. */
export const neckOpening = (w: number, h: number): Rect[] => [
  middle(w, { w: zipIn, h: h * shape.neckPlacket.h, y: 0 }),
]
export const pouch = (w: number, h: number): Rect[] => [
  middle(w, { w: w * shape.pouch.w, h: h * shape.pouch.h, y: down(h * shape.pouch.y) }),
]

export const plain = (flat: Flat, name: Panel['name'], lost: number, count = 1): Panel => ({
  name,
  w: down(flat.widthIn - lost),
  h: down(flat.lengthIn - lost),
  count,
  defects: [],
})

export const knitTop = (flat: Flat, length: 'shortSleeve' | 'longSleeve'): Panel[] => [
  whole(flat, 'front'),
  whole(flat, 'back'),
  sleeves(flat, length),
]

export const openTop = (
  flat: Flat,
  length: 'shortSleeve' | 'longSleeve',
  pockets: Pockets,
  behind: (w: number, h: number) => Rect[] = yoke,
): Panel[] => [...halfFronts(flat, pockets), whole(flat, 'back', behind), sleeves(flat, length)]

export const yoke = (w: number, h: number): Rect[] => [
  { x: 0, y: 0, w, h: Math.min(yokeIn, down(h / 4)) },
]

/** The slit in the middle of a coat's back. */
export const vent = (w: number, h: number): Rect[] => [
  middle(w, { w: zipIn, h: h * shape.hemVent.h, y: down(h * (1 - shape.hemVent.h)) }),
]

/** The seam that joins a dress's skirt to its bodice, and the zip in its back. */
export const waistSeam = (w: number, h: number): Rect[] => [
  { x: 0, y: down(h * shape.waist.y), w, h: waistSeamIn },
]
export const backZip = (w: number, h: number): Rect[] => [
  middle(w, { w: zipIn, h: h * shape.neckZip.h, y: 0 }),
  ...waistSeam(w, h),
]

/** Waistband and hem off, inches; gathers are not counted on, and one side may hold a zip. */
export function skirtPanels({ widthIn, lengthIn }: Flat): Panel[] {
  const side = plain({ widthIn: widthIn - 1, lengthIn: lengthIn - 2 }, 'cloth', 1)
  const zip = middle(side.w, { w: zipIn, h: side.h * shape.skirtZip.h, y: 0 })
  return [side, { ...side, defects: [zip] }]
}

/** The pointed end of a tie, and its sides that run together towards the neck. */
export const tieEnd = (w: number, h: number): Rect[] => [
  ...corners(down(w), { w: w / 2, h: w / 2, y: h - w / 2 }),
  ...corners(down(w), { w: w * shape.tieTaper.w, h: h * shape.tieTaper.h, y: 0 }),
]

/** What is cut away beside an apron's bib, and its pocket. */
export function apronPanels(flat: Flat): Panel[] {
  const cloth = plain(flat, 'cloth', 2)
  const { w, h } = cloth
  const pocket = {
    w: w * shape.apronPocket.w,
    h: h * shape.apronPocket.h,
    y: down(h * shape.apronPocket.y),
  }
  const bib = corners(w, { w: w * shape.bib.w, h: h * shape.bib.h, y: 0 })
  return [{ ...cloth, defects: [...bib, middle(w, pocket)] }]
}
