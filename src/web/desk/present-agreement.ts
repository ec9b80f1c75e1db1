import { formatMoney } from '../../base/money.ts'
import type { Offering } from '../../desk/agreement.ts'
import type { AgreedDiff } from '../../intake/agreed-diff.ts'
import type { Leaving } from '../../intake/leaving.ts'
import type { Milestones } from '../../intake/milestones.ts'
import { type Offer, promiseOf } from '../../intake/offers.ts'
import { accountOf } from '../../intake/payments.ts'
import type { OfferPaper } from '../../papers/offer-paper.ts'
import type { PaymentRow, PileRow } from '../../store/schema.ts'
import { type MilestoneStep, milestoneSteps } from '../../store/schema-agreement.ts'
import type { Language } from '../../words/words.ts'
import { custodyPaths } from './custody-paths.ts'
import { deskPaths } from './paths.ts'
import { agreeCard, offerSentence, onlyElsewhere } from './present-agree.ts'
import type { AgreementPage, DeskPayment } from './view-agree.ts'
import { momentWords } from './when.ts'

export interface DeskAgreement {
  readonly row: PileRow
  readonly offers: readonly Offer<OfferPaper>[]
  readonly payments: readonly PaymentRow[]
  /** Names of accounts by their ids. */
  readonly names: ReadonlyMap<string, string>
  readonly milestones: Milestones
  /** Steps that somebody marked by hand. */
  readonly marked: ReadonlySet<MilestoneStep>
  readonly leavings: readonly Leaving[]
  readonly changed: AgreedDiff | null
  readonly offering: Offering | null
  readonly currency: string
  readonly csrf: string
  readonly newIdem: () => string
  /** A payment that was refused; null: none. */
  readonly typed: {
    readonly kind: string
    readonly amount: string
    readonly how: string
  } | null
  readonly refusal: string | null
}

function paymentOf(
  payment: PaymentRow,
  { row, payments, names, csrf, newIdem }: DeskAgreement,
  { say, locale }: Language,
): DeskPayment {
  const isMended = payments.some(({ undoes }) => undoes === payment.id)
  return {
    receipt: String(payment.receipt),
    what: say(`receipt.kinds.${payment.kind}`),
    amount: formatMoney(payment, locale),
    how: payment.how,
    by: say('desk.by', {
      name: names.get(payment.who) ?? '',
      at: momentWords(payment.at, locale),
    }),
    counter:
      payment.kind === 'counter' || isMended
        ? null
        : {
            postTo: deskPaths.counter(row.number, payment.id),
            hidden: { csrf, idem: newIdem() },
          },
  }
}

function sumsOf({ offers, payments, currency }: DeskAgreement, { say, locale }: Language) {
  const promise = promiseOf(offers)
  if (!promise && payments.length === 0) return []
  const account = accountOf(promise, payments, currency)
  const row = (name: string, minor: number) => ({
    label: say(`status.money.${name}`),
    amount: formatMoney({ minor, currency: account.currency }, locale),
  })
  return [
    row('total', account.totalMinor),
    row('deposit', account.depositMinor),
    row('received', account.receivedMinor),
    row('deposit_due', account.depositDueMinor),
    row('balance', account.dueMinor),
    ...(account.overMinor > 0 ? [row('over', account.overMinor)] : []),
  ]
}

export function agreementPage(agreed: DeskAgreement, language: Language): AgreementPage {
  const { row, offers, milestones, marked, leavings, csrf, newIdem, typed } = agreed
  const { say, locale } = language
  const { number } = row
  return {
    page: 'agreement',
    title: say('desk.agreement.title', { number }),
    card: onlyElsewhere(
      agreeCard({ ...agreed, number, needBy: null }, language),
      deskPaths.agreement(number),
    ),
    offers: offers.map((offer) => ({
      version: offer.row.version,
      sentence: offerSentence(offer, language),
      paper: offer.words[language.code]!,
      over:
        offer.row.over_reason === ''
          ? null
          : say('desk.agreement.over', { reason: offer.row.over_reason }),
    })),
    sums: sumsOf(agreed, language),
    payments: agreed.payments.map((payment) => paymentOf(payment, agreed, language)),
    form: {
      postTo: deskPaths.payments(number),
      hidden: { csrf, idem: newIdem() },
      currency: offers[0]?.row.currency ?? agreed.currency,
      amount: typed?.amount ?? '',
      how: typed?.how ?? '',
      kind: typed?.kind ?? 'deposit',
    },
    refusal: agreed.refusal,
    steps: milestoneSteps.map((step) => {
      const at = milestones[step]
      return {
        step,
        label: say(`status.steps.${step}`),
        reached: at === null ? null : momentWords(at, locale),
        form:
          at === null || marked.has(step)
            ? {
                postTo: deskPaths.milestones(number),
                hidden: { csrf, step, act: at === null ? 'reach' : 'unreach' },
              }
            : null,
      }
    }),
    custody: { label: say('custody.pile.link'), href: custodyPaths.pile(number) },
    left: leavings.map(({ kind, reason, at }) => {
      const told = say(`desk.agreement.left.${kind}`, { at: momentWords(at, locale) })
      return reason === '' ? told : `${told} ${reason}`
    }),
    back: { label: say('desk.pile', { number }), href: deskPaths.pile(number) },
  }
}
