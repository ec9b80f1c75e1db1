import { expect, test } from 'vitest'
import type { Facts, Size } from '../../src/garment/facts.ts'
import { flatOf } from '../../src/garment/garment-sizes.ts'
import { readCsv } from '../help/csv.ts'

// Flat measures of the trade: one T-shirt size chart (secondary), the rest usual trade figures from
// memory, unverified. EN 13402-3 holds body measures only, so no standard gives garments.
const rows = readCsv(new URL('garment-sizes.csv', import.meta.url))

/** Which of our kinds and sizes a row of the file speaks of; null: a cut we do not keep apart. */
function ours(row: Record<string, string>): { kind: Facts['kind']; size: Size } | null {
  const size = row.size as Size
  const baby: Record<string, Size> = {
    NB: '0-3m',
    '6M': '3-6m',
    '12M': '6-12m',
    '18M': '12-18m',
    '24M': '18-24m',
  }
  const waist: Record<string, Size> = {
    'waist 28': 'S',
    'waist 32': 'M',
    'waist 36': 'L',
    'waist 40': 'XL',
  }
  switch (`${row.garment}, ${row.group}`) {
    case 't-shirt, adult unisex':
    case 't-shirt, toddler':
      return { kind: 'tshirt', size }
    case 't-shirt, youth':
      return { kind: 'tshirt', size: `youth-${size}` as Size }
    case 'bodysuit, baby':
      return { kind: 'baby-suit', size: baby[row.size!]! }
    case 't-shirt, women fitted':
      return { kind: 'blouse', size }
    case 'sweatshirt, adult unisex':
      return { kind: 'sweatshirt', size }
    case 'dress shirt, men':
      return { kind: 'button-shirt', size }
    case 'trousers leg, adult':
      return waist[row.size!] ? { kind: 'jeans', size: waist[row.size!]! } : null
    default:
      return null
  }
}

const known = rows.flatMap((row) => {
  const our = ours(row)
  return our ? [{ ...our, row }] : []
})

test.each(known)('a $kind in $size measures what the trade says', ({ kind, size, row }) => {
  const flat = flatOf(kind, size as Exclude<Size, 'unknown'>)!
  expect([flat.widthIn, flat.lengthIn]).toEqual([Number(row.width_in), Number(row.length_in)])
  expect(flat.source.includes('from memory')).toBe(row.status === 'memory')
})

test('every row but the tall cuts and two waists is used', () => {
  expect(rows.length - known.length).toBe(4 + 2)
})
