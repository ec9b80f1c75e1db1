import type { Grade } from '../garment/grade.ts'
import { pinnedFlow } from '../intake/flow-versions.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { derivePile, type Garment } from '../intake/pile.ts'
import { entriesOf } from '../intake/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { boxChecksOf, type CheckedRow } from './box-results.ts'
import { factSetsOf, type KeptFactSet, standingFacts } from './fact-sets.ts'
import { planMarksOf } from './plan-marks.ts'
import { deskSpots, pileAsKnown } from './spots.ts'

export interface BoxChange {
  readonly garment: Garment
  readonly before: Grade | null
  readonly after: Grade | null
  /** What the bench set of it and stands. */
  readonly facts: readonly KeptFactSet[]
}

/** What the box check made of a pile. */
export interface BoxChanges {
  /** Garments of which a fact was set by the bench. */
  readonly changed: readonly BoxChange[]
  readonly missing: readonly Garment[]
  readonly extra: readonly CheckedRow[]
}

/** The pile as it is known, held against the same without what the bench set. */
export async function boxChanges(db: Db, knowledge: Knowledge, row: PileRow): Promise<BoxChanges> {
  const marks = await planMarksOf(db, row.id)
  const sets = await factSetsOf(db, row.id)
  const now = await pileAsKnown(db, knowledge, row, marks)
  const told = standingFacts(sets.filter(({ source }) => source === 'staff'))
  const spots = deskSpots(marks)
  const before = derivePile(
    knowledge,
    await pinnedFlow(db, row.flow_hash, knowledge),
    row,
    await entriesOf(db, row.id),
    new Map(
      now.garments.map(({ n }) => [
        n,
        { ...(spots.has(n) && { spots: spots.get(n)! }), facts: told.get(n) ?? [] },
      ]),
    ),
  )
  const bench = standingFacts(sets.filter(({ source }) => source === 'bench'))
  const checks = await boxChecksOf(db, row.id)
  const standing = now.garments.filter(({ dropped }) => !dropped)
  return {
    changed: standing.flatMap((garment) => {
      const facts = bench.get(garment.n)
      if (!facts) return []
      const was = before.garments.find(({ n }) => n === garment.n)
      return [
        {
          garment,
          before: was?.grading?.grade ?? null,
          after: garment.grading?.grade ?? null,
          facts,
        },
      ]
    }),
    missing: standing.filter(({ n }) => checks.get(String(n))?.result === 'missing'),
    extra: [...checks.values()].filter(({ result }) => result === 'extra'),
  }
}
