import type { Point } from '../hull.ts'

/** What takes the points of one plane to those of another as a camera does: nine numbers, row by row. */
export type Homography = readonly number[]

/**
 * The homography that takes four points to four others, no three of them in a line (Hartley and Zisserman,
 * Multiple View Geometry, 2nd ed., 4.1: the direct linear transformation with its last number 1). Null where there
 * is none.
 */
export function homographyOf(from: readonly Point[], to: readonly Point[]): Homography | null {
  const rows = from.flatMap(([x, y], n) => {
    const [u, v] = to[n]!
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ]
  })
  const solved = solvedOf(rows, 1e-12)
  return solved && [...solved, 1]
}

/** Where a homography takes a point. */
export function taken(h: Homography, [x, y]: Point): Point {
  const w = h[6]! * x + h[7]! * y + h[8]!
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w]
}

/** The way back; null where there is none. */
export function backOf(h: Homography): Homography | null {
  const [a, b, c, d, e, f, g, i, j] = h as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  const adjugate = [
    e * j - f * i,
    c * i - b * j,
    b * f - c * e,
    f * g - d * j,
    a * j - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  ]
  const whole = a * adjugate[0]! + b * adjugate[3]! + c * adjugate[6]!
  return whole === 0 || !Number.isFinite(whole) ? null : adjugate.map((one) => one / whole)
}

/** How much longer a short way about a point becomes, in the mean of all directions. */
export function growth(h: Homography, [x, y]: Point): number {
  const w = h[6]! * x + h[7]! * y + h[8]!
  const [u, v] = taken(h, [x, y])
  const ux = (h[0]! - u * h[6]!) / w
  const uy = (h[1]! - u * h[7]!) / w
  const vx = (h[3]! - v * h[6]!) / w
  const vy = (h[4]! - v * h[7]!) / w
  return Math.sqrt(Math.abs(ux * vy - uy * vx))
}

/**
 * The unknowns of as many linear equations, each with its right side last (Gauss's elimination with the largest
 * pivot). Null where a pivot is not larger than `least` in parts of the largest number.
 */
export function solvedOf(rows: readonly (readonly number[])[], least: number): number[] | null {
  const m = rows.map((row) => [...row])
  const count = m.length
  const largest = Math.max(...m.flat().map(Math.abs))
  for (let i = 0; i < count; i += 1) {
    let best = i
    for (let n = i + 1; n < count; n += 1) {
      if (Math.abs(m[n]![i]!) > Math.abs(m[best]![i]!)) best = n
    }
    const pivot = m[best]!
    m[best] = m[i]!
    m[i] = pivot
    if (!(Math.abs(pivot[i]!) > least * largest)) return null
    for (let n = 0; n < count; n += 1) {
      const factor = n === i ? 0 : m[n]![i]! / pivot[i]!
      if (factor !== 0) for (let j = i; j <= count; j += 1) m[n]![j]! -= factor * pivot[j]!
    }
  }
  return m.map((row, i) => row[count]! / row[i]!)
}
