import type { Knowledge } from '../intake/knowledge.ts'
import type { Garment, Pile } from '../intake/pile.ts'
import { type GarmentWhy, garmentWhy } from '../intake/why-garment.ts'
import { ratesAt } from '../quilt/rates.ts'

/** The chain behind what a garment of the pile was graded; null while it is not. */
export function reckoningOf(
  { grading, facts, told }: Garment,
  { recipient, wish }: Pick<Pile, 'recipient' | 'wish'>,
  knowledge: Knowledge,
  day: string,
): GarmentWhy | null {
  if (!grading) return null
  const input = {
    facts,
    pile: { recipient, layout: wish.layoutChosen ? wish.layout.id : undefined },
    size: told.size,
    blocks: told.blocks.length > 0 ? told.blocks : null,
    heatGiven: false,
    spots: told.spots,
  }
  return garmentWhy(input, knowledge, ratesAt(knowledge.rates, day))
}
