/** A surface of second degree over a picture: its value at a pixel. */
export type Surface = (x: number, y: number) => number

export interface Samples {
  readonly x: Float32Array
  readonly y: Float32Array
  readonly value: Float32Array
}

export interface Fitted {
  readonly at: Surface
  /** How far off it most samples are: their spread, as a standard deviation. */
  readonly spread: number
}

const rounds = 4
/** Each term of the surface is drawn to nothing a little, so that few samples do no harm. */
const stiff = 1e-5
/** Tukey's weights: what is further off than so many spreads counts nothing. */
const reach = 4.685

/**
 * The surface of second degree through most of the samples: those far off it count little. `degree` 1 gives a
 * plane, 0 a constant.
 */
export function surfaceThrough(
  { x, y, value }: Samples,
  { width, height }: { readonly width: number; readonly height: number },
  degree: 0 | 1 | 2 = 2,
): Fitted {
  const count = degree === 2 ? 6 : degree === 1 ? 3 : 1
  const size = value.length
  const weights = new Float64Array(size).fill(1)
  const off = new Float32Array(size)
  let at: Surface = () => 0
  let spread = 0
  for (let round = 0; round < rounds; round += 1) {
    const matrix = equations({ x, y, value }, weights, { width, height, count })
    at = surfaceOf(solve(matrix, count), width, height)
    for (let n = 0; n < size; n += 1) off[n] = Math.abs(value[n]! - at(x[n]!, y[n]!))
    spread = 1.4826 * (off.toSorted()[size >> 1] ?? 0)
    const far = reach * Math.max(spread, 0.5)
    for (let n = 0; n < size; n += 1) weights[n] = Math.max(0, 1 - (off[n]! / far) ** 2) ** 2
  }
  return { at, spread }
}

function surfaceOf(terms: readonly number[], width: number, height: number): Surface {
  const [c = 0, cx = 0, cy = 0, cxx = 0, cxy = 0, cyy = 0] = terms
  return (x, y) => {
    const u = (2 * x) / width - 1
    const v = (2 * y) / height - 1
    return c + cx * u + cy * v + cxx * u * u + cxy * u * v + cyy * v * v
  }
}

/** The normal equations of weighted least squares. */
function equations(
  { x, y, value }: Samples,
  weights: Float64Array,
  { width, height, count }: { width: number; height: number; count: number },
): Float64Array[] {
  const matrix = Array.from({ length: count }, () => new Float64Array(count + 1))
  const term = new Float64Array(6)
  for (let n = 0; n < value.length; n += 1) {
    const weight = weights[n]!
    if (weight === 0) continue
    const u = (2 * x[n]!) / width - 1
    const v = (2 * y[n]!) / height - 1
    term[0] = 1
    term[1] = u
    term[2] = v
    term[3] = u * u
    term[4] = u * v
    term[5] = v * v
    for (let i = 0; i < count; i += 1) {
      const line = matrix[i]!
      const scaled = weight * term[i]!
      for (let j = 0; j < count; j += 1) line[j]! += scaled * term[j]!
      line[count]! += scaled * value[n]!
    }
  }
  for (let i = 0; i < count; i += 1) matrix[i]![i]! += i === 0 ? 1e-9 : stiff * value.length
  return matrix
}

/** Gauss's elimination; the matrix is positive definite. */
function solve(matrix: Float64Array[], count: number): number[] {
  for (let i = 0; i < count; i += 1) {
    for (let below = i + 1; below < count; below += 1) {
      const factor = matrix[below]![i]! / matrix[i]![i]!
      for (let j = i; j <= count; j += 1) matrix[below]![j]! -= factor * matrix[i]![j]!
    }
  }
  const solved = new Array<number>(count).fill(0)
  for (let i = count - 1; i >= 0; i -= 1) {
    let value = matrix[i]![count]!
    for (let j = i + 1; j < count; j += 1) value -= matrix[i]![j]! * solved[j]!
    solved[i] = value / matrix[i]![i]!
  }
  return solved
}
