import { scales } from './facts.ts'
import { grades, type Severity, severities } from './grade.ts'
import { type Claim, demandsOf, type Outcome, type Scaled } from './must-hold.ts'
import {
  type Box,
  boxOf,
  departuresOf,
  type Point,
  pointIn,
  type Row,
  rowsOf,
  type TableSet,
  uncovered,
  within,
} from './space.ts'

/** Proofs about tables whose rows each stand for themselves: flags, cautions, and layout fit. */

/** Looks for a failing box of `most` departures from the ordinary garment. */
type Search = (box: Box, most: number) => Box | null

const gravity = (row: Row): number => severities.indexOf(row.give.severity as Severity)

function firstFound<T, R>(items: readonly T[], search: (item: T) => R | null): R | null {
  for (const item of items) {
    const found = search(item)
    if (found) return found
  }
  return null
}

/** A garment graded better than every grade named. The named grades run to the worst. */
function gradedBetter(wanted: readonly string[], set: TableSet): Search {
  const least = Math.min(...wanted.map((grade) => grades.indexOf(grade as (typeof grades)[number])))
  const rows = rowsOf(set, 'flags').filter((row) => gravity(row) >= least)
  return (box, most) => (least === 0 ? null : uncovered(box, rows, set, most))
}

function withoutRow(table: string, isMeant: (row: Row) => boolean, set: TableSet): Search {
  const rows = rowsOf(set, table).filter(isMeant)
  return (box, most) => uncovered(box, rows, set, most)
}

function matching(rows: readonly Row[], set: TableSet): Search {
  return (box, most) =>
    firstFound(rows, (row) => {
      const here = within(box, row, rows, set)
      return here && departuresOf(here) <= most ? here : null
    })
}

/** A place where the topmost row that matches says that the layout fits. */
function fitting(settings: readonly string[], set: TableSet): Search {
  const rows = rowsOf(set, 'layout-fit')
  return (box, most) =>
    firstFound(rows, (row) => {
      if (row.give.fits !== true) return null
      const here = within(new Map(box).set('setting', settings), row, rows, set)
      return here && uncovered(here, rows.slice(0, rows.indexOf(row)), set, most)
    })
}

/** A reason for a grade that names no fact, or that the customer does not see. */
export function isUnnamed({ give }: Pick<Row, 'give'>): boolean {
  const { severity, because, for: readers } = give as Record<string, string | string[]>
  return severity !== 'note' && !(because!.length > 0 && readers!.includes('customer'))
}

/** How what breaks a demand is looked for; null where the demand speaks of pressing. */
function searchFor(demand: Outcome, set: TableSet): Search | null {
  if (demand.grade) return gradedBetter(demand.grade, set)
  if (demand.flag) return withoutRow('flags', ({ id }) => id === demand.flag![0], set)
  if (demand.caution) {
    return withoutRow('cautions', ({ give }) => give.code === demand.caution![0], set)
  }
  if (demand.no_flag) {
    return matching(
      rowsOf(set, 'flags').filter(({ id }) => id === demand.no_flag![0]),
      set,
    )
  }
  if (demand.unfit) return fitting(demand.unfit, set)
  return demand.reasons ? matching(rowsOf(set, 'flags').filter(isUnnamed), set) : null
}

/** Where a claim does not hold, and which of its demands is not kept there. */
export interface Miss {
  readonly point: Point
  readonly demand: Outcome
}

/**
 * Where facts break what a claim says of grade, flags, cautions or layouts; else null. `weighed` are
 * the cautions that depend on the plan: proofs about pressing look at them.
 */
export function breaksRows(
  { when, must }: Claim,
  set: TableSet,
  weighed: readonly string[],
  most: number,
): Miss | null {
  const demands = demandsOf(must).filter(
    ({ caution }) => !caution?.some((code) => weighed.includes(code)),
  )
  return firstFound(when, (conditions) =>
    firstFound(demands, (demand) => {
      const box = searchFor(demand, set)?.(boxOf(conditions), most)
      return box ? { point: pointIn(box), demand } : null
    }),
  )
}

/** One step down a fact's scale, all else alike. */
export interface ScaleStep {
  readonly fact: Scaled
  readonly better: string
  readonly worse: string
}

/** Where a step down the fact's scale does the unwanted thing: the point after it. */
export interface Worsened {
  readonly point: Point
  readonly step: ScaleStep
}

/** Where the fact gets worse by one step and no reason of the same gravity stays; else null. */
export function bettersGrade(fact: Scaled, set: TableSet, most: number): Worsened | null {
  const rows = rowsOf(set, 'flags')
  const steps = scales[fact]
    .slice(1)
    .map((worse, at): ScaleStep => ({ fact, better: scales[fact][at]!, worse }))
  return firstFound(steps, (step) =>
    firstFound(rows, (row) => {
      const cell = row.when[fact]
      if (cell === undefined) return null
      if (!set.matches(cell, step.better) || set.matches(cell, step.worse)) return null
      const others = { ...row, when: { ...row.when, [fact]: step.worse } }
      const here = within(new Map(), others, rows, set)
      const asGrave = rows.filter((one) => gravity(one) >= gravity(row))
      // The fact itself departs, which counts for nothing here.
      const box = here && uncovered(here, asGrave, set, most + 1)
      return box && { point: pointIn(box), step }
    }),
  )
}
