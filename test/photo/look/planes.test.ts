import { differenceCiede2000 } from 'culori'
import { expect, test } from 'vitest'
import { labOf } from '../../../src/base/colour.ts'
import { grown, labPlanes } from '../../../src/photo/look/planes.ts'
import { random } from '../../help/xorshift.ts'

const ciede2000 = differenceCiede2000()

// culori's own conversion, through its own matrices, stands against the quick one by steps.
test('a picture comes to the same CIELAB as colours one by one in culori', () => {
  const below = random(41)
  const codes = Array.from({ length: 600 }, () => [below(256), below(256), below(256)])
  const data = Uint8Array.from([...codes.flat(), 0, 0, 0, 255, 255, 255])
  const planes = labPlanes({ data, width: 602, height: 1, channels: 3 })
  const off = codes.map((code, n) => {
    const hex = `#${code.map((one) => one.toString(16).padStart(2, '0')).join('')}`
    const own = { mode: 'lab65' as const, l: planes.l[n]!, a: planes.a[n]!, b: planes.b[n]! }
    return ciede2000(labOf(hex), own)
  })
  expect(Math.max(...off)).toBeLessThan(0.1)
  expect(planes.l[600]).toBeCloseTo(0, 1)
  expect(planes.l[601]).toBeCloseTo(100, 1)
})

test('marks grow by squares and stop at the edge', () => {
  const marks = new Uint8Array(49)
  marks[0] = 1
  marks[3 * 7 + 4] = 1
  const rows = Array.from({ length: 7 }, (_, y) =>
    grown(marks, 7, 7, 1)
      .slice(7 * y, 7 * y + 7)
      .join(''),
  )
  expect(rows).toEqual([
    '1100000',
    '1100000',
    '0001110',
    '0001110',
    '0001110',
    '0000000',
    '0000000',
  ])
})
