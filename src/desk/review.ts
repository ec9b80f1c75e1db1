import { Failure } from '../base/failures.ts'
import { type ClothColours, clothsOf } from '../intake/cloth-colours.ts'
import { looksOf, type SeenPhoto } from '../intake/garment-look.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Garment, Pile } from '../intake/pile.ts'
import { labelSeen } from '../intake/replies.ts'
import { type SpotPhoto, spotPhotos } from '../intake/spot-photos.ts'
import type { GarmentWhy } from '../intake/why-garment.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { type Arranged, arrangedOf } from './arranged.ts'
import { type Outcome, outcomeOf, type Prospect, prospectOf, verdictsOf } from './consequences.ts'
import { type Decision, decisionsOf, shownAtDesk, undecided } from './decisions.ts'
import { type FlagDecision, flagDecisionsOf } from './flag-decisions.ts'
import { type GivenRoles, givenRoles } from './garment-roles.ts'
import { messagesOf } from './messages.ts'
import { type Note, notesOf } from './notes.ts'
import { planMarksOf } from './plan-marks.ts'
import { reckoningOf } from './reckoning.ts'
import { pileAsKnown } from './spots.ts'
import { type Thread, threadsFrom } from './threads.ts'

/** A garment with what staff said of it. */
export interface ReviewedGarment {
  readonly garment: Garment
  /** Oldest first; the last stands. */
  readonly decisions: readonly Decision[]
  /** Of its single reasons, likewise. */
  readonly flagDecisions: readonly FlagDecision[]
  readonly notes: readonly Note[]
  /** Its photos that are still there. */
  readonly photos: readonly SpotPhoto[]
  /** What was seen on those that were looked at. */
  readonly seen: readonly SeenPhoto[]
  /** The id of its label's photo; null: none was sent, or it is there no more. */
  readonly label: string | null
  readonly cloth: ClothColours
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
  /** What was written, by garment; of the pile where `item` is null. */
  readonly threads: readonly Thread[]
  /** Roles that staff let a garment play alone, by its number. */
  readonly roles: ReadonlyMap<number, GivenRoles>
  readonly arranged: Arranged
  /** Numbers of garments that hold up accepting the pile. */
  readonly undecided: readonly number[]
  /** When the newest decision was made; 0: none. */
  readonly seen: number
  /** What the quilt comes to with the decisions so far; null: nothing is decided. */
  readonly after: Outcome | null
  /** What deciding would do, by garment, for the first of those that wait for it. */
  readonly prospects: ReadonlyMap<number, Prospect>
  /** The chain behind a garment's grade; null while it has none. */
  readonly whyOf: (garment: Garment) => GarmentWhy | null
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
    .where('status', 'in', shownAtDesk)
    .executeTakeFirst()
  if (!row) throw new Failure('not_found')
  return row
}

/** So many garments are told what deciding them would do; more would make a large pile slow. */
const mostProspects = 12

/** Those of a pile's garments and labels that are still there. */
async function photosOf(
  db: Db,
  { id }: PileRow,
  { garments }: Pile,
): Promise<ReadonlyMap<string, SpotPhoto>> {
  const ids = garments.flatMap(({ told, replies }) => [
    ...told.photoIds,
    ...[labelSeen(replies).photo].flatMap((label) => label ?? []),
  ])
  return new Map((await spotPhotos(db, id, ids)).map((photo) => [photo.id, photo]))
}

/** One pile with its garments, what was asked, shown and decided. Throws `not_found`. */
export async function review(db: Db, knowledge: Knowledge, reference: string): Promise<Review> {
  const row = await pileAtDesk(db, reference)
  const marks = await planMarksOf(db, row.id)
  const pile = await pileAsKnown(db, knowledge, row, marks)
  const decisions = await decisionsOf(db, row.id)
  const flagDecisions = await flagDecisionsOf(db, row.id)
  const notes = await notesOf(db, row.id)
  const kept = await photosOf(db, row, pile)
  const seen = await looksOf(db, row.id, [...kept.keys()])

  const standing = pile.garments.filter(({ dropped }) => !dropped)
  const cloths = await clothsOf(db, row, standing)
  const garments = standing.map((garment, i) => ({
    garment,
    cloth: cloths[i]!,
    decisions: decisions.filter(({ item }) => item === garment.n),
    flagDecisions: flagDecisions.filter(({ item }) => item === garment.n),
    notes: notes.filter(({ item }) => item === garment.n),
    photos: garment.told.photoIds.flatMap((id) => kept.get(id) ?? []),
    seen: seen.filter(({ photo }) => garment.told.photoIds.includes(photo)),
    label: [labelSeen(garment.replies).photo].find((id) => id && kept.has(id)) ?? null,
  }))
  const waiting = undecided(
    garments.map(({ garment }) => ({ item: garment.n, grade: garment.grading?.grade ?? null })),
    decisions,
  )
  const verdicts = verdictsOf(garments)
  const day = new Date(row.changed_at).toISOString().slice(0, 10)

  return {
    row,
    pile,
    garments,
    decisions: decisions.filter(({ item }) => item === null),
    notes: notes.filter(({ item }) => item === 0),
    threads: threadsFrom(await messagesOf(db, row.id), notes),
    roles: givenRoles(marks),
    arranged: arrangedOf(marks, { layout: pile.wish.layout.id, size: pile.wish.size }),
    undecided: waiting,
    seen: decisions.at(-1)?.at ?? 0,
    after: verdicts.size > 0 ? outcomeOf(pile, verdicts) : null,
    prospects: new Map(
      waiting.slice(0, mostProspects).map((n) => [n, prospectOf(pile, verdicts, n)]),
    ),
    whyOf: (garment) => reckoningOf(garment, pile, knowledge, day),
  }
}
