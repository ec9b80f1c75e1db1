import { areaOf, hull, type Point, turnOf } from '../hull.ts'

/**
 * How nearly the pixels of a piece fill a shape of four straight sides, as a sheet of paper or a card lying
 * beside a garment does: the piece's area in parts of the shape's, 0 to 1. The shape is the hull's, its
 * corners taken away one by one where that costs least.
 */
export function fourSided(of: Int32Array, width: number, piece: number): number {
  const corners = fourCorners(hull(endsOf(of, width, piece)))
  return corners.length < 4 ? 0 : Math.min(1, countOf(of, piece) / areaOf(corners))
}

/**
 * How a piece fills its convex hull, and four corners of the hull the hull, in parts of its area: a cushion's do,
 * a garment's with sleeves or straps do not.
 */
export function hullFilled(
  of: Int32Array,
  width: number,
  piece: number,
): { readonly byPiece: number; readonly byCorners: number } {
  const whole = hull(endsOf(of, width, piece))
  if (whole.length < 4) return { byPiece: 0, byCorners: 0 }
  const area = areaOf(whole)
  return { byPiece: countOf(of, piece) / area, byCorners: areaOf(fourCorners(whole)) / area }
}

function fourCorners(hull: readonly Point[]): readonly Point[] {
  let corners = hull
  while (corners.length > 4) corners = without(corners, leastCorner(corners))
  return corners
}

const countOf = (of: Int32Array, piece: number): number =>
  of.reduce((sum, one) => sum + Number(one === piece), 0)

/** The ends of each row of the piece: their hull is that of all. */
function endsOf(of: Int32Array, width: number, piece: number): Point[] {
  const points: Point[] = []
  for (let row = 0; row < of.length; row += width) {
    const first = of.subarray(row, row + width).indexOf(piece)
    if (first < 0) continue
    const last = of.subarray(row, row + width).lastIndexOf(piece)
    const y = row / width
    points.push([first, y], [first, y + 1], [last + 1, y], [last + 1, y + 1])
  }
  return points
}

const around = (corners: readonly Point[], n: number): Point =>
  corners[(n + corners.length) % corners.length]!

function leastCorner(corners: readonly Point[]): number {
  const cut = corners.map((corner, n) =>
    Math.abs(turnOf(around(corners, n - 1), corner, around(corners, n + 1))),
  )
  return cut.indexOf(Math.min(...cut))
}

const without = (corners: readonly Point[], n: number): Point[] =>
  corners.filter((_, at) => at !== n)
