import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/photo/hull.ts'
import { growth, taken } from '../../../src/photo/look/homography.ts'
import { sheetKinds } from '../../../src/photo/look/looked.ts'
import { cameraOf, poseOf, sheetSides } from '../../../src/photo/look/sheet-pose.ts'
import { type Eye, rectangle, seenAt } from './sheet-scene.ts'

const degree = Math.PI / 180
/** 26 mm in terms of 35 mm film: 43.27 mm are the diagonal of its frame, 24 × 36 mm. */
const eye: Eye = { width: 1600, height: 1200, focal: (26 * 2000) / 43.2666, away: 1400, tilt: 0 }

const sheet = (kind: (typeof sheetKinds)[number], x: number, y: number, turn: number): Point[] =>
  rectangle(x, y, sheetSides[kind][0], sheetSides[kind][1], turn)

describe('the pose of a sheet', () => {
  test.each(sheetKinds.flatMap((kind) => [0, 7, 25].map((tilt) => [kind, tilt] as const)))(
    'of %s seen from %d degrees is the one it was drawn with',
    (kind, tilt) => {
      const tipped = { ...eye, tilt: tilt * degree }
      const corners = sheet(kind, -320, 110, 0.3).map((point) => seenAt(tipped, point))
      const pose = poseOf(corners, kind, false, cameraOf(1600, 1200, 26))!
      expect(pose.cost).toBeLessThan(1e-3)
      expect(pose.tilt / degree).toBeCloseTo(tilt, 1)
      // A way of 100 mm elsewhere on the plane.
      const [one, other] = [[200, -150] as const, [260, -70] as const].map((point) =>
        taken(pose.back, seenAt(tipped, point)),
      ) as [Point, Point]
      expect(Math.hypot(one[0] - other[0], one[1] - other[1])).toBeCloseTo(100, 1)
    },
  )

  test('straight above has as many millimetres a pixel as the distance and the focal length tell', () => {
    const corners = sheet('letter', 100, 0, 1).map((point) => seenAt(eye, point))
    const pose = poseOf(corners, 'letter', false, cameraOf(1600, 1200, 26))!
    expect(growth(pose.back, [300, 900])).toBeCloseTo(eye.away / eye.focal, 4)
  })

  test('by the size of another sheet fits badly', () => {
    const tipped = { ...eye, tilt: 10 * degree }
    const corners = sheet('a4', -320, 110, 0.3).map((point) => seenAt(tipped, point))
    const camera = cameraOf(1600, 1200, null)
    const cost = (kind: (typeof sheetKinds)[number], upright: boolean) =>
      poseOf(corners, kind, upright, camera)!.cost
    expect(cost('a4', false)).toBeLessThan(1)
    expect(cost('letter', false)).toBeGreaterThan(10)
    expect(cost('id1', false)).toBeGreaterThan(10)
    expect(cost('a4', true)).toBeGreaterThan(100)
  })

  test('is surer near the sheet than far from it, and surer by paper than by a card', () => {
    const unsure = (kind: 'a4' | 'id1', at: Point) =>
      poseOf(
        sheet(kind, -320, 110, 0.3).map((point) => seenAt(eye, point)),
        kind,
        false,
        cameraOf(1600, 1200, null),
      )!.unsure(at)
    expect(unsure('a4', [500, 700])).toBeLessThan(unsure('a4', [1500, 200]))
    expect(unsure('a4', [900, 600])).toBeLessThan(unsure('id1', [900, 600]))
  })

  test('is none for corners in a line', () => {
    const line: Point[] = [
      [0, 0],
      [10, 10],
      [20, 20],
      [30, 30],
    ]
    expect(poseOf(line, 'a4', true, cameraOf(1600, 1200, null))).toBeNull()
  })
})
