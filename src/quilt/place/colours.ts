import { differenceCiede2000, modeLab65, useMode } from 'culori/fn'
import { type Figure, practice } from '../../base/figure.ts'

/** A colour in CIELAB for the light D65: L from 0 to 100, a and b. */
export type Lab = readonly [L: number, a: number, b: number]

useMode(modeLab65)
const ciede2000 = differenceCiede2000()
const asColour = ([l, a, b]: Lab) => ({ mode: 'lab65', l, a, b }) as const

/** How unlike two colours look: CIEDE2000 with all weights 1 (ISO/CIE 11664-6). */
export const difference = (one: Lab, other: Lab): number =>
  ciede2000(asColour(one), asColour(other))

/** Cloth whose colour nobody told: as far from light as from dark. */
export const neutral: Lab = [50, 0, 0]

/** What pieces of one garment pay, by the squared distance of their cells. */
export const usualRepeat: Readonly<Record<string, number>> = { '1': 100, '2': 30, '4': 12 }

/** What two equal colours pay side by side, and how unlike they must be to pay nothing. */
const hue = { most: 20, apart: 40 }
const value = { most: 10, apart: 30 }

const falling = ({ most, apart }: typeof hue, by: number): number =>
  most * (1 - Math.min(by, apart) / apart)

/**
 * What two garments cost side by side: less the more unlike they look, and less the further apart they
 * are in lightness. A repeat knows garments only, so that light and dark are spread over the quilt by the
 * second part: dark beside dark costs, whichever garments they are, and a placement of least cost has them
 * by turns rather than in a heap.
 */
export const besideCost = (one: Lab, other: Lab): number =>
  Math.round(falling(hue, difference(one, other)) + falling(value, Math.abs(one[0] - other[0])))

/** The table of what types cost side by side, from the colour of each. */
export const besideCosts = (colours: readonly Lab[]): number[][] =>
  colours.map((one) => colours.map((other) => besideCost(one, other)))

export const placeFigures: readonly Figure[] = [
  { figure: 'placement/colour that nobody told', value: neutral, source: practice },
  { figure: 'placement/repeat', value: usualRepeat, source: practice },
  { figure: 'placement/like colours side by side', value: hue, source: practice },
  { figure: 'placement/like lightness side by side', value: value, source: practice },
]
