import type { Chance } from '../help/chance.ts'
import { type BottomKind, bottomKinds } from './bottoms.ts'
import type { Weave } from './cloth.ts'
import { type GroundKind, groundKinds } from './ground.ts'
import { type PrintClass, printClasses } from './print.ts'
import type { SheetKind } from './reference.ts'
import type { StripeKind } from './stripes.ts'
import type { Side, TopKind } from './tops.ts'

export type GarmentKind = TopKind | BottomKind

export const faults = ['blurred', 'dark', 'bright', 'cut-off', 'too-small', 'no-garment'] as const
export type Fault = (typeof faults)[number]

export const isBottom = (kind: GarmentKind): kind is BottomKind =>
  (bottomKinds as readonly string[]).includes(kind)

/** Which garments carry a print of a class, each as often as its weight. */
const kindsFor: Readonly<Record<PrintClass, Readonly<Partial<Record<GarmentKind, number>>>>> = {
  solid: {
    't-shirt': 14,
    'long-sleeve': 9,
    shirt: 7,
    hoodie: 12,
    jumper: 14,
    jeans: 18,
    dress: 9,
    onesie: 6,
    vest: 7,
  },
  single: {
    't-shirt': 36,
    'long-sleeve': 14,
    hoodie: 18,
    jumper: 9,
    dress: 3,
    onesie: 12,
    vest: 8,
  },
  allover: {
    't-shirt': 20,
    'long-sleeve': 12,
    shirt: 16,
    hoodie: 4,
    jumper: 8,
    dress: 20,
    onesie: 14,
    vest: 6,
    jeans: 4,
  },
  'stripe-check': {
    't-shirt': 18,
    'long-sleeve': 18,
    shirt: 30,
    jumper: 11,
    dress: 10,
    onesie: 9,
    vest: 6,
    hoodie: 3,
  },
}

const weavesFor: Readonly<Record<GarmentKind, readonly Weave[]>> = {
  't-shirt': ['jersey'],
  'long-sleeve': ['jersey', 'jersey', 'plain'],
  shirt: ['plain', 'twill', 'linen', 'twill'],
  hoodie: ['fleece', 'jersey'],
  jumper: ['knit', 'knit', 'knit', 'fleece'],
  onesie: ['jersey'],
  vest: ['jersey', 'plain'],
  jeans: ['denim', 'denim', 'denim', 'twill'],
  dress: ['plain', 'linen', 'jersey', 'denim'],
}

const stripesFor = (chance: Chance, kind: GarmentKind): StripeKind =>
  kind === 'shirt'
    ? chance.weighed({ across: 1, along: 4, diagonal: 0.4, gingham: 5, tartan: 9, pane: 3 })
    : chance.weighed({ across: 12, along: 3, diagonal: 1.6, gingham: 2.4, tartan: 2, pane: 1 })

/** Everything about one photo that is decided before it is drawn. */
export interface Look {
  readonly print: PrintClass
  readonly kind: GarmentKind
  readonly side: Side
  readonly weave: Weave
  readonly stripes: StripeKind
  /** A small mark on the chest alone: it is a single picture too. */
  readonly chest: boolean
  /** What is printed can only just be told from the cloth, always; else it is so now and then. */
  readonly faint: boolean
  readonly ground: GroundKind
  /** What begins beside the garment where the ground ends: a floor beside a bed, a table's edge. */
  readonly edge: GroundKind | null
  /** The ground's colour is near the garment's. */
  readonly near: boolean
  readonly fault: Fault | null
  /** What a photo without a garment shows. */
  readonly instead: 'empty' | 'poster' | 'cushion'
  readonly sheet: { readonly kind: SheetKind; readonly lies: 'whole' | 'covered' | 'cut' } | null
  /** Of the camera: focal length as of 35 mm film (mm), how it is held (degrees, as in a `Pose`). */
  readonly focal35: number
  readonly tilt: number
  readonly towards: number
  readonly roll: number
  /** Of the garment on the plane, degrees clockwise. */
  readonly turn: number
  /** The picture's long side, px, its shape, long by short, and what is left free, of its short side. */
  readonly long: number
  readonly shape: number
  readonly margin: number
  readonly light: 'window' | 'lamp' | 'even'
  /** How much more red and less blue the light is; below 0 the other way round. */
  readonly cast: number
  /** The file tells the focal length. */
  readonly tells: boolean
  readonly exif: 1 | 3 | 6 | 8
  /** Standard deviation in steps of 255. */
  readonly noise: number
  /** Blur of a sound photo, of its long side. */
  readonly soft: number
  /** Of the JPEG. */
  readonly quality: number
  /** Where the light comes from on the plane, degrees. */
  readonly litFrom: number
}

