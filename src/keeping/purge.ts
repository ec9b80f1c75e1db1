import { readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { type Clock, days } from '../base/clock.ts'
import type { Log } from '../base/log.ts'
import type { PhotoStore } from '../photo/keep.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { isClockTrusted } from '../store/trusted-clock.ts'
import { erasePhotos, erasePile, sweepPhotos } from './erase.ts'
import { writeLedger } from './erasures.ts'
import { whyKept } from './may-erase.ts'

/** For how many days what customers gave is kept, counted from when it was last touched. */
export interface KeepingDays {
  readonly open_days: number
  readonly withdrawn_days: number
  readonly unsent_days: number
  readonly finished_days: number
  readonly removed_photo_days: number
  readonly mail_file_days: number
}

export interface PurgeParts {
  readonly store: Store
  readonly photos: PhotoStore
  readonly keeping: KeepingDays
  readonly dataDir: string
}

/** How much a purge erased, or would erase. */
export interface Purged {
  readonly piles: number
  readonly photos: number
  readonly mailFiles: number
}

/**
 * Erases what was kept for as long as it is to be kept. What is in the house is never old enough. `dry`: counts, and
 * changes nothing. Several processes may do so at once.
 */
export async function purge(
  { store, photos, keeping, dataDir }: PurgeParts,
  at: number,
  { dry = false } = {},
): Promise<Purged> {
  const old = await pilesTooOld(store.db, keeping, at)
  const removed = await store.db
    .selectFrom('photo')
    .select('id')
    .where('removed_at', '<=', at - days(keeping.removed_photo_days))
    .where('hash', '!=', '')
    .execute()
  const mailFiles = await oldFiles(join(dataDir, 'mail'), at - days(keeping.mail_file_days))
  const counted = { piles: old.length, photos: removed.length, mailFiles: mailFiles.length }
  if (dry) return counted

  let piles = 0
  for (const id of old) {
    piles += await store.transaction(async (db) => {
      const pile = await lockPile(db, id)
      // Its customer may have come back meanwhile.
      if (!pile || !(await isTooOld(db, pile, keeping, at))) return 0
      await erasePile(db, id, 'time', at)
      return 1
    })
  }
  for (const { id } of removed) await store.transaction((db) => erasePhotos(db, [id], 'time', at))
  for (const file of mailFiles) await rm(file, { force: true })
  await sweepPhotos(store, photos)
  await writeLedger(store.db, dataDir)
  return { ...counted, piles }
}

async function pilesTooOld(db: Db, keeping: KeepingDays, at: number): Promise<string[]> {
  const least = Math.min(
    keeping.open_days,
    keeping.withdrawn_days,
    keeping.unsent_days,
    keeping.finished_days,
  )
  const candidates = await db
    .selectFrom('pile')
    .selectAll()
    .where('changed_at', '<', at - days(least))
    .execute()
  const old: string[] = []
  for (const pile of candidates) if (await isTooOld(db, pile, keeping, at)) old.push(pile.id)
  return old
}

async function isTooOld(db: Db, pile: PileRow, keeping: KeepingDays, at: number): Promise<boolean> {
  const kept = await whyKept(db, pile.id)
  if (kept === 'here') return false
  const lasts = kept === null ? lastsBy(keeping)[pile.status] : keeping.finished_days
  return (await lastTouched(db, pile)) < at - days(lasts)
}

const lastsBy = (keeping: KeepingDays): Readonly<Record<PileRow['status'], number>> => ({
  open: keeping.open_days,
  withdrawn: keeping.withdrawn_days,
  confirmed: keeping.unsent_days,
  decided: keeping.unsent_days,
})

/** The newest of what the customer or the workshop did with it. */
async function lastTouched(db: Db, { id, changed_at }: PileRow): Promise<number> {
  const times = [changed_at]
  for (const table of ['decision', 'message', 'payment', 'custody_move', 'bench_record'] as const) {
    const { last } = await db
      .selectFrom(table)
      .select((eb) => eb.fn.max('at').as('last'))
      .where('pile_id', '=', id)
      .executeTakeFirstOrThrow()
    times.push(Number(last ?? 0))
  }
  return Math.max(...times)
}

async function oldFiles(folder: string, before: number): Promise<string[]> {
  const names = await readdir(folder).catch(() => [])
  const old: string[] = []
  for (const name of names.filter((one) => one.endsWith('.eml'))) {
    const file = join(folder, name)
    if ((await stat(file)).mtimeMs < before) old.push(file)
  }
  return old
}

export interface Purger {
  /** Ends once the purge that is under way is done. */
  close(): Promise<void>
}

const everyMs = days(1)
/** A look that is younger may be another process's of this day, ms. */
const youngest = days(1) - 60 * 60 * 1000
const look = 'what is too old'

/** Purges now, and once a day until `close`, where the clock can be trusted. */
export function openPurger(
  parts: PurgeParts & { readonly clock: Clock; readonly log: Pick<Log, 'info' | 'error'> },
): Purger {
  let under: Promise<unknown> = Promise.resolve()
  const round = async () => {
    const at = parts.clock()
    if (!(await isClockTrusted(parts.store, { look, at, youngest }))) return
    const purged = await purge(parts, at)
    if (Object.values(purged).some((count) => count > 0)) parts.log.info(purged, 'purged')
  }
  const turn = () => {
    under = round().catch((err) => parts.log.error({ err }, 'a purge failed'))
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
