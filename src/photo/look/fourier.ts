/** A power of two: the side of the squares that are taken apart into waves. */
export const waveSide = 64

const half = waveSide >> 1
const bits = Math.log2(waveSide)
const turned = Uint8Array.from({ length: waveSide }, (_, n) =>
  Number.parseInt([...n.toString(2).padStart(bits, '0')].reverse().join(''), 2),
)
const cosines = Float64Array.from({ length: half }, (_, n) =>
  Math.cos((2 * Math.PI * n) / waveSide),
)
const sines = Float64Array.from({ length: half }, (_, n) => -Math.sin((2 * Math.PI * n) / waveSide))

/**
 * Takes a square of complex numbers apart into waves, in place: the discrete Fourier transform along both sides,
 * not divided by anything (Cooley and Tukey, Mathematics of Computation 19 (1965) 297). Rows after each other;
 * the wave that turns `n` times along a side stands at `n`, or `n + waveSide` where `n` is below 0.
 */
export function intoWaves(real: Float64Array, imaginary: Float64Array): void {
  for (let line = 0; line < waveSide; line += 1) lineIntoWaves(real, imaginary, line * waveSide, 1)
  for (let line = 0; line < waveSide; line += 1) lineIntoWaves(real, imaginary, line, waveSide)
}

function lineIntoWaves(
  real: Float64Array,
  imaginary: Float64Array,
  start: number,
  step: number,
): void {
  for (let n = 0; n < waveSide; n += 1) {
    const other = turned[n]!
    if (other <= n) continue
    const one = start + n * step
    const two = start + other * step
    const keptReal = real[one]!
    const keptImaginary = imaginary[one]!
    real[one] = real[two]!
    imaginary[one] = imaginary[two]!
    real[two] = keptReal
    imaginary[two] = keptImaginary
  }
  for (let size = 1; size < waveSide; size *= 2) {
    const apart = half / size
    for (let from = 0; from < waveSide; from += 2 * size) {
      for (let n = 0; n < size; n += 1) {
        const cos = cosines[n * apart]!
        const sin = sines[n * apart]!
        const one = start + (from + n) * step
        const two = one + size * step
        const r = real[two]! * cos - imaginary[two]! * sin
        const i = real[two]! * sin + imaginary[two]! * cos
        real[two] = real[one]! - r
        imaginary[two] = imaginary[one]! - i
        real[one]! += r
        imaginary[one]! += i
      }
    }
  }
}
