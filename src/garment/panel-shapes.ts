import type { Flat } from './garment-sizes.ts'
import {
  corners,
  down,
  edgesIn,
  hemLoss,
  legLossIn,
  middle,
  type Panel,
  placketIn,
  pocketAt,
  pocketIn,
  type Rect,
  shape,
  sideLoss,
  skirtLossIn,
  tieBack,
  up,
  waistSeamIn,
  yokeIn,
  zipIn,
} from './panel-losses.ts'

const bodyExtent = ({ widthIn, lengthIn }: Flat) => ({
  w: down(widthIn - 2 * sideLoss(widthIn)),
  h: down(lengthIn - hemLoss(lengthIn)),
})

/** A body's piece as it lies in the garment, and what its edges cost. `halves` share its width. */
const fromBody = ({ widthIn, lengthIn }: Flat, halves = 1): Pick<Panel, 'from' | 'off'> => ({
  from: { w: widthIn / halves, h: lengthIn },
  off: [
    { what: 'side-seams', w: (2 * sideLoss(widthIn)) / halves, h: 0 },
    { what: 'shoulder-and-hem', w: 0, h: hemLoss(lengthIn) },
    ...(halves > 1 ? [{ what: 'button-band', w: placketIn, h: 0 } as const] : []),
  ],
})

const armholes = (w: number, h: number): Rect[] =>
  corners('armhole', w, { w: w * shape.armhole.w, h: h * shape.armhole.h, y: 0 })

export function whole(
  flat: Flat,
  side: 'front' | 'back',
  more: (w: number, h: number) => Rect[] = () => [],
): Panel {
  const { w, h } = bodyExtent(flat)
  const neck = middle('neck', w, {
    w: flat.widthIn * shape.neck.w,
    h: flat.widthIn * shape.neck[side],
    y: 0,
  })
  return {
    name: side,
    w,
    h,
    count: 1,
    defects: [...armholes(w, h), neck, ...more(w, h)],
    ...fromBody(flat),
  }
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
      { what: 'neck', x: w - neckW, y: 0, w: neckW, h: up(flat.widthIn * shape.neck.front) },
    ],
    ...fromBody(flat, 2),
  }
  if (on === 0 || w < pocketIn.w) return [{ ...half, count: 2 }]
  const [x, y] = [down((w - pocketIn.w) / 2), down(h * pocketAt[at])]
  const pocket: Rect = { what: 'pocket', x, y, ...pocketIn }
  const pocketed: Panel = { ...half, count: on, defects: [...half.defects, pocket] }
  return on === 2 ? [pocketed] : [half, pocketed]
}

export function sleeves(flat: Flat, length: 'shortSleeve' | 'longSleeve'): Panel {
  const from = { w: flat.widthIn * shape[length].w, h: flat.widthIn * shape[length].h }
  const [w, h] = [down(from.w), down(from.h)]
  const cap = corners('sleeve-cap', w, { w: w * shape.cap.w, h: h * shape.cap.h, y: 0 })
  const cuff = corners('cuff', w, {
    w: w * shape.cuff.w,
    h: h * shape.cuff.h,
    y: h * (1 - shape.cuff.h),
  })
  return {
    name: 'sleeve',
    w,
    h,
    count: 2,
    defects: length === 'longSleeve' ? [...cap, ...cuff] : cap,
    from,
    off: [],
  }
}

export function legs({ widthIn, lengthIn }: Flat): Panel[] {
  const w = down(widthIn - legLossIn.w * sideLoss(widthIn))
  const h = down(lengthIn - legLossIn.h)
  const taper = corners('leg-taper', w, {
    w: w * shape.legTaper.w,
    h: h * shape.legTaper.h,
    y: h * (1 - shape.legTaper.h),
  })
  const off = [
    { what: 'leg-seams', w: legLossIn.w * sideLoss(widthIn), h: 0 },
    { what: 'leg-hem', w: 0, h: legLossIn.h },
  ] as const
  const from = { w: widthIn, h: lengthIn }
  // Each of two legs has a front and a back.
  return [{ name: 'leg', w, h, count: 4, defects: taper, from, off }]
}

