import { readFileSync } from 'node:fs'
import type { Pixels } from '../../src/photo/cloth.ts'
import { groundOf } from '../../src/photo/look/ground.ts'
import { pictured, smaller } from '../../src/photo/look/look.ts'
import { likelihood, type OutlineNets } from '../../src/photo/look/outline.ts'
import { halved, labPlanes } from '../../src/photo/look/planes.ts'
import {
  firstCount,
  firstSigns,
  laterCount,
  laterSigns,
  type Signs,
} from '../../src/photo/look/signs.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import { learn } from './learn.ts'
import { randomFrom } from './learn-chance.ts'
import type { Kept } from './open-set.ts'
import type { Mask } from './reading.ts'
import type { Truth } from './truth.ts'

/** A photo to learn from, as the product keeps and decodes it, with its true mask. */
export interface Lesson {
  readonly truth: Truth
  readonly picture: Pixels
  readonly small: Pixels
  readonly mask: Mask
}

export async function lessonOf(kept: Kept): Promise<Lesson> {
  const { full } = await makeSafe(readFileSync(kept.path))
  const picture = await pictured(full)
  return { truth: kept.truth, picture, small: await smaller(picture), mask: await kept.mask() }
}

/** Pixels of each photo that are learnt from. */
const each = 220

/** The nets that tell a garment's pixels from the ground's; photos are read twice, once for each. */
export async function trainOutline(sets: readonly Kept[]): Promise<OutlineNets> {
  const manner = { outputs: 1, batch: 128, noise: 0.1, decay: 0, seed: 7 }
  const one = await examples(sets, firstCount, (signs) => signs.first)
  const first = learn(one, { ...manner, hidden: [16], rounds: 6 })
  const two = await examples(sets, laterCount, ({ first: seen, later }) =>
    later(likelihood(seen, first)),
  )
  const later = learn(two, { ...manner, hidden: [20, 8], rounds: 7 })
  return { first, later }
}

interface Read {
  readonly first: Signs
  readonly later: (inside: Float32Array) => Signs
}

async function examples(sets: readonly Kept[], width: number, signsOf: (read: Read) => Signs) {
  const { real } = randomFrom(99)
  const inputs: Float32Array[] = []
  const wanted: number[] = []
  for (const kept of sets) {
    const { small, mask, truth } = await lessonOf(kept)
    const whole = labPlanes(small)
    const planes = halved(whole)
    const ground = groundOf(planes)
    const first = firstSigns(whole, planes, ground)
    const { data } = signsOf({
      first,
      later: (inside) => laterSigns(planes, ground, first, inside),
    })
    const lies = sheetTest(truth, planes)
    for (let n = 0; n < each; n += 1) {
      const [x, y] = [Math.floor(real() * planes.width), Math.floor(real() * planes.height)]
      const inside = isInside(mask, (x + 0.5) / planes.width, (y + 0.5) / planes.height)
      // A sheet is no ground: it is taken away afterwards, by its shape.
      if (!inside && lies(x, y)) continue
      const at = y * planes.width + x
      inputs.push(data.slice(at * width, (at + 1) * width))
      wanted.push(Number(inside))
    }
  }
  const all = new Float32Array(inputs.length * width)
  for (const [n, one] of inputs.entries()) all.set(one, n * width)
  return { inputs: all, width, wanted }
}

const isInside = ({ data, width, height }: Mask, x: number, y: number): boolean =>
  data[Math.floor(y * height) * width + Math.floor(x * width)]! >= 128

/** Whether a pixel lies on the sheet of a photo, or within two of it. */
function sheetTest(
  { sheet, width }: Truth,
  planes: { readonly width: number },
): (x: number, y: number) => boolean {
  if (!sheet) return () => false
  const scale = planes.width / width
  const middle = [0, 1].map((of) =>
    sheet.corners.reduce((sum, corner) => sum + (corner[of]! * scale) / 4, 0),
  )
  const corners = sheet.corners.map((corner) =>
    [0, 1].map((of) => corner[of]! * scale + 2 * Math.sign(corner[of]! * scale - middle[of]!)),
  )
  return (x, y) => {
    const sides = corners.map(([x1, y1], n) => {
      const [x2, y2] = corners[(n + 1) % 4]!
      return Math.sign((x2! - x1!) * (y - y1!) - (y2! - y1!) * (x - x1!))
    })
    return sides.every((side) => side === sides[0])
  }
}
