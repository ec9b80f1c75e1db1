import type { Garment, Pile } from '../intake/pile.ts'
import type { Settled } from '../quilt/settled.ts'
import { type Tally, tally } from '../quilt/tally.ts'
import type { GarmentVerdict } from './decisions.ts'
import type { ReviewedGarment } from './review.ts'

/** What the quilt comes to, counted roughly. */
export interface Outcome {
  readonly tally: Tally
  readonly estimate: Pile['estimate']
}

/** The verdict that stands for a garment, by its number. */
export type Verdicts = ReadonlyMap<number, GarmentVerdict>

export const verdictsOf = (
  garments: readonly Pick<ReviewedGarment, 'garment' | 'decisions'>[],
): Verdicts =>
  new Map(
    garments.flatMap(({ garment, decisions }) => {
      const verdict = decisions.at(-1)?.verdict as GarmentVerdict | undefined
      return verdict ? [[garment.n, verdict] as const] : []
    }),
  )

/** The grade that a verdict of staff makes of a garment. */
export const gradeDecided = { take: 'sound', care: 'care', ask: 'eyes', decline: 'home' } as const

/** A decided garment counts as staff said, whatever its grade was. */
function tallyWith({ garments, wish }: Pile, verdicts: Verdicts): Tally {
  const counted = garments.flatMap(({ n, dropped, grading, facts, panels }: Garment) => {
    if (dropped || !grading) return []
    const verdict = verdicts.get(n)
    const grade = verdict ? gradeDecided[verdict] : grading.grade
    return [{ grade, facts, panels, layouts: grading.layouts }]
  })
  return tally(counted, wish.layout, wish.size, wish.quilts)
}

/** Numbers of garments that staff declined. */
export const declinedOf = (verdicts: Verdicts): number[] =>
  [...verdicts].flatMap(([n, verdict]) => (verdict === 'decline' ? [n] : []))

/** The estimate had the customer left the declined garments out; by what a plan settles, where one is. */
export const priceWith = (
  pile: Pile,
  verdicts: Verdicts,
  settled: Settled | null,
): Pile['estimate'] => pile.priced(settled, { without: declinedOf(verdicts) })

/** The quilt with these verdicts. */
export const outcomeOf = (pile: Pile, verdicts: Verdicts): Outcome => ({
  tally: tallyWith(pile, verdicts),
  estimate: priceWith(pile, verdicts, null),
})

/** What one more decision would do: the cloth were the garment taken, the price were it left out. */
export interface Prospect {
  readonly taken: Tally
  readonly left: Pile['estimate']
}

export const prospectOf = (pile: Pile, verdicts: Verdicts, n: number): Prospect => ({
  taken: tallyWith(pile, new Map([...verdicts, [n, 'take']])),
  // Where there is a plan its own price is told instead.
  get left() {
    return leftOutPrice(pile, verdicts, n, null)
  },
})

/** The price were one garment more left out. The plan, where there is one, does without it already. */
export const leftOutPrice = (
  pile: Pile,
  verdicts: Verdicts,
  n: number,
  settled: Settled | null,
): Pile['estimate'] => priceWith(pile, new Map([...verdicts, [n, 'decline']]), settled)
