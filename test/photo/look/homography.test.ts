import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/photo/hull.ts'
import { backOf, growth, homographyOf, taken } from '../../../src/photo/look/homography.ts'

const square: Point[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
]

/**
 * The unit square to a quadrilateral in closed form: Heckbert, Fundamentals of Texture Mapping and Image Warping
 * (1989), 2.2.3; from memory.
 */
function heckbert(to: readonly Point[]): number[] {
  const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = to as [Point, Point, Point, Point]
  const [dx1, dx2, sx] = [x1 - x2, x3 - x2, x0 - x1 + x2 - x3]
  const [dy1, dy2, sy] = [y1 - y2, y3 - y2, y0 - y1 + y2 - y3]
  const whole = dx1 * dy2 - dx2 * dy1
  const g = (sx * dy2 - dx2 * sy) / whole
  const h = (dx1 * sy - sx * dy1) / whole
  return [x1 - x0 + g * x1, x3 - x0 + h * x3, x0, y1 - y0 + g * y1, y3 - y0 + h * y3, y0, g, h, 1]
}

const quads: readonly (readonly Point[])[] = [
  [
    [10, 20],
    [310, 40],
    [290, 260],
    [35, 230],
  ],
  [
    [0, 0],
    [2, 0],
    [2, 3],
    [0, 3],
  ],
  [
    [-5, 7],
    [80, -11],
    [61, 90],
    [3, 44],
  ],
]

describe('a homography', () => {
  test.each(quads)('is the one that the closed form gives', (...quad) => {
    const found = homographyOf(square, quad)!
    for (const [n, number] of heckbert(quad).entries()) expect(found[n]).toBeCloseTo(number, 9)
  })

  test('takes its points where they belong, and back', () => {
    const found = homographyOf(square, quads[0]!)!
    const back = backOf(found)!
    for (const [n, point] of square.entries()) {
      for (const k of [0, 1] as const) {
        expect(taken(found, point)[k]).toBeCloseTo(quads[0]![n]![k], 9)
        expect(taken(back, quads[0]![n]!)[k]).toBeCloseTo(point[k], 9)
      }
    }
  })

  test('grows a small square by as much as its corners tell', () => {
    const found = homographyOf(square, quads[2]!)!
    const d = 1e-5
    const ring = (
      [
        [0, 0],
        [d, 0],
        [d, d],
        [0, d],
      ] as const
    ).map(([x, y]) => taken(found, [0.4 + x, 0.7 + y]))
    const twice = ring.reduce((sum, [x, y], n) => {
      const [u, v] = ring[(n + 1) % 4]!
      return sum + x * v - y * u
    }, 0)
    expect(growth(found, [0.4, 0.7])).toBeCloseTo(Math.sqrt(Math.abs(twice) / 2) / d, 2)
  })

  test('is none for corners in a line', () => {
    expect(
      homographyOf(
        [
          [0, 0],
          [1, 1],
          [2, 2],
          [3, 3],
        ],
        square,
      ),
    ).toBeNull()
  })
})
