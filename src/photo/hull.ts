/** A point of a picture, px, or of a plane, mm. */
export type Point = readonly [x: number, y: number]

/** Twice the area of the triangle: above 0 where the way from `o` over `a` to `b` turns from x towards y. */
export const turnOf = (o: Point, a: Point, b: Point): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])

/** The convex hull (monotone chain: Andrew, Information Processing Letters 9 (1979) 216). */
export function hull(points: readonly Point[]): Point[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (ordered: readonly Point[]): Point[] => {
    const chain: Point[] = []
    for (const point of ordered) {
      while (chain.length > 1 && turnOf(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop()
      chain.push(point)
    }
    chain.pop()
    return chain
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}

/** The area of a shape, its corners in order. */
export function areaOf(corners: readonly Point[]): number {
  let sum = 0
  for (let n = 0; n < corners.length; n += 1) {
    const [x, y] = corners[n]!
    const [u, v] = corners[(n + 1) % corners.length]!
    sum += x * v - y * u
  }
  return Math.abs(sum) / 2
}

/** Whether a point lies in a shape whose corners go from x towards y, or no further than `off` from its sides. */
export const isWithin = ([x, y]: Point, corners: readonly Point[], off: number): boolean =>
  corners.every(([a, b], n) => {
    const [c, d] = corners[(n + 1) % corners.length]!
    return (c - a) * (y - b) - (d - b) * (x - a) > -off * Math.hypot(c - a, d - b)
  })
