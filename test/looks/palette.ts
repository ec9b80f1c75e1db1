import type { Raster } from './raster.ts'

type Colour = readonly [r: number, g: number, b: number]

const most = 5
const rounds = 8
/** A pixel further from its colour than this, in codes, is of no one colour. */
const near = 34
const opaque = 247
const clear = 8

const away = (one: Colour, other: Colour): number =>
  (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2 + (one[2] - other[2]) ** 2

const nearest = (centres: readonly Colour[], colour: Colour): number =>
  centres.reduce(
    (best, centre, n) => (away(centre, colour) < away(centres[best]!, colour) ? n : best),
    0,
  )

/**
 * Which of the main colours of a print lies at each pixel: 0 where nothing is printed, from 1 on by colour,
 * 255 where it is of no one colour.
 */
export function zonesByColour({ data, width, height }: Raster): Uint8Array {
  const colourAt = (n: number): Colour => [data[n * 4]!, data[n * 4 + 1]!, data[n * 4 + 2]!]
  const printed: number[] = []
  for (let n = 0; n < width * height; n++) if (data[n * 4 + 3]! > opaque) printed.push(n)
  const stride = Math.max(1, Math.floor(printed.length / 2500))
  const samples = printed.filter((_, n) => n % stride === 0).map(colourAt)
  if (samples.length === 0) return new Uint8Array(width * height)

  let centres: Colour[] = [samples[samples.length >> 1]!]
  const apart = (colour: Colour) => away(centres[nearest(centres, colour)]!, colour)
  while (centres.length < most)
    centres.push(samples.reduce((far, colour) => (apart(colour) > apart(far) ? colour : far)))
  for (let round = 0; round < rounds; round++) {
    const sums = centres.map(() => [0, 0, 0, 0] as [number, number, number, number])
    for (const colour of samples) {
      const sum = sums[nearest(centres, colour)]!
      for (const c of [0, 1, 2] as const) sum[c] += colour[c]
      sum[3]++
    }
    centres = centres.map((centre, n) => {
      const [r, g, b, count] = sums[n]!
      return count === 0 ? centre : [r / count, g / count, b / count]
    })
  }
  return Uint8Array.from({ length: width * height }, (_, n) => {
    const alpha = data[n * 4 + 3]!
    if (alpha < clear) return 0
    if (alpha <= opaque) return 255
    const colour = colourAt(n)
    const own = nearest(centres, colour)
    return away(centres[own]!, colour) < near * near ? own + 1 : 255
  })
}
