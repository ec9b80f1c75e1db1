import {
  converter,
  formatHex,
  type Lab65,
  modeLab65,
  modeLch65,
  modeLrgb,
  modeRgb,
  useMode,
} from 'culori/fn'
import { type Light, lightOfCode } from '../../src/base/colour.ts'

useMode(modeRgb)
useMode(modeLab65)
useMode(modeLch65)
useMode(modeLrgb)
const toLab = converter('lab65')
const toRgb = converter('rgb')

/** `lightOfCode` as numbers that loops over pixels read quickly. */
export const lights = Float32Array.from(lightOfCode)

export type Lab = readonly [l: number, a: number, b: number]

/** What three codes from 0 to 255 (sRGB) look like: CIELAB for the light D65. */
export function labOfCodes(r: number, g: number, b: number): Lab {
  const { l, a, b: yellow }: Lab65 = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 })
  return [l, a, yellow]
}

export function codesOf(hex: string): [r: number, g: number, b: number] {
  const code = Number.parseInt(hex.slice(1), 16)
  return [code >> 16, (code >> 8) & 255, code & 255]
}

export const labOfHex = (hex: string): Lab => labOfCodes(...codesOf(hex))

export const lightOfHex = (hex: string): Light => {
  const [r, g, b] = codesOf(hex)
  return [lights[r]!, lights[g]!, lights[b]!]
}

/** The colour `#rrggbb` of a lightness, a chroma and a hue in degrees, as near as sRGB comes to it. */
export function hexOfLch(l: number, c: number, h: number): string {
  const { r, g, b } = toRgb({ mode: 'lch65', l, c: Math.max(0, c), h })
  const held = (part: number) => Math.min(1, Math.max(0, part))
  return formatHex({ mode: 'rgb', r: held(r), g: held(g), b: held(b) })
}

/** A colour moved by so much lightness and chroma, and turned by so many degrees. */
export function moved(hex: string, by: { l?: number; c?: number; h?: number }): string {
  const [l, a, b] = labOfHex(hex)
  const chroma = Math.hypot(a, b)
  const hue = (Math.atan2(b, a) * 180) / Math.PI
  const lightness = Math.min(98, Math.max(4, l + (by.l ?? 0)))
  return hexOfLch(lightness, chroma + (by.c ?? 0), hue + (by.h ?? 0))
}

/** How far apart two colours are, straight through CIELAB. */
export const apart = (one: Lab, other: Lab): number =>
  Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2])

const steps = 16384

/** The nearest code from 0 to 255 of each light from 0 to 1, in steps. */
const codes = Uint8Array.from({ length: steps + 1 }, (_, at) =>
  Math.round(255 * toRgb({ mode: 'lrgb', r: at / steps, g: 0, b: 0 }).r),
)

/** The nearest code from 0 to 255 (sRGB) of a light; what is brighter than 1 is 255. */
export const codeOfLight = (light: number): number =>
  codes[light >= 1 ? steps : light <= 0 ? 0 : Math.round(light * steps)]!
