import { decimalsOf, formatMoney, plainMoney } from '../../base/money.ts'
import type { Offering } from '../../desk/agreement.ts'
import type { Proposal } from '../../desk/make-offer.ts'
import { offerLimits, type TypedOffer } from '../../desk/offer-draft.ts'
import type { Review } from '../../desk/review.ts'
import type { AgreedDiff } from '../../intake/agreed-diff.ts'
import type { Knowledge } from '../../intake/knowledge.ts'
import type { Offer } from '../../intake/offers.ts'
import type { OfferPaper } from '../../papers/offer-paper.ts'
import type { Rates } from '../../quilt/rates.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import { agreeCard, onlyElsewhere } from './present-agree.ts'
import type { DeskOfferPage, TypedAmendment } from './view-agree.ts'

export interface DeskOffer {
  readonly review: Review
  readonly offering: Offering | null
  /** The whole pile is accepted: it can be offered. */
  readonly open: boolean
  readonly offers: readonly Offer[]
  readonly changed: AgreedDiff | null
  /** The newest kept version. */
  readonly version: number
  readonly csrf: string
  readonly idem: string
  /** Null: nothing was typed yet. */
  readonly typed: TypedOffer | null
  /** Null: it is not shown yet, or cannot be. */
  readonly proposal: Proposal | null
  readonly words: Readonly<Record<string, OfferPaper>>
  readonly refusal: string | null
}

const noAmendment: TypedAmendment = { label: '', amount: '', reason: '' }
/** So many rows are empty at first, and after those that are filled. */
const spare = 2

const isoDay = (at: number | null): string =>
  at === null ? '' : new Date(at).toISOString().slice(0, 'yyyy-mm-dd'.length)

function rowsOf(typed: TypedOffer | null): TypedAmendment[] {
  const filled = (typed?.amendments ?? []).filter((one) =>
    [one.label, one.amount, one.reason].some((part) => part.trim() !== ''),
  )
  const empty = Math.max(0, Math.min(spare, offerLimits.amendments - filled.length))
  return [...filled, ...Array.from({ length: empty }, () => noAmendment)]
}

/** What the shop asks for where the field stays empty. */
function usualWords(
  { deposit_amount, deposit_percent }: Rates,
  { currency, language: { say, locale } }: { currency: string; language: Language },
): string {
  if (deposit_amount === null) return say('desk.offer.deposit_part', { percent: deposit_percent })
  return formatMoney({ minor: deposit_amount, currency }, locale)
}

function formOf(
  offer: DeskOffer,
  { estimate, room }: Offering,
  language: Language,
): DeskOfferPage['form'] {
  const { say } = language
  const { review, typed, proposal } = offer
  const { currency } = estimate
  return {
    postTo: deskPaths.offer(review.row.number),
    hidden: {
      csrf: offer.csrf,
      idem: offer.idem,
      version: String(offer.version),
      seen: String(review.seen),
      shown: proposal?.shown ?? '',
    },
    currency,
    rows: rowsOf(typed),
    deposit: typed?.deposit ?? '',
    depositHint: say('desk.offer.deposit_help', {
      usual: usualWords(review.pile.rates, { currency, language }),
      example: plainMoney({ minor: 250 * 10 ** decimalsOf(currency), currency }),
    }),
    validDays: typed?.validDays ?? String(review.pile.rates.valid_days),
    promised: typed?.promised ?? isoDay(room.earliest),
    overReason: typed?.overReason ?? '',
    note: typed?.note ?? '',
  }
}

export function deskOfferPage(
  offer: DeskOffer,
  { languages }: Knowledge,
  language: Language,
): DeskOfferPage {
  const { review, offering, open, offers, changed, proposal, words } = offer
  const { say } = language
  const { number } = review.row
  const canBe = open && offering !== null
  return {
    page: 'offer',
    title: say('desk.offer.title', { number }),
    card: onlyElsewhere(
      agreeCard({ number, needBy: review.pile.needBy, offering, offers, changed }, language),
      deskPaths.offer(number),
    ),
    form: canBe ? formOf(offer, offering, language) : null,
    closed: canBe ? null : say('failures.pile_not_accepted'),
    refusal: offer.refusal,
    preview: Object.entries(words).map(([lang, paper]) => ({
      name: languages.get(lang)!.say('desk.own_name'),
      lang,
      paper,
    })),
    canSend: canBe && proposal !== null,
    back: { label: say('desk.pile', { number }), href: deskPaths.pile(number) },
  }
}
