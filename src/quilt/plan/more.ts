import { capacityOf } from './capacity.ts'
import type { Pile } from './instance.ts'
import type { Plan } from './plan.ts'

/** Garments, about. */
export interface More {
  readonly low: number
  readonly high: number
}

const garmentsFor = (pieces: number, each: number): number => Math.ceil(pieces / each)

/**
 * About how many more garments would give what the plan leaves open: fewest if they give as much as the
 * most generous one of the pile, most if they give what an ordinary one does. Null: none of the pile gives
 * anything to go by. Panels need their patterns.
 */
export function moreLike(pile: Pile, { buy }: Plan): More | null {
  const open = buy
    .filter(({ role }) => pile.roles[role]!.garments)
    .reduce((sum, { count }) => sum + count, 0)
  if (open === 0) return { low: 0, high: 0 }
  const gives = pile.garments
    .map((garment) => capacityOf(pile, garment).total)
    .filter((total) => total > 0)
    .sort((a, b) => a - b)
  if (gives.length === 0) return null
  return {
    low: garmentsFor(open, gives.at(-1)!),
    high: garmentsFor(open, gives[Math.floor((gives.length - 1) / 2)]!),
  }
}
