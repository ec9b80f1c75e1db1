import type { Models } from './models.ts'
import { type Picture, type Slab, shrunk } from './picture.ts'
import { type FoundLine, slabsIn } from './slabs.ts'

/** So many pixels the finding network is given at most: a strip may be longer than it is wide. */
const mostPixels = 960 * 960
/** Longest side that it is given. */
const longest = 2400
/** Sides that it takes are whole multiples of this. */
const whole = 32

/** Of its training pictures (ImageNet's), each colour from 0 to 1. */
const mean = [0.485, 0.456, 0.406] as const
const deviation = [0.229, 0.224, 0.225] as const

/** The lines of words on a picture, as slabs of its pixels. `size`: seen smaller by this factor, up to 1. */
export async function findLines(
  picture: Picture,
  { finding, runtime }: Models,
  size = 1,
): Promise<FoundLine[]> {
  const scale =
    size *
    Math.min(
      1,
      longest / Math.max(picture.width, picture.height),
      Math.sqrt(mostPixels / (picture.width * picture.height)),
    )
  const side = (pixels: number) => Math.max(whole, Math.round((pixels * scale) / whole) * whole)
  const [width, height] = [side(picture.width), side(picture.height)]
  const { data } = shrunk(picture, width, height)
  const plane = width * height
  const input = new Float32Array(3 * plane)
  // The network was trained on blue, green, red.
  for (let channel = 0; channel < 3; channel += 1) {
    for (let at = 0; at < plane; at += 1) {
      input[channel * plane + at] =
        (data[at * 3 + 2 - channel]! / 255 - mean[channel]!) / deviation[channel]!
    }
  }
  const tensor = new runtime.Tensor('float32', input, [1, 3, height, width])
  const found = await finding.run({ [finding.inputNames[0]!]: tensor })
  const map = found[finding.outputNames[0]!]!.data as Float32Array
  const [across, down] = [picture.width / width, picture.height / height]
  return slabsIn({ width, height, data: map }).map((line) => ({
    ...stretched(line, across, down),
    spine: line.spine.map(({ x, y }) => ({ x: x * across, y: y * down })),
  }))
}

/** A slab of the grid on the picture: its sides grow as their direction does. */
function stretched({ x, y, w, h, turn }: Slab, across: number, down: number): Slab {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return {
    x: x * across,
    y: y * down,
    w: w * Math.hypot(cos * across, sin * down),
    h: h * Math.hypot(sin * across, cos * down),
    turn: Math.atan2(sin * down, cos * across),
  }
}
