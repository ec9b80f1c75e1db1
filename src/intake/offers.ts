import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { sha256 } from '../base/ids.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText } from '../flow/text.ts'
import type { OfferSums } from '../quilt/offer-sums.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, OfferRow, PileRow } from '../store/schema.ts'
import { pileOfKey } from './rows.ts'
import { refreshWaiting } from './waiting.ts'

export const offerStates = ['sent', 'accepted', 'superseded', 'expired', 'ended'] as const
export type OfferState = (typeof offerStates)[number]

/** An offer with what it says, word for word, in each language. */
export interface Offer<Paper = unknown> {
  readonly row: OfferRow
  readonly state: OfferState
  readonly sums: OfferSums
  readonly words: Readonly<Record<string, Paper>>
  /** SHA-256 of the kept words: a form tells with it what its page showed. */
  readonly hash: string
}

type Standing = Pick<OfferRow, 'accepted_at' | 'superseded_at' | 'ended_at' | 'expires_at'>

/** What has become of an offer by this time. */
export function stateOf(row: Standing, now: number): OfferState {
  if (row.ended_at !== null) return 'ended'
  if (row.accepted_at !== null) return row.superseded_at === null ? 'accepted' : 'superseded'
  return now < row.expires_at ? 'sent' : 'expired'
}

/** Every offer of a pile, the newest first. */
export async function offersOf<Paper>(
  db: Db,
  pileId: string,
  now: number,
): Promise<Offer<Paper>[]> {
  const rows = await db
    .selectFrom('offer')
    .innerJoin('agreed', (join) =>
      join
        .onRef('agreed.pile_id', '=', 'offer.pile_id')
        .onRef('agreed.version', '=', 'offer.version'),
    )
    .selectAll('offer')
    .select('agreed.body')
    .where('offer.pile_id', '=', pileId)
    .orderBy('offer.version', 'desc')
    .execute()
  return rows.map(({ body, ...row }) => ({
    row,
    state: stateOf(row, now),
    sums: JSON.parse(row.sums) as OfferSums,
    words: JSON.parse(body) as Offer<Paper>['words'],
    hash: sha256(body),
  }))
}

/** The offer by which a pile is worked: accepted, also while a changed one waits; undefined: none. */
export const promiseOf = <Paper>(offers: readonly Offer<Paper>[]): Offer<Paper> | undefined =>
  offers.find(({ state }) => state === 'accepted' || state === 'superseded')

/** Ends what was sent and never accepted. The pile is locked. */
export async function endSent(db: Db, pileId: string, at: number): Promise<void> {
  await db
    .updateTable('offer')
    .set({ ended_at: at })
    .where('pile_id', '=', pileId)
    .where('accepted_at', 'is', null)
    .where('ended_at', 'is', null)
    .execute()
}

/** The pile is being changed: nothing sent holds, and what was accepted is promised but superseded. */
export async function supersede(db: Db, pileId: string, at: number): Promise<void> {
  await endSent(db, pileId, at)
  await db
    .updateTable('offer')
    .set({ superseded_at: at })
    .where('pile_id', '=', pileId)
    .where('superseded_at', 'is', null)
    .where('ended_at', 'is', null)
    .execute()
}

/** Nothing is promised any more. */
export async function endAll(db: Db, pileId: string, at: number): Promise<void> {
  await db
    .updateTable('offer')
    .set({ ended_at: at })
    .where('pile_id', '=', pileId)
    .where('ended_at', 'is', null)
    .execute()
}

/** Characters of a name under an offer. */
export const nameLimits = { shortest: 2, longest: 200 } as const

export interface Accepting {
  readonly version: number
  /** Of the words that the page showed. */
  readonly hash: string
  readonly name: string
  readonly agreed: boolean
}

function readName(raw: string): string {
  const name = cleanText(raw)
  const length = lengthOf(name)
  const { shortest, longest } = nameLimits
  if (length < shortest) throw new Failure('offer_name_missing')
  if (length > longest) throw new Failure('answer_too_long', { longest })
  return name
}

/**
 * The customer's yes to an offer, by the key of the pile's link. The same yes twice is one. `tell` is called in the
 * transaction that keeps it. Throws
 * `not_found`, `offer_name_missing`, `answer_too_long`, `offer_not_ticked`, `offer_expired`, or
 * `offer_superseded` where it holds no more or its page showed other words.
 */
export async function acceptOffer(
  store: Store,
  clock: Clock,
  key: string,
  { version, hash, name: typed, agreed }: Accepting,
  tell: (db: Db, pile: PileRow, offer: OfferRow, at: number) => Promise<unknown> = async () => {},
): Promise<void> {
  const { id } = await pileOfKey(store.db, key, clock)
  await store.transaction(async (trx) => {
    const pile = await lockPile(trx, id)
    const now = clock()
    const offer = (await offersOf(trx, id, now)).find(({ row }) => row.version === version)
    if (!pile || !offer) throw new Failure('not_found')
    if (offer.state === 'accepted') return
    if (offer.state === 'expired') throw new Failure('offer_expired')
    const holds = offer.state === 'sent' && offer.hash === hash && pile.status === 'decided'
    if (!holds) throw new Failure('offer_superseded')
    const name = readName(typed)
    if (!agreed) throw new Failure('offer_not_ticked')
    await trx
      .updateTable('offer')
      .set({ ended_at: now })
      .where('pile_id', '=', id)
      .where('version', '!=', version)
      .where('ended_at', 'is', null)
      .execute()
    await trx
      .updateTable('offer')
      .set({ accepted_at: now, accepted_name: name, accepted_words: hash })
      .where('pile_id', '=', id)
      .where('version', '=', version)
      .execute()
    await refreshWaiting(trx, id)
    await tell(trx, pile, offer.row, now)
  })
}
