import type { Point } from '../hull.ts'
import { backOf, growth, type Homography, homographyOf, solvedOf, taken } from './homography.ts'
import type { SheetKind } from './looked.ts'

/**
 * Long and short side, mm: Letter is 8.5 by 11 inches (ANSI/ASME Y14.1), A4 is ISO 216, a card of the size ID-1 is
 * ISO/IEC 7810.
 */
export const sheetSides: Readonly<Record<SheetKind, readonly [long: number, short: number]>> = {
  letter: [279.4, 215.9],
  a4: [297, 210],
  id1: [85.6, 53.98],
}

/** A picture whose middle is where its camera looks. */
export interface Camera {
  readonly width: number
  readonly height: number
  /** Pixels; as far as it is known, `spread` is the standard deviation of its logarithm. */
  readonly focal: number
  readonly spread: number
}

/** Diagonal of a frame of 35 mm film, 24 × 36 mm. */
const filmDiagonal = Math.hypot(24, 36)
/** What phones' main cameras have: 24 to 28 mm (common practice, no source). */
const usualFocal = 26

/** The camera of an upright picture; `focal35` is its focal length in terms of 35 mm film, where its file says it. */
export function cameraOf(width: number, height: number, focal35: number | null): Camera {
  return {
    width,
    height,
    focal: ((focal35 ?? usualFocal) * Math.hypot(width, height)) / filmDiagonal,
    spread: focal35 === null ? 0.12 : 0.03,
  }
}

/** How a sheet lies before a camera. */
export interface Pose {
  readonly kind: SheetKind
  /** From the sheet's plane, mm from its middle, to the picture, px; and back. */
  readonly forth: Homography
  readonly back: Homography
  /** How badly corners and focal length suit it: squares of what is off in parts of what may be off. */
  readonly cost: number
  /** Between the line of sight to the middle of the picture and the plane's upright, radians. */
  readonly tilt: number
  /** How far off `growth` of `back` at a point of the picture may be: standard deviation of its logarithm. */
  readonly unsure: (at: Point) => number
}

/** How corners were come by: how far off one may be, px, and how aslant a camera usually looks, radians, each way. */
export interface Corners {
  readonly px: number
  readonly tilt: number
}

/**
 * Where edges were felt for they tell by themselves how aslant the camera looked; where a person marked the corners
 * of a card they hardly do, and what is usual must help.
 */
export const felt: Corners = { px: 0.22, tilt: Number.POSITIVE_INFINITY }
export const byHand = (px: number): Corners => ({ px, tilt: 0.25 })
/** And in parts of the sheet's mean side, as paper is never quite flat. */
const off = { paper: 0.002, card: 0.001 }

/**
 * The pose in which a sheet of that kind has these corners, in order around it and `upright` or turned by a
 * quarter: from the homography (Zhang, IEEE PAMI 22 (2000) 1330), then by least squares over pose and focal length
 * (Levenberg and Marquardt). Null where there is none.
 */