export const legOpenings = (w: number, h: number): Rect[] =>
  corners('leg-opening', w, {
    w: w * shape.legOpening.w,
    h: h * shape.legOpening.h,
    y: h * (1 - shape.legOpening.h),
  })

/** A zip or button opening from the neck, and the pouch of a hoodie. Common practice, no source. */
export const neckOpening = (w: number, h: number): Rect[] => [
  middle('opening', w, { w: zipIn, h: h * shape.neckPlacket.h, y: 0 }),
]
export const pouch = (w: number, h: number): Rect[] => [
  middle('pouch', w, { w: w * shape.pouch.w, h: h * shape.pouch.h, y: down(h * shape.pouch.y) }),
]

/** A plain piece of cloth with its edges off. */
export const plain = (
  { widthIn, lengthIn }: Flat,
  name: Panel['name'],
  edges: keyof typeof edgesIn,
): Panel => ({
  name,
  w: down(widthIn - edgesIn[edges]),
  h: down(lengthIn - edgesIn[edges]),
  count: 1,
  defects: [],
  from: { w: widthIn, h: lengthIn },
  off: edgesIn[edges] === 0 ? [] : [{ what: 'edges', w: edgesIn[edges], h: edgesIn[edges] }],
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
  // A child's yoke is no deeper than a quarter of the back.
  { what: 'yoke', x: 0, y: 0, w, h: Math.min(yokeIn.most, down(h * yokeIn.share)) },
]

/** The slit in the middle of a coat's back. */
export const vent = (w: number, h: number): Rect[] => [
  middle('vent', w, { w: zipIn, h: h * shape.hemVent.h, y: down(h * (1 - shape.hemVent.h)) }),
]

/** The seam that joins a dress's skirt to its bodice, and the zip in its back. */
export const waistSeam = (w: number, h: number): Rect[] => [
  { what: 'waist-seam', x: 0, y: down(h * shape.waist.y), w, h: waistSeamIn },
]
export const backZip = (w: number, h: number): Rect[] => [
  middle('opening', w, { w: zipIn, h: h * shape.neckZip.h, y: 0 }),
  ...waistSeam(w, h),
]

/** Waistband and hem off, inches; gathers are not counted on, and one side may hold a zip. */
export function skirtPanels({ widthIn, lengthIn }: Flat): Panel[] {
  const side: Panel = {
    name: 'cloth',
    w: down(widthIn - skirtLossIn.w),
    h: down(lengthIn - skirtLossIn.h),
    count: 1,
    defects: [],
    from: { w: widthIn, h: lengthIn },
    off: [{ what: 'waistband-and-hem', ...skirtLossIn }],
  }
  const zip = middle('opening', side.w, { w: zipIn, h: side.h * shape.skirtZip.h, y: 0 })
  return [side, { ...side, defects: [zip] }]
}

/** The pointed end of a tie, and its sides that run together towards the neck. */
const tieEnd = (w: number, h: number): Rect[] => [
  ...corners('tie-tip', down(w), {
    w: w * shape.tieTip.w,
    h: w * shape.tieTip.h,
    y: h - w * shape.tieTip.h,
  }),
  ...corners('tie-taper', down(w), { w: w * shape.tieTaper.w, h: h * shape.tieTaper.h, y: 0 }),
]

/** The front end, and the narrow one behind it. */
export const tieEnds = ({ widthIn, lengthIn }: Flat): Panel[] => [
  { ...plain({ widthIn, lengthIn }, 'tie-end', 'tie'), defects: tieEnd(widthIn, lengthIn) },
  plain({ widthIn: widthIn * tieBack.w, lengthIn: lengthIn * tieBack.h }, 'tie-end', 'tie'),
]

/** What is cut away beside an apron's bib, and its pocket. */
export function apronPanels(flat: Flat): Panel[] {
  const cloth = plain(flat, 'cloth', 'apron')
  const { w, h } = cloth
  const pocket = {
    w: w * shape.apronPocket.w,
    h: h * shape.apronPocket.h,
    y: down(h * shape.apronPocket.y),
  }
  const bib = corners('bib', w, { w: w * shape.bib.w, h: h * shape.bib.h, y: 0 })
  return [{ ...cloth, defects: [...bib, middle('pocket', w, pocket)] }]
}
