import { lightOfCode } from '../../base/colour.ts'
import type { Pixels } from '../cloth.ts'

/** One number for each pixel, row by row. */
export interface Plane {
  readonly width: number
  readonly height: number
  readonly data: Float32Array
}

/** A picture in CIELAB for the light D65: lightness, and the two of colour, row by row. */
export interface LabPlanes {
  readonly width: number
  readonly height: number
  readonly l: Float32Array
  readonly a: Float32Array
  readonly b: Float32Array
}

/** CIE 15:2004, 8.2.1.1: the cube root, and a straight line near black. In steps: a photo has many pixels. */
const steps = 8192
const rootOf = Float32Array.from({ length: steps + 2 }, (_, step) => {
  const t = step / steps
  return t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29
})

function root(t: number): number {
  const at = t >= 1 ? steps : t * steps
  const step = at | 0
  const low = rootOf[step]!
  return low + (rootOf[step + 1]! - low) * (at - step)
}

const light = Float32Array.from(lightOfCode)

/** sRGB to XYZ (IEC 61966-2-1), each row divided by the white point D65 that it adds up to. */
const toX = [0.4124564 / 0.9504559, 0.3575761 / 0.9504559, 0.1804375 / 0.9504559] as const
const toY = [0.2126729, 0.7151522, 0.072175] as const
const toZ = [0.0193339 / 1.0890578, 0.119192 / 1.0890578, 0.9503041 / 1.0890578] as const

/** An sRGB picture of three channels in CIELAB. */
export function labPlanes({ data, width, height }: Pixels): LabPlanes {
  const size = width * height
  const [l, a, b] = [new Float32Array(size), new Float32Array(size), new Float32Array(size)]
  for (let at = 0, from = 0; at < size; at += 1, from += 3) {
    const red = light[data[from]!]!
    const green = light[data[from + 1]!]!
    const blue = light[data[from + 2]!]!
    const x = root(toX[0] * red + toX[1] * green + toX[2] * blue)
    const y = root(toY[0] * red + toY[1] * green + toY[2] * blue)
    const z = root(toZ[0] * red + toZ[1] * green + toZ[2] * blue)
    l[at] = 116 * y - 16
    a[at] = 500 * (x - y)
    b[at] = 200 * (y - z)
  }
  return { width, height, l, a, b }
}

/** The picture at half its size, each pixel the mean of four; an odd last row or column is left out. */
export function halved({ width, height, l, a, b }: LabPlanes): LabPlanes {
  const half = (data: Float32Array): Float32Array => halvedPlane({ width, height, data }).data
  return { width: width >> 1, height: height >> 1, l: half(l), a: half(a), b: half(b) }
}

export function halvedPlane({ width, height, data: from }: Plane): Plane {
  const [w, h] = [width >> 1, height >> 1]
  const to = new Float32Array(w * h)
  for (let y = 0, at = 0; y < h; y += 1) {
    for (let x = 0, one = 2 * y * width; x < w; x += 1, at += 1, one += 2) {
      const below = one + width
      to[at] = (from[one]! + from[one + 1]! + from[below]! + from[below + 1]!) / 4
    }
  }
  return { width: w, height: h, data: to }
}

/** A plane at another size, between its nearest pixels. */
export function stretched({ width, height, data }: Plane, wide: number, high: number): Plane {
  const to = new Float32Array(wide * high)
  for (let y = 0, at = 0; y < high; y += 1) {
    const v = Math.max(0, Math.min(height - 1.001, ((y + 0.5) * height) / high - 0.5))
    const top = v | 0
    const fy = v - top
    for (let x = 0; x < wide; x += 1, at += 1) {
      const u = Math.max(0, Math.min(width - 1.001, ((x + 0.5) * width) / wide - 0.5))
      const left = u | 0
      const fx = u - left
      const one = top * width + left
      const upper = data[one]! * (1 - fx) + data[one + 1]! * fx
      const lower = data[one + width]! * (1 - fx) + data[one + width + 1]! * fx
      to[at] = upper * (1 - fy) + lower * fy
    }
  }
  return { width: wide, height: high, data: to }
}

/** The mean over the square of `2 radius + 1` pixels around each, at the edges over what there is of it. */
export function blurred(plane: Plane, radius: number): Plane {
  const { width, height } = plane
  const across = new Float32Array(width * height)
  const data = new Float32Array(width * height)
  slide(plane.data, across, { lines: height, line: width, length: width, step: 1, radius })
  slide(across, data, { lines: width, line: 1, length: height, step: width, radius })
  return { width, height, data }
}

interface Slide {
  readonly lines: number
  readonly line: number
  readonly length: number
  readonly step: number
  readonly radius: number
}

function slide(from: Float32Array, to: Float32Array, { lines, line, length, step, radius }: Slide) {
  for (let n = 0; n < lines; n += 1) {
    const start = n * line
    let sum = 0
    let count = 0
    for (let at = 0; at < Math.min(radius, length); at += 1) {
      sum += from[start + at * step]!
      count += 1
    }
    for (let at = 0; at < length; at += 1) {
      if (at + radius < length) {
        sum += from[start + (at + radius) * step]!
        count += 1
      }
      if (at > radius) {
        sum -= from[start + (at - radius - 1) * step]!
        count -= 1
      }
      to[start + at * step] = sum / count
    }
  }
}

/** The value under which `share` of the values lie; the values are sorted in place. */
export function quantile(values: Float32Array, share: number): number {
  values.sort()
  return values[Math.min(values.length - 1, Math.floor(share * values.length))] ?? 0
}

/** How steeply the picture changes at each pixel, CIELAB a pixel. */
export function steepness({ width, height, l, a, b }: LabPlanes): Float32Array {
  const steep = new Float32Array(width * height)
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1, at = y * width + 1; x < width - 1; x += 1, at += 1) {
      let sum = 0
      for (const plane of [l, a, b]) {
        sum +=
          (plane[at + 1]! - plane[at - 1]!) ** 2 + (plane[at + width]! - plane[at - width]!) ** 2
      }
      steep[at] = Math.sqrt(sum) / 2
    }
  }
  return steep
}

/** 1 for each of so many pixels where it holds; much quicker than `from` with a function, which goes through an iterator. */
export function marked(size: number, holds: (at: number) => boolean): Uint8Array {
  const marks = new Uint8Array(size)
  for (let at = 0; at < size; at += 1) if (holds(at)) marks[at] = 1
  return marks
}

/** Everything within `radius` of a marked pixel, in squares. */
export function grown(
  marks: Uint8Array,
  width: number,
  height: number,
  radius: number,
): Uint8Array {
  const across = new Uint8Array(marks.length)
  for (let y = 0; y < height; y += 1)
    reach(marks, across, { start: y * width, step: 1, length: width, radius })
  const all = new Uint8Array(marks.length)
  for (let x = 0; x < width; x += 1)
    reach(across, all, { start: x, step: width, length: height, radius })
  return all
}

function reach(
  from: Uint8Array,
  to: Uint8Array,
  { start, step, length, radius }: { start: number; step: number; length: number; radius: number },
): void {
  let filled = 0
  for (let n = 0; n < length; n += 1) {
    if (!from[start + n * step]) continue
    const end = Math.min(length, n + radius + 1)
    for (let at = Math.max(filled, n - radius); at < end; at += 1) to[start + at * step] = 1
    filled = end
  }
}
