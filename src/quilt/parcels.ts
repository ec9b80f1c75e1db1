import { metresPerInch } from '../base/units.ts'
import type { Rates } from './rates.ts'

/** Boxes of one kind, and what goes by post in all, boxes and contents, grams. */
export interface Parcels {
  readonly box: string
  readonly count: number
  readonly weightG: number
  readonly priceMinor: number
}

/** The price of the first step that reaches the weight; beyond the last one, of that. */
const priceOf = (grams: number, { postage }: Rates): number =>
  (postage.find(({ to_g }) => grams <= to_g) ?? postage.at(-1)!).price

/**
 * What so many grams go by post in: the smallest box that holds them, or several of the largest, all full
 * but the last. More never costs less.
 */
export function parcelsFor(grams: number, rates: Rates): Parcels {
  const bySize = rates.boxes.toSorted((a, b) => a.holds_g - b.holds_g)
  const { box, holds_g, weighs_g } = bySize.find((it) => it.holds_g >= grams) ?? bySize.at(-1)!
  const count = Math.max(1, Math.ceil(grams / holds_g))
  const full = priceOf(holds_g + weighs_g, rates)
  const last = priceOf(grams - (count - 1) * holds_g + weighs_g, rates)
  return {
    box,
    count,
    weightG: grams + count * weighs_g,
    priceMinor: (count - 1) * full + last,
  }
}

/** What square inches of cloth weigh, grams, from its grams per square metre. */
export const clothGrams = (squareIn: number, gramsPerM2: number): number =>
  squareIn * metresPerInch ** 2 * gramsPerM2
