/** A point of the plane on which everything lies, mm: x to the right, y down as the picture's maker sees it. */
export type Point = readonly [x: number, y: number]

/** From the plane, mm, to the picture, px, in homogeneous coordinates, row by row; and back. */
export interface View {
  readonly width: number
  readonly height: number
  readonly forth: readonly number[]
  readonly back: readonly number[]
}

export interface Pose {
  /** Focal length as of 35 mm film, mm. */
  readonly focal35: number
  /** How far the camera looks from straight down, and towards where, degrees. */
  readonly tilt: number
  readonly towards: number
  /** Turned about its own axis, degrees. */
  readonly roll: number
}

const degree = Math.PI / 180

/** The diagonal of 35 mm film, mm: by it focal lengths are compared (CIPA DCG-001, from memory). */
const diagonal35 = Math.hypot(36, 24)

/** Focal length in pixels of a picture of that size. */
const focalPx = (focal35: number, width: number, height: number): number =>
  (focal35 / diagonal35) * Math.hypot(width, height)

export function mapped(matrix: readonly number[], [x, y]: Point): [x: number, y: number] {
  const w = matrix[6]! * x + matrix[7]! * y + matrix[8]!
  return [
    (matrix[0]! * x + matrix[1]! * y + matrix[2]!) / w,
    (matrix[3]! * x + matrix[4]! * y + matrix[5]!) / w,
  ]
}

function inverted(m: readonly number[]): number[] {
  const [a, b, c, d, e, f, g, h, i] = m as [
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
  const whole = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ].map((part) => part / whole)
}

/** A pinhole camera that looks at a point of the plane from so far away, mm. */
function viewFrom(pose: Pose, at: Point, away: number, width: number, height: number): View {
  const focal = focalPx(pose.focal35, width, height)
  const tilt = pose.tilt * degree
  const towards = pose.towards * degree
  const roll = pose.roll * degree
  // Turn the plane about its normal, tip it about the picture's x axis, turn it back, roll.
  const turned = (p: Point): [number, number, number] => {
    const x = p[0] - at[0]
    const y = p[1] - at[1]
    const u = x * Math.cos(towards) + y * Math.sin(towards)
    const v = -x * Math.sin(towards) + y * Math.cos(towards)
    const tipped = v * Math.cos(tilt)
    const deep = v * Math.sin(tilt)
    const s = u * Math.cos(towards) - tipped * Math.sin(towards)
    const t = u * Math.sin(towards) + tipped * Math.cos(towards)
    return [s * Math.cos(roll) - t * Math.sin(roll), s * Math.sin(roll) + t * Math.cos(roll), deep]
  }
  const zero = turned([0, 0])
  const x = turned([1, 0]).map((part, n) => part - zero[n]!)
  const y = turned([0, 1]).map((part, n) => part - zero[n]!)
  const centre = [width / 2, height / 2]
  const columns = [x, y, [zero[0], zero[1], zero[2] + away]].map(([p, q, r]) => [
    focal * p! + centre[0]! * r!,
    focal * q! + centre[1]! * r!,
    r!,
  ])
  const forth = [0, 1, 2].flatMap((row) => columns.map((column) => column[row]!))
  return { width, height, forth, back: inverted(forth) }
}

/** Those points that lie furthest out in any of many directions: no others touch a picture's edge first. */
function outermost(points: readonly Point[]): Point[] {
  const found = new Set<Point>()
  for (let way = 0; way < 360; way += 4) {
    const cos = Math.cos(way * degree)
    const sin = Math.sin(way * degree)
    found.add(points.reduce((a, b) => (b[0] * cos + b[1] * sin > a[0] * cos + a[1] * sin ? b : a)))
  }
  return [...found]
}

/**
 * The view in which the points fill the picture up to a margin (in parts of the shorter side), moved from
 * the middle by `off` parts of the room that is left.
 */
export function framed(
  pose: Pose,
  points: readonly Point[],
  width: number,
  height: number,
  margin: number,
  off: Point,
): View {
  const rim = outermost(points)
  let away = 2000
  let at: [number, number] = [0, 0]
  const side = Math.min(width, height)
  const room = { x: width - 2 * margin * side, y: height - 2 * margin * side }
  let view = viewFrom(pose, at, away, width, height)
  for (let round = 0; round < 40; round++) {
    const seen = rim.map((point) => mapped(view.forth, point))
    const xs = seen.map(([x]) => x)
    const ys = seen.map(([, y]) => y)
    const [left, right, top, bottom] = [
      Math.min(...xs),
      Math.max(...xs),
      Math.min(...ys),
      Math.max(...ys),
    ]
    const scale = Math.max((right - left) / room.x, (bottom - top) / room.y)
    const spare = [Math.max(0, room.x - (right - left)), Math.max(0, room.y - (bottom - top))]
    const wanted: Point = [
      width / 2 + (off[0] * spare[0]!) / 2,
      height / 2 + (off[1] * spare[1]!) / 2,
    ]
    const mid: Point = [(left + right) / 2, (top + bottom) / 2]
    const now = mapped(view.back, mid)
    const then = mapped(view.back, wanted)
    at = [at[0] + now[0] - then[0], at[1] + now[1] - then[1]]
    away *= scale
    view = viewFrom(pose, at, away, width, height)
  }
  return view
}

/** Pixels for a millimetre about a point of the plane. */
export function scaleAt(view: View, [x, y]: Point): number {
  const here = mapped(view.forth, [x, y])
  const right = mapped(view.forth, [x + 1, y])
  const down = mapped(view.forth, [x, y + 1])
  const area =
    (right[0] - here[0]) * (down[1] - here[1]) - (right[1] - here[1]) * (down[0] - here[0])
  return Math.sqrt(Math.abs(area))
}
