import { formatMoney } from '../base/money.ts'
import type { FinishedCare } from '../garment/finished-care.ts'
import type { OfferSums } from '../quilt/offer-sums.ts'
import type { Language } from '../words/words.ts'
import { careLines } from './printed-care.ts'

/** An offer as the customer reads it, money and days written out. Kept word for word once it is sent. */
export interface OfferPaper {
  readonly title: string
  /** "Pile 12, written on May 3, 2026." */
  readonly about: string
  readonly quilt: string
  readonly lines: readonly {
    readonly label: string
    readonly amount: string
    readonly reason: string | null
  }[]
  readonly sums: readonly { readonly label: string; readonly amount: string }[]
  readonly terms: readonly { readonly label: string; readonly text: string }[]
  /** How the finished quilt is washed and pressed; not in offers that were kept before it was told. */
  readonly care?: { readonly title: string; readonly lines: readonly string[] }
  /** What staff write to the customer; empty: nothing. */
  readonly note: string
  /** What stands over the policies; not in offers that were kept before it did. */
  readonly rely?: string
  readonly policies: readonly string[]
}

export interface OfferOf {
  readonly pile: number
  /** "throw, plain squares", in the language of the paper. */
  readonly quilt: string
  readonly sums: OfferSums
  readonly taxName: string
  readonly sentAt: number
  readonly expiresAt: number
  /** The day on which the quilt leaves the workshop at the latest. */
  readonly promisedAt: number
  readonly care: FinishedCare
  readonly note: string
  readonly policies: readonly string[]
}

export const dayIn = (at: number, locale: string): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(at)

export function offerPaper(offer: OfferOf, { say, locale }: Language): OfferPaper {
  const { sums } = offer
  const money = (minor: number) => formatMoney({ minor, currency: sums.currency }, locale)
  const percent = (value: number) =>
    new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 3 }).format(
      value / 100,
    )
  return {
    title: say('offer.title'),
    about: say('offer.about', { pile: String(offer.pile), day: dayIn(offer.sentAt, locale) }),
    quilt: offer.quilt,
    lines: [
      ...sums.lines.map(({ code, minor }) => ({
        label: say(`trade.estimate.lines.${code}`),
        amount: money(minor),
        reason: null,
      })),
      ...sums.amendments.map(({ label, minor, reason }) => ({
        label,
        amount: money(minor),
        reason,
      })),
    ],
    sums: [
      ...(sums.tax
        ? [
            { label: say('offer.subtotal'), amount: money(sums.subtotalMinor) },
            {
              label: say('offer.tax', { name: offer.taxName, percent: percent(sums.tax.percent) }),
              amount: money(sums.tax.minor),
            },
          ]
        : []),
      { label: say('offer.total'), amount: money(sums.totalMinor) },
      { label: say('offer.deposit'), amount: money(sums.depositMinor) },
      { label: say('offer.balance'), amount: money(sums.balanceMinor) },
    ],
    terms: [
      { label: say('offer.promised'), text: dayIn(offer.promisedAt, locale) },
      { label: say('offer.valid'), text: dayIn(offer.expiresAt - 1, locale) },
    ],
    care: { title: say('offer.care'), lines: careLines(offer.care, say) },
    note: offer.note,
    rely: say('offer.policies'),
    policies: offer.policies,
  }
}
