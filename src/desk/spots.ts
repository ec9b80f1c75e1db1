import { z } from 'zod'
import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { type SpotKind, spotKinds } from '../garment/spots.ts'
import { pinnedFlow } from '../intake/flow-versions.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { derivePile, type Garment, type Pile } from '../intake/pile.ts'
import { entriesOf } from '../intake/rows.ts'
import type { FactSet } from '../intake/set-facts.ts'
import { type Markable, mostAtDesk, newSpot, readSpotAt, spotNear } from '../intake/spot-marking.ts'
import { spotPhotos } from '../intake/spot-photos.ts'
import {
  type DeskSpots,
  isSameSpot,
  type MarkedSpot,
  partOf,
  type SpotKey,
} from '../intake/spots.ts'
import { project } from '../intake/standing.ts'
import type { AtDesk } from '../intake/told.ts'
import type { Store } from '../store/open.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { factSetsOf, standingFacts } from './fact-sets.ts'
import {
  changeMarks,
  type MarkChange,
  type PlanMark,
  planMarksOf,
  standingMarks,
} from './plan-marks.ts'
import { wishedByStaff } from './wish-marks.ts'

const keyBody = z.object({
  photo: z.string(),
  x: z.number(),
  y: z.number(),
  what: z.enum(spotKinds),
})
const spotBody = keyBody.extend({ part: z.string().nullable() })

type SpotBody = z.infer<typeof spotBody>

/** What staff made of the spots of a pile's garments, by the garment's number. */
export function deskSpots(marks: readonly PlanMark[]): ReadonlyMap<number, DeskSpots> {
  const found = new Map<number, { added: MarkedSpot[]; gone: SpotKey[] }>()
  const of = (garment: number) => {
    const there = found.get(garment) ?? { added: [], gone: [] }
    found.set(garment, there)
    return there
  }
  for (const { garment, body, who, at } of standingMarks(marks, 'spot')) {
    const { part, ...spot } = spotBody.parse(body)
    // Which parts the garment has is the pile's to say: a kind that was changed since has others.
    const marked = { ...spot, part: part as MarkedSpot['part'], by: { staff: who.name }, at }
    of(garment!).added.push(marked)
  }
  for (const { garment, body } of standingMarks(marks, 'no-spot')) {
    of(garment!).gone.push(keyBody.parse(body))
  }
  return found
}

/** What the workshop made of a pile's garments, by number: spots it marked, facts it set. */
function madeOf(
  marks: readonly PlanMark[],
  facts: ReadonlyMap<number, readonly FactSet[]>,
): ReadonlyMap<number, AtDesk> {
  const spots = deskSpots(marks)
  return new Map(
    [...new Set([...spots.keys(), ...facts.keys()])].map((n): [number, AtDesk] => [
      n,
      { spots: spots.get(n), facts: facts.get(n) },
    ]),
  )
}

export const madeAtDesk = async (
  db: Db,
  pileId: string,
  marks: readonly PlanMark[],
): Promise<ReadonlyMap<number, AtDesk>> =>
  madeOf(marks, standingFacts(await factSetsOf(db, pileId)))

/** A pile as the desk knows it: with what staff marked, and the facts that were set. */
export const pileAsKnown = async (
  db: Db,
  knowledge: Knowledge,
  row: PileRow,
  marks: readonly PlanMark[],
): Promise<Pile> =>
  pileWithFacts(db, knowledge, row, { marks, facts: standingFacts(await factSetsOf(db, row.id)) })

interface DeskKnows {
  readonly marks: readonly PlanMark[]
  /** By the garment's number. */
  readonly facts: ReadonlyMap<number, readonly FactSet[]>
}

/** The pile with what staff marked, and with these facts. */
export async function pileWithFacts(
  db: Db,
  knowledge: Knowledge,
  row: PileRow,
  { marks, facts }: DeskKnows,
): Promise<Pile> {
  const flow = await pinnedFlow(db, row.flow_hash, knowledge)
  const entries = await entriesOf(db, row.id)
  const atDesk = madeOf(marks, facts)
  return derivePile(knowledge, flow, row, entries, atDesk, wishedByStaff(marks))
}

