/** An exact amount: `minor` is a whole number of the currency's smallest unit (cents). */
export interface Money {
  readonly minor: number
  readonly currency: string
}

/** `quantity` times a price in minor units, half rounded up; quantity may be a fraction. */
export const times = (minor: number, quantity: number): number => Math.round(minor * quantity)

/** Money in a reader's language, for example $412.00. */
export function formatMoney({ minor, currency }: Money, language: string): string {
  const format = new Intl.NumberFormat(language, { style: 'currency', currency })
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2
  return format.format(minor / 10 ** digits)
}
