import type { Chance } from '../help/chance.ts'
import { hexOfLch, moved } from './light.ts'
import { noiseTile, type Tile } from './noise.ts'

export type Weave = 'jersey' | 'knit' | 'twill' | 'denim' | 'plain' | 'fleece' | 'linen'

/** What a garment is made of, without any print. */
export interface Cloth {
  readonly colour: string
  readonly weave: Weave
  /** How much lighter and darker its threads are than the whole, -1 to 1 about 0. */
  readonly threads: Tile
  /** A side of that tile, mm, and how strong it is. */
  readonly period: number
  readonly strength: number
  /** How much it is faded in places. */
  readonly fade: number
}

/** A tile from a function of x and y, 0 to 1 across, with grain over it. */
function woven(
  chance: Chance,
  side: number,
  grain: number,
  at: (x: number, y: number) => number,
): Tile {
  const fine = noiseTile(chance, side, side >> 1, side >> 1, 1)
  const data = new Float32Array(side * side)
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const n = y * side + x
      data[n] = at(x / side, y / side) * (1 - grain) + fine.data[n]! * grain
    }
  return { data, side }
}

const wave = (turns: number): number => Math.sin(2 * Math.PI * turns)

function threadsOf(chance: Chance, weave: Weave): Pick<Cloth, 'threads' | 'period' | 'strength'> {
  switch (weave) {
    case 'jersey':
      return {
        threads: woven(
          chance,
          256,
          0.55,
          (x, y) => 0.6 * wave(x * 64) * (0.7 + 0.3 * wave(y * 42)),
        ),
        period: 70,
        strength: chance.real(0.05, 0.1),
      }
    case 'knit': {
      // V-shaped loops in columns.
      const columns = 16
      return {
        threads: woven(chance, 256, 0.25, (x, y) => {
          const across = Math.abs(((x * columns) % 1) - 0.5) * 2
          return 0.75 * wave(y * 20 + across * 0.5) + 0.4 * (across - 0.5)
        }),
        period: columns * chance.real(3, 7),
        strength: chance.real(0.1, 0.2),
      }
    }
    case 'twill':
      return {
        threads: woven(chance, 256, 0.4, (x, y) => 0.8 * wave((x + y) * 32)),
        period: 64,
        strength: chance.real(0.06, 0.12),
      }
    case 'denim': {
      // White crossing threads show in short streaks.
      const streaks = noiseTile(chance, 256, 128, 24, 2, 0.8)
      return {
        threads: woven(
          chance,
          256,
          0.3,
          (x, y) =>
            0.45 * wave((x + y) * 40) +
            0.9 * streaks.data[Math.floor(y * 255.9) * 256 + Math.floor(x * 255.9)]!,
        ),
        period: 90,
        strength: chance.real(0.12, 0.22),
      }
    }
    case 'plain':
      return {
        threads: woven(chance, 256, 0.6, (x, y) => 0.4 * wave(x * 80) + 0.4 * wave(y * 80)),
        period: 64,
        strength: chance.real(0.03, 0.07),
      }
    case 'fleece':
      return {
        threads: noiseTile(chance, 256, 24, 24, 4, 0.75),
        period: 160,
        strength: chance.real(0.06, 0.13),
      }
    case 'linen': {
      const slubs = noiseTile(chance, 256, 12, 128, 2, 0.8)
      const warp = noiseTile(chance, 256, 128, 10, 2, 0.8)
      return {
        threads: woven(chance, 256, 0.2, (x, y) => {
          const n = Math.floor(y * 255.9) * 256 + Math.floor(x * 255.9)
          return 0.6 * slubs.data[n]! + 0.6 * warp.data[n]!
        }),
        period: 120,
        strength: chance.real(0.06, 0.11),
      }
    }
  }
}

/** Colours that clothes have, each as often as its weight: near white and near black among them. */
const families = {
  white: 11,
  cream: 5,
  black: 12,
  grey: 9,
  navy: 10,
  denim: 4,
  red: 8,
  pink: 7,
  yellow: 5,
  orange: 4,
  green: 8,
  olive: 5,
  blue: 9,
  sky: 6,
  purple: 5,
  teal: 4,
  brown: 5,
  beige: 5,
} as const

export function drawColour(chance: Chance, weave: Weave): string {
  const of = (l: [number, number], c: [number, number], h: [number, number]) =>
    hexOfLch(chance.real(...l), chance.real(...c), chance.real(...h))
  if (weave === 'denim')
    return chance.happens(0.12)
      ? of([14, 22], [0, 4], [260, 290])
      : of([20, 66], [8, 26], [258, 282])
  switch (chance.weighed(families)) {
    case 'white':
      return of([91, 97], [0, 2.5], [60, 280])
    case 'cream':
      return of([86, 93], [5, 14], [80, 100])
    case 'black':
      return of([6, 15], [0, 3], [0, 360])
    case 'grey':
      return of([30, 80], [0, 4], [200, 300])
    case 'navy':
      return of([12, 26], [10, 32], [270, 295])
    case 'denim':
      return of([35, 55], [12, 24], [260, 280])
    case 'red':
      return of([28, 50], [45, 75], [18, 38])
    case 'pink':
      return of([58, 86], [12, 45], [340, 375])
    case 'yellow':
      return of([76, 90], [35, 80], [82, 98])
    case 'orange':
      return of([55, 70], [50, 80], [50, 68])
    case 'green':
      return of([28, 70], [25, 55], [130, 165])
    case 'olive':
      return of([30, 52], [14, 32], [100, 120])
    case 'blue':
      return of([30, 52], [30, 60], [265, 290])
    case 'sky':
      return of([65, 86], [12, 32], [225, 265])
    case 'purple':
      return of([25, 60], [25, 50], [300, 325])
    case 'teal':
      return of([35, 60], [20, 38], [185, 215])
    case 'brown':
      return of([20, 42], [12, 30], [48, 75])
    case 'beige':
      return of([65, 82], [9, 22], [70, 92])
  }
}

export function drawCloth(chance: Chance, weave: Weave, colour: string): Cloth {
  const threads = threadsOf(chance, weave)
  // Flecked yarn: mostly grey, of light and dark fibres.
  const flecked = (weave === 'jersey' || weave === 'fleece') && chance.happens(0.15)
  return {
    colour: flecked ? moved(colour, { c: -8 }) : colour,
    weave,
    ...threads,
    ...(flecked
      ? {
          threads: noiseTile(chance, 256, 90, 40, 2, 0.9),
          period: 110,
          strength: chance.real(0.12, 0.22),
        }
      : {}),
    fade:
      weave === 'denim'
        ? chance.real(0.1, 0.35)
        : chance.happens(0.2)
          ? chance.real(0.03, 0.12)
          : 0,
  }
}
