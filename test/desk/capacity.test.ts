import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  calendarOf,
  canMeet,
  dayOf,
  earliestDay,
  fits,
  minutesOn,
  mondayOf,
  type Promised,
} from '../../src/desk/capacity.ts'
import type { Bench } from '../../src/intake/shop.ts'

const bench: Bench = {
  benches: 1,
  hours_a_week: 10,
  kept_free_percent: 0,
  lead_days: 0,
  travel_days: 3,
  tight_days: 4,
  closed: [{ from: '2026-06-15', to: '2026-06-21' }],
  minutes: { teardown: 1, stabilising: 1, cutting: 1, piecing: 1, quilting: 1, finishing: 1 },
}
const day = (iso: string) => dayOf(Date.parse(iso))
/** A Friday. */
const today = day('2026-06-05')

describe('the days of the benches', () => {
  test('work is from Monday to Friday, less what is kept free and what is closed', () => {
    const on = minutesOn({ ...bench, benches: 2, kept_free_percent: 25 })
    // 2 benches × 10 h × 60 min × 75 % / 5 days.
    expect(on(day('2026-06-08'))).toBe(180)
    expect(on(day('2026-06-12'))).toBe(180)
    expect(on(day('2026-06-13'))).toBe(0)
    expect(on(day('2026-06-14'))).toBe(0)
    expect(on(day('2026-06-15'))).toBe(0)
    expect(on(day('2026-06-22'))).toBe(180)
  })

  test('a week begins on Monday, before 1970 too', () => {
    // ISO 8601: Monday is the first day of the week; 1970-01-01 was a Thursday.
    expect(mondayOf(0)).toBe(-3)
    expect(mondayOf(day('2026-06-08'))).toBe(day('2026-06-08'))
    expect(mondayOf(day('2026-06-14'))).toBe(day('2026-06-08'))
  })
})

describe('the earliest day', () => {
  test('leaves time for the work, and for the work that is promised before', () => {
    // 120 minutes a day: 240 are done on the evening of the second working day.
    expect(earliestDay(bench, today, [], 240)).toBe(day('2026-06-10'))
    const promised: Promised[] = [{ pile: 1, day: day('2026-06-10'), minutes: 240 }]
    expect(earliestDay(bench, today, promised, 240)).toBe(day('2026-06-12'))
    // A closed week takes no work.
    expect(earliestDay(bench, today, promised, 480)).toBe(day('2026-06-23'))
  })

  test('a later promise that has time to spare lets an earlier one go before it', () => {
    const promised: Promised[] = [{ pile: 1, day: day('2026-07-31'), minutes: 600 }]
    expect(earliestDay(bench, today, promised, 120)).toBe(day('2026-06-09'))
  })

  test('is none where three years are full, and where the benches never work', () => {
    expect(earliestDay(bench, today, [], 10_000_000)).toBeNull()
  })

  test('can the day it is needed be met: the way home counts, and a narrow margin is told', () => {
    const earliest = day('2026-06-10')
    expect(canMeet(bench, earliest, day('2026-06-12'))).toBe('no')
    expect(canMeet(bench, earliest, day('2026-06-13'))).toBe('tight')
    expect(canMeet(bench, earliest, day('2026-06-16'))).toBe('tight')
    expect(canMeet(bench, earliest, day('2026-06-17'))).toBe('yes')
    expect(canMeet(bench, null, day('2026-06-17'))).toBe('no')
  })
})

/** A second way to it: works day by day on what is due first, and tells whether anything came too late. */
function isInTime(on: (day: number) => number, from: number, jobs: readonly Promised[]): boolean {
  const left = jobs.map((job) => ({ ...job }))
  const last = Math.max(from, ...jobs.map((job) => job.day))
  for (let at = from + 1; at <= last; at += 1) {
    if (left.some((job) => job.day === at && job.minutes > 0)) return false
    let room = on(at)
    while (room > 0) {
      const [next] = left.filter((job) => job.minutes > 0).sort((a, b) => a.day - b.day)
      if (!next) break
      const done = Math.min(room, next.minutes)
      next.minutes -= done
      room -= done
    }
  }
  return left.every((job) => job.minutes === 0)
}

