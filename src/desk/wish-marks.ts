import { z } from 'zod'
import type { Wished } from '../intake/pile.ts'
import { quiltSizes } from '../quilt/layout.ts'
import { type MarkChange, type PlanMark, standingMarks } from './plan-marks.ts'

const body = z.object({
  layout: z.string().optional(),
  size: z.enum(quiltSizes).optional(),
})

/** The layout and size that staff chose for a pile in place of what its customer wished. */
export const wishedByStaff = (marks: readonly PlanMark[]): Wished =>
  Object.assign({}, ...standingMarks(marks, 'wish').map((mark) => body.parse(mark.body)))

/** The marks once these are chosen too; the same once more changes nothing. */
export function choosing(marks: readonly PlanMark[], chosen: Wished): MarkChange {
  const before = wishedByStaff(marks)
  const now = { ...before, ...chosen }
  if (now.layout === before.layout && now.size === before.size) return { undo: [], add: [] }
  return {
    undo: standingMarks(marks, 'wish').map(({ id }) => id),
    add: [{ kind: 'wish', garment: null, body: now }],
  }
}
