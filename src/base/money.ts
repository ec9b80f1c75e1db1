import { Failure } from './failures.ts'
import { numberFormat } from './formats.ts'

/** An exact amount: `minor` is a whole number of the currency's smallest unit (cents). */
export interface Money {
  readonly minor: number
  readonly currency: string
}

/** `quantity` times a price in minor units, half rounded up; quantity may be a fraction. */
export const times = (minor: number, quantity: number): number => Math.round(minor * quantity)

/** How many decimals a currency is written with: 2 for dollars, 0 for yen, 3 for Kuwaiti dinars. */
export const decimalsOf = (currency: string): number =>
  numberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2

/** Money in a reader's language, for example $412.00. */
export function formatMoney({ minor, currency }: Money, language: string): string {
  const format = numberFormat(language, { style: 'currency', currency })
  return format.format(minor / 10 ** decimalsOf(currency))
}

/** Money as it is typed into a field, with a point and no sign of the currency: "412.00". */
export function plainMoney({ minor, currency }: Money): string {
  const decimals = decimalsOf(currency)
  const digits = String(Math.abs(minor)).padStart(decimals + 1, '0')
  const whole = digits.slice(0, digits.length - decimals)
  const sign = minor < 0 ? '-' : ''
  return decimals === 0 ? sign + whole : `${sign}${whole}.${digits.slice(-decimals)}`
}

/** No amount that is typed is larger, in whole units of the currency. */
export const mostMoney = 1_000_000

/**
 * An amount as a person types it: digits, with a point or a comma before the decimals, a minus where
 * it is taken off. Nothing is rounded. Throws `not_money` {decimals} for anything else, also for more
 * decimals than the currency has, or `too_much_money` {most}.
 */
export function readMoney(typed: string, currency: string): number {
  const decimals = decimalsOf(currency)
  const found = /^([-−]?)\s*(\d{1,12})(?:[.,](\d+))?$/.exec(typed.trim())
  const after = found?.[3] ?? ''
  if (!found || after.length > decimals) throw new Failure('not_money', { decimals })
  const minor = Number(found[2]! + after.padEnd(decimals, '0'))
  if (minor > mostMoney * 10 ** decimals) throw new Failure('too_much_money', { most: mostMoney })
  return found[1] && minor > 0 ? -minor : minor
}

const thousandths = 1000n
const hundred = 100n

/**
 * So many percent of an amount that is not below zero, rounded once to the minor unit, half up. Percent
 * may have three decimals. In whole numbers, so that no amount is off by a cent.
 */
export function percentOf(minor: number, percent: number): number {
  const scaled = BigInt(minor) * BigInt(Math.round(percent * Number(thousandths)))
  const whole = thousandths * hundred
  return Number((scaled * 2n + whole) / (whole * 2n))
}
