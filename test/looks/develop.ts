import sharp from 'sharp'
import { type Chance, chanceOf } from '../help/chance.ts'
import { bell, bells, storedTurn, streak } from '../help/flaws.ts'
import { random } from '../help/xorshift.ts'
import { codeOfLight, labOfCodes } from './light.ts'
import type { Look } from './look.ts'
import type { Shot } from './shoot.ts'

const channels = 3
const lightness = Float32Array.from({ length: 256 }, (_, code) => labOfCodes(code, code, code)[0])

/** How bright a picture is on the whole, CIELAB lightness, where its light is multiplied by so much. */
function meanLightness({ light }: Shot, gain: number): number {
  let sum = 0
  let count = 0
  for (let at = 0; at < light.length - 2; at += 3 * 97) {
    const y = 0.2126 * light[at]! + 0.7152 * light[at + 1]! + 0.0722 * light[at + 2]!
    sum += lightness[codeOfLight(rolled(y * gain))]!
    count++
  }
  return sum / count
}

/** Bright light is rolled off before it is cut. */
const rolled = (light: number): number =>
  light < 0.7 ? light : 0.7 + 0.3 * (1 - Math.exp(-(light - 0.7) / 0.3))

/** Steps of light for which codes are looked up, for each from 0 to 4. */
const fine = 16384

/** Sets the exposure and makes codes of the light: three for each pixel, without noise. */
export function expose(shot: Shot, look: Look, chance: Chance): Uint8Array {
  const own = meanLightness(shot, 1)
  const wanted =
    look.fault === 'dark'
      ? chance.real(6, 16)
      : look.fault === 'bright'
        ? chance.real(91, 96)
        : Math.min(86, Math.max(34, 57 + 0.62 * (own - 52) + chance.real(-6, 6)))
  let [low, high] = [0.001, 400]
  for (let round = 0; round < 30; round++) {
    const middle = Math.sqrt(low * high)
    if (meanLightness(shot, middle) < wanted) low = middle
    else high = middle
  }
  const gain = Math.sqrt(low * high)
  const { light } = shot
  const burnt = look.fault === 'bright'
  const table = Uint8Array.from({ length: 4 * fine }, (_, at) =>
    codeOfLight(burnt ? (1.15 * at) / fine : rolled(at / fine)),
  )
  const out = new Uint8Array(light.length)
  const last = table.length - 1
  for (let at = 0; at < light.length; at++) {
    out[at] = table[Math.min(last, Math.floor(light[at]! * gain * fine + 0.5))]!
  }
  return out
}

/** Gives codes what lens, sensor and file do to them; a JPEG. */
export async function develop(
  codes: Uint8Array,
  { width, height }: Pick<Shot, 'width' | 'height'>,
  look: Look,
  seed: number,
): Promise<Buffer> {
  const chance = chanceOf(seed, 7)
  const long = Math.max(width, height)
  let seen = sharp(codes, { raw: { width, height, channels } })
  if (look.fault === 'blurred') {
    if (chance.happens(0.3))
      seen = seen
        .blur(long * 0.0012)
        .convolve(streak(Math.round(chance.real(0.0055, 0.01) * long), chance.real(0, 180)))
    else seen = seen.blur(long * chance.real(0.0036, 0.009))
  } else if (look.soft * long > 0.3) seen = seen.blur(look.soft * long)
  const smooth = new Uint8Array(await seen.raw().toBuffer())
  const noise = look.fault === 'dark' ? chance.real(3, 8) : look.noise
  const grainy = grained(smooth, noise, seed)
  const made = sharp(grainy, { raw: { width, height, channels } })
    .rotate(storedTurn[look.exif])
    .withMetadata({ orientation: look.exif })
  return await (look.tells
    ? made.withExifMerge({ IFD2: { FocalLengthIn35mmFilm: String(Math.round(look.focal35)) } })
    : made
  )
    .jpeg({ quality: look.quality })
    .toBuffer()
}

/** Noise of a sensor, standard deviation in steps of 255: most of it in brightness, some in colour. */
function grained(data: Uint8Array, noise: number, seed: number): Uint8Array {
  const grain = bell(chanceOf(seed, 5), noise)
  const out = new Uint8ClampedArray(data.length)
  const next = random(seed | 1)
  for (let at = 0; at < data.length; at += channels) {
    const drawn = next(2 ** 28)
    const bright = grain[drawn & (bells - 1)]! * 0.85
    const colour = grain[drawn >> 14]! * 0.45
    out[at] = data[at]! + bright + colour
    out[at + 1] = data[at + 1]! + bright
    out[at + 2] = data[at + 2]! + bright - colour
  }
  return new Uint8Array(out.buffer)
}
