import sharp from 'sharp'
import { lightOfCode } from '../../../src/base/colour.ts'
import type { Fault } from '../look.ts'
import type { Chance } from './chance.ts'
import type { Layers } from './layers.ts'
import type { Light } from './light.ts'
import type { Size } from './svg.ts'

const channels = 3
const lights = Float64Array.from(lightOfCode)

/** The code (sRGB: IEC 61966-2-1) of a light, 0 to 255 but no whole number; what is brighter than 1 is 255. */
function codeOf(light: number): number {
  const held = Math.min(1, Math.max(0, light))
  return 255 * (held <= 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055)
}

/** About 0, standard deviation 1: the sum of three numbers that are spread evenly is nearly a bell. */
const bell = (chance: Chance): number =>
  (chance.real(0, 1) + chance.real(0, 1) + chance.real(0, 1) - 1.5) * 2

/** Lights the layers and takes them up with the sensor's noise: three codes from 0 to 255 for each pixel. */
export function expose(chance: Chance, { ground, cloth, mask }: Layers, light: Light): Uint8Array {
  const { width, height } = mask
  const out = new Uint8Array(width * height * channels)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = y * width + x
      const covered = mask.data[at]! / 255
      const groundRelief = light.groundRelief(x, y, at)
      const shadow = light.shadow(x, y, at)
      const clothRelief = light.clothRelief(x, y, at)
      const rim = light.rim(x, y, at)
      const lamp = light.lamp(x, y, at)
      for (let channel = 0; channel < channels; channel++) {
        const below = lights[ground.data[at * 4 + channel]!]! * groundRelief * shadow
        const above = lights[cloth.data[at * 4 + channel]!]! * clothRelief * rim
        const seen = (below * (1 - covered) + above * covered) * lamp * light.cast[channel]!
        const code = codeOf(seen) + bell(chance) * light.noise
        out[at * channels + channel] = Math.max(0, Math.min(255, code))
      }
    }
  return out
}

/** Out of focus where that is the photo's fault, a little soft at times; standard deviation, px. */
function blurOf(chance: Chance, fault: Fault | null): number | null {
  if (fault === 'blurred') return chance.real(4, 9)
  return chance.happens(0.5) ? chance.real(0.5, 1.1) : null
}

/** Makes a JPEG of the codes that a picture of that size was taken up in. */
export async function develop(
  chance: Chance,
  codes: Uint8Array,
  { width, height }: Size,
  fault: Fault | null,
): Promise<Buffer> {
  const taken = sharp(codes, { raw: { width, height, channels } })
  const blur = blurOf(chance, fault)
  const seen = blur === null ? taken : taken.blur(blur)
  return await seen.jpeg({ quality: chance.whole(70, 92) }).toBuffer()
}
