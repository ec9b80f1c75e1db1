/** A point of a picture. */
export interface Point {
  readonly x: number
  readonly y: number
}

/** Twice the area of the triangle: above 0 where the way from `o` over `a` to `b` turns from x towards y. */
export const turnOf = (o: Point, a: Point, b: Point): number =>
  (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x)

/** The convex hull (monotone chain: Andrew, Information Processing Letters 9 (1979) 216). */
export function hull(points: readonly Point[]): Point[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y)
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
