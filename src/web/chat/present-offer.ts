import type { Failure, FailureCode } from '../../base/failures.ts'
import { formatMoney } from '../../base/money.ts'
import type { Offer } from '../../intake/offers.ts'
import type { Shop } from '../../intake/shop.ts'
import { dayIn, type OfferPaper } from '../../papers/offer-paper.ts'
import type { PaymentRow, PileRow } from '../../store/schema.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { paths } from './paths.ts'
import type { AcceptForm, OfferPage, ReceiptPage } from './view-status.ts'

/** A yes that was refused, and what had been sent. */
export interface RefusedYes {
  readonly failure: Failure
  readonly name: string
  readonly ticked: boolean
}

const ofName: readonly FailureCode[] = ['offer_name_missing', 'answer_too_long']

function refusalsOf(refused: RefusedYes | null, language: Language): AcceptForm['refusals'] {
  if (!refused) return { name: null, tick: null, other: null }
  const { failure } = refused
  const sentence = failureSentence(failure, language)
  return {
    name: ofName.includes(failure.code) ? sentence : null,
    tick: failure.code === 'offer_not_ticked' ? sentence : null,
    other: ofName.includes(failure.code) || failure.code === 'offer_not_ticked' ? null : sentence,
  }
}

export interface OfferShown {
  readonly key: string
  readonly language: Language
  readonly pile: PileRow
  /** The newest first; the one that is shown is among them. */
  readonly offers: readonly Offer<OfferPaper>[]
  readonly refused: RefusedYes | null
}

export function offerPage(offer: Offer<OfferPaper>, shown: OfferShown): OfferPage {
  const { key, language, pile, offers, refused } = shown
  const { say, locale } = language
  const { row, state, words, hash } = offer
  const standing = say(`offer.standing.${state}`, {
    until: dayIn(row.expires_at - 1, locale),
    accepted: row.accepted_at === null ? '' : dayIn(row.accepted_at, locale),
    name: row.accepted_name ?? '',
  })
  const [newest] = offers
  const isOpen = state === 'sent' && pile.status === 'decided'
  const refusals = refusalsOf(refused, language)
  return {
    page: 'offer',
    paper: words[language.code]!,
    standing: { state, sentence: isOpen ? standing : (refusals.other ?? standing) },
    accept: isOpen
      ? {
          postTo: paths.acceptOffer(key, row.version),
          hidden: { hash },
          name: refused?.name ?? '',
          ticked: refused?.ticked ?? false,
          refusals,
        }
      : null,
    ways: [
      ...(newest && newest.state === 'sent' && newest.row.version !== row.version
        ? [{ label: say('offer.newer'), href: paths.offer(key, newest.row.version) }]
        : []),
      {
        label: say(state === 'expired' ? 'offer.ask_again' : 'offer.ask'),
        href: paths.messages(key),
      },
      { label: say('offer.back'), href: paths.pile(key) },
    ],
  }
}

export interface ReceiptShown {
  readonly key: string
  readonly language: Language
  readonly shop: Pick<Shop, 'name' | 'address' | 'email'>
  readonly pile: Pick<PileRow, 'number'>
  /** Every payment of the pile, in order. */
  readonly payments: readonly PaymentRow[]
}

/** A receipt of one of a pile's payments. */
export function receiptPage(payment: PaymentRow, shown: ReceiptShown): ReceiptPage {
  const { key, language, shop, pile, payments } = shown
  const { say, locale } = language
  const money = (minor: number) => formatMoney({ minor, currency: payment.currency }, locale)
  const row = (name: string, text: string) => ({ label: say(`receipt.${name}`), text })
  const until = payments.filter(({ receipt }) => receipt <= payment.receipt)
  const received = until.reduce((sum, { minor }) => sum + minor, 0)
  const mended = payments.find(({ undoes }) => undoes === payment.id)
  const wrong = payments.find(({ id }) => id === payment.undoes)
  return {
    page: 'receipt',
    shop: shop.address.length > 0 ? shop.address : [shop.name],
    title: say('receipt.number', { number: String(payment.receipt) }),
    rows: [
      row('day', dayIn(payment.at, locale)),
      row('pile', String(pile.number)),
      row('kind', say(`receipt.kinds.${payment.kind}`)),
      row('amount', money(payment.minor)),
      row('how', payment.how),
      row('received', money(received)),
    ],
    note: mended
      ? say('receipt.mended', { number: String(mended.receipt) })
      : wrong
        ? say('receipt.mends', { number: String(wrong.receipt) })
        : null,
    backHref: paths.pile(key),
  }
}
