/** Pixels row by row, three bytes each: red, green, blue. */
export interface Picture {
  readonly width: number
  readonly height: number
  readonly data: Uint8Array
}

export interface Point {
  readonly x: number
  readonly y: number
}

/** A rectangle that may stand askew: its middle, its sides, and how far `w` is turned from rightwards, radians. */
export interface Slab {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly turn: number
}

/** The corners: upper left, upper right, lower right, lower left, as the slab itself is read. */
export function cornersOf({ x, y, w, h, turn }: Slab): readonly [Point, Point, Point, Point] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const at = (u: number, v: number): Point => ({
    x: x + u * cos - v * sin,
    y: y + u * sin + v * cos,
  })
  return [at(-w / 2, -h / 2), at(w / 2, -h / 2), at(w / 2, h / 2), at(-w / 2, h / 2)]
}

/**
 * The slab cut out and laid level, `width` by `height` pixels, averaged where it is larger; beyond the picture its
 * edge goes on.
 */
export function cutOut(from: Picture, slab: Slab, width: number, height: number): Picture {
  const [across, down] = [timesLarger(slab.w, width), timesLarger(slab.h, height)]
  const fine = sampled(from, slab, width * across, height * down)
  return across * down > 1 ? shrunk(fine, width, height) : fine
}

const timesLarger = (side: number, wanted: number): number => Math.max(1, Math.round(side / wanted))

function sampled(from: Picture, slab: Slab, width: number, height: number): Picture {
  const [cos, sin] = [Math.cos(slab.turn), Math.sin(slab.turn)]
  const [stepX, stepY] = [slab.w / width, slab.h / height]
  const data = new Uint8Array(width * height * 3)
  const [lastX, lastY] = [from.width - 1, from.height - 1]
  const source = from.data
  let to = 0
  for (let row = 0; row < height; row += 1) {
    const v = (row + 0.5) * stepY - slab.h / 2
    for (let column = 0; column < width; column += 1) {
      const u = (column + 0.5) * stepX - slab.w / 2
      const x = Math.min(lastX, Math.max(0, slab.x + u * cos - v * sin - 0.5))
      const y = Math.min(lastY, Math.max(0, slab.y + u * sin + v * cos - 0.5))
      const left = Math.floor(x)
      const upper = Math.floor(y)
      const right = Math.min(lastX, left + 1)
      const lower = Math.min(lastY, upper + 1)
      const [fx, fy] = [x - left, y - upper]
      const a = (upper * from.width + left) * 3
      const b = (upper * from.width + right) * 3
      const c = (lower * from.width + left) * 3
      const d = (lower * from.width + right) * 3
      for (let channel = 0; channel < 3; channel += 1) {
        const top = source[a + channel]! * (1 - fx) + source[b + channel]! * fx
        const bottom = source[c + channel]! * (1 - fx) + source[d + channel]! * fx
        data[to] = top * (1 - fy) + bottom * fy + 0.5
        to += 1
      }
    }
  }
  return { width, height, data }
}

/** The picture made smaller by averaging, so that no thin stroke falls between pixels. */
export function shrunk(from: Picture, width: number, height: number): Picture {
  const data = new Uint8Array(width * height * 3)
  const [across, down] = [from.width / width, from.height / height]
  let to = 0
  for (let row = 0; row < height; row += 1) {
    const y1 = Math.floor(row * down)
    const y2 = Math.max(y1 + 1, Math.min(from.height, Math.floor((row + 1) * down)))
    for (let column = 0; column < width; column += 1) {
      const x1 = Math.floor(column * across)
      const x2 = Math.max(x1 + 1, Math.min(from.width, Math.floor((column + 1) * across)))
      let [red, green, blue] = [0, 0, 0]
      for (let y = y1; y < y2; y += 1) {
        for (let at = (y * from.width + x1) * 3; at < (y * from.width + x2) * 3; at += 3) {
          red += from.data[at]!
          green += from.data[at + 1]!
          blue += from.data[at + 2]!
        }
      }
      const count = (y2 - y1) * (x2 - x1)
      data[to] = red / count
      data[to + 1] = green / count
      data[to + 2] = blue / count
      to += 3
    }
  }
  return { width, height, data }
}

/** Of some heights or widths the middle one, the greater of two; 0 of none. */
export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0
