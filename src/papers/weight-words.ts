import { numberFormat } from '../base/formats.ts'

const gramsPerPound = 453.59237

/** A parcel's weight in a reader's language, to a tenth: what a scale at home can show. */
export function weightWords(grams: number, language: string): { kg: string; lb: string } {
  const tenths = numberFormat(language, { maximumFractionDigits: 1 })
  return { kg: tenths.format(grams / 1000), lb: tenths.format(grams / gramsPerPound) }
}
