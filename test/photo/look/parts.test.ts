import { describe, expect, test } from 'vitest'
import { barriers, crossings, filled } from '../../../src/photo/look/barrier.ts'
import { surfaceThrough } from '../../../src/photo/look/fit.ts'
import { frameOf } from '../../../src/photo/look/frame.ts'
import { fourSided } from '../../../src/photo/look/sheet-shape.ts'
import { windowsOf } from '../../../src/photo/look/stripes.ts'
import { random } from '../../help/xorshift.ts'

describe('the light on cloth', () => {
  test('is found through one sample in five that is print', () => {
    const below = random(5)
    const truth = (x: number, y: number) => 50 + 0.1 * x - 0.05 * y + 0.0004 * x * y
    const at = Array.from({ length: 800 }, () => [below(200), below(160)] as const)
    const fitted = surfaceThrough(
      {
        x: Float32Array.from(at, ([x]) => x),
        y: Float32Array.from(at, ([, y]) => y),
        value: Float32Array.from(
          at,
          ([x, y], n) => truth(x, y) + (n % 5 === 0 ? 30 : below(100) / 100),
        ),
      },
      { width: 200, height: 160 },
    )
    for (const [x, y] of [
      [10, 10],
      [100, 80],
      [190, 150],
    ] as const) {
      expect(Math.abs(fitted.at(x, y) - truth(x, y) - 0.5)).toBeLessThan(1)
    }
  })
})

describe('a ring that the seeds do not lie in', () => {
  // 11 by 11: zeros, with a closed square of tens around the middle.
  const ring = Float32Array.from({ length: 121 }, (_, at) => {
    const far = Math.max(Math.abs((at % 11) - 5), Math.abs(Math.floor(at / 11) - 5))
    return far === 3 ? 10 : 0
  })
  const plane = { width: 11, height: 11, data: ring }
  const seeds = Uint8Array.from({ length: 121 }, (_, at) => Number(at < 11))

  test('is a barrier for what lies within, and none for what lies without', () => {
    const found = barriers(plane, seeds)
    expect([found[60], found[11 * 10 + 10]]).toEqual([10, 0])
  })

  test('must be crossed, and is filled up to its height', () => {
    const crossed = crossings(plane, seeds)
    expect([crossed[60]! >= 10, crossed[11 * 10 + 10]]).toEqual([true, 0])
    expect([filled(plane)[60], filled(plane)[11 * 10 + 10]]).toEqual([10, 0])
  })
})

/** A shirt's outline: a body with two sleeves, turned clockwise by so many degrees. */
function shirt(degrees: number) {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  const data = Uint8Array.from({ length: 200 * 200 }, (_, at) => {
    const [x, y] = [(at % 200) - 100, Math.floor(at / 200) - 100]
    const [u, v] = [x * cos + y * sin, y * cos - x * sin]
    const body = Math.abs(u) < 30 && Math.abs(v) < 60
    const sleeves = Math.abs(u) < 70 && v > -60 && v < -30
    return Number(body || sleeves)
  })
  return { width: 200, height: 200, data }
}

test.each([0, 12, -20, 75])('the axis of a shirt turned by %i° is found', (degrees) => {
  const frame = frameOf(shirt(degrees))!
  expect(Math.abs((frame.turn * 180) / Math.PI - degrees)).toBeLessThan(2)
  expect(Math.abs(frame.across - 140)).toBeLessThan(8)
  expect(Math.abs(frame.along - 120)).toBeLessThan(8)
})

test('a sheet that lies askew has four sides, a shirt has not', () => {
  const askew = Int32Array.from({ length: 200 * 200 }, (_, at) => {
    const [x, y] = [(at % 200) - 100, Math.floor(at / 200) - 100]
    return Number(Math.abs(x * 0.94 + y * 0.34) < 40 && Math.abs(y * 0.94 - x * 0.34) < 60)
  })
  expect(fourSided(askew, 200, 1)).toBeGreaterThan(0.96)
  expect(fourSided(Int32Array.from(shirt(10).data), 200, 1)).toBeLessThan(0.85)
})

describe('a window of cloth', () => {
  const windows = (of: (x: number, y: number) => number) =>
    windowsOf(
      {
        width: 80,
        height: 80,
        planes: [Float32Array.from({ length: 6400 }, (_, at) => of(at % 80, Math.floor(at / 80)))],
      },
      new Uint8Array(6400).fill(1),
      80,
    )

  test.each([0, 30, 60])('tells stripes turned by %i°', (degrees) => {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
    const [window] = windows((x, y) => 10 * Math.sin((x * cos + y * sin) / 2))
    expect(window!.along).toBeGreaterThan(0.8)
    expect(window!.across).toBeLessThan(0.2)
    expect(window!.repeats).toBeGreaterThan(0.8)
  })

  test('tells a check by lines both ways', () => {
    const [window] = windows(
      (x, y) => 5 * Math.sign(Math.sin(x / 3)) + 5 * Math.sign(Math.sin(y / 3)),
    )
    expect(window!.along + window!.across).toBeGreaterThan(0.9)
    expect(window!.across).toBeGreaterThan(0.3)
  })

  test('finds no lines in what lies scattered', () => {
    const below = random(9)
    const [window] = windows(() => below(20))
    expect(window!.along + window!.across).toBeLessThan(0.3)
  })
})
