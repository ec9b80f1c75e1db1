import { sql } from 'kysely'
import { type Clock, days } from '../base/clock.ts'
import type { Log } from '../base/log.ts'
import { writeHalfTold } from '../intake/half-told.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Store } from '../store/open.ts'
import { isClockTrusted } from '../store/trusted-clock.ts'
import { clearUses } from '../store/uses.ts'

/** What nobody came back to for so long is swept, ms. */
export const leftAloneFor = days(30)

/** A customer who has not answered for so long is somewhere else, ms. */
const restsAfter = 60 * 60 * 1000

/** So many piles at once, so that visitors never wait long for a sweep. */
const atOnce = 500

export interface Swept {
  /** Intakes that were begun and never answered: gone. */
  readonly intakes: number
  /** Photos that no answer ever held: taken away from their pile. */
  readonly drafts: number
}

/** Clears away what was begun and left alone. Any number of processes may do so at once. */
export async function sweep({ db }: Store, at: number): Promise<Swept> {
  await clearUses(db, at)
  const before = at - leftAloneFor
  const gone = await db
    .deleteFrom('pile')
    .where('id', 'in', (eb) =>
      eb
        .selectFrom('pile')
        .select('id')
        .where('status', '=', 'open')
        .where('changed_at', '<', before)
        .where('seq', '=', 0)
        .where(({ not, exists, selectFrom }) =>
          not(exists(selectFrom('photo').select('id').whereRef('photo.pile_id', '=', 'pile.id'))),
        )
        .limit(atOnce),
    )
    // Once more for the row itself: its customer may have come back meanwhile.
    .where('seq', '=', 0)
    .executeTakeFirst()
  const drafts = await db
    .selectFrom('photo')
    .select(['id', 'pile_id'])
    // Said in words: an index of these alone is not found for a value that comes later.
    .where('kept', '=', sql.lit(0))
    .where('at', '<', before)
    .where('removed_at', 'is', null)
    .limit(atOnce)
    .execute()
  let dropped = 0
  for (const { id, pile_id } of drafts) {
    // A server that died behind an answer left what it holds a draft.
    const answer = await db
      .selectFrom('act')
      .select('seq')
      .where('pile_id', '=', pile_id)
      .where('act', 'like', `%"${id}"%`)
      .executeTakeFirst()
    await db
      .updateTable('photo')
      .set(answer ? { kept: 1 } : { removed_at: at })
      .where('id', '=', id)
      .where('kept', '=', 0)
      .execute()
    if (!answer) dropped += 1
  }
  return { intakes: Number(gone.numDeletedRows), drafts: dropped }
}

/**
 * SQLite is told, where it wants to know, how many rows share a value: of two indexes it would else take either
 * (sqlite.org/pragma.html#pragma_optimize). PostgreSQL counts by itself.
 */
async function countRows({ dialect, db }: Store): Promise<void> {
  if (dialect === 'sqlite') await sql`pragma optimize = 0x10002`.execute(db)
}

export interface Sweeper {
  close(): Promise<void>
}

const everyMs = 60 * 60 * 1000

/** Sweeps now, and every hour until `close`, where the clock can be trusted. */
export function openSweeper({
  store,
  knowledge,
  clock,
  log,
}: {
  store: Store
  knowledge: Knowledge
  clock: Clock
  log: Pick<Log, 'info' | 'error'>
}): Sweeper {
  let under: Promise<unknown> = Promise.resolve()
  const round = async () => {
    const at = clock()
    const written = await writeHalfTold(store, knowledge, at - restsAfter)
    if (written > 0) log.info({ piles: written }, 'the desk knows of intakes left within a garment')
    if (!(await isClockTrusted(store, { look: 'what was left alone', at }))) return
    const swept = await sweep(store, at)
    if (swept.intakes + swept.drafts > 0) log.info(swept, 'swept what was left alone')
    await countRows(store)
  }
  const turn = () => {
    under = round().catch((err) => log.error({ err }, 'a sweep failed'))
  }
  const timer = setInterval(turn, everyMs).unref()
  turn()
  return {
    close: async () => {
      clearInterval(timer)
      await under
    },
  }
}
