import { converter, formatHex, type Lab65, modeLab65, modeLrgb, modeRgb, useMode } from 'culori/fn'

useMode(modeRgb)
useMode(modeLrgb)
useMode(modeLab65)
const toLab = converter('lab65')
const toLight = converter('lrgb')

/** The light that red, green and blue give off, each from 0 to 1: what adds up where colours mix. */
export type Light = readonly [r: number, g: number, b: number]

function rgbOf(hex: string) {
  const found = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex)
  if (!found) throw new Error(`Not a colour of the form #rrggbb: ${hex}`)
  const [r, g, b] = found.slice(1).map((part) => Number.parseInt(part, 16) / 255)
  return { mode: 'rgb', r: r!, g: g!, b: b! } as const
}

/** A colour `#rrggbb` (sRGB) in CIELAB for the light D65. Throws on anything else. */
export const labOf = (hex: string): Lab65 => toLab(rgbOf(hex))

/** The light of each value from 0 to 255 that a picture holds (sRGB: IEC 61966-2-1). */
export const lightOfCode: readonly number[] = Array.from(
  { length: 256 },
  (_, code) => toLight({ mode: 'rgb', r: code / 255, g: 0, b: 0 }).r,
)

/** The nearest `#rrggbb` to a light. */
export const hexOf = ([r, g, b]: Light): string => formatHex({ mode: 'lrgb', r, g, b })

/** The nearest `#rrggbb` to a colour in CIELAB for the light D65. */
export const hexOfLab = (l: number, a: number, b: number): string =>
  formatHex({ mode: 'lab65', l, a, b })

/**
 * The colour that cloth of these colours has from afar, where the eye tells them apart no longer: the
 * mean of their light, not of their codes. Throws where there is none.
 */
export function mixed(
  colours: readonly { readonly colour: string; readonly share: number }[],
): string {
  const whole = colours.reduce((sum, { share }) => sum + share, 0)
  if (!(whole > 0)) throw new Error('No colours to mix.')
  const lights = colours.map(({ colour, share }) => ({ ...toLight(rgbOf(colour)), share }))
  const mean = (of: 'r' | 'g' | 'b') =>
    lights.reduce((sum, light) => sum + light[of] * light.share, 0) / whole
  return hexOf([mean('r'), mean('g'), mean('b')])
}
