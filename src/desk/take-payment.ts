import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { formatMoney, readMoney } from '../base/money.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText } from '../flow/text.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { offersOf, promiseOf } from '../intake/offers.ts'
import { accountOf, paymentsOf } from '../intake/payments.ts'
import type { Store } from '../store/open.ts'
import { lockPile, nextNumber } from '../store/rows.ts'
import type { Db, PaymentRow, PileRow } from '../store/schema.ts'
import { queueMail } from './mail/queue-mail.ts'

export const takenKinds = ['deposit', 'balance', 'refund'] as const
export type TakenKind = (typeof takenKinds)[number]

/** Characters of how money came. */
export const howLimits = { shortest: 2, longest: 200 } as const

export interface Taking {
  readonly kind: TakenKind
  /** As it was typed. */
  readonly amount: string
  readonly how: string
  /** The account's id. */
  readonly who: string
  readonly idem: string
}

const tens = 10
/** Digits of a card number, from the shortest to the longest (ISO/IEC 7812-1: 19 at most; 13 from memory, unverified). */
const cardNumber = /(?:\d[ -]?){13,19}/g

/** The check digit of ISO/IEC 7812-1, annex B: every second digit from the right doubled, its digits added. */
function isCardNumber(digits: string): boolean {
  const sum = [...digits].reverse().reduce((total, sign, i) => {
    const digit = Number(sign) * (i % 2 === 0 ? 1 : 2)
    return total + Math.floor(digit / tens) + (digit % tens)
  }, 0)
  return sum % tens === 0
}

/** Throws `how_missing`, `answer_too_long`, or `card_number` where a card's number was typed. */
function readHow(raw: string): string {
  const how = cleanText(raw)
  const { shortest, longest } = howLimits
  const length = lengthOf(how)
  if (length < shortest) throw new Failure('how_missing')
  if (length > longest) throw new Failure('answer_too_long', { longest })
  const numbers = (how.match(cardNumber) ?? []).map((found) => found.replaceAll(/\D/g, ''))
  if (numbers.some(isCardNumber)) throw new Failure('card_number')
  return how
}

/** Runs `work` on the locked pile, unless this form was sent before. */
const once = (
  store: Store,
  pileId: string,
  idem: string,
  work: (db: Db, pile: PileRow, payments: readonly PaymentRow[]) => Promise<void>,
): Promise<void> =>
  store.transaction(async (trx) => {
    const row = await lockPile(trx, pileId)
    if (!row || row.confirmed_at === null) throw new Failure('not_found')
    const payments = await paymentsOf(trx, pileId)
    if (payments.some((one) => one.idem === idem)) return
    await work(trx, row, payments)
  })

/**
 * Writes down money that came in or went back: never a card, which is somebody else's to handle. The
 * receipt's number is the shop's next, and the customer is mailed that it is there. Throws `not_money`, `too_much_money`, `how_missing`,
 * `answer_too_long`, `card_number`, `nothing_agreed` without an accepted offer, `payment_too_large` {}
 * beyond what is due, or `refund_too_large` beyond what came in.
 */
export async function takePayment(
  store: Store,
  clock: Clock,
  knowledge: Knowledge,
  pileId: string,
  taking: Taking,
): Promise<void> {
  await once(store, pileId, taking.idem, async (trx, pile, payments) => {
    const promise = promiseOf(await offersOf(trx, pileId, clock()))
    const account = accountOf(promise, payments, payments[0]?.currency ?? knowledge.shop.currency)
    const amount = readMoney(taking.amount, account.currency)
    if (amount <= 0) throw new Failure('amount_missing')
    const how = readHow(taking.how)
    if (taking.kind === 'refund') {
      if (amount > account.receivedMinor) throw new Failure('refund_too_large')
    } else {
      if (!promise) throw new Failure('nothing_agreed')
      if (amount > account.dueMinor) throw new Failure('payment_too_large')
    }
    await insert(trx, clock, knowledge, pile, {
      kind: taking.kind,
      minor: taking.kind === 'refund' ? -amount : amount,
      currency: account.currency,
      how,
      undoes: null,
      idem: taking.idem,
      who: taking.who,
    })
  })
}

/** Mends a mistake: an entry of the same amount the other way. Throws `not_found`, or `payment_undone`. */
export async function counterPayment(
  store: Store,
  clock: Clock,
  knowledge: Knowledge,
  pileId: string,
  { id, how, who, idem }: { id: string; how: string; who: string; idem: string },
): Promise<void> {
  await once(store, pileId, idem, async (trx, pile, payments) => {
    const wrong = payments.find((one) => one.id === id)
    if (!wrong || wrong.kind === 'counter') throw new Failure('not_found')
    if (payments.some(({ undoes }) => undoes === id)) throw new Failure('payment_undone')
    await insert(trx, clock, knowledge, pile, {
      kind: 'counter',
      minor: -wrong.minor,
      currency: wrong.currency,
      how: readHow(how),
      undoes: id,
      idem,
      who,
    })
  })
}

async function insert(
  db: Db,
  clock: Clock,
  knowledge: Knowledge,
  pile: PileRow,
  payment: Omit<PaymentRow, 'id' | 'pile_id' | 'receipt' | 'at'>,
): Promise<void> {
  const receipt = await nextNumber(db, 'receipt')
  const at = clock()
  await db
    .insertInto('payment')
    .values({ id: newId(), pile_id: pile.id, receipt, at, ...payment })
    .execute()
  const { locale } = knowledge.languages.get(pile.language)!
  const { kind, minor, currency } = payment
  await queueMail(db, knowledge, {
    pile,
    template: 'receipt',
    gaps: {
      number: receipt,
      kind,
      amount: formatMoney({ minor: kind === 'refund' ? -minor : minor, currency }, locale),
    },
    once: `receipt ${receipt}`,
    at,
  })
}
