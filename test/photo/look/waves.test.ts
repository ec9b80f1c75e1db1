import { expect, test } from 'vitest'
import { intoWaves, waveSide } from '../../../src/photo/look/fourier.ts'
import { waveSigns } from '../../../src/photo/look/wave-signs.ts'
import { printWaves, toldByWaves } from '../../../src/photo/look/waves.ts'

const size = waveSide ** 2

/** Turns across and down, then both parts of that wave. */
const byNumpy = [
  [0, 0, 121626.0, 103225.0],
  [1, 0, -319.14148, 312.22228],
  [0, 1, -71.29864, -296.95175],
  [60, 5, -157.0192, 321.34691],
  [2, 63, -1285.21694, 287.07707],
  [32, 32, 1158.0, 3701.0],
  [8, 17, -731.70682, 491.21898],
] as const

test('waves are those that numpy.fft.fft2 finds (NumPy 2.4.6) in the same numbers', () => {
  const real = Float64Array.from({ length: size }, (_, n) => Math.floor((n * n) / 7) % 61)
  const imaginary = Float64Array.from({ length: size }, (_, n) => Math.floor((n * n) / 11) % 53)
  intoWaves(real, imaginary)
  for (const [x, y, cos, sin] of byNumpy) {
    expect(real[y * waveSide + x]).toBeCloseTo(cos, 4)
    expect(imaginary[y * waveSide + x]).toBeCloseTo(sin, 4)
  }
})

/** What the waves of a pattern tell: its value at each pixel of a window. */
function toldOf(pattern: (x: number, y: number) => number) {
  const real = Float64Array.from({ length: size }, (_, n) =>
    pattern(n % waveSide, Math.floor(n / waveSide)),
  )
  const imaginary = new Float64Array(size)
  intoWaves(real, imaginary)
  return toldByWaves(
    Float64Array.from(printWaves, ({ at }) => real[at]! ** 2 + imaginary[at]! ** 2),
  )
}

const bands = (at: number, wide: number): number => Math.floor(at / wide) % 2

test('stripes lie along one line of waves, checks along two, scattered dots along none', () => {
  const stripes = toldOf((_, y) => bands(y, 4))
  const checks = toldOf((x, y) => bands(x, 4) + bands(y, 4))
  const dots = toldOf((x, y) => {
    const row = Math.floor(y / 16)
    const [dx, dy] = [((x + (row % 2) * 8) % 16) - 8, (y % 16) - 8]
    return dx * dx + dy * dy < 16 ? 1 : 0
  })
  expect(stripes.along).toBeGreaterThan(0.99)
  expect(checks.both).toBeGreaterThan(0.99)
  expect(checks.along).toBeLessThan(0.6)
  expect(dots.both).toBeLessThan(0.6)
  // The wave with most around it: its neighbours take in as much.
  expect(Math.abs(stripes.turns - 8)).toBeLessThanOrEqual(1)
  expect(Math.min(stripes.beyond, checks.beyond)).toBeGreaterThan(dots.beyond + 0.2)
})

test('checks of three pixels are told from plain cloth in the picture as large as it is', () => {
  const [width, height] = [400, 300]
  const picture = (pattern: (x: number, y: number) => number) => ({
    data: Uint8Array.from({ length: width * height * 3 }, (_, n) => {
      const at = Math.floor(n / 3)
      return 120 + pattern(at % width, Math.floor(at / width))
    }),
    width,
    height,
    channels: 3 as const,
  })
  const mask = { width: 80, height: 60, data: new Uint8Array(80 * 60).fill(1) }
  const checked = waveSigns(
    picture((x, y) => 20 * (bands(x, 3) + bands(y, 3))),
    mask,
  )
  const plain = waveSigns(
    picture(() => 0),
    mask,
  )
  expect(checked).toHaveLength(plain.length)
  expect(checked.every(Number.isFinite)).toBe(true)
  // The first three are logarithms of how much windows differ within themselves, beyond folds and noise.
  expect(Math.min(...checked.slice(0, 3))).toBeGreaterThan(Math.max(...plain.slice(0, 3)) + 2)
})

test('a garment in which no window lies tells nothing, in as many numbers', () => {
  const picture = { data: new Uint8Array(90 * 90 * 3), width: 90, height: 90, channels: 3 as const }
  const [none, all] = [0, 1].map((one) =>
    waveSigns(picture, { width: 30, height: 30, data: new Uint8Array(900).fill(one) }),
  )
  expect(none!.every((one) => one === 0)).toBe(true)
  expect(none).toHaveLength(all!.length)
})
