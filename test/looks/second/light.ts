import sharp from 'sharp'
import type { Fault } from '../look.ts'
import type { Raster } from '../raster.ts'
import type { Chance } from './chance.ts'
import { folded, hilly, type PerPixel, woven } from './relief.ts'
import type { Size } from './svg.ts'

/** What the light is multiplied by on its way from what lies in a picture into the camera. */
export interface Light {
  readonly groundRelief: PerPixel
  /** On the ground, of the garment. */
  readonly shadow: PerPixel
  readonly clothRelief: PerPixel
  /** On the garment: its edge turns away. */
  readonly rim: PerPixel
  /** Of lamp, lens and exposure together. */
  readonly lamp: PerPixel
  /** Of red, green and blue. */
  readonly cast: readonly [number, number, number]
  /** What the sensor adds in the end: standard deviation in steps of 255. */
  readonly noise: number
}

/** How much of the broad hills of a cloth is seen beside the fine ones. */
const broadShare = 0.6

/** The light on a garment, told by its mask (one channel, 255 is garment), and on the ground below it. */
export async function lightOn(
  chance: Chance,
  mask: Raster,
  rough: boolean,
  fault: Fault | null,
): Promise<Light> {
  const { shadow, rim } = await shadowOf(chance, mask)
  const ground = await (rough
    ? hilly(chance, mask, [2, 5], [0.1, 0.35])
    : hilly(chance, mask, [3, 60], [0.01, 0.08]))
  const broad = await hilly(chance, mask, [60, 200], [0.05, 0.3])
  const fine = await hilly(chance, mask, [14, 40], [0.01, 0.1])
  const folds = folded(chance, mask)
  const lamp = lampOf(chance, mask)
  const cast = [chance.real(0.92, 1.08), 1, chance.real(0.88, 1.1)] as const
  const exposure = exposureOf(chance, fault)
  const noise = chance.real(1, 5)
  const weave = woven(chance, mask)
  return {
    groundRelief: (x, y, at) => 1 + ground(x, y, at),
    shadow,
    clothRelief(x, y, at) {
      let relief = 1 + broad(x, y, at) * broadShare + fine(x, y, at) + weave(x, y, at)
      for (const fold of folds) relief += fold(x, y, at)
      return relief
    },
    rim,
    lamp: (x, y, at) => lamp(x, y, at) * exposure,
    cast,
    noise,
  }
}

/** How much darker a garment's very edge is, and how fast that wears off inwards. */
const rimDepth = 0.25
const rimFall = 3

async function shadowOf(
  chance: Chance,
  { data, width, height }: Raster,
): Promise<Pick<Light, 'shadow' | 'rim'>> {
  const soft = await sharp(data, { raw: { width, height, channels: 1 } })
    .blur(chance.real(4, 18))
    .extractChannel(0)
    .raw()
    .toBuffer()
  const right = chance.whole(-8, 8)
  const down = chance.whole(-8, 8)
  const depth = chance.real(0.1, 0.55)
  const within = (value: number, side: number) => Math.min(side - 1, Math.max(0, value))
  return {
    shadow(x, y) {
      const from = within(y - down, height) * width + within(x - right, width)
      return 1 - (depth * soft[from]!) / 255
    },
    rim: (_x, _y, at) => 1 - rimDepth * Math.max(0, 1 - (soft[at]! / 255 - 0.5) * rimFall),
  }
}

/** Brighter towards one side of the picture, darker towards its corners. */
function lampOf(chance: Chance, { width, height }: Size): PerPixel {
  const acrossBy = chance.real(-0.175, 0.175)
  const downBy = chance.real(-0.175, 0.175)
  const cornersBy = chance.real(0, 0.15)
  return (x, y) => {
    const across = (2 * x) / width - 1
    const down = (2 * y) / height - 1
    const slope = 1 + acrossBy * across + downBy * down
    return slope * (1 - cornersBy * (across * across + down * down))
  }
}

function exposureOf(chance: Chance, fault: Fault | null): number {
  if (fault === 'dark') return chance.real(0.06, 0.16)
  if (fault === 'bright') return chance.real(2.6, 4.5)
  return chance.real(0.75, 1.05)
}
