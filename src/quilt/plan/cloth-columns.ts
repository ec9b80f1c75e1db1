import type { Pile } from './instance.ts'
import type { ProgrammeBuilder, Term } from './programme.ts'
import { type Strips, stripsFor } from './strips.ts'

/** Columns of one role's bought cloth. */
export interface ClothColumns {
  readonly role: number
  readonly strips: Strips
  readonly times: readonly number[]
  readonly steps: number
}

/** Strips of a role's cloth, as often as each is cut, and the steps that they take. */
export function clothColumns(b: ProgrammeBuilder, pile: Pile, role: number): ClothColumns {
  const strips = stripsFor(pile, role)
  const { step } = pile.cloth
  const times = strips.patterns.map(({ counts }) => {
    const needed = counts.map((count, size) =>
      count > 0 ? Math.ceil(pile.demand[size]![role]! / count) : 0,
    )
    // All of its kinds, one after another: a plan may fill strips with one kind each.
    return b.column(
      0,
      needed.reduce((sum, times) => sum + times, 0),
    )
  })
  const length = strips.patterns.map(({ height }, n): Term => [times[n]!, height])
  const longest = strips.patterns.reduce(
    (sum, { height }, n) => sum + height * b.upper[times[n]!]!,
    0,
  )
  const steps = b.column(0, Math.ceil(longest / step))
  if (times.length > 0) b.atMost(0, [...length, [steps, -step]])
  return { role, strips, times, steps }
}
