import type { Facts } from '../garment/facts.ts'
import { flatOf } from '../garment/garment-sizes.ts'
import { flatMeasures, type GarmentSize } from '../garment/panels.ts'
import { rateFigures } from './rate-figures.ts'
import type { Rates } from './rates.ts'

/** What a garment weighs in the post, grams: its kind's weight in a grown-up's L, by the area of its size. */
export interface PostWeight {
  readonly grams: number
  readonly largeG: number
  /** Its flat area over that of an L; null where only the kind's own weight is known. */
  readonly share: number | null
}

export function postWeight(
  kind: Facts['kind'],
  size: GarmentSize,
  { weights_g }: Pick<Rates, 'weights_g'>,
): PostWeight {
  const large = flatOf(kind, 'L')
  const flat = flatMeasures(kind, size)
  const largeG = weights_g[kind]
  if (!large || !flat) return { grams: largeG, largeG, share: null }
  const share = (flat.widthIn * flat.lengthIn) / (large.widthIn * large.lengthIn)
  return { grams: Math.ceil(largeG * share), largeG, share }
}

/** The weight with the figure it follows from. */
export interface WeightWhy extends PostWeight {
  readonly figure: string
  readonly source: string
}

export function weightWhy(kind: Facts['kind'], size: GarmentSize, rates: Rates): WeightWhy {
  const name = `rates from ${rates.from}/weight/${kind}`
  const { figure, source } = rateFigures(rates).find((one) => one.figure === name)!
  return { ...postWeight(kind, size, rates), figure, source }
}
