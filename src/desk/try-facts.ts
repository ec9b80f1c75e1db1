import { Failure } from '../base/failures.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Garment, Pile } from '../intake/pile.ts'
import { readFactSet } from '../intake/set-facts.ts'
import type { Estimate } from '../quilt/estimate.ts'
import type { Tally } from '../quilt/tally.ts'
import type { Db } from '../store/schema.ts'
import { outcomeOf, verdictsOf } from './consequences.ts'
import { factSetsOf, type KeptFactSet, standingFacts } from './fact-sets.ts'
import { planMarksOf } from './plan-marks.ts'
import type { Review } from './review.ts'
import { pileWithFacts } from './spots.ts'

/** A garment and its quilt, counted roughly, with the decisions so far. */
export interface Standing {
  readonly garment: Garment
  readonly wish: Pile['wish']
  readonly tally: Tally
  readonly estimate: Estimate | null
}

function standingOf(pile: Pile, review: Review, n: number): Standing {
  const garment = pile.garments.find((one) => one.n === n && !one.dropped)
  if (!garment) throw new Failure('not_found')
  const { tally, estimate } = outcomeOf(pile, verdictsOf(review.garments))
  return { garment, wish: pile.wish, tally, estimate }
}

export interface Tried {
  readonly before: Standing
  readonly after: Standing
}

/**
 * What a garment and its quilt become with these facts, by name; nothing is kept. Throws `not_found` or
 * `answer_not_offered`.
 */
export async function tryFacts(
  db: Db,
  knowledge: Knowledge,
  review: Review,
  n: number,
  facts: Readonly<Record<string, string>>,
): Promise<Tried> {
  const sets = await factSetsOf(db, review.row.id)
  const newest = Math.max(0, ...sets.map(({ at }) => at))
  const trial = Object.entries(facts).map(
    ([fact, value], i): KeptFactSet => ({
      ...readFactSet(fact, value),
      id: '',
      item: n,
      source: 'staff',
      reason: '',
      who: { id: '', name: '' },
      at: newest + 1 + i,
      undone: null,
    }),
  )
  const marks = await planMarksOf(db, review.row.id)
  const tried = await pileWithFacts(db, knowledge, review.row, {
    marks,
    facts: standingFacts([...sets, ...trial]),
  })
  return { before: standingOf(review.pile, review, n), after: standingOf(tried, review, n) }
}
