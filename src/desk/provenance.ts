import { domains, type FactName, type Source } from '../garment/facts.ts'
import type { Garment } from '../intake/pile.ts'

/**
 * Where a fact of a garment comes from: a source, `label` for what was read off the care label,
 * `counted` for what we work out from others, `untold` where nobody has told.
 */
export type From = Source | 'label' | 'counted' | 'untold'

export interface SourcedFact {
  readonly fact: FactName
  readonly value: string
  readonly from: From
}

const fromLabel: readonly FactName[] = ['heat', 'iron', 'labelDoubt']

function fromOf({ facts, told }: Garment, fact: FactName): From {
  if (fact === 'yield') return 'counted'
  const same = (told.known[fact] ?? []).filter(({ value }) => value === facts[fact])
  const source = (same.findLast((known) => known.source !== 'implied') ?? same.at(-1))?.source
  if (!source) return 'untold'
  return source === 'said' && fromLabel.includes(fact) ? 'label' : source
}

/** Every fact of a garment with its value and where that comes from, in the order they are listed. */
export const sourcedFacts = (garment: Garment): SourcedFact[] =>
  (Object.keys(domains) as FactName[]).map((fact) => ({
    fact,
    value: garment.facts[fact],
    from: fromOf(garment, fact),
  }))
