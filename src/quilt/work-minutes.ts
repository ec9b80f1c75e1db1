import type { Line, LineCode } from './lines.ts'

export type WorkCode = Extract<
  LineCode,
  'teardown' | 'stabilising' | 'cutting' | 'piecing' | 'quilting' | 'finishing'
>

/** Minutes of one of each line's things: a garment, a piece, a square foot, a yard. */
export type MinutesPer = Readonly<Record<WorkCode, number>>

/** A layout that pays for the sewing of a piece more often takes that much longer too. */
function timesOver({ workings }: Pick<Line, 'workings'>): number {
  const working = workings.find(({ code }) => code === 'piecing')
  return working ? Number(working.values.factor) : 1
}

/** How long the likely quilt of an estimate keeps a bench, in whole minutes, rounded up. */
export function workMinutes(
  lines: readonly Pick<Line, 'code' | 'quantity' | 'workings'>[],
  per: MinutesPer,
): number {
  const isWork = (code: LineCode): code is WorkCode => Object.hasOwn(per, code)
  return Math.ceil(
    lines.reduce(
      (sum, line) =>
        isWork(line.code) ? sum + line.quantity * per[line.code] * timesOver(line) : sum,
      0,
    ),
  )
}