export function poseOf(
  corners: readonly Point[],
  kind: SheetKind,
  upright: boolean,
  camera: Camera,
  { px, tilt: usual }: Corners = felt,
): Pose | null {
  const [long, short] = sheetSides[kind]
  const [wide, tall] = upright ? [short, long] : [long, short]
  const plane: Point[] = [
    [-wide / 2, -tall / 2],
    [wide / 2, -tall / 2],
    [wide / 2, tall / 2],
    [-wide / 2, tall / 2],
  ]
  const start = startOf(plane, corners, camera)
  if (!start) return null
  const side = corners.reduce((sum, one, n) => sum + apart(one, corners[(n + 1) % 4]!), 0) / 4
  const may = px + (kind === 'id1' ? off.card : off.paper) * side
  const residuals = (terms: readonly number[]): number[] => {
    const h = forthOf(terms, camera)
    const [, , right, , , down] = rotationOf(terms)
    return [
      ...plane.flatMap((point, n) => {
        const [x, y] = taken(h, point)
        return [(x - corners[n]![0]) / may, (y - corners[n]![1]) / may]
      }),
      terms[6]! / camera.spread,
      right! / usual,
      down! / usual,
    ]
  }
  const { terms, cost } = leastSquares(start, residuals)
  const forth = forthOf(terms, camera)
  const back = backOf(forth)
  if (!back || !Number.isFinite(cost)) return null
  const r = rotationOf(terms)
  return {
    kind,
    forth,
    back,
    cost,
    tilt: Math.acos(Math.min(1, Math.abs(r[8]!))),
    unsure: (at) => unsureOf(terms, residuals, cost, camera, at),
  }
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** Three of a turn (Rodrigues), three of the way, mm, and the logarithm of what the focal length is multiplied by. */
function startOf(plane: Point[], corners: readonly Point[], camera: Camera): number[] | null {
  const { focal, width, height } = camera
  const h = homographyOf(
    plane,
    corners.map(([x, y]) => [(x - width / 2) / focal, (y - height / 2) / focal]),
  )
  if (!h) return null
  const [one, two] = [0, 1].map((n) => [h[n]!, h[3 + n]!, h[6 + n]!])
  const scale = 2 / (Math.hypot(...one!) + Math.hypot(...two!))
  const way = [h[2]!, h[5]!, h[8]!].map((part) => part * scale)
  if (!(scale > 0) || !way.every(Number.isFinite)) return null
  // Both columns come as near to square as they are to begin with: half the error to each.
  const sum = unit(one!.map((part, n) => part + two![n]!))
  const difference = unit(one!.map((part, n) => part - two![n]!))
  const x = unit(sum.map((part, n) => part + difference[n]!))
  const y = unit(sum.map((part, n) => part - difference[n]!))
  const z = cross(x, y)
  return [...turnOf([x[0]!, y[0]!, z[0]!, x[1]!, y[1]!, z[1]!, x[2]!, y[2]!, z[2]!]), ...way, 0]
}

const unit = (v: readonly number[]): number[] => v.map((part) => part / Math.hypot(...v))
const cross = ([a, b, c]: readonly number[], [d, e, f]: readonly number[]): number[] => [
  b! * f! - c! * e!,
  c! * d! - a! * f!,
  a! * e! - b! * d!,
]

/** The turn, as its axis times its angle, of a rotation; by its quaternion, which holds for half turns too. */
function turnOf(r: readonly number[]): number[] {
  const [xx, yy, zz] = [r[0]!, r[4]!, r[8]!]
  const squares = [1 + xx + yy + zz, 1 + xx - yy - zz, 1 - xx + yy - zz, 1 - xx - yy + zz]
  const most = squares.indexOf(Math.max(...squares))
  const [p, q, s] = [r[7]! - r[5]!, r[2]! - r[6]!, r[3]! - r[1]!]
  const [a, b, c] = [r[3]! + r[1]!, r[2]! + r[6]!, r[7]! + r[5]!]
  const of = squares[most]!
  const all = [
    [of, p, q, s],
    [p, of, a, b],
    [q, a, of, c],
    [s, b, c, of],
  ][most]!
  const [w, ...axis] = unit(all) as [number, number, number, number]
  const sine = Math.hypot(...axis)
  const angle = 2 * Math.atan2(sine, w)
  return sine < 1e-12 ? [0, 0, 0] : axis.map((part) => (part / sine) * angle)
}

function rotationOf([a = 0, b = 0, c = 0]: readonly number[]): number[] {
  const angle = Math.hypot(a, b, c)
  const [x, y, z] = angle < 1e-12 ? [0, 0, 0] : [a / angle, b / angle, c / angle]
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const rest = 1 - cos
  return [
    cos + x * x * rest,
    x * y * rest - z * sin,
    x * z * rest + y * sin,
    x * y * rest + z * sin,
    cos + y * y * rest,
    y * z * rest - x * sin,
    x * z * rest - y * sin,
    y * z * rest + x * sin,
    cos + z * z * rest,
  ]
}

function forthOf(terms: readonly number[], { focal, width, height }: Camera): Homography {
  const r = rotationOf(terms)
  const f = focal * Math.exp(terms[6]!)
  const columns = [
    [r[0]!, r[3]!, r[6]!],
    [r[1]!, r[4]!, r[7]!],
    [terms[3]!, terms[4]!, terms[5]!],
  ].map(([x, y, z]) => [f * x! + (width / 2) * z!, f * y! + (height / 2) * z!, z!])
  return [0, 1, 2].flatMap((row) => columns.map((column) => column[row]!))
}

type Residuals = (terms: readonly number[]) => number[]

const squared = (all: readonly number[]): number => all.reduce((sum, one) => sum + one * one, 0)

function slopes(terms: readonly number[], residuals: Residuals): number[][] {
  return terms.map((term, n) => {
    const step = 1e-5 * Math.max(1, Math.abs(term))
    const high = residuals(terms.with(n, term + step))
    const low = residuals(terms.with(n, term - step))
    return high.map((one, at) => (one - low[at]!) / (2 * step))
  })
}

/** The products of all pairs of slopes. */
const productsOf = (slope: readonly number[][]): number[][] =>
  slope.map((one) => slope.map((other) => one.reduce((sum, part, n) => sum + part * other[n]!, 0)))

function leastSquares(start: number[], residuals: Residuals): { terms: number[]; cost: number } {
  let terms = start
  let now = residuals(terms)
  let cost = squared(now)
  let damping = 1e-3
  for (let round = 0; round < 30; round += 1) {
    const slope = slopes(terms, residuals)
    const products = productsOf(slope)
    const rows = products.map((row, n) => [
      ...row.with(n, row[n]! * (1 + damping)),
      -slope[n]!.reduce((sum, part, at) => sum + part * now[at]!, 0),
    ])
    const step = solvedOf(rows, 0)
    if (!step) break
    const next = terms.map((term, n) => term + step[n]!)
    const found = residuals(next)
    const less = squared(found)
    if (less < cost) {
      const gain = cost - less
      ;[terms, now, cost, damping] = [next, found, less, damping / 5]
      if (gain < 1e-9 * cost + 1e-14) break
    } else {
      damping *= 5
      if (damping > 1e8) break
    }
  }
  return { terms, cost }
}

/** By the spread that least squares give its terms (inverse of the products), enlarged where they fit badly. */
function unsureOf(
  terms: readonly number[],
  residuals: Residuals,
  cost: number,
  camera: Camera,
  at: Point,
): number {
  const value: Residuals = (tried) => {
    const back = backOf(forthOf(tried, camera))
    return [back ? Math.log(growth(back, at)) : Number.NaN]
  }
  const gradient = slopes(terms, value).map(([one]) => one!)
  const products = productsOf(slopes(terms, residuals))
  const solved = solvedOf(
    products.map((row, n) => [...row, gradient[n]!]),
    0,
  )
  if (!solved) return Number.POSITIVE_INFINITY
  const variance = solved.reduce((sum, one, n) => sum + one * gradient[n]!, 0)
  // Nine residuals that tell for sure, seven terms.
  return Math.sqrt(Math.max(0, variance) * Math.max(1, cost / 2))
}
