import { type Point, turnOf } from '../hull.ts'

/** Where the lines through two pairs of points meet; null where they run alongside. */
export function meeting(a: Point, b: Point, c: Point, d: Point): Point | null {
  const [x, y] = [b[0] - a[0], b[1] - a[1]]
  const [u, v] = [d[0] - c[0], d[1] - c[1]]
  const whole = x * v - y * u
  if (Math.abs(whole) < 1e-9 * (Math.hypot(x, y) * Math.hypot(u, v))) return null
  const part = ((c[0] - a[0]) * v - (c[1] - a[1]) * u) / whole
  return [a[0] + part * x, a[1] + part * y]
}

/**
 * The four-sided shape around a hull: its shortest-felt sides are taken away, their neighbours drawn on until they
 * meet, one by one where that adds least. Rounded and nibbled corners come out sharp. Null where none is left.
 */
export function quadAround(hull: readonly Point[]): Point[] | null {
  let corners = [...hull]
  while (corners.length > 4) {
    const count = corners.length
    let [best, least]: [{ at: number; point: Point } | null, number] = [
      null,
      Number.POSITIVE_INFINITY,
    ]
    for (let n = 0; n < count; n += 1) {
      const [before, a, b, after] = [n + count - 1, n, n + 1, n + 2].map(
        (at) => corners[at % count]!,
      ) as [Point, Point, Point, Point]
      // The two sides must turn by less than a half together, or they meet on the wrong side.
      if (
        turnOf([0, 0], [a[0] - before[0], a[1] - before[1]], [after[0] - b[0], after[1] - b[1]]) <=
        0
      )
        continue
      const point = meeting(before, a, b, after)
      if (!point) continue
      const added = Math.abs(turnOf(a, b, point))
      if (added < least) [best, least] = [{ at: n, point }, added]
    }
    if (!best) return null
    const { at, point } = best
    const next = (at + 1) % count
    corners = corners.map((one, n) => (n === at ? point : one)).filter((_, n) => n !== next)
  }
  return corners.length === 4 ? corners : null
}

/** The place in a four-sided shape at these shares of its sides, from its first corner; below 0 and above 1 beyond it. */
export function placeIn(corners: readonly Point[], u: number, v: number): Point {
  const [a, b, c, d] = corners as [Point, Point, Point, Point]
  const at = (k: 0 | 1): number =>
    (1 - v) * ((1 - u) * a[k] + u * b[k]) + v * ((1 - u) * d[k] + u * c[k])
  return [at(0), at(1)]
}
