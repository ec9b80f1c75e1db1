import type { Pixels } from '../cloth.ts'
import { intoWaves, waveSide } from './fourier.ts'
import type { Mask } from './outline.ts'
import { noiseWaves, printWaves, type Told, toldByWaves } from './waves.ts'

/** Windows at most, how far apart they begin at least, and places asked whether they lie in the garment: pixels. */
const most = 48
const [step, asked] = [24, 9]
/** Every so many pixels the garment's colours are looked at. */
const sparse = 4
/** Steps of a code for one of CIELAB lightness. */
const codes = 2.55

const size = waveSide * waveSide
const hann = Float64Array.from(
  { length: waveSide },
  (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / waveSide),
)
/** What a window of this shape leaves of the power of the whole. */
const left = hann.reduce((sum, one) => sum + one * one, 0) ** 2

interface Window extends Told {
  /** Standard deviation of what is neither fold nor noise, and of noise were it as strong at all lengths. */
  readonly busy: number
  readonly noise: number
}

const shares = [0.1, 0.5, 0.9] as const
const ofAll: readonly ((told: Told) => number)[] = [
  ({ middle }) => middle,
  ({ fine }) => fine,
  ({ first }) => first,
  ({ second }) => second,
  ({ turns }) => Math.log(turns),
  ({ along }) => along,
  ({ both }) => both,
  ({ beyond }) => beyond,
]
const ofWindows: readonly ((window: Window) => number)[] = [
  ({ busy }) => Math.log(busy + 0.3),
  ({ noise }) => Math.log(noise + 0.3),
  ({ busy, noise }) => Math.log((busy + 0.1) / (noise + 0.1)),
  ...ofAll,
]
const count = ofWindows.length * shares.length + ofAll.length + 3

/**
 * What waves tell of a garment's print: numbers for the net, in a fixed order. The picture is looked at as large
 * as it is, so that fine patterns are seen that the straightened garment no longer shows.
 */
export function waveSigns(picture: Pixels, mask: Mask): number[] {
  const places = spread(placesIn(picture, mask))
  if (places.length === 0) return new Array<number>(count).fill(0)
  const sum = new Float64Array(printWaves.length)
  const tilt = mainTilt(picture, places)
  const windows = places.map((place) => windowAt(picture, place, tilt, sum))
  const together = toldByWaves(sum)
  const turns = windows.map((window) => Math.log(window.turns))
  const usual = quantile(turns, 0.5)
  return [
    ...ofWindows.flatMap((of) => shares.map((share) => quantile(windows.map(of), share))),
    ...ofAll.map((of) => of(together)),
    turns.filter((one) => Math.abs(one - usual) < 0.15).length / turns.length,
    agreement(windows),
    Math.log(windows.length),
  ]
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.round(share * (sorted.length - 1))]!
}

/** How far the windows' lines run the same ways, 0 to 1. */
function agreement(windows: readonly Window[]): number {
  let [cos, sin, whole] = [0, 0, 1e-6]
  for (const { angle, both, busy } of windows) {
    const weight = both * busy
    cos += weight * Math.cos(4 * angle)
    sin += weight * Math.sin(4 * angle)
    whole += weight
  }
  return Math.hypot(cos, sin) / whole
}

interface Place {
  readonly left: number
  readonly top: number
}

/** Windows that lie in the garment. */
function placesIn({ width, height }: Pixels, mask: Mask): Place[] {
  const [byX, byY] = [mask.width / width, mask.height / height]
  const isIn = (x: number, y: number): boolean =>
    mask.data[Math.floor(y * byY) * mask.width + Math.floor(x * byX)] === 1
  const found: Place[] = []
  for (let top = 0; top + waveSide <= height; top += step)
    for (let left = 0; left + waveSide <= width; left += step) {
      let inside = true
      for (let y = 0; inside && y < waveSide; y += asked)
        for (let x = 0; inside && x < waveSide; x += asked) inside = isIn(left + x, top + y)
      if (inside) found.push({ left, top })
    }
  return found
}

