import { expect, test } from 'vitest'
import { cutOfCard, cutOfCorners } from '../../../src/photo/look/sheet-corners.ts'
import { cameraOf, poseOf } from '../../../src/photo/look/sheet-pose.ts'
import { drawn, type Eye, rectangle, rounded, seenAt } from './sheet-scene.ts'

const eye: Eye = { width: 480, height: 360, focal: (26 * 600) / 43.2666, away: 240, tilt: 0.1 }
/** ISO/IEC 7810, ID-1: 85.60 by 53.98 mm, corners of 3.18 mm. */
const [wide, tall, radius] = [85.6, 53.98, 3.18]
const sides = rectangle(10, -5, wide, tall, 0.3)
const corners = sides.map((at) => seenAt(eye, at))
const pose = poseOf(corners, 'id1', false, cameraOf(eye.width, eye.height, 26))!

const cutOf = (shape: typeof sides, colour = [190, 60, 50]) => {
  const { picture } = drawn(eye, () => [140, 105, 75], [{ corners: shape, colour }])
  return cutOfCorners(picture, corners, pose)
}

test('of the corners of a card as much is cut off as its radius tells', () => {
  expect(cutOf(rounded(10, -5, wide, tall, 0.3, radius))! / cutOfCard).toBeCloseTo(1, 0.7)
  expect(cutOf(rounded(10, -5, wide, tall, 0.3, 2 * radius))! / cutOfCard).toBeGreaterThan(1.6)
})

test('of sharp ones next to nothing is', () => {
  expect(cutOf(sides)! / cutOfCard).toBeLessThan(0.35)
})

test('of what has the colour of its ground nothing can be told', () => {
  expect(cutOf(sides, [141, 106, 75])).toBeNull()
})
