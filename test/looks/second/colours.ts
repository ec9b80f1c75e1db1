import type { Chance, Range } from './chance.ts'

/** A colour of CSS: its hue in degrees, its saturation and lightness in percent. */
const hsl = (hue: number, saturation: number, lightness: number): string =>
  `hsl(${hue.toFixed(0)},${saturation.toFixed(0)}%,${lightness.toFixed(0)}%)`

const within = (chance: Chance, hue: Range, saturation: Range, lightness: Range): string =>
  hsl(chance.real(...hue), chance.real(...saturation), chance.real(...lightness))

const anyHue: Range = [0, 360]

/** Of a print, a button, a ground: a grey at times. */
export const anyColour = (chance: Chance): string =>
  chance.happens(0.3) ? hsl(0, 0, chance.real(5, 97)) : within(chance, anyHue, [15, 90], [12, 88])

/** Of a garment's cloth: white, nearly black, greyish or of a clear colour. */
export function clothColour(chance: Chance): string {
  if (chance.happens(0.15)) return within(chance, [0, 60], [0, 8], [90, 98])
  if (chance.happens(0.18)) return within(chance, anyHue, [0, 20], [7, 16])
  if (chance.happens(0.25)) return within(chance, anyHue, [0, 10], [20, 80])
  return within(chance, anyHue, [20, 85], [20, 80])
}

/** Of what a garment lies on: half of them are browns, as wood has them. */
export const groundColour = (chance: Chance): string =>
  chance.happens(0.5) ? within(chance, [15, 45], [5, 50], [25, 90]) : anyColour(chance)
