import { type Fault, faults } from '../look.ts'
import type { PrintClass } from '../print.ts'
import type { Chance } from './chance.ts'
import { clothColour } from './colours.ts'
import { type Kind, kinds } from './shapes.ts'
import type { Size } from './svg.ts'

/** How a garment lies in the picture. */
export interface Pose {
  /** Its middle, px. */
  readonly x: number
  readonly y: number
  /** What is 1 of its outline, px. */
  readonly scale: number
  /** Degrees clockwise. */
  readonly turn: number
}

/** What a photo shows and what is wrong with it; its size in px. */
export interface Plan extends Size {
  readonly kind: Kind
  /** Of the cloth, as CSS has it. */
  readonly colour: string
  readonly fault: Fault | null
  readonly print: PrintClass
  readonly pose: Pose
}

const portrait: Size = { width: 900, height: 1200 }
const landscape: Size = { width: 1200, height: 900 }

/** As often as they are drawn. */
const prints = ['solid', 'single', 'single', 'allover', 'stripe-check'] as const

export function planOf(chance: Chance): Plan {
  const size = chance.happens(0.75) ? portrait : landscape
  const kind = chance.one(kinds)
  const colour = clothColour(chance)
  const fault = chance.happens(0.25) ? chance.one(faults) : null
  const print = chance.one(prints)
  return { ...size, kind, colour, fault, print, pose: poseOf(chance, size, kind, fault) }
}

/** Of the picture's width: garments that are narrow may be longer than the picture is wide. */
const narrow: Readonly<Partial<Record<Kind, number>>> = { pants: 1.4, skirt: 1.4 }
/** Of the picture's height. */
const longest = 0.95
/** Of the picture's shorter side: a garment that lies across. */
const longestAcross = 0.85
/** Degrees. */
const liesAcross = 30

function poseOf(chance: Chance, { width, height }: Size, kind: Kind, fault: Fault | null): Pose {
  const room = Math.min(width * (narrow[kind] ?? 1), height)
  let scale = Math.min(chance.real(0.72, 0.95) * room, longest * height)
  let x = width / 2 + chance.real(-0.03, 0.03) * width
  let y = height / 2 + chance.real(-0.02, 0.02) * height
  if (fault === 'too-small') scale *= chance.real(0.18, 0.3)
  if (fault === 'cut-off') {
    scale *= chance.real(1.2, 1.5)
    const [across, down] = chance.one(sides)
    x += across * scale * chance.real(0.25, 0.35)
    y += down * scale * chance.real(0.25, 0.4)
  }
  const turn = turnOf(chance)
  if (Math.abs(turn) > liesAcross && fault !== 'cut-off')
    scale = Math.min(scale, longestAcross * Math.min(width, height))
  return { x, y, scale, turn }
}

/** Over which side of the picture a garment goes that is cut off: top, bottom, left, right. */
const sides = [
  [0, -1],
  [0, 1],
  [-1, 0],
  [1, 0],
] as const

/** Mostly nearly straight, at times askew, seldom sideways or upside down; degrees clockwise. */
function turnOf(chance: Chance): number {
  if (chance.happens(0.7)) return chance.real(-8, 8)
  if (chance.happens(0.7)) return chance.real(-25, 25)
  return chance.one([90, 180, -90]) + chance.real(-8, 8)
}
