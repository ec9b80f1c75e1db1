import { formatMoney } from '../../base/money.ts'
import { hasLeftHome } from '../../intake/milestones.ts'
import { promiseOf } from '../../intake/offers.ts'
import { accountOf } from '../../intake/payments.ts'
import { differenceWords } from '../../papers/diff-words.ts'
import { dayIn } from '../../papers/offer-paper.ts'
import type { Language } from '../../words/words.ts'
import { paths } from './paths.ts'
import { nextOf } from './present-next.ts'
import type { Standing } from './status-load.ts'
import type { StatusBox, StatusMoney, StatusShown, StatusStage, StatusStep } from './view-status.ts'

/** Who reads, and by which key. */
export interface StatusReader {
  readonly key: string
  readonly language: Language
  /** What a garment is called, by its number. */
  readonly nameOf: (n: number) => string
  readonly currency: string
  /** Something was asked and is not answered. */
  readonly asked: boolean
  /** The day it is needed, ms UTC; null: no hurry. */
  readonly needBy: number | null
}

function stepsOf(standing: Standing, { say, locale }: Language): StatusStep[] {
  const { row, verdict, offers, milestones, laidOut } = standing
  const promise = promiseOf(offers)
  const first = offers.at(-1)
  const looked = verdict?.verdict === 'accept' ? verdict.at : (first?.row.sent_at ?? null)
  const reached: readonly (readonly [id: string, at: number | null])[] = [
    ['sent', row.confirmed_at],
    ['looked', looked],
    ['offered', offers[0]?.row.sent_at ?? null],
    ['agreed', promise?.row.accepted_at ?? null],
    ['posted', milestones.posted],
    ['arrived', milestones.arrived],
    ['laid', laidOut.state === 'yes' ? laidOut.since : null],
    ['done', milestones.done],
  ]
  // A later step that was noted says that those before it are past, noted or not.
  const last = reached.findLastIndex(([, at]) => at !== null)
  return reached.map(([id, at], i) => ({
    id,
    label: say(`status.steps.${id}`),
    state: i <= last ? 'done' : i === last + 1 && row.status !== 'withdrawn' ? 'now' : 'ahead',
    day: at === null ? null : dayIn(at, locale),
  }))
}

function moneyOf(standing: Standing, reader: StatusReader): StatusMoney | null {
  const { say, locale } = reader.language
  const promise = promiseOf(standing.offers)
  if (!promise && standing.payments.length === 0) return null
  const account = accountOf(
    promise,
    standing.payments,
    standing.payments[0]?.currency ?? reader.currency,
  )
  const { currency } = account
  const money = (minor: number) => formatMoney({ minor, currency }, locale)
  const row = (label: string, minor: number) => ({
    label: say(`status.money.${label}`),
    amount: money(minor),
  })
  return {
    rows: [
      ...(promise ? [row('total', account.totalMinor), row('deposit', account.depositMinor)] : []),
      row('received', account.receivedMinor),
      ...(account.depositDueMinor > 0 ? [row('deposit_due', account.depositDueMinor)] : []),
      ...(promise ? [row('balance', account.dueMinor)] : []),
      ...(account.overMinor > 0 ? [row('over', account.overMinor)] : []),
    ],
    receipts: standing.payments.map(({ receipt, minor }) => ({
      label: say('status.receipt', { number: String(receipt), amount: money(minor) }),
      href: paths.receipt(reader.key, receipt),
    })),
  }
}

function daysOf(standing: Standing, { needBy, language }: StatusReader): StatusShown['days'] {
  const { say, locale } = language
  const promise = promiseOf(standing.offers)
  return [
    ...(needBy === null ? [] : [{ label: say('status.need_by'), text: dayIn(needBy, locale) }]),
    ...(promise
      ? [{ label: say('status.promised'), text: dayIn(promise.row.promised_at, locale) }]
      : []),
  ]
}

function leaveOf(standing: Standing, { key, language }: StatusReader): StatusShown['leave'] {
  const { say } = language
  if (standing.row.status === 'withdrawn') return null
  const withdraw = { label: say('status.withdraw'), href: paths.withdraw(key) }
  const isLate = hasLeftHome(standing.milestones)
  return {
    text: say(isLate ? 'status.leave_late' : 'status.leave'),
    links: isLate
      ? [withdraw]
      : [{ label: say('status.change'), href: paths.change(key) }, withdraw],
  }
}

function stageOf({ row, milestones, offers }: Standing): StatusStage {
  if (row.status === 'withdrawn') return 'withdrawn'
  if (milestones.done !== null) return 'done'
  if (milestones.arrived !== null) return 'with-us'
  if (milestones.posted !== null) return 'posted'
  return promiseOf(offers) ? 'packing' : 'looking'
}

const checkedAs = ['matched', 'different', 'missing', 'extra'] as const

function boxOf({ box }: Standing, { nameOf, language }: StatusReader): StatusBox | null {
  if (box.length === 0) return null
  const { say } = language
  return {
    title: say('status.box.title'),
    lines: checkedAs.flatMap((result) => {
      const found = box.filter((one) => one.result === result)
      if (found.length === 0) return []
      const names = found.map(({ subject, note }) =>
        result === 'extra' ? note || say('status.box.unnamed') : nameOf(Number(subject)),
      )
      return [say(`status.box.${result}`, { count: found.length, names: names.join(', ') })]
    }),
  }
}

/** Where a confirmed pile stands, as its customer reads it. */
export function statusOf(standing: Standing, reader: StatusReader): StatusShown {
  const { language, key } = reader
  const { say, locale } = language
  return {
    stage: stageOf(standing),
    steps: stepsOf(standing, language),
    next: nextOf(standing, reader),
    days: daysOf(standing, reader),
    changed: standing.changed && {
      title: say('changed.title'),
      sentences: differenceWords(standing.changed, language),
    },
    box: boxOf(standing, reader),
    money: moneyOf(standing, reader),
    offers: standing.offers.map(({ row, state }) => ({
      label: say(`status.offer.${state}`, { day: dayIn(row.sent_at, locale) }),
      href: paths.offer(key, row.version),
    })),
    leave: leaveOf(standing, reader),
  }
}
