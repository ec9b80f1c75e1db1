import type { CompiledQuery, Kysely } from 'kysely'
import {
  inserting,
  isServer,
  lookedUp,
  onGiven,
  type Written,
  type WrittenInto,
  writing,
} from '../store/given-rows.ts'
import { sendLast } from '../store/last.ts'
import type { Database, Db, NewRow } from '../store/schema.ts'
import { isConflict } from '../store/trouble.ts'
import { noteRow } from './rows.ts'
import { garments, type Projected, projected, projections, standings } from './standing.ts'
import type { Stood } from './stood.ts'
import type { Taken } from './taking.ts'

const actRows = ({ acts, stood }: Taken): NewRow<'act'>[] =>
  acts.map(({ act, ...entry }) => ({ pile_id: stood.row.id, ...entry, act: JSON.stringify(act) }))

/** Where a person was asked. */
const noteRows = ({ acts, stood }: Taken) =>
  acts.flatMap(({ act, at }) => {
    if (act.act !== 'answer' || !('asked' in act.reply)) return []
    const { item, question, reply } = act
    return [noteRow({ pileId: stood.row.id, item, question, text: reply.asked, at })]
  })

/** Of those piles whose rows are due. */
const projectedOf = (taken: readonly Taken[]): Projected[] =>
  taken.flatMap(({ stood, due }) =>
    due === null || due.length > 0
      ? [{ row: stood.row, pile: stood.derived.pile, since: due }]
      : [],
  )

const acts = {
  table: 'act',
  columns: {
    pile_id: 'text',
    seq: 'bigint',
    at: 'bigint',
    who: 'text',
    idem: 'text',
    act: 'text',
  },
} as const satisfies WrittenInto<'act'>

const notes = {
  table: 'note',
  columns: {
    id: 'text',
    pile_id: 'text',
    item: 'bigint',
    question: 'text',
    text: 'text',
    at: 'bigint',
    settled_at: 'bigint',
    settled_by: 'text',
  },
} as const satisfies WrittenInto<'note'>

const writeActRows = writing(acts)
const writeNoteRows = writing(notes)

const movePiles = onGiven(
  { piles: { id: 'text', seq: 'bigint', changed_at: 'bigint' } },
  ({ piles }) =>
    `update pile set seq = piles.seq, changed_at = piles.changed_at from ${piles} where pile.id = piles.id`,
)

/** What is written beside the piles' own rows. */
function writesOf(db: Db, taken: readonly Taken[]): CompiledQuery[] {
  const asked = taken.flatMap(noteRows)
  return [
    writeActRows(db, taken.flatMap(actRows)),
    ...projections(db, projectedOf(taken)),
    ...(asked.length > 0 ? [writeNoteRows(db, asked)] : []),
  ]
}

/** Writes what was taken, as the last thing of the transaction that holds the piles; each pile is named once. */
export async function writeActs(db: Db, taken: readonly Taken[]): Promise<void> {
  const some = taken.filter((one) => one.acts.length > 0)
  if (some.length === 0) return
  const piles = some.map(({ stood: { row } }) => ({
    id: row.id,
    seq: row.seq,
    changed_at: row.changed_at,
  }))
  await sendLast(db, [...writesOf(db, some), movePiles(db, { piles })])
}

/** Acts that were taken on a pile as it is remembered, with the hash of the key of its link. */
export interface Remembered {
  readonly hash: string
  readonly before: Stood
  readonly taken: Taken
}

const ofHeld = (written: Written, given: string, as: string) =>
  inserting(written, `${given} join held on held.held_id = ${as}.pile_id`)

/** A pile's row as it is remembered and as it will be, with the link that it was found by. */
const asRemembered = {
  key_hash: 'text',
  now: 'bigint',
  id: 'text',
  status: 'text',
  seq_before: 'bigint',
  changed_before: 'bigint',
  seq: 'bigint',
  changed_at: 'bigint',
} as const

const standsSo = `pile.seq = piles.seq_before and pile.changed_at = piles.changed_before
  and pile.status = piles.status and pile_link.pile_id = pile.id and pile_link.revoked_at is null
  and pile_link.expires_at > piles.now`

/** Moves the piles that stand so, where the whole store is held. */
const moveAsRemembered = onGiven(
  { piles: asRemembered },
  ({ piles }) =>
    `update pile set seq = piles.seq, changed_at = piles.changed_at
    from ${piles} join pile_link on pile_link.key_hash = piles.key_hash
    where pile.id = piles.id and ${standsSo} returning pile.id as held_id`,
)

