import type { Pixels } from '../../../src/photo/cloth.ts'
import type { Point } from '../../../src/photo/hull.ts'
import type { Mask } from '../../../src/photo/look/outline.ts'
import { random } from '../../help/xorshift.ts'

export interface Shape {
  /** In order around, mm on the plane. */
  readonly corners: readonly Point[]
  readonly colour: readonly number[]
  readonly garment?: boolean
}

/** A pinhole camera over the plane, tipped about the picture's horizontal; the picture's middle looks at 0, 0. */
export interface Eye {
  readonly width: number
  readonly height: number
  readonly focal: number
  readonly away: number
  readonly tilt: number
}

/** Where a point of the plane, mm, is seen, px: by similar triangles alone. */
export function seenAt({ width, height, focal, away, tilt }: Eye, [x, y]: Point): Point {
  const deep = away - y * Math.sin(tilt)
  return [width / 2 + (focal * x) / deep, height / 2 + (focal * y * Math.cos(tilt)) / deep]
}

/** The same the other way. */
export function planeAt({ width, height, focal, away, tilt }: Eye, px: number, py: number): Point {
  const [u, v] = [(px - width / 2) / focal, (py - height / 2) / focal]
  const y = (v * away) / (Math.cos(tilt) + v * Math.sin(tilt))
  return [u * (away - y * Math.sin(tilt)), y]
}

/** The corners of a box in a picture, px, clockwise. */
export const boxAt = (x: number, y: number, w: number, h: number): Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

export const rectangle = (x: number, y: number, wide: number, tall: number, turn = 0): Point[] =>
  (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(([a, b]) => {
    const [u, v] = [(a * wide) / 2, (b * tall) / 2]
    return [
      x + u * Math.cos(turn) - v * Math.sin(turn),
      y + u * Math.sin(turn) + v * Math.cos(turn),
    ]
  })

/** The same with its corners cut round by that radius, mm. */
export function rounded(
  x: number,
  y: number,
  wide: number,
  tall: number,
  turn: number,
  radius: number,
): Point[] {
  const middles = rectangle(0, 0, wide - 2 * radius, tall - 2 * radius)
  return middles.flatMap(([u, v], corner) =>
    Array.from({ length: 9 }, (_, n): Point => {
      const angle = Math.PI * (1 + corner / 2 + n / 16)
      const [p, q] = [u + radius * Math.cos(angle), v + radius * Math.sin(angle)]
      return [
        x + p * Math.cos(turn) - q * Math.sin(turn),
        y + p * Math.sin(turn) + q * Math.cos(turn),
      ]
    }),
  )
}

/** Whether a point lies in a shape: by how often a ray from it crosses the rim. */
function inside([x, y]: Point, corners: readonly Point[]): boolean {
  let odd = false
  for (const [n, [ax, ay]] of corners.entries()) {
    const [bx, by] = corners[(n + 1) % corners.length]!
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd
  }
  return odd
}

/** A picture of shapes on a ground, later ones above, each pixel the mean of nine points of it where a rim passes, with a little noise. */
export function drawn(
  eye: Eye,
  ground: (at: Point) => readonly number[],
  shapes: readonly Shape[],
): { picture: Pixels; mask: Mask } {
  const { width, height } = eye
  const data = new Uint8Array(width * height * 3)
  const by = 4
  const mask = {
    width: width / by,
    height: height / by,
    data: new Uint8Array((width * height) / by ** 2),
  }
  const grain = random(7)
  const boxes = shapes.map(({ corners }) => {
    const xs = corners.map(([x]) => x)
    const ys = corners.map(([, y]) => y)
    return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const
  })
  const topAt = (px: number, py: number): Shape | undefined => {
    const at = planeAt(eye, px, py)
    return shapes.findLast(({ corners }, n) => {
      const [left, right, top, bottom] = boxes[n]!
      const near = at[0] >= left && at[0] <= right && at[1] >= top && at[1] <= bottom
      return near && inside(at, corners)
    })
  }
  const rowOf = (y: number) => Array.from({ length: width + 1 }, (_, x) => topAt(x, y))
  let above = rowOf(0)
  for (let y = 0; y < height; y += 1) {
    const below = rowOf(y + 1)
    for (let x = 0; x < width; x += 1) {
      const corner = above[x]
      const whole = corner === above[x + 1] && corner === below[x] && corner === below[x + 1]
      const points = whole ? 1 : 3
      const sum = [0, 0, 0]
      for (let n = 0; n < points ** 2; n += 1) {
        const px = x + ((n % points) + 0.5) / points
        const py = y + (Math.floor(n / points) + 0.5) / points
        const colour = (whole ? corner : topAt(px, py))?.colour ?? ground(planeAt(eye, px, py))
        for (let c = 0; c < 3; c += 1) sum[c]! += colour[c]! / points ** 2
      }
      if (x % by === 2 && y % by === 2 && corner?.garment)
        mask.data[Math.floor(y / by) * mask.width + Math.floor(x / by)] = 1
      for (let c = 0; c < 3; c += 1)
        data[(y * width + x) * 3 + c] = Math.min(255, Math.max(0, sum[c]! + grain(5) - 2))
    }
    above = below
  }
  return { picture: { data, width, height, channels: 3 }, mask }
}
