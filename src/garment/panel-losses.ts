import { type Figure, memory, practice } from '../base/figure.ts'

/** What takes cloth within a panel. */
export type Loss =
  | 'armhole'
  | 'neck'
  | 'opening'
  | 'pocket'
  | 'pouch'
  | 'yoke'
  | 'vent'
  | 'waist-seam'
  | 'sleeve-cap'
  | 'cuff'
  | 'leg-taper'
  | 'leg-opening'
  | 'tie-tip'
  | 'tie-taper'
  | 'bib'
  | 'hole'
  | 'stain'
  | 'thin'

/** What is taken off a panel's edges. */
export type Edge =
  | 'side-seams'
  | 'shoulder-and-hem'
  | 'button-band'
  | 'leg-seams'
  | 'leg-hem'
  | 'edges'
  | 'waistband-and-hem'

/** Inches; x across and y down from the panel's upper left corner. */
export interface Rect {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly what?: Loss
}

/** Inches off the width and off the length. */
export interface Trim {
  readonly what: Edge
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
  /** As it lies in the garment, inches, and what was taken off its edges before it was rounded down. */
  readonly from?: { readonly w: number; readonly h: number }
  readonly off?: readonly Trim[]
}

// Cloth is never promised: panels are rounded down to the quarter inch, defects up.
export const down = (inches: number): number => Math.max(0, Math.floor(inches * 4 + 1e-9) / 4)
export const up = (inches: number): number => Math.ceil(inches * 4 - 1e-9) / 4

/** Lost with the side seams, each side, inches: 2 to 3 cm, from memory; half of it on baby clothes. */
const sideLossIn = { baby: 0.5, other: 1, babyBelow: 12 }
export const sideLoss = (widthIn: number): number =>
  sideLossIn[widthIn < sideLossIn.babyBelow ? 'baby' : 'other']

/** Lost with shoulder seam and hem together, inches. Common practice, no source. */
const hemLossIn = { short: 1, other: 1.5, shortBelow: 16 }
export const hemLoss = (lengthIn: number): number =>
  hemLossIn[lengthIn < hemLossIn.shortBelow ? 'short' : 'other']

export function corners(
  what: Loss,
  w: number,
  at: { w: number; h: number; y: number },
): [left: Rect, right: Rect] {
  const [cw, ch] = [up(at.w), up(at.h)]
  const y = down(at.y)
  return [
    { what, x: 0, y, w: cw, h: ch },
    { what, x: w - cw, y, w: cw, h: ch },
  ]
}

/** A hole in the middle of the width. */
export function middle(what: Loss, w: number, hole: { w: number; h: number; y: number }): Rect {
  const hw = up(hole.w)
  return { what, x: down((w - hw) / 2), y: hole.y, w: hw + 0.25, h: up(hole.h) }
}

/**
 * Shares of a body's width and length that armholes, neckline and sleeves take; a tie's tip by its width alone.
 * Common practice, no source.
 */
export const shape = {
  armhole: { w: 0.1, h: 0.3 },
  neck: { w: 0.38, front: 0.2, back: 0.08 },
  shortSleeve: { w: 0.6, h: 0.24 },
  longSleeve: { w: 0.7, h: 0.85 },
  cap: { w: 0.18, h: 0.3 },
  cuff: { w: 0.15, h: 0.4 },
  legTaper: { w: 0.15, h: 0.5 },
  legOpening: { w: 0.3, h: 0.25 },
  tieTip: { w: 0.5, h: 0.5 },
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

/** Cloth lost to each side of a button band or zip, inches. Common practice, no source. */
export const placketIn = 1.5

/** A leg's two seams, as a multiple of a side seam's loss; its hem with the crotch, inches. */
export const legLossIn = { w: 1.5, h: 2 }

/** A skirt's side seams; its waistband and hem, inches. */
export const skirtLossIn = { w: 2, h: 3 }

/** The edges of cloth that has no seams, both sides together, inches; an apron's are turned twice. */
export const edgesIn = { cloth: 1, apron: 2, tie: 0 }

/** A patch pocket: unfaded cloth and needle holes, inches. Common practice, no source. */
export const pocketIn = { w: 5, h: 6 }

/** Where a pocket begins, as a share of the length. Common practice, no source. */
export const pocketAt = { chest: 0.22, hip: 0.6 }

/** A shirt's yoke is two layers with a seam below: its depth in inches, and its most of the back. */
export const yokeIn = { most: 4.5, share: 0.25 }

/** The narrow end of a tie, as shares of the wide one. */
export const tieBack = { w: 0.55, h: 0.85 }

/** A zip, placket or vent with its turned edges, and the seam that joins bodice and skirt, inches. */
export const zipIn = 3
export const waistSeamIn = 1

const inches = (figure: string, value: unknown, source = practice): Figure => ({
  figure: `panels/${figure}`,
  value,
  unit: 'in',
  source,
})

const shares = (figure: string, value: unknown): Figure => ({
  figure: `panels/${figure}`,
  value,
  source: practice,
})

export const panelFigures: readonly Figure[] = [
  inches('lost with the side seams', sideLossIn, memory),
  inches('lost with shoulder and hem', hemLossIn),
  inches('button band', placketIn),
  inches('patch pocket', pocketIn),
  inches('yoke', yokeIn),
  inches('lost with the leg seams (times a side seam) and hem', legLossIn),
  inches('lost with a skirt, sides, waistband and hem', skirtLossIn),
  inches('edges of plain cloth', edgesIn),
  inches('zip, placket or vent', zipIn),
  inches('waist seam', waistSeamIn),
  shares('patch pocket, share of the length above it', pocketAt),
  shares('narrow end of a tie, shares of the wide one', tieBack),
  ...Object.entries(shape).map(([name, value]) => shares(`${name}, shares of the body`, value)),
]

const ofBody = (name: keyof typeof shape): string => `panels/${name}, shares of the body`

/** The figure that says how much each costs. */
export const figureOf: Readonly<Record<Loss | Edge, string>> = {
  armhole: ofBody('armhole'),
  neck: ofBody('neck'),
  opening: 'panels/zip, placket or vent',
  pocket: 'panels/patch pocket',
  pouch: ofBody('pouch'),
  yoke: 'panels/yoke',
  vent: 'panels/zip, placket or vent',
  'waist-seam': 'panels/waist seam',
  'sleeve-cap': ofBody('cap'),
  cuff: ofBody('cuff'),
  'leg-taper': ofBody('legTaper'),
  'leg-opening': ofBody('legOpening'),
  'tie-tip': ofBody('tieTip'),
  'tie-taper': ofBody('tieTaper'),
  bib: ofBody('bib'),
  hole: 'panels/hole with its rim',
  stain: 'panels/hole with its rim',
  thin: 'panels/hole with its rim',
  'side-seams': 'panels/lost with the side seams',
  'shoulder-and-hem': 'panels/lost with shoulder and hem',
  'button-band': 'panels/button band',
  'leg-seams': 'panels/lost with the leg seams (times a side seam) and hem',
  'leg-hem': 'panels/lost with the leg seams (times a side seam) and hem',
  edges: 'panels/edges of plain cloth',
  'waistband-and-hem': 'panels/lost with a skirt, sides, waistband and hem',
}