/** The piles that are just as they are remembered and that nobody holds, with what is `kept` of what was given. */
const heldOf = (piles: string, kept = ''): string => `held as (
    select pile.id as held_id, piles.seq as new_seq, piles.changed_at as new_at${kept}
    from ${piles}
    ${lookedUp('pile', { column: 'id', is: 'piles.id', held: true })}
    ${lookedUp('pile_link', { column: 'key_hash', is: 'piles.key_hash' })}
    where ${standsSo}
  ), moved as (
    update pile set seq = held.new_seq, changed_at = held.new_at from held
    where pile.id = held.held_id
  )`

/** Every part of it sees the store as it stood before. */
const writeWhereAsRemembered = onGiven(
  {
    piles: asRemembered,
    acts: acts.columns,
    standings: standings.columns,
    garments: garments.columns,
    notes: notes.columns,
  },
  (given) => `with ${heldOf(given.piles)}, acted as (${ofHeld(acts, given.acts, 'acts')}
  ), stood as (${ofHeld(standings, given.standings, 'standings')}
  ), worn as (${ofHeld(garments, given.garments, 'garments')}
  ), noted as (${ofHeld(notes, given.notes, 'notes')}
  ) select held_id from held`,
)

/** The same where each pile got one act and nothing else is written, as between two questions: less to read and plan. */
const writeActWhereAsRemembered = onGiven(
  { piles: { ...asRemembered, who: 'text', idem: 'text', act: 'text' } },
  ({ piles }) => `with ${heldOf(piles, ', piles.who, piles.idem, piles.act')}, acted as (
    insert into act (pile_id, seq, at, who, idem, act)
    select held_id, new_seq, new_at, who, idem, act from held
  ) select held_id from held`,
)

interface Held {
  readonly held_id: string
}

const rememberedRows = (some: readonly Remembered[], now: number) =>
  some.map(({ hash, before, taken: { stood } }) => ({
    key_hash: hash,
    now,
    id: before.row.id,
    status: before.row.status,
    seq_before: before.row.seq,
    changed_before: before.row.changed_at,
    seq: stood.row.seq,
    changed_at: stood.row.changed_at,
  }))

const idsOf = (held: readonly Held[]): ReadonlySet<string> =>
  new Set(held.map(({ held_id }) => held_id))

/**
 * The piles that stand so are moved first: a transaction that writes holds all of a store of one file. Where another
 * process holds it, nothing is held here, and nothing written.
 */
async function writeOnFile(
  db: Kysely<Database>,
  some: readonly Remembered[],
  now: number,
): Promise<ReadonlySet<string>> {
  try {
    return await db.transaction().execute(async (trx) => {
      const piles = rememberedRows(some, now)
      const { rows } = await trx.executeQuery<Held>(moveAsRemembered(trx, { piles }))
      const held = idsOf(rows)
      const taken = some.filter(({ before }) => held.has(before.row.id)).map((one) => one.taken)
      if (taken.length > 0) await sendLast(trx, writesOf(trx, taken))
      return held
    })
  } catch (error) {
    if (isConflict(error)) return new Set()
    throw error
  }
}

/**
 * Writes what was taken on piles as they are remembered: of those that stand so and that nobody holds; each is named
 * once. Gives their ids: for the others nothing is written. On PostgreSQL it is one statement, a transaction by itself.
 */
export async function writeIfAsRemembered(
  db: Kysely<Database>,
  some: readonly Remembered[],
  now: number,
): Promise<ReadonlySet<string>> {
  if (some.length === 0) return new Set()
  if (!isServer(db)) return writeOnFile(db, some, now)
  const piles = rememberedRows(some, now)
  const taken = some.map((one) => one.taken)
  const written = taken.flatMap(actRows)
  const queued = projected(projectedOf(taken))
  const asked = taken.flatMap(noteRows)
  const nothingElse = queued.standings.length + asked.length === 0
  const actsAlone = nothingElse && taken.every(({ acts }) => acts.length === 1)
  const { rows } = await db.executeQuery<Held>(
    actsAlone
      ? writeActWhereAsRemembered(db, {
          piles: written.map(({ who, idem, act }, nth) => ({ ...piles[nth]!, who, idem, act })),
        })
      : writeWhereAsRemembered(db, { piles, acts: written, ...queued, notes: asked }),
  )
  return idsOf(rows)
}
