import { type Asked, type ToPlan, toPlan } from '../intake/to-plan.ts'
import { gradeDecided } from './consequences.ts'
import type { GarmentVerdict } from './decisions.ts'
import type { Review } from './review.ts'

/** A reviewed pile as the planning takes it: what staff decided stands before any grade. */
export function planReviewed(
  { pile, garments }: Pick<Review, 'pile' | 'garments'>,
  asked: Omit<Asked, 'standing'> = {},
): ToPlan {
  const verdicts = new Map(
    garments.map(({ garment, decisions }) => [
      garment.n,
      decisions.at(-1)?.verdict as GarmentVerdict | undefined,
    ]),
  )
  return toPlan(pile, {
    ...asked,
    standing: ({ n, grading }) => {
      const verdict = verdicts.get(n)
      if (verdict === 'decline') return 'declined'
      return verdict ? gradeDecided[verdict] : (grading?.grade ?? null)
    },
  })
}
