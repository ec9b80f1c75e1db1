import type { Chance } from '../help/chance.ts'
import type { Contents } from './contents.ts'
import type { Kind } from './truth.ts'

const latinFonts = [
  'Roboto Condensed',
  'Archivo Narrow',
  'Arimo',
  'Arimo',
  'Noto Sans',
  'Oswald',
  'Tinos',
  'Courier Prime',
  'VT323',
] as const

const fontsByKind: Readonly<Record<Kind, readonly string[]>> = {
  main: latinFonts,
  covered: latinFonts,
  jacquard: ['Roboto Condensed', 'Arimo', 'Oswald', 'Noto Sans'],
  cyrillic: ['Roboto Condensed', 'Arimo', 'Noto Sans', 'Tinos', 'Oswald'],
  cjk: ['Kosugi'],
}

/** The label's own cloth: its colour and the colour of what is printed on it. */
export const grounds = {
  nylon: { cloth: '#f4f4f1', ink: '#1b1b1f' },
  satin: { cloth: '#f1efea', ink: '#202022' },
  woven: { cloth: '#ece9e1', ink: '#26242a' },
  cream: { cloth: '#e9dfc6', ink: '#2d2620' },
  grey: { cloth: '#b9babd', ink: '#1d1e22' },
  black: { cloth: '#1e1e21', ink: '#e8e8e4' },
} as const

export const garmentCloths = ['knit', 'twill', 'denim', 'plain', 'fleece', 'checks'] as const

const colours = [
  '#1f2a44',
  '#3b4a5e',
  '#6d1f2b',
  '#8a8f94',
  '#d8d2c4',
  '#2f4a3a',
  '#c9a9a6',
  '#27272a',
  '#a3522e',
  '#e6e4df',
  '#4d6f8f',
  '#6b5b7a',
]

/** How a label lies in its photo and how it was taken. Lengths without a unit are in em of its letters. */
export interface Look {
  /** For whatever of the picture is chance alone, such as its noise. */
  readonly seed: number
  readonly font: string
  readonly bold: boolean
  readonly spacing: number
  readonly leading: number
  readonly centred: boolean
  readonly ground: keyof typeof grounds
  /** How much of the ink is left, 0 to 1. */
  readonly ink: number
  /** Parts of the letters are rubbed off. */
  readonly worn: boolean
  /** The other side's print shines through. */
  readonly ghost: boolean
  readonly cloth: { readonly is: (typeof garmentCloths)[number]; readonly colour: string }
  readonly threads: boolean
  /** What hides a share; a finger lets so much of its line be seen, 0 to 1. */
  readonly cover: {
    readonly by: 'finger' | 'fold'
    readonly from: 'left' | 'right'
    readonly shows: number
  } | null
  /** The photo's long side, px, and its shape, long by short. */
  readonly long: number
  readonly shape: number
  /** How much of the photo the label takes along the tighter side, 0 to 1. */
  readonly fill: number
  /** From the middle, in parts of the room that is left. */
  readonly off: { readonly x: number; readonly y: number }
  /** Degrees. */
  readonly tilt: number
  readonly pitch: number
  readonly yaw: number
  readonly curl: { readonly depth: number; readonly waves: number; readonly phase: number }
  /** Standard deviation of the blur, and length and direction (degrees) of a shake. */
  readonly blur: number
  readonly shake: { readonly length: number; readonly towards: number } | null
  readonly light: {
    /** 1 is daylight. */
    readonly level: number
    /** How much brighter one side is than the other. */
    readonly slope: number
    readonly towards: number
    readonly warmth: number
    /** Standard deviation in steps of 255. */
    readonly noise: number
    readonly shadow: {
      readonly at: number
      readonly towards: number
      readonly depth: number
    } | null
  }
  /** How far the words are turned where the photo is shown, degrees clockwise. */
  readonly turn: 0 | 90 | 180 | 270
  readonly exif: 1 | 3 | 6 | 8
  /** Of the JPEG. */
  readonly quality: number
}

export function drawLook(chance: Chance, { kind, layout }: Contents): Look {
  const dark = chance.happens(0.2)
  const curly = chance.happens(0.45)
  return {
    seed: chance.whole(1, 2 ** 30),
    font: chance.one(fontsByKind[kind]),
    bold: kind === 'jacquard' || chance.happens(0.25),
    spacing: chance.happens(0.3) ? chance.real(0.02, 0.09) : 0,
    leading: chance.real(1.08, 1.4),
    centred: chance.happens(layout === 'loop' ? 0.8 : 0.3),
    ground: drawGround(chance, kind),
    ink: chance.happens(0.2) ? chance.real(0.42, 0.75) : chance.real(0.82, 1),
    worn: chance.happens(0.12),
    ghost: chance.happens(0.12),
    cloth: { is: chance.one(garmentCloths), colour: chance.one(colours) },
    threads: kind === 'jacquard',
    cover:
      kind === 'covered'
        ? {
            by: chance.one(['finger', 'finger', 'fold']),
            from: chance.one(['left', 'right']),
            shows: chance.real(0, 0.35),
          }
        : null,
    long: Math.round((chance.whole(1500, 2300) + chance.whole(0, 700)) / 4) * 4,
    shape: chance.happens(0.15) ? 16 / 9 : 4 / 3,
    fill: chance.happens(0.2) ? chance.real(0.4, 0.6) : chance.real(0.62, 0.94),
    off: { x: chance.real(-0.7, 0.7), y: chance.real(-0.7, 0.7) },
    tilt: chance.happens(0.8) ? chance.real(-5, 5) : chance.real(-12, 12),
    pitch: chance.happens(0.6) ? chance.real(-14, 14) : chance.real(-30, 30),
    yaw: chance.happens(0.6) ? chance.real(-12, 12) : chance.real(-28, 28),
    curl: {
      depth: curly ? chance.real(0.2, 1.1) : chance.real(0, 0.15),
      waves: chance.real(0.4, 1.3),
      phase: chance.real(0, 2 * Math.PI),
    },
    blur: chance.happens(0.15) ? chance.real(0.06, 0.1) : chance.real(0.012, 0.055),
    shake: chance.happens(0.14)
      ? { length: chance.real(0.1, 0.22), towards: chance.real(0, 180) }
      : null,
    light: {
      level: dark ? chance.real(0.4, 0.62) : chance.real(0.72, 1.04),
      slope: chance.real(0, 0.45),
      towards: chance.real(0, 360),
      warmth: chance.real(-0.06, dark ? 0.16 : 0.09),
      noise: dark ? chance.real(8, 19) : chance.real(1.5, 6),
      shadow: chance.happens(0.28)
        ? {
            at: chance.real(-0.3, 0.3),
            towards: chance.real(0, 360),
            depth: chance.real(0.25, 0.55),
          }
        : null,
    },
    turn: Number(chance.weighed({ 0: 55, 90: 15, 180: 15, 270: 15 })) as Look['turn'],
    exif: Number(chance.weighed({ 1: 60, 6: 25, 8: 8, 3: 7 })) as Look['exif'],
    quality: chance.whole(70, 90),
  }
}

const drawGround = (chance: Chance, kind: Kind): Look['ground'] =>
  kind === 'jacquard'
    ? chance.weighed({ woven: 45, cream: 15, black: 40 })
    : chance.weighed({ nylon: 30, satin: 26, woven: 16, cream: 10, grey: 8, black: 10 })
