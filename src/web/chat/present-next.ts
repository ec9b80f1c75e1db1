import { formatMoney } from '../../base/money.ts'
import { promiseOf } from '../../intake/offers.ts'
import { accountOf } from '../../intake/payments.ts'
import { dayIn } from '../../papers/offer-paper.ts'
import { paths } from './paths.ts'
import type { StatusReader } from './present-status.ts'
import type { Standing } from './status-load.ts'
import type { StatusNext } from './view-status.ts'

const nexts = [
  'withdrawn',
  'answer',
  'offer',
  'expired',
  'declined',
  'held',
  'changed',
  'deposit',
  'post',
  'posted',
  'arrived',
  'laid_asked',
  'laid_change',
  'laid_yes',
  'laid_anew',
  'balance',
  'done',
  'decided',
  'confirmed',
] as const
type Next = (typeof nexts)[number]

/** What the customer is asked for; in all else it is our turn. */
const asking: readonly Next[] = [
  'answer',
  'offer',
  'expired',
  'deposit',
  'post',
  'laid_asked',
  'balance',
]

function whichOf({ row, verdict, offers, milestones, payments, laidOut }: Standing): Next {
  if (row.status === 'withdrawn') return 'withdrawn'
  const [newest] = offers
  if (newest?.state === 'sent') return 'offer'
  const promise = promiseOf(offers)
  const account = accountOf(promise, payments, '')
  if (milestones.done !== null) return account.dueMinor > 0 ? 'balance' : 'done'
  if (laidOut.state !== null) return `laid_${laidOut.state}`
  if (milestones.arrived !== null) return 'arrived'
  if (milestones.posted !== null) return 'posted'
  if (verdict?.verdict === 'decline' && row.status === 'decided') return 'declined'
  if (newest?.state === 'expired') return 'expired'
  if (promise?.state === 'superseded') return 'changed'
  if (verdict?.verdict === 'hold' && row.status === 'confirmed') return 'held'
  if (promise) return account.depositDueMinor > 0 ? 'deposit' : 'post'
  return row.status === 'decided' ? 'decided' : 'confirmed'
}

/** The one thing that asks for attention now. */
export function nextOf(standing: Standing, { key, language, asked }: StatusReader): StatusNext {
  const { say, locale } = language
  const first = whichOf(standing)
  // Nobody is told to sit back while a question of ours is open.
  const which = asked && !asking.includes(first) && first !== 'withdrawn' ? 'answer' : first
  const newest = standing.offers[0]
  const promise = promiseOf(standing.offers)
  const account = accountOf(promise, standing.payments, '')
  const money = (minor: number) =>
    promise ? formatMoney({ minor, currency: promise.row.currency }, locale) : ''
  const gaps = {
    day: newest ? dayIn(newest.row.expires_at - 1, locale) : '',
    deposit: money(account.depositDueMinor),
    balance: money(account.dueMinor),
  }
  const hrefs: Partial<Record<Next, string>> = {
    answer: `${paths.pile(key)}#messages`,
    post: `${paths.pile(key)}#pack-title`,
    ...(newest && { offer: paths.offer(key, newest.row.version) }),
  }
  const href = which.startsWith('laid_') ? paths.laidOut(key) : (hrefs[which] ?? null)
  return {
    title: say(`status.next.${which}.title`, gaps),
    text: say(`status.next.${which}.text`, gaps),
    link: href === null ? null : { label: say(`status.next.${which}.go`), href },
    asks: asking.includes(which),
  }
}
