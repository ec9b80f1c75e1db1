import type { Chance } from '../help/chance.ts'
import type { Point } from './camera.ts'
import { type CollarKind, collarOf, pocket, pouch } from './collars.ts'
import { type HemKind, hemOf } from './hems.ts'
import {
  bend,
  boxAround,
  corner,
  limb,
  type Mark,
  type Outline,
  type Part,
  pathOf,
} from './outline.ts'

export type Side = 'front' | 'back'

/** What sets one kind of top apart from another; lengths in mm, most from the least to the most. */
interface Cut {
  readonly chest: readonly [number, number]
  /** Of the chest's width. */
  readonly length: readonly [number, number]
  readonly shoulder: number
  readonly neck: readonly [number, number]
  readonly drop: readonly [number, number]
  readonly sleeve: 'none' | 'short' | 'long'
  readonly hem: HemKind
  readonly collar: CollarKind
  /** Wider at the hem than at the chest by so much. */
  readonly flare: readonly [number, number]
}

export type TopKind = 't-shirt' | 'long-sleeve' | 'shirt' | 'hoodie' | 'jumper' | 'onesie' | 'vest'

const cuts: Readonly<Record<TopKind, Cut>> = {
  't-shirt': {
    chest: [380, 620],
    length: [1.22, 1.42],
    shoulder: 0.88,
    neck: [150, 200],
    drop: [75, 115],
    sleeve: 'short',
    hem: 'stitched',
    collar: 'band',
    flare: [0.97, 1.03],
  },
  'long-sleeve': {
    chest: [400, 600],
    length: [1.22, 1.42],
    shoulder: 0.86,
    neck: [150, 195],
    drop: [70, 115],
    sleeve: 'long',
    hem: 'stitched',
    collar: 'band',
    flare: [0.97, 1.03],
  },
  shirt: {
    chest: [460, 640],
    length: [1.2, 1.4],
    shoulder: 0.86,
    neck: [150, 180],
    drop: [60, 85],
    sleeve: 'long',
    hem: 'curved',
    collar: 'shirt',
    flare: [0.98, 1.02],
  },
  hoodie: {
    chest: [480, 660],
    length: [1.08, 1.2],
    shoulder: 0.9,
    neck: [190, 230],
    drop: [70, 100],
    sleeve: 'long',
    hem: 'rib',
    collar: 'hood',
    flare: [0.9, 0.98],
  },
  jumper: {
    chest: [440, 640],
    length: [1.08, 1.25],
    shoulder: 0.88,
    neck: [170, 220],
    drop: [50, 100],
    sleeve: 'long',
    hem: 'rib',
    collar: 'rib',
    flare: [0.9, 0.99],
  },
  onesie: {
    chest: [200, 270],
    length: [1.62, 1.85],
    shoulder: 0.84,
    neck: [110, 140],
    drop: [40, 60],
    sleeve: 'short',
    hem: 'snaps',
    collar: 'bound',
    flare: [1, 1.08],
  },
  vest: {
    chest: [380, 560],
    length: [1.3, 1.5],
    shoulder: 0.62,
    neck: [150, 210],
    drop: [110, 170],
    sleeve: 'none',
    hem: 'stitched',
    collar: 'bound',
    flare: [0.98, 1.06],
  },
}

export function drawTop(chance: Chance, kind: TopKind, side: Side): Outline {
  const cut = cuts[kind]
  const within = ([least, most]: readonly [number, number]) => chance.real(least, most)
  const chest = within(cut.chest)
  const length = chest * within(cut.length)
  const half = chest / 2
  const neck = Math.min(within(cut.neck), chest * 0.55) / 2
  const drop = within(cut.drop)
  const nape = side === 'front' ? chance.real(12, 22) : chance.real(14, 26)
  const shoulder = Math.max(neck + 30, half * cut.shoulder * chance.real(0.96, 1.03))
  const fall = (shoulder - neck) * chance.real(0.24, 0.36)
  const arm = fall + chest * chance.real(0.36, 0.44) + (cut.sleeve === 'none' ? 20 : 0)
  const hem = half * within(cut.flare)
  const ends = hemOf(chance, cut.hem, { chest, length, hem })
  const waist = (arm + length) / 2
  const nip = chance.real(-0.03, 0.02) * chest
  const armhole = (way: number) =>
    cut.sleeve === 'none'
      ? [
          bend(way * (shoulder - 6), fall + (arm - fall) * 0.4),
          bend(way * (shoulder + (half - shoulder) * 0.35), fall + (arm - fall) * 0.82),
        ]
      : []
  const body = pathOf([
    corner(-neck, 0),
    bend(0, nape),
    corner(neck, 0),
    corner(shoulder, fall),
    ...armhole(1),
    corner(half, arm),
    bend(half + nip, waist),
    ...ends.nodes,
    bend(-half - nip, waist),
    corner(-half, arm),
    ...armhole(-1).reverse(),
    corner(-shoulder, fall),
  ])

  const parts: Part[] = [{ path: body, from: [0, 0], turn: 0 }]
  const marks: Mark[] = [...ends.marks]
  const points: Point[] = [
    [-half, 0],
    [half, length + 8],
    [-hem, length],
    [hem, length],
    [0, 0],
    [-half - Math.max(0, nip), waist],
    [half + Math.max(0, nip), waist],
  ]
  if (cut.sleeve !== 'none') {
    const long = cut.sleeve === 'long' && !(kind === 'onesie')
    const even = chance.happens(0.5) ? chance.real(28, 70) : null
    for (const way of [-1, 1] as const) {
      const upper =
        even !== null ? even + chance.real(-5, 5) : chance.real(long ? 20 : 18, long ? 76 : 58)
      const bent = long && chance.happens(0.4) ? chance.real(-70, 45) : chance.real(-10, 12)
      const lower = Math.max(-60, Math.min(100, upper + bent))
      const reach = long
        ? chance.real(0.44, 0.52) * chest
        : chance.real(0.14, 0.2) * chest * (kind === 'onesie' ? 0.8 : 1)
      const deep = arm - fall
      const made = limb(
        way,
        [way * shoulder, fall],
        [way * half, arm],
        [reach, long ? reach * chance.real(0.9, 1.1) : reach],
        [upper, long ? lower : upper + chance.real(-4, 4)],
        [
          deep * (long ? 0.78 : 0.92),
          long ? Math.max(85, chest * 0.19) : deep * chance.real(0.72, 0.86),
        ],
        cut.hem === 'rib' ? 62 : kind === 'shirt' ? 58 : 20,
      )
      parts.push(...made.parts)
      marks.push(...made.marks)
      points.push(...made.points)
    }
  }
  const top = collarOf(chance, cut.collar, { neck, drop, nape, side, length, half })
  parts.push(...top.parts)
  marks.push(...top.marks)
  points.push(...top.points)
  if (cut.collar === 'hood' && side === 'front') marks.push(...pouch(half, length))
  if (kind === 't-shirt' && side === 'front' && chance.happens(0.08))
    marks.push(...pocket(half * 0.45, drop + chest * 0.16, 95))

  const start = side === 'front' ? drop + 30 : nape + 50
  return {
    parts,
    marks,
    front: {
      middle: [0, start + (length - start) * (kind === 'hoodie' ? 0.27 : 0.34)],
      width: (cut.sleeve === 'none' ? 1.5 : 1.72) * half,
      height:
        (length - start) *
        (kind === 'hoodie' && side === 'front' ? 0.48 : kind === 'onesie' ? 0.6 : 0.76),
    },
    chest: [half * 0.45, Math.max(drop + 20, chest * 0.32)],
    box: boxAround(points),
  }
}
