import { changedOf, offeringOf } from '../../desk/agreement.ts'
import type { Review } from '../../desk/review.ts'
import { settled } from '../../desk/what-if.ts'
import { offersOf } from '../../intake/offers.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import type { Language } from '../../words/words.ts'
import type { DeskContext } from './context.ts'
import { agreeCard } from './present-agree.ts'
import type { AgreeCard } from './view-agree.ts'

/** What the page of a pile tells of its agreement, by its plan as far as it is known. */
export async function agreeCardFor(
  { store, knowledge, clock }: DeskContext,
  found: Review,
  { best }: AsPlanned,
  language: Language,
): Promise<AgreeCard> {
  const { db } = store
  const now = clock()
  const offering = await offeringOf(db, knowledge.shop.bench, now, found, best && settled(best))
  return agreeCard(
    {
      number: found.row.number,
      needBy: found.pile.needBy,
      offering,
      offers: await offersOf(db, found.row.id, now),
      changed: await changedOf(db, found.row.id),
    },
    language,
  )
}