/** What a member of staff does to a garment's spots. `at` is "photo:x:y". */
export type SpotChange =
  | { readonly act: 'mark'; readonly at: string | undefined; readonly what: string }
  | { readonly act: 'part'; readonly spot: SpotKey; readonly part: string }
  | { readonly act: 'unmark'; readonly spot: SpotKey }

const nothing: MarkChange = { undo: [], add: [] }

const isKind = (what: string): what is SpotKind => spotKinds.some((one) => one === what)

const adding = (garment: number, body: SpotBody): MarkChange['add'] => [
  { kind: 'spot', garment, body },
]

/** A new mark. One of that kind so near to another is that one: a form sent twice marks once. */
function marking(
  { at, what }: Extract<SpotChange, { act: 'mark' }>,
  { n, told: { spots } }: Garment,
  markable: Markable,
): MarkChange {
  if (at === undefined) throw new Failure('form_incomplete', { field: 'spots' })
  if (!isKind(what)) throw new Failure('answer_not_offered')
  const place = readSpotAt(at, markable.photos)
  const alike = spots.filter((spot) => spot.what === what)
  if (spotNear(alike, place, markable.photos) >= 0) return nothing
  if (spots.length >= mostAtDesk) throw new Failure('too_many_spots', { most: mostAtDesk })
  const { part } = newSpot(place, what, markable)
  return { undo: [], add: adding(n, { ...place, what, part }) }
}

/** A mark of staff is undone, one of the customer's is said to be none. */
function without({ photo, x, y, what, by }: MarkedSpot, n: number, marks: readonly PlanMark[]) {
  if (by === 'customer') {
    return {
      undo: [],
      add: [{ kind: 'no-spot' as const, garment: n, body: { photo, x, y, what } }],
    }
  }
  const mine = standingMarks(marks, 'spot').filter(
    ({ garment, body }) => garment === n && isSameSpot(spotBody.parse(body), { photo, x, y, what }),
  )
  return { undo: mine.map(({ id }) => id), add: [] }
}

function changeOf(
  change: SpotChange,
  garment: Garment,
  markable: Markable,
  marks: readonly PlanMark[],
): MarkChange {
  if (change.act === 'mark') return marking(change, garment, markable)
  const spot = garment.told.spots.find((one) => isSameSpot(one, change.spot))
  // Somebody else has taken it away already.
  if (!spot) return nothing
  const gone = without(spot, garment.n, marks)
  if (change.act === 'unmark') return gone
  const part = partOf(garment.facts.kind, change.part)
  if (change.part !== '' && part === null) throw new Failure('answer_not_offered')
  if (part === spot.part) return nothing
  const { photo, x, y, what } = spot
  return { undo: gone.undo, add: [...gone.add, ...adding(garment.n, { photo, x, y, what, part })] }
}

/**
 * Marks a spot on a photo of a garment, says in which part it lies, or takes it away; the queue's rows follow.
 * `who` is the account's id. Throws `not_found`, `form_incomplete`, `answer_not_offered`, `spot_outside`,
 * `spot_without_photo`, `too_many_spots` {most}.
 */
export const changeSpots = (
  at: { readonly store: Store; readonly clock: Clock; readonly knowledge: Knowledge },
  pileId: string,
  n: number,
  change: SpotChange,
  who: string,
): Promise<void> =>
  changeMarks(
    at,
    pileId,
    who,
    async (marks, db, row) => {
      const { garments } = await pileAsKnown(db, at.knowledge, row, marks)
      const garment = garments.find((one) => one.n === n && !one.dropped)
      if (!garment) throw new Failure('not_found')
      const { facts, told } = garment
      const photos = await spotPhotos(db, pileId, told.photoIds)
      const markable = { kind: facts.kind, size: told.size, photos }
      return changeOf(change, garment, markable, marks)
    },
    async (db, row) => {
      const pile = await pileAsKnown(db, at.knowledge, row, await planMarksOf(db, pileId))
      await project(db, row, pile)
    },
  )
