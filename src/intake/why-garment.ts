import type { Facts } from '../garment/facts.ts'
import type { GradeInput } from '../garment/input.ts'
import type { Spot } from '../garment/spots.ts'
import { type Why, why } from '../garment/why.ts'
import { type ClothWhy, clothWhy, type Named } from '../quilt/cloth-why.ts'
import { type WeightWhy, weightWhy } from '../quilt/post-weight.ts'
import { rateFigures } from '../quilt/rate-figures.ts'
import type { Rates } from '../quilt/rates.ts'
import { type HeatWhy, heatWhy } from '../textile/heat-why.ts'
import type { Knowledge } from './knowledge.ts'

/** Where the fact `heat` comes from: shares of fibres, somebody who gave the heat itself, or nobody. */
export type FibresWhy =
  | ({ readonly from: 'fibres' } & HeatWhy)
  | { readonly from: 'heat-given' | 'nothing'; readonly heat: Facts['heat'] }

/** The whole chain of a garment: rows and rules, the fibres behind the heat, the cloth, the postage. */
export interface GarmentWhy extends Why {
  readonly fibres: FibresWhy
  readonly cloth: ClothWhy
  readonly weight: WeightWhy
  /** Where the heat that each class of interfacing needs stands among the figures. */
  readonly soles: readonly ({ readonly class: string } & Named)[]
}

function fibresWhy({ facts, blocks, heatGiven }: GradeInput): FibresWhy {
  if (blocks) return { from: 'fibres', ...heatWhy(blocks, facts.iron) }
  return { from: heatGiven ? 'heat-given' : 'nothing', heat: facts.heat }
}

const solesOf = (rates: Rates): GarmentWhy['soles'] =>
  rateFigures(rates).flatMap(({ figure, source }) => {
    const [, name] = /\/interfacing\/([^/]+)\/sole$/.exec(figure) ?? []
    return name ? [{ class: name, figure, source }] : []
  })

/** `rates` are those of the day. */
export function garmentWhy(
  input: GradeInput & { readonly spots?: readonly Spot[] },
  { grading }: Pick<Knowledge, 'grading'>,
  rates: Rates,
): GarmentWhy {
  const { facts, pile, size } = input
  return {
    ...why(facts, pile, grading),
    fibres: fibresWhy(input),
    cloth: clothWhy(facts.kind, size, facts, input.spots),
    weight: weightWhy(facts.kind, size, rates),
    soles: solesOf(rates),
  }
}
