import { entriesOf } from '../intake/rows.ts'
import type { Db, PileRow, PileStatus } from '../store/schema.ts'
import type { Verdicts } from './consequences.ts'
import { type Decision, decisionsOf, type GarmentVerdict } from './decisions.ts'
import { planMarksOf } from './plan-marks.ts'
import { madeAtDesk } from './spots.ts'
import type { FilesToTry, PileToTry } from './try-flows.ts'
import { wishedByStaff } from './wish-marks.ts'

/** Piles that other files may still change. */
const undecided: readonly PileStatus[] = ['open', 'confirmed']

/** So many piles are read at once. */
const atOnce = 20

/** Flows that undecided piles stand on, by hash. */
export async function pinnedFlows(db: Db): Promise<FilesToTry['pinned']> {
  const rows = await db
    .selectFrom('flow_version')
    .select(['hash', 'body'])
    .where('hash', 'in', db.selectFrom('pile').select('flow_hash').where('status', 'in', undecided))
    .execute()
  const open = await db
    .selectFrom('pile')
    .select('flow_hash')
    .distinct()
    .where('status', '=', 'open')
    .execute()
  const isOpen = new Set(open.map(({ flow_hash }) => flow_hash))
  return new Map(rows.map(({ hash, body }) => [hash, { body, open: isOpen.has(hash) }]))
}

const toTry = (db: Db) =>
  db.selectFrom('pile').where('status', 'in', undecided).where('seq', '>', 0)

/** How many piles there are to try: those with an answer at least. */
export async function countToTry(db: Db): Promise<number> {
  const row = await toTry(db)
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .executeTakeFirst()
  return Number(row?.n ?? 0)
}

function verdictsIn(decisions: readonly Decision[]): Verdicts {
  const ofGarments = decisions.flatMap(({ item, verdict }) =>
    item === null ? [] : [[item, verdict as GarmentVerdict] as const],
  )
  // Oldest first: the last stands.
  return new Map(ofGarments)
}

async function toTryOf(db: Db, row: PileRow): Promise<PileToTry> {
  const marks = await planMarksOf(db, row.id)
  return {
    row,
    entries: await entriesOf(db, row.id),
    atDesk: await madeAtDesk(db, row.id, marks),
    instead: wishedByStaff(marks),
    verdicts: verdictsIn(await decisionsOf(db, row.id)),
  }
}

/** Every pile to try, the newest first, some at a time. */
export async function* pilesToTry(db: Db): AsyncGenerator<readonly PileToTry[]> {
  let below = Number.MAX_SAFE_INTEGER
  for (;;) {
    const rows = await toTry(db)
      .selectAll()
      .where('number', '<', below)
      .orderBy('number', 'desc')
      .limit(atOnce)
      .execute()
    if (rows.length === 0) return
    below = rows.at(-1)!.number
    const piles: PileToTry[] = []
    for (const row of rows) piles.push(await toTryOf(db, row))
    yield piles
  }
}

/** So many numbers of accepted piles are named. */
export const mostAgreed = 500

/** Numbers of piles that were accepted, the newest first: what was agreed of them stands. */
export async function agreedPiles(db: Db): Promise<number[]> {
  const rows = await db
    .selectFrom('pile')
    .select('pile.number')
    .where('pile.status', '=', 'decided')
    .where((eb) =>
      eb(
        eb
          .selectFrom('decision')
          .select('decision.verdict')
          .whereRef('decision.pile_id', '=', 'pile.id')
          .where('decision.item', 'is', null)
          .orderBy('decision.at', 'desc')
          .limit(1),
        '=',
        'accept',
      ),
    )
    .orderBy('pile.confirmed_at', 'desc')
    .limit(mostAgreed)
    .execute()
  return rows.map(({ number }) => number)
}
