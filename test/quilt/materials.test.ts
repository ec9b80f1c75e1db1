import { describe, expect, test } from 'vitest'
import { backing, batting } from '../../src/quilt/materials.ts'
import { rates } from '../help/knowledge.ts'

describe('a back', () => {
  test('narrower than the cloth has no seam', () => {
    expect(backing({ w: 30, h: 50 }, { usableIn: 40 })).toEqual({
      widths: 1,
      lengthIn: 56,
      clothIn: 56,
      seams: 'none',
    })
  })

  test('has its seam the way that takes less cloth', () => {
    // 66 in over 72 in: down takes two lengths of 72, across two of 60.
    expect(backing({ w: 54, h: 66 }, { usableIn: 40 })).toMatchObject({
      widths: 2,
      lengthIn: 60,
      seams: 'across',
    })
    expect(backing({ w: 66, h: 54 }, { usableIn: 40 })).toMatchObject({
      widths: 2,
      lengthIn: 60,
      seams: 'down',
    })
  })
})

describe('batting', () => {
  test('is the first package that reaches over every edge, either way round', () => {
    expect(batting({ w: 84, h: 66 }, rates.batting, 3)).toMatchObject({
      of: { w: 72, h: 90 },
      count: 1,
    })
  })

  test('is joined from several where none reaches: those that cost least', () => {
    const packages = [
      { w: 45, h: 60, price: 1800 },
      { w: 90, h: 108, price: 4200 },
    ]
    // 126 × 106 in: two of 90 × 108 lie side by side, five more of the small ones would be wanted.
    expect(batting({ w: 120, h: 100 }, packages, 3)).toEqual({ of: packages[1], count: 2 })
    expect(batting({ w: 100, h: 120 }, packages, 3)).toEqual({ of: packages[1], count: 2 })
    expect(batting({ w: 84, h: 54 }, packages.slice(0, 1), 3)).toEqual({
      of: packages[0],
      count: 2,
    })
  })
})
