import { type Clock, days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { canonical, sha256 } from '../base/ids.ts'
import { lengthOf } from '../flow/sense.ts'
import type { FinishedCare } from '../garment/finished-care.ts'
import { keepVersion, newestVersion } from '../intake/agreement.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { endSent } from '../intake/offers.ts'
import type { Pile } from '../intake/pile.ts'
import { refreshWaiting } from '../intake/waiting.ts'
import { dayIn, type OfferPaper, offerPaper } from '../papers/offer-paper.ts'
import type { Estimate } from '../quilt/estimate.ts'
import { type OfferSums, offerSums, usualDeposit } from '../quilt/offer-sums.ts'
import type { Rates } from '../quilt/rates.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { PileRow } from '../store/schema.ts'
import { decisionsOf, reasonLimits, standing } from './decisions.ts'
import { queueMail } from './mail/queue-mail.ts'
import type { OfferDraft } from './offer-draft.ts'
import type { Room } from './promises.ts'

/** An offer as it would be sent. */
export interface Proposal {
  readonly draft: OfferDraft
  readonly sums: OfferSums
  readonly care: FinishedCare
  readonly minutes: number
  /** The day is promised though the benches have no room for it. */
  readonly over: boolean
  /** A hash of all that it says: a form tells with it what its page showed. */
  readonly shown: string
}

/** Throws `total_below_zero`, `deposit_too_large`, or `promise_too_early` where no reason is given. */
export function propose(
  estimate: Estimate,
  rates: Rates,
  taxPercent: number | null,
  room: Room,
  draft: OfferDraft,
  care: FinishedCare,
): Proposal {
  const { amendments, depositMinor, promisedAt, overReason, validDays, note } = draft
  const deposit = depositMinor === null ? usualDeposit(rates) : { minor: depositMinor }
  const sums = offerSums(estimate, { amendments, taxPercent, deposit })
  if (sums.subtotalMinor < 0) throw new Failure('total_below_zero')
  if (sums.depositMinor < 0 || sums.balanceMinor < 0) throw new Failure('deposit_too_large')
  const over = !room.fits(promisedAt)
  if (over && lengthOf(overReason) < reasonLimits.shortest) throw new Failure('promise_too_early')
  const shown = sha256(canonical({ sums, care, promisedAt, validDays, note, overReason }))
  return { draft, sums, care, minutes: room.minutes, over, shown }
}

/** The words of an offer in every language of the shop. */
export function offerWords(
  { languages, shop }: Knowledge,
  row: Pick<PileRow, 'number'>,
  { wish }: Pick<Pile, 'wish'>,
  { sums, care, draft }: Proposal,
  sentAt: number,
): Readonly<Record<string, OfferPaper>> {
  return Object.fromEntries(
    shop.languages.map((code) => {
      const language = languages.get(code)!
      const { say } = language
      const quilt = say('cost.quilt', {
        count: wish.quilts,
        size: say(`trade.quilts.${wish.size}`),
        layout: say(`trade.layouts.${wish.layout.id}.name`),
      })
      const offer = {
        pile: row.number,
        quilt,
        sums,
        taxName: shop.tax?.name[code] ?? '',
        sentAt,
        expiresAt: expiryOf(sentAt, draft),
        promisedAt: draft.promisedAt,
        care,
        note: draft.note,
        policies: shop.policies.map((policy) => policy[code]!),
      }
      return [code, offerPaper(offer, language)]
    }),
  )
}

/** The last moment of its last day is still in time. */
const expiryOf = (sentAt: number, { validDays }: OfferDraft): number =>
  Math.floor(sentAt / days(1)) * days(1) + days(validDays + 1)

export interface Sending {
  readonly proposal: Proposal
  readonly words: (sentAt: number) => Readonly<Record<string, OfferPaper>>
  /** The newest version, and the newest decision, that the page showed. */
  readonly seenVersion: number
  readonly seenDecision: number
  readonly idem: string
  /** The account's id. */
  readonly who: string
}

/**
 * Keeps an offer word for word, as a new version, and mails that it is there; what was sent before and not accepted holds no more.
 * The same form twice is one offer. Returns its version. Throws `not_found`, `pile_not_accepted`,
 * `decided_meanwhile`, `offered_meanwhile`.
 */
export const sendOffer = (
  store: Store,
  clock: Clock,
  knowledge: Knowledge,
  pileId: string,
  { proposal, words, seenVersion, seenDecision, idem, who }: Sending,
): Promise<number> =>
  store.transaction(async (trx) => {
    const row = await lockPile(trx, pileId)
    if (!row) throw new Failure('not_found')
    const kept = await trx
      .selectFrom('offer')
      .select('version')
      .where('pile_id', '=', pileId)
      .where('idem', '=', idem)
      .executeTakeFirst()
    if (kept) return kept.version
    const decisions = await decisionsOf(trx, pileId)
    if (!isAccepted(row, decisions)) throw new Failure('pile_not_accepted')
    if ((decisions.at(-1)?.at ?? 0) > seenDecision) throw new Failure('decided_meanwhile')
    if ((await newestVersion(trx, pileId)) !== seenVersion) throw new Failure('offered_meanwhile')

    const { draft, sums, minutes, over } = proposal
    const at = clock()
    await endSent(trx, pileId, at)
    const version = await keepVersion(trx, pileId, 'offer', { words: words(at), figures: null }, at)
    await trx
      .insertInto('offer')
      .values({
        pile_id: pileId,
        version,
        sums: JSON.stringify(sums),
        currency: sums.currency,
        total_minor: sums.totalMinor,
        deposit_minor: sums.depositMinor,
        minutes,
        promised_at: draft.promisedAt,
        expires_at: expiryOf(at, draft),
        over_reason: over ? draft.overReason : '',
        idem,
        sent_at: at,
        sent_by: who,
        accepted_at: null,
        accepted_name: null,
        accepted_words: null,
        superseded_at: null,
        ended_at: null,
      })
      .execute()
    await refreshWaiting(trx, pileId)
    await queueMail(trx, knowledge, {
      pile: row,
      template: 'offer',
      gaps: {
        until: dayIn(expiryOf(at, draft) - 1, knowledge.languages.get(row.language)!.locale),
      },
      once: `offer ${version}`,
      at,
    })
    return version
  })

/** True once staff have taken the whole pile: only then is it offered at a price. */
export const isAccepted = (
  row: Pick<PileRow, 'status'>,
  decisions: Parameters<typeof standing>[0],
): boolean => row.status === 'decided' && standing(decisions, null)?.verdict === 'accept'
