import { average, converter, formatHex, parse } from 'culori'
import { describe, expect, test } from 'vitest'
import { hexOf, labOf, lightOfCode, mixed } from '../../src/base/colour.ts'

/** IEC 61966-2-1:1999, 5.2: from the value of a channel to its light. */
const published = (code: number): number => {
  const value = code / 255
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
}

test('the light of each value is that of the published curve', () => {
  expect(lightOfCode).toHaveLength(256)
  for (const [code, light] of lightOfCode.entries()) expect(light).toBeCloseTo(published(code), 6)
})

test('a light goes back to the value it came from', () => {
  for (const [code, light] of lightOfCode.entries()) {
    const hex = code.toString(16).padStart(2, '0')
    expect(hexOf([light, light, light])).toBe(`#${hex}${hex}${hex}`)
  }
})

describe('colours mixed', () => {
  // By the published curve: half of full light is the value 188 of 255, not 128.
  test('black and white by halves are the grey of half the light', () => {
    const even = [
      { colour: '#000000', share: 1 },
      { colour: '#ffffff', share: 1 },
    ]
    expect(mixed(even)).toBe('#bcbcbc')
    expect(published(0xbc)).toBeCloseTo(0.5, 2)
  })

  // culori's own average, in its space of linear light.
  test.each([
    ['#b3282d', '#f5f5f3'],
    ['#1d2a52', '#ecc63f'],
    ['#3f7d4e', '#e397ad'],
  ])('%s and %s are what another hand makes of them', (one, other) => {
    const theirs = formatHex(converter('rgb')(average([parse(one)!, parse(other)!], 'lrgb')))
    expect(
      mixed([
        { colour: one, share: 0.3 },
        { colour: other, share: 0.3 },
      ]),
    ).toBe(theirs)
  })

  test('one colour alone stays what it is, and a share of nothing counts nothing', () => {
    const one = { colour: '#4a4c50', share: 0.2 }
    expect(mixed([one])).toBe('#4a4c50')
    expect(mixed([one, { colour: '#ffffff', share: 0 }])).toBe('#4a4c50')
    expect(() => mixed([])).toThrow('No colours')
  })
})

test.each(['', '#fff', 'red', '#12345g', '#1234567', 'url(#x)'])('%j is no colour', (hex) => {
  expect(() => labOf(hex)).toThrow('Not a colour')
})
