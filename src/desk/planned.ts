import { type Asked, type ToPlan, toPlan } from '../intake/to-plan.ts'
import { gradeDecided, verdictsOf } from './consequences.ts'
import type { Review } from './review.ts'

/** The part of a review that a plan follows from. */
export interface ToPlanReviewed extends Pick<Review, 'garments' | 'roles'> {
  readonly pile: Pick<Review['pile'], 'garments' | 'wish' | 'rates'>
  /** Numbers of garments that are taken, whatever was decided of them. */
  readonly taken?: readonly number[]
}

/** A reviewed pile as the planning takes it: what staff decided stands before any grade. */
export function planReviewed(
  { pile, garments, roles, taken = [] }: ToPlanReviewed,
  asked: Omit<Asked, 'standing'> = {},
): ToPlan {
  const taking = taken.map((n) => [n, 'take'] as const)
  const verdicts = new Map([...verdictsOf(garments), ...taking])
  const cloths = garments.map(({ garment: { n }, cloth }) => ({ garment: n, value: cloth.value }))
  return toPlan(
    { pile, cloths },
    {
      roles: new Map([...roles].map(([n, given]) => [n, given.roles])),
      ...asked,
      standing: ({ n, grading }) => {
        const verdict = verdicts.get(n)
        if (verdict === 'decline') return 'declined'
        return verdict ? gradeDecided[verdict] : (grading?.grade ?? null)
      },
    },
  )
}
