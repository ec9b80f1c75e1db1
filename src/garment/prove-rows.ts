import { scales } from './facts.ts'
import { grades, type Severity, severities } from './grade.ts'
import type { Claim, Outcome, Scaled } from './must-hold.ts'
import { type Box, boxOf, type Row, rowsOf, type TableSet, uncovered, within } from './space.ts'

/** Proofs about tables whose rows each stand for themselves: flags, cautions, and layout fit. */

type Search = (box: Box) => Box | null

const gravity = (row: Row): number => severities.indexOf(row.give.severity as Severity)

const firstFound = <T>(items: readonly T[], search: (item: T) => Box | null): Box | null => {
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
  return (box) => (least === 0 ? null : uncovered(box, rows, set))
}

function withoutRow(table: string, isMeant: (row: Row) => boolean, set: TableSet): Search {
  const rows = rowsOf(set, table).filter(isMeant)
  return (box) => uncovered(box, rows, set)
}

function withRow(id: string, set: TableSet): Search {
  const rows = rowsOf(set, 'flags').filter((row) => row.id === id)
  return (box) => firstFound(rows, (row) => within(box, row, rows, set))
}

/** A place where the topmost row that matches says that the layout fits. */
function fitting(settings: readonly string[], set: TableSet): Search {
  const rows = rowsOf(set, 'layout-fit')
  return (box) =>
    firstFound(rows, (row) => {
      if (row.give.fits !== true) return null
      const here = within(new Map(box).set('setting', settings), row, rows, set)
      return here && uncovered(here, rows.slice(0, rows.indexOf(row)), set)
    })
}

/** A reason for a grade that names no fact, or that the customer does not see. */
function unnamed(set: TableSet): Search {
  const rows = rowsOf(set, 'flags').filter(({ give }) => {
    const { severity, because, for: readers } = give as Record<string, string | string[]>
    return severity !== 'note' && !(because!.length > 0 && readers!.includes('customer'))
  })
  return (box) => firstFound(rows, (row) => within(box, row, rows, set))
}

function searches(must: Outcome, set: TableSet): Search[] {
  return [
    ...(must.grade ? [gradedBetter(must.grade, set)] : []),
    ...(must.flag ?? []).map((code) => withoutRow('flags', (row) => row.id === code, set)),
    ...(must.caution ?? []).map((code) =>
      withoutRow('cautions', (row) => row.give.code === code, set),
    ),
    ...(must.no_flag ?? []).map((code) => withRow(code, set)),
    ...(must.unfit ? [fitting(must.unfit, set)] : []),
    ...(must.reasons ? [unnamed(set)] : []),
  ]
}

/** A box of facts that breaks what a claim says of grade, flags, cautions or layouts; else null. */
export const breaksRows = ({ when, must }: Claim, set: TableSet): Box | null =>
  firstFound(when, (conditions) =>
    firstFound(searches(must, set), (search) => search(boxOf(conditions))),
  )

/** A box in which the fact gets worse by one step and no reason of the same gravity stays; else null. */
export function bettersGrade(fact: Scaled, set: TableSet): Box | null {
  const rows = rowsOf(set, 'flags')
  const steps = scales[fact].slice(1).map((worse, at) => [scales[fact][at]!, worse] as const)
  return firstFound(steps, ([better, worse]) =>
    firstFound(rows, (row) => {
      const cell = row.when[fact]
      if (cell === undefined || !set.matches(cell, better) || set.matches(cell, worse)) return null
      const others = { ...row, when: { ...row.when, [fact]: worse } }
      const here = within(new Map(), others, rows, set)
      const asGrave = rows.filter((one) => gravity(one) >= gravity(row))
      return here && uncovered(here, asGrave, set)
    }),
  )
}