/** As many of them as are looked at, from all over. */
const spread = (places: readonly Place[]): Place[] =>
  places.filter(
    (_, n) =>
      Math.floor((n * most) / places.length) !== Math.floor(((n - 1) * most) / places.length),
  )

/** Lightness of a pixel, and its two colours, in codes. */
function codesAt(data: Uint8Array, at: number, to: Float64Array): void {
  const [red, green, blue] = [data[at]!, data[at + 1]!, data[at + 2]!]
  to[0] = 0.299 * red + 0.587 * green + 0.114 * blue
  to[1] = red - green
  to[2] = blue - to[0]
}

/** The direction in which the garment's colours spread most within its windows, radians. */
function mainTilt({ data, width }: Pixels, places: readonly Place[]): number {
  const now = new Float64Array(3)
  let [xx, yy, xy] = [0, 0, 0]
  for (const { left, top } of places) {
    let [count, sx, sy, sxx, syy, sxy] = [0, 0, 0, 0, 0, 0]
    for (let y = 0; y < waveSide; y += sparse)
      for (let x = 0; x < waveSide; x += sparse) {
        codesAt(data, ((top + y) * width + left + x) * 3, now)
        const [u, v] = [now[1]!, now[2]!]
        count += 1
        sx += u
        sy += v
        sxx += u * u
        syy += v * v
        sxy += u * v
      }
    xx += sxx - (sx * sx) / count
    yy += syy - (sy * sy) / count
    xy += sxy - (sx * sy) / count
  }
  return Math.atan2(2 * xy, xx - yy) / 2
}

const [real, imaginary] = [new Float64Array(size), new Float64Array(size)]

/** Reads a window, and adds its waves, as shares of their sum, to those of the others. */
function windowAt({ data, width }: Pixels, place: Place, tilt: number, sum: Float64Array): Window {
  const [cos, sin] = [Math.cos(tilt) / codes, Math.sin(tilt) / codes]
  const now = new Float64Array(3)
  let [light, colour] = [0, 0]
  for (let y = 0, to = 0; y < waveSide; y += 1) {
    let at = ((place.top + y) * width + place.left) * 3
    for (let x = 0; x < waveSide; x += 1, to += 1, at += 3) {
      codesAt(data, at, now)
      real[to] = now[0]! / codes
      imaginary[to] = now[1]! * cos + now[2]! * sin
      light += real[to]! / size
      colour += imaginary[to]! / size
    }
  }
  for (let y = 0, at = 0; y < waveSide; y += 1) {
    for (let x = 0; x < waveSide; x += 1, at += 1) {
      const weight = hann[x]! * hann[y]!
      real[at] = (real[at]! - light) * weight
      imaginary[at] = (imaginary[at]! - colour) * weight
    }
  }
  intoWaves(real, imaginary)
  const power = new Float64Array(printWaves.length)
  let [whole, weighed, noise] = [1e-9, 1e-9, 0]
  for (let n = 0; n < power.length; n += 1) {
    const wave = printWaves[n]!
    const one = powerOf(wave)
    whole += one
    // Folds are slow waves, and strong: all are weighed by how often they turn.
    power[n] = one * wave.turns
    weighed += power[n]!
  }
  for (let n = 0; n < noiseWaves.length; n += 1) noise += powerOf(noiseWaves[n]!)
  for (let n = 0; n < power.length; n += 1) sum[n]! += power[n]! / weighed
  return {
    ...toldByWaves(power),
    busy: Math.sqrt(whole / left),
    noise: Math.sqrt((noise * printWaves.length) / noiseWaves.length / left),
  }
}

/**
 * Lightness and colour were taken apart as one complex picture: a wave and the one that turns the other way hold the
 * power of both.
 */
const powerOf = ({ at, back }: { readonly at: number; readonly back: number }): number =>
  real[at]! ** 2 + imaginary[at]! ** 2 + real[back]! ** 2 + imaginary[back]! ** 2
