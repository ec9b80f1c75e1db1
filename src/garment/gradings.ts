import { domains, type FactName, type Facts } from './facts.ts'
import type { Grading, PileFacts } from './grade.ts'

/** So many gradings are remembered; then they are made anew. */
const most = 5_000

const names = Object.keys(domains) as FactName[]

/** All that a grading hangs on, in one line: no value of a domain has a space in it. */
function keyOf(facts: Facts, { recipient, layout }: PileFacts): string {
  let key = `${recipient} ${layout ?? ''}`
  for (const name of names) key += ` ${facts[name]}`
  return key
}

/** The same grading for the same facts, made once: garments of a pile are alike, and each answer asks of them all. */
export function rememberGradings(
  make: (facts: Facts, pile: PileFacts) => Grading,
): (facts: Facts, pile: PileFacts) => Grading {
  const known = new Map<string, Grading>()
  return (facts, pile) => {
    const key = keyOf(facts, pile)
    const before = known.get(key)
    if (before) return before
    const grading = make(facts, pile)
    if (known.size >= most) known.clear()
    known.set(key, grading)
    return grading
  }
}
