import { expect, test } from 'vitest'
import { outlineNets } from '../../../src/photo/look/nets.ts'
import { outlineOf } from '../../../src/photo/look/outline.ts'
import { labPlanes, marked } from '../../../src/photo/look/planes.ts'

const [width, height] = [240, 200]

/** Blue cloth on grey ground, in the middle. */
const planes = labPlanes({
  width,
  height,
  channels: 3,
  data: Uint8Array.from({ length: width * height * 3 }, (_, n) => {
    const [x, y] = [Math.floor(n / 3) % width, Math.floor(n / 3 / width)]
    const isCloth = x >= 70 && x < 170 && y >= 40 && y < 160
    return (isCloth ? [50, 80, 150] : [185, 178, 164])[n % 3]!
  }),
})
const right = marked(width * height, (at) => at % width >= 130)

const countIn = (data: Uint8Array, where: (at: number) => boolean): number =>
  data.reduce((sum, one, at) => sum + (where(at) ? one : 0), 0)

test('what is known to show no garment is left out of the outline, whatever it looks like', () => {
  const whole = outlineOf(planes, outlineNets)
  const part = outlineOf(planes, outlineNets, right)
  const isRight = (at: number) => right[at] === 1
  const isLeft = (at: number) => right[at] === 0
  expect(countIn(whole.mask.data, isRight)).toBeGreaterThan(0.9 * 40 * 120)
  expect(countIn(part.mask.data, isRight)).toBeLessThan(0.1 * 40 * 120)
  expect(countIn(part.mask.data, isLeft)).toBeGreaterThan(0.9 * 60 * 120)
  expect(part.inside.every((one, at) => !isRight(at) || one === 0)).toBe(true)
})
