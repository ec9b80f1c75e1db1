import type { Act } from '../../src/flow/grammar.ts'
import type { Knowledge } from '../../src/intake/knowledge.ts'
import { derivePile, type Pile } from '../../src/intake/pile.ts'
import type { Entry } from '../../src/intake/rows.ts'
import type { PileRow } from '../../src/store/schema.ts'

export const startedAt = Date.UTC(2026, 5, 1)

/** A pile of these acts, one a minute. */
export function pileOf(knowledge: Knowledge, acts: readonly Act[]): Pile {
  const entries = acts.map(
    (act, at): Entry => ({ seq: at + 1, at: startedAt + (at + 1) * 60_000, who: 'customer', act }),
  )
  return derivePile(knowledge, knowledge.flow, rowOf(knowledge, acts.length), entries)
}

/** The row of a pile after so many acts. */
export const rowOf = (knowledge: Knowledge, acts: number): PileRow => ({
  id: 'pile-1',
  number: 1,
  language: 'en',
  flow_hash: knowledge.flowHash,
  status: 'open',
  seq: acts,
  started_at: startedAt,
  changed_at: startedAt + acts * 60_000,
  confirmed_at: null,
})
