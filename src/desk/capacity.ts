import type { Bench } from '../intake/shop.ts'

const dayMs = 24 * 60 * 60 * 1000
const workDays = 5
const week = 7
/** 1970-01-01, day 0, was a Thursday. */
const thursday = 3

/** Days since 1970-01-01, UTC. */
export const dayOf = (at: number): number => Math.floor(at / dayMs)
/** The beginning of a day, ms UTC. */
export const startOf = (day: number): number => day * dayMs

/** From Monday, 0. */
const weekday = (day: number): number => (((day + thursday) % week) + week) % week

/** The Monday of the week that a day lies in. */
export const mondayOf = (day: number): number => day - weekday(day)

/** A quilt that is promised: its minutes are worked off before its day. */
export interface Promised {
  readonly pile: number
  readonly day: number
  readonly minutes: number
}

/** Minutes of all benches on a day of work, less what is kept free; rounded down. */
const fullDay = ({ benches, hours_a_week, kept_free_percent }: Bench): number =>
  Math.floor((benches * hours_a_week * 60 * (100 - kept_free_percent)) / (100 * workDays))

/** Minutes there are on each day. */
export function minutesOn(bench: Bench): (day: number) => number {
  const full = fullDay(bench)
  const closed = bench.closed.map(({ from, to }) => ({
    from: dayOf(Date.parse(from)),
    to: dayOf(Date.parse(to)),
  }))
  return (day) =>
    weekday(day) >= workDays || closed.some(({ from, to }) => day >= from && day <= to) ? 0 : full
}

/** So far ahead a day is looked for. */
const horizonDays = 3 * 52 * week

/** Running sums of minutes: `before(day)` counts from tomorrow until the evening before that day. */
function minutesBefore(bench: Bench, today: number): (day: number) => number {
  const on = minutesOn(bench)
  const sums = [0, 0]
  return (day) => {
    while (sums.length <= day - today) sums.push(sums.at(-1)! + on(today + sums.length - 1))
    return sums[Math.max(0, day - today)]!
  }
}

const dueBy = (promises: readonly Promised[], day: number): number =>
  promises.reduce((sum, one) => (one.day <= day ? sum + one.minutes : sum), 0)

/**
 * True where `minutes` more, due on `day`, leave everything that is due then or later enough time: for
 * each day no more minutes are due by it than there are before it. That is all it takes, as work that is
 * there already is done in the order of its days whenever it can be done at all (Jackson 1955, Horn 1974;
 * from memory, unverified). What was overdue before is not this quilt's doing: days before `day` are not
 * looked at.
 */
export function fits(
  bench: Bench,
  today: number,
  promises: readonly Promised[],
  { day, minutes }: Omit<Promised, 'pile'>,
): boolean {
  const before = minutesBefore(bench, today)
  const days = [day, ...promises.map((one) => one.day).filter((due) => due > day)]
  return days.every((due) => dueBy(promises, due) + minutes <= before(due))
}

/** The earliest day that can be promised for a quilt of so many minutes; null: none in three years. */
export function earliestDay(
  bench: Bench,
  today: number,
  promises: readonly Promised[],
  minutes: number,
): number | null {
  const first = today + bench.lead_days
  for (let day = first; day <= today + horizonDays; day += 1) {
    if (fits(bench, today, promises, { day, minutes })) return day
  }
  return null
}

export const answers = ['yes', 'tight', 'no'] as const
export type CanMeet = (typeof answers)[number]

/** Whether a quilt that leaves on the earliest day is at its door on the day that it is needed. */
export function canMeet(
  { travel_days, tight_days }: Bench,
  earliest: number | null,
  needed: number,
): CanMeet {
  if (earliest === null) return 'no'
  const spare = needed - (earliest + travel_days)
  if (spare < 0) return 'no'
  return spare < tight_days ? 'tight' : 'yes'
}

export interface CalendarWeek {
  readonly monday: number
  readonly minutes: number
  readonly promised: number
  /** Piles that are worked on in it, and those whose day it holds. */
  readonly working: readonly number[]
  readonly due: readonly number[]
}

export interface Calendar {
  readonly weeks: readonly CalendarWeek[]
  /** Piles that cannot be done by their day as things stand, with the minutes that are lacking then. */
  readonly late: readonly { readonly pile: number; readonly minutes: number }[]
}

/** The weeks from this one on, worked in the order of the promised days, each as soon as it can be. */
export function calendarOf(
  bench: Bench,
  today: number,
  promises: readonly Promised[],
  atLeast: number,
): Calendar {
  const on = minutesOn(bench)
  const queue = promises
    .toSorted((a, b) => a.day - b.day || a.pile - b.pile)
    .map((one) => ({ ...one, left: one.minutes }))
  const weeks: CalendarWeek[] = []
  const late = new Map<number, number>()
  const lastDue = Math.max(today, ...promises.map(({ day }) => day))
  const isOpen = () => queue.some(({ left }) => left > 0)
  for (let monday = mondayOf(today); weeks.length < horizonDays / week; monday += week) {
    if (weeks.length >= atLeast && monday > lastDue && !isOpen()) break
    const working = new Set<number>()
    let minutes = 0
    let promised = 0
    for (let day = monday; day < monday + week; day += 1) {
      for (const one of queue) if (one.day === day && one.left > 0) late.set(one.pile, one.left)
      if (day <= today) continue
      let room = on(day)
      minutes += room
      for (const one of queue) {
        const done = Math.min(room, one.left)
        if (done === 0) continue
        one.left -= done
        room -= done
        promised += done
        working.add(one.pile)
      }
    }
    const due = queue.filter(({ day }) => day >= monday && day < monday + week)
    weeks.push({
      monday,
      minutes,
      promised,
      working: [...working],
      due: due.map(({ pile }) => pile),
    })
  }
  for (const { pile, day, minutes } of promises) if (day < mondayOf(today)) late.set(pile, minutes)
  return { weeks, late: [...late].map(([pile, minutes]) => ({ pile, minutes })) }
}