describe('promises made one after another', () => {
  const works = fc.array(fc.integer({ min: 1, max: 2_000 }), { minLength: 1, maxLength: 12 })
  const settings = fc.record({
    benches: fc.integer({ min: 1, max: 3 }),
    hours_a_week: fc.integer({ min: 5, max: 40 }),
    kept_free_percent: fc.integer({ min: 0, max: 50 }),
    lead_days: fc.integer({ min: 0, max: 40 }),
  })

  test('never ask for more hours in the weeks until any day than there are', () => {
    fc.assert(
      fc.property(settings, works, fc.integer({ min: 0, max: 6 }), (some, minutes, weekday) => {
        const own = { ...bench, ...some }
        const on = minutesOn(own)
        const from = today + weekday
        const promises: Promised[] = []
        for (const [pile, work] of minutes.entries()) {
          const found = earliestDay(own, from, promises, work)
          if (found === null) continue
          expect(found).toBeGreaterThanOrEqual(from + own.lead_days)
          promises.push({ pile, day: found, minutes: work })
        }
        for (const { day: due } of promises) {
          let there = 0
          for (let at = from + 1; at < due; at += 1) there += on(at)
          const asked = promises
            .filter((one) => one.day <= due)
            .reduce((sum, one) => sum + one.minutes, 0)
          expect(asked).toBeLessThanOrEqual(there)
        }
        expect(isInTime(on, from, promises)).toBe(true)
        expect(calendarOf(own, from, promises, 4).late).toEqual([])
      }),
      { numRuns: 60 },
    )
  })

  test('are as early as can be: a day before the earliest the work would come too late', () => {
    fc.assert(
      fc.property(settings, works, (some, minutes) => {
        const own = { ...bench, ...some, lead_days: 0 }
        const on = minutesOn(own)
        const promises: Promised[] = []
        for (const [pile, work] of minutes.entries()) {
          const found = earliestDay(own, today, promises, work)!
          for (const one of [found - 1, found]) {
            const with_ = [...promises, { pile, day: one, minutes: work }]
            expect(isInTime(on, today, with_)).toBe(one === found)
            expect(fits(own, today, promises, { day: one, minutes: work })).toBe(one === found)
          }
          promises.push({ pile, day: found + (pile % 3) * 7, minutes: work })
        }
      }),
      { numRuns: 40 },
    )
  })

  test('the weeks of the calendar hold all that is promised, none more than it has', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            pile: fc.integer({ min: 1, max: 50 }),
            day: fc.integer({ min: today - 10, max: today + 90 }),
            minutes: fc.integer({ min: 1, max: 900 }),
          }),
          { maxLength: 8 },
        ),
        (promises) => {
          const { weeks } = calendarOf(bench, today, promises, 3)
          for (const one of weeks) expect(one.promised).toBeLessThanOrEqual(one.minutes)
          const sum = (all: readonly { promised?: number; minutes?: number }[]) =>
            all.reduce((total, one) => total + (one.promised ?? one.minutes ?? 0), 0)
          expect(sum(weeks.map(({ promised }) => ({ promised })))).toBe(
            sum(promises.map(({ minutes }) => ({ minutes }))),
          )
        },
      ),
      { numRuns: 60 },
    )
  })

  test('what cannot be done in time is told by its pile', () => {
    const promises: Promised[] = [
      { pile: 7, day: day('2026-06-09'), minutes: 200 },
      { pile: 8, day: day('2026-06-04'), minutes: 60 },
      { pile: 9, day: day('2026-05-20'), minutes: 30 },
    ]
    const { late } = calendarOf(bench, today, promises, 3)
    // 120 minutes on Monday, of which the overdue ones take 90 first.
    expect(new Map(late.map(({ pile, minutes }) => [pile, minutes]))).toEqual(
      new Map([
        [7, 170],
        [8, 60],
        [9, 30],
      ]),
    )
  })
})
