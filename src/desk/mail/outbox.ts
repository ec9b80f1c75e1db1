import type { ExpressionBuilder } from 'kysely'
import type { Clock } from '../../base/clock.ts'
import { newId } from '../../base/ids.ts'
import type { Store } from '../../store/open.ts'
import type { Database, Db, MailRow } from '../../store/schema.ts'
import { nextTry } from './waits.ts'

/**
 * Whoever took a mail has so long to send it, ms; then it is taken to be gone, and another tries. A mail that
 * went out just before its sender died goes out twice, then, under the same Message-ID.
 */
export const leaseMs = 10 * 60 * 1000

/**
 * Due by now, or queued by a clock that was ahead and not tried since: its hour may be days away. Clocks of processes
 * that agree are no further apart than a lease.
 */
const isDue = (now: number) => (eb: ExpressionBuilder<Database, 'mail'>) =>
  eb.or([
    eb('due_at', '<=', now),
    eb.and([eb('queued_at', '>', now + leaseMs), eb('due_at', '>=', eb.ref('queued_at'))]),
  ])

/** Takes the mail that is due longest, so that no other process takes it meanwhile; null: none is due. */
export async function takeDue({ db }: Store, now: number): Promise<MailRow | null> {
  const taken = await db
    .updateTable('mail')
    .set((eb) => ({
      state: 'sending',
      lease: newId(),
      tries: eb('tries', '+', 1),
      due_at: now + leaseMs,
    }))
    .where('id', '=', (eb) =>
      eb
        .selectFrom('mail')
        .select('id')
        .where('state', 'in', ['waiting', 'sending'])
        .where(isDue(now))
        .orderBy('due_at')
        .orderBy('id')
        .limit(1),
    )
    // Once more for the row itself: another process may have taken it since it was looked for.
    .where('state', 'in', ['waiting', 'sending'])
    .where(isDue(now))
    .returningAll()
    .executeTakeFirst()
  return taken ?? null
}

const unsent = ['waiting', 'sending', 'failed'] as const

/** How many mails have not gone out, by state. */
export async function outboxOf({ db }: Store): Promise<Record<(typeof unsent)[number], number>> {
  const rows = await db
    .selectFrom('mail')
    .select(({ fn }) => ['state', fn.countAll<number>().as('n')])
    .where('state', 'in', unsent)
    .groupBy('state')
    .execute()
  const of = (state: string) => Number(rows.find((row) => row.state === state)?.n ?? 0)
  return { waiting: of('waiting'), sending: of('sending'), failed: of('failed') }
}

type Taken = Pick<MailRow, 'id' | 'lease' | 'tries' | 'tried_since'>

const mine = (db: Db, { id, lease }: Taken) =>
  db
    .updateTable('mail')
    .where('id', '=', id)
    .where('state', '=', 'sending')
    .where('lease', '=', lease)

export async function markSent(
  { db }: Store,
  taken: Taken,
  { way, now }: { way: MailRow['way']; now: number },
): Promise<void> {
  await mine(db, taken)
    .set({ state: 'sent', done_at: now, trouble: null, lease: null, way })
    .execute()
}

/** Not tried, and as if it never had been taken, until then. */
export async function markHeld({ db }: Store, taken: Taken, until: number): Promise<void> {
  await mine(db, taken)
    .set({
      state: 'waiting',
      due_at: until,
      tried_since: until,
      tries: 0,
      trouble: 'quota',
      lease: null,
    })
    .execute()
}

/** After a try that failed. Returns when it is tried again; null: it was given up. */
export async function markTroubled(
  { db }: Store,
  taken: Taken,
  { trouble, lasting, now }: { trouble: string; lasting: boolean; now: number },
): Promise<number | null> {
  const next = lasting ? null : nextTry({ tries: taken.tries, since: taken.tried_since, now })
  await mine(db, taken)
    .set(
      next === null
        ? { state: 'failed', done_at: now, trouble, lease: null }
        : { state: 'waiting', due_at: next, trouble, lease: null },
    )
    .execute()
  return next
}

/** Tries a mail that was given up from the beginning, to the address that the customer told last. */
export async function tryAgain(
  { db }: Store,
  clock: Clock,
  id: string,
  to: { readonly name: string; readonly address: string } | null,
): Promise<void> {
  const now = clock()
  await db
    .updateTable('mail')
    .set({
      state: 'waiting',
      tries: 0,
      tried_since: now,
      due_at: now,
      done_at: null,
      trouble: null,
      ...(to && { to_name: to.name, to_address: to.address }),
    })
    .where('id', '=', id)
    .where('state', '=', 'failed')
    .execute()
}
