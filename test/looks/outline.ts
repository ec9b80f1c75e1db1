import type { Point } from './camera.ts'

/** A corner of an outline, or a place that it runs through smoothly. */
export interface Node {
  readonly at: Point
  readonly corner?: boolean
}

export const corner = (x: number, y: number): Node => ({ at: [x, y], corner: true })
export const bend = (x: number, y: number): Node => ({ at: [x, y] })

const number = (value: number): string => value.toFixed(2)

/** The closed outline through its nodes, as the `d` of an SVG path. */
export function pathOf(nodes: readonly Node[], closed = true): string {
  const count = nodes.length
  const node = (at: number): Node =>
    closed ? nodes[(at + count) % count]! : nodes[Math.min(count - 1, Math.max(0, at))]!
  // How the line runs through a node, a third of the way to the next.
  const lean = (at: number): Point => {
    if (node(at).corner) return [0, 0]
    const [ax, ay] = node(at - 1).at
    const [bx, by] = node(at + 1).at
    return [(bx - ax) / 6, (by - ay) / 6]
  }
  const parts = [`M${nodes[0]!.at.map(number).join(' ')}`]
  for (let at = 0; at < (closed ? count : count - 1); at++) {
    const from = node(at).at
    const to = node(at + 1).at
    const [ax, ay] = lean(at)
    const [bx, by] = lean(at + 1)
    const controls = [from[0] + ax, from[1] + ay, to[0] - bx, to[1] - by, to[0], to[1]]
    parts.push(`C${controls.map(number).join(' ')}`)
  }
  return parts.join('') + (closed ? 'Z' : '')
}

export const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`

/** Cloth that lies one way: its outline, and how its pattern runs. */
export interface Part {
  readonly path: string
  /** Where its pattern begins, and how far it is turned, radians. */
  readonly from: Point
  readonly turn: number
  /** The inside of the cloth, or a band of another knit: darker or lighter by so much, -1 to 1. */
  readonly shade?: number
  /** Sewn to what lies beneath it, without an edge of its own. */
  readonly flush?: boolean
}

/** What is sewn on or into it, drawn over the cloth. `ink` is what it is drawn in. */
export interface Mark {
  readonly path: string
  readonly ink: 'seam' | 'stitch' | 'lap' | 'button' | 'cord' | 'metal' | 'rib'
  /** Width of the line, mm; areas without. */
  readonly wide?: number
}

/** A garment as it lies, mm; its own axis runs down. */
export interface Outline {
  readonly parts: readonly Part[]
  readonly marks: readonly Mark[]
  /** The middle of the chest or wherever a graphic sits, and the room for one. */
  readonly front: { readonly middle: Point; readonly width: number; readonly height: number }
  /** Where a small mark on the chest sits. */
  readonly chest: Point
  readonly box: {
    readonly left: number
    readonly top: number
    readonly right: number
    readonly bottom: number
  }
}

const degree = Math.PI / 180

export interface Limb {
  readonly parts: readonly Part[]
  readonly marks: readonly Mark[]
  readonly points: readonly Point[]
}

/**
 * A sleeve or a leg between two points of the body, `side` -1 to the left or 1 to the right: lengths, angles
 * below the horizontal (degrees) and widths of its upper and its lower half. `band` is a cuff's length.
 */
export function limb(
  side: -1 | 1,
  top: Point,
  under: Point,
  lengths: readonly [number, number],
  angles: readonly [number, number],
  widths: readonly [number, number],
  band: number,
): Limb {
  const along = (angle: number): Point => [
    side * Math.cos(angle * degree),
    Math.sin(angle * degree),
  ]
  const out = (angle: number): Point => [side * Math.sin(angle * degree), -Math.cos(angle * degree)]
  const step = (from: Point, by: Point, far: number): Point => [
    from[0] + by[0] * far,
    from[1] + by[1] * far,
  ]
  const middle: Point = [(top[0] + under[0]) / 2, (top[1] + under[1]) / 2]
  const elbow = step(middle, along(angles[0]), lengths[0])
  const bisect = (angles[0] + angles[1]) / 2
  const end = step(elbow, along(angles[1]), lengths[1])
  const [wide, narrow] = widths
  const upper = step(elbow, out(bisect), wide / 2)
  const lower = step(elbow, out(bisect), -wide / 2)
  const tip = step(end, out(angles[1]), narrow / 2)
  const toe = step(end, out(angles[1]), -narrow / 2)
  const c = ([x, y]: Point): Node => corner(x, y)
  const b = ([x, y]: Point): Node => bend(x, y)
  const turn = (angle: number) => (side > 0 ? angle - 90 : 90 - angle) * degree
  const whole = pathOf([c(top), b(upper), c(tip), c(toe), b(lower), c(under)])
  const parts: Part[] = [{ path: whole, from: middle, turn: turn(angles[0]) }]
  if (Math.abs(angles[0] - angles[1]) > 12) {
    const past = (from: Point) => step(from, along(bisect), -2)
    const forearm = pathOf([c(past(upper)), c(tip), c(toe), c(past(lower))])
    parts.push({ path: forearm, from: elbow, turn: turn(angles[1]) })
  }
  const marks: Mark[] = [{ path: pathOf([c(top), c(under)], false), ink: 'seam', wide: 2.4 }]
  if (band > 0) {
    // A little beyond the sleeve, which is wider there; what lies outside the garment is not drawn.
    const across = (far: number): [Node, Node] => {
      const at = step(end, along(angles[1]), -far)
      const half = narrow / 2 + far * 0.15 + 5
      return [c(step(at, out(angles[1]), half)), c(step(at, out(angles[1]), -half))]
    }
    const cuff = band > 30
    if (cuff) marks.push({ path: pathOf([...across(band), ...across(-6).reverse()]), ink: 'rib' })
    marks.push({ path: pathOf(across(band), false), ink: cuff ? 'seam' : 'stitch', wide: 2 })
  }
  return { parts, marks, points: [top, upper, tip, toe, lower, under] }
}

export function boxAround(points: readonly Point[]): Outline['box'] {
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  }
}
