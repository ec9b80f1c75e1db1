import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lineCodes } from '../../src/quilt/lines.ts'
import { depositMinorOf, offerSums, usualDeposit } from '../../src/quilt/offer-sums.ts'
import { workMinutes } from '../../src/quilt/work-minutes.ts'

const line = (code: (typeof lineCodes)[number], likely: number) => ({
  code,
  unit: 'piece' as const,
  low: likely,
  likely,
  high: likely,
  quantity: 2,
  unitPriceMinor: null,
  workings: [],
  because: [],
})

test('a worked example: lines, an amendment, tax on the sum once, and the deposit', () => {
  const lines = [line('cutting', 10_000), line('post-there', 900), line('post-back', 1_300)]
  const amendments = [{ label: 'Label', minor: -301, reason: 'a gift' }]
  const sums = offerSums(
    { lines, currency: 'USD' },
    { amendments, taxPercent: 6.25, deposit: { percent: 50 } },
  )
  // By hand: 100.00 + 13.00 - 3.01 = 109.99; 6.25 % of it are 6.874375, so 6.87; half of 116.86.
  expect(sums).toMatchObject({
    subtotalMinor: 10_999,
    tax: { percent: 6.25, minor: 687 },
    totalMinor: 11_686,
    depositMinor: 5_843,
    balanceMinor: 5_843,
  })
  expect(sums.lines.map(({ code }) => code)).toEqual(['cutting', 'post-back'])
})

test.each([
  ['half of it', { deposit_percent: 50, deposit_amount: null }, 11_687, 5_844],
  ['an amount in place of a share', { deposit_percent: 50, deposit_amount: 4_000 }, 11_687, 4_000],
  ['no more than the whole', { deposit_percent: 50, deposit_amount: 20_000 }, 11_687, 11_687],
  ['nothing of nothing', { deposit_percent: 50, deposit_amount: 20_000 }, -5, 0],
])('the usual deposit is %s', (_, rates, total, minor) => {
  // By hand; half of 116.87 is 58.435, half a cent up.
  expect(depositMinorOf(usualDeposit(rates), total)).toBe(minor)
})

test('sums add up to the cent, whatever is added and taken off', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 5_000_000 }), { maxLength: 14 }),
      fc.array(fc.integer({ min: -10_000, max: 100_000 }), { maxLength: 12 }),
      fc.option(fc.integer({ min: 0, max: 30_000 }).map((percent) => percent / 1_000)),
      fc.oneof(
        fc.integer({ min: 0, max: 100 }).map((percent) => ({ percent })),
        fc.integer({ min: 0, max: 1_000 }).map((minor) => ({ minor })),
      ),
      (amounts, added, taxPercent, deposit) => {
        const lines = amounts.map((likely, i) => line(lineCodes[i]!, likely))
        const amendments = added.map((minor) => ({ label: 'x', minor, reason: 'because' }))
        const sums = offerSums({ lines, currency: 'USD' }, { amendments, taxPercent, deposit })
        const shown = [...sums.lines, ...sums.amendments].reduce((sum, { minor }) => sum + minor, 0)
        expect(sums.subtotalMinor).toBe(shown)
        expect(sums.totalMinor).toBe(shown + (sums.tax?.minor ?? 0))
        expect(sums.depositMinor + sums.balanceMinor).toBe(sums.totalMinor)
        for (const amount of [sums.totalMinor, sums.depositMinor]) {
          expect(Number.isSafeInteger(amount)).toBe(true)
        }
      },
    ),
  )
})

test('work is counted by the things of each line; what a layout pays for more often takes longer', () => {
  const per = { teardown: 30, stabilising: 20, cutting: 2, piecing: 4, quilting: 15, finishing: 10 }
  const factor = { code: 'piecing' as const, values: { factor: 1.5 } }
  const lines = [
    { code: 'teardown' as const, quantity: 3, workings: [] },
    { code: 'piecing' as const, quantity: 11, workings: [factor] },
    { code: 'batting' as const, quantity: 99, workings: [] },
  ]
  expect(workMinutes(lines, per)).toBe(3 * 30 + 11 * 4 * 1.5)
})
