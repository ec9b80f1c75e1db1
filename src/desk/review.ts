import { Failure } from '../base/failures.ts'
import { pinnedFlow } from '../intake/flow-versions.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { derivePile, type Garment, type Pile } from '../intake/pile.ts'
import { given } from '../intake/replies.ts'
import { type Entry, entriesOf } from '../intake/rows.ts'
import { type Tally, tally } from '../quilt/tally.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { atTheDesk, type Decision, decisionsOf, undecided } from './decisions.ts'
import { type Note, notesOf } from './notes.ts'

/** A garment with what staff said of it. */
export interface ReviewedGarment {
  readonly garment: Garment
  /** Oldest first; the last stands. */
  readonly decisions: readonly Decision[]
  readonly notes: readonly Note[]
  /** Ids of its photos that are still there. */
  readonly photos: readonly string[]
}

/** Everything the desk looks at of one pile. */
export interface Review {
  readonly row: PileRow
  readonly pile: Pile
  /** Those the customer sends, in the order they were added. */
  readonly garments: readonly ReviewedGarment[]
  /** Of the pile itself. */
  readonly decisions: readonly Decision[]
  readonly notes: readonly Note[]
  /** Numbers of garments that hold up accepting the pile. */
  readonly undecided: readonly number[]
  /** When the newest decision was made; 0: none. */
  readonly seen: number
  /** What the quilt comes to with the decisions so far; null: nothing decided changes it. */
  readonly after: { readonly tally: Tally; readonly estimate: Pile['estimate'] } | null
}

/** The pile of an id or of a number. Throws `not_found`, also for an intake that is still open. */
export async function pileAtDesk(db: Db, reference: string): Promise<PileRow> {
  const number = /^\d{1,9}$/.test(reference) ? Number(reference) : null
  const row = await db
    .selectFrom('pile')
    .selectAll()
    .where((eb) =>
      number === null
        ? eb('id', '=', reference)
        : eb.or([eb('number', '=', number), eb('id', '=', reference)]),
    )
    .where('status', 'in', atTheDesk)
    .executeTakeFirst()
  if (!row) throw new Failure('not_found')
  return row
}

const gradeDecided = { take: 'sound', care: 'care', ask: 'eyes', decline: 'home' } as const

/** A decided garment counts as staff said, whatever its grade was. */
function tallyDecided({ wish }: Pile, garments: readonly ReviewedGarment[]): Tally {
  const counted = garments.flatMap(({ garment, decisions }) => {
    const verdict = decisions.at(-1)?.verdict as keyof typeof gradeDecided | undefined
    const { grading, facts, panels } = garment
    if (!grading) return []
    const grade = verdict ? gradeDecided[verdict] : grading.grade
    return [{ grade, facts, panels, layouts: grading.layouts }]
  })
  return tally(counted, wish.layout, wish.size)
}

/** The acts as they would be had the customer left the declined garments out. */
const withoutDeclined = (
  entries: readonly Entry[],
  garments: readonly ReviewedGarment[],
  at: number,
): Entry[] => [
  ...entries,
  ...garments
    .filter(({ decisions }) => decisions.at(-1)?.verdict === 'decline')
    .map(({ garment }, i): Entry => {
      const seq = entries.length + i + 1
      return { seq, at, who: 'customer', act: { act: 'drop', item: garment.n } }
    }),
]

async function photosOf(db: Db, pileId: string): Promise<ReadonlySet<string>> {
  const rows = await db
    .selectFrom('photo')
    .select('id')
    .where('pile_id', '=', pileId)
    .where('removed_at', 'is', null)
    .execute()
  return new Set(rows.map(({ id }) => id))
}

/** One pile with its garments, what was asked, shown and decided. Throws `not_found`. */
export async function review(db: Db, knowledge: Knowledge, reference: string): Promise<Review> {
  const row = await pileAtDesk(db, reference)
  const flow = await pinnedFlow(db, row.flow_hash, knowledge)
  const entries = await entriesOf(db, row.id)
  const pile = derivePile(knowledge, flow, row, entries)
  const decisions = await decisionsOf(db, row.id)
  const notes = await notesOf(db, row.id)
  const kept = await photosOf(db, row.id)

  const garments = pile.garments
    .filter(({ dropped }) => !dropped)
    .map((garment) => ({
      garment,
      decisions: decisions.filter(({ item }) => item === garment.n),
      notes: notes.filter(({ item }) => item === garment.n),
      photos: answeredPhotos(garment).filter((id) => kept.has(id)),
    }))
  const decided = decisions.some(({ item }) => item !== null)

  return {
    row,
    pile,
    garments,
    decisions: decisions.filter(({ item }) => item === null),
    notes: notes.filter(({ item }) => item === 0),
    undecided: undecided(
      garments.map(({ garment }) => ({ item: garment.n, grade: garment.grading?.grade ?? null })),
      decisions,
    ),
    seen: decisions.at(-1)?.at ?? 0,
    after: decided
      ? {
          tally: tallyDecided(pile, garments),
          estimate: derivePile(
            knowledge,
            flow,
            row,
            withoutDeclined(entries, garments, row.changed_at),
          ).estimate,
        }
      : null,
  }
}

function answeredPhotos({ replies }: Garment): readonly string[] {
  const ids = given(replies, 'photos')
  return Array.isArray(ids) ? (ids as readonly string[]) : []
}