/**
 * Photos stand in pairs, an even and an odd number, that share class and fault, so that each half of a
 * set has as many of each. Every fourth group of four pairs has a fault, or all have the one that is told.
 */
export function drawLook(chance: Chance, number: number, told?: Fault): Look {
  const pair = number >> 1
  const print = printClasses[pair % printClasses.length]!
  const group = Math.floor(pair / printClasses.length)
  const inTurn = group % 4 === 3 ? faults[(pair + Math.floor(group / 4)) % faults.length]! : null
  const fault = told ?? inTurn
  const kind = chance.weighed(kindsFor[print] as Record<GarmentKind, number>)
  const chest = print === 'single' && chance.happens(0.22)
  const quarter = chance.happens(0.1) ? chance.one([90, -90, 180]) : 0
  const sheet = fault !== 'too-small' && chance.happens(0.55)
  return {
    print,
    kind,
    side:
      chance.happens(print === 'single' && !chest ? 0.25 : 0.15) && kind !== 'onesie'
        ? 'back'
        : 'front',
    weave: chance.one(weavesFor[kind]),
    stripes: stripesFor(chance, kind),
    chest,
    faint: false,
    ground: chance.one(groundKinds),
    edge: chance.happens(0.16) ? chance.one(groundKinds) : null,
    near: chance.happens(0.12),
    fault,
    instead: chance.one(['empty', 'empty', 'poster', 'cushion']),
    sheet: sheet
      ? {
          kind: chance.weighed({ letter: 3, a4: 3, id1: 4 }),
          lies: chance.weighed({ whole: 88, covered: 6, cut: 6 }),
        }
      : null,
    focal35:
      Number(chance.weighed({ 23: 2, 24: 3, 26: 6, 28: 3, 35: 1, 50: 1 })) +
      chance.real(-0.45, 0.45),
    tilt: chance.happens(0.5) ? chance.real(0, 8) : chance.real(5, 25),
    // Mostly the camera looks up along the garment from its hem, as a person stands before it.
    towards: chance.happens(0.6) ? chance.real(-25, 25) : chance.real(0, 360),
    roll: chance.real(-8, 8),
    turn: quarter + chance.real(-1, 1) * chance.real(0, 14),
    long: Number(chance.weighed({ 1600: 12, 2000: 68, 2400: 10, 3024: 6, 4000: 4 })),
    shape: chance.happens(0.14) ? 16 / 9 : 4 / 3,
    margin:
      fault === 'too-small'
        ? chance.real(0.36, 0.41)
        : chance.happens(0.25)
          ? chance.real(0.015, 0.04)
          : chance.real(0.04, 0.12),
    light: chance.one(['window', 'lamp', 'even']),
    cast: chance.happens(0.45) ? chance.real(-0.04, 0.04) : chance.real(-0.16, 0.22),
    tells: chance.happens(0.85),
    exif: Number(chance.weighed({ 1: 68, 6: 22, 8: 6, 3: 4 })) as Look['exif'],
    noise: chance.happens(0.25) ? chance.real(3, 7) : chance.real(0.8, 3),
    soft: chance.real(0, 0.0004),
    quality: chance.whole(70, 95),
    litFrom: chance.real(0, 360),
  }
}
