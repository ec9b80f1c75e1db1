import { type FinishedCare, finishedCare } from '../garment/finished-care.ts'
import { ticked } from '../intake/replies.ts'
import type { Plan } from '../quilt/plan/plan.ts'
import { gradeDecided, verdictsOf } from './consequences.ts'
import type { ReviewedGarment } from './review.ts'

/** How a quilt of these garments is washed and pressed. */
export const careOf = (garments: readonly ReviewedGarment[]): FinishedCare =>
  finishedCare(
    garments.map(({ garment: { n, facts, grading, replies } }) => ({
      n,
      facts,
      ceilingC: grading?.press.ceilingC ?? null,
      signs: ticked(replies, 'signs'),
    })),
  )

/**
 * The care that is told before anything is agreed: of the garments that the plan cuts, or of all that may be sewn in
 * while there is no plan.
 */
export function careToTell(
  garments: readonly ReviewedGarment[],
  plan: Pick<Plan, 'supply'> | undefined,
): FinishedCare {
  const used = plan && new Set(plan.supply.map(({ garment }) => garment))
  const verdicts = verdictsOf(garments)
  return careOf(
    garments.filter(({ garment: { n, grading } }) => {
      if (used) return used.has(n)
      const verdict = verdicts.get(n)
      const grade = verdict && verdict !== 'decline' ? gradeDecided[verdict] : grading?.grade
      return verdict !== 'decline' && (grade === 'sound' || grade === 'care')
    }),
  )
}
