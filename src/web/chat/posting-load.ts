import type { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { readSubjectKey } from '../../custody/subject.ts'
import { parcelsOf } from '../../desk/parcels.ts'
import { promiseOf } from '../../intake/offers.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import type { ChatContext } from './context.ts'
import { paths } from './paths.ts'
import type { Standing } from './status-load.ts'
import type { Posting } from './view-posting.ts'

/** What was sent and refused. */
export interface RefusedPosting {
  readonly carrier: string
  readonly tracking: string
  readonly failure: Failure
}

/**
 * The form to say that a parcel was posted, with what was said so far: once a price is agreed, or a parcel is on its
 * way all the same. Null before that, once the quilt is done, and where the pile was withdrawn.
 */
export async function postingOf(
  { store }: ChatContext,
  { row, offers, milestones }: Standing,
  key: string,
  language: Language,
  refused: RefusedPosting | null,
): Promise<Posting | null> {
  const { say } = language
  if (row.status === 'withdrawn' || milestones.done !== null) return null
  const parcels = (await parcelsOf(store.db, row.id)).filter(
    ({ subject }) => readSubjectKey(subject)?.kind === 'parcel',
  )
  if (!promiseOf(offers) && parcels.length === 0 && !refused) return null
  return {
    postTo: paths.posted(key),
    idem: newId(),
    carrier: refused?.carrier ?? '',
    tracking: refused?.tracking ?? '',
    refusal: refused && failureSentence(refused.failure, language),
    told: parcels.map(({ carrier, tracking, state }) =>
      say('custody.post.announced', {
        parcel: [carrier, tracking].filter(Boolean).join(' '),
        state: say(`custody.states.${state}`),
      }),
    ),
  }
}
