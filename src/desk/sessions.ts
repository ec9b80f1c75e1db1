import { timingSafeEqual } from 'node:crypto'
import { type Clock, days } from '../base/clock.ts'
import { newKey, sha256 } from '../base/ids.ts'
import type { Db, Role } from '../store/schema.ts'

const hours = (n: number): number => n * 60 * 60 * 1000

/** A session ends when nobody used it for `idle`, and after `whole` at the latest. Milliseconds. */
export const sessionLasts = { idle: hours(12), whole: days(7) } as const

/** Being seen is written at most this often: a page and its pictures are one visit. */
const seenEvery = 60 * 1000

export interface OpenedSession {
  /** For the cookie. Only its hash is stored. */
  readonly token: string
  readonly expiresAt: number
}

/** Who is at the desk, and what their forms must bring along. */
export interface Session {
  readonly account: { readonly id: string; readonly name: string; readonly role: Role }
  readonly csrf: string
}

const wasSeen = (db: Db, accountId: string, at: number) =>
  db.updateTable('account').set({ seen_at: at }).where('id', '=', accountId).execute()

/** Opens a session, and clears away those that have ended. */
export async function openSession(db: Db, clock: Clock, accountId: string): Promise<OpenedSession> {
  const token = newKey()
  const at = clock()
  const expiresAt = at + sessionLasts.whole
  await db.deleteFrom('session').where('expires_at', '<=', at).execute()
  await wasSeen(db, accountId, at)
  await db
    .insertInto('session')
    .values({
      token_hash: sha256(token),
      account_id: accountId,
      csrf: newKey(),
      made_at: at,
      seen_at: at,
      expires_at: expiresAt,
    })
    .execute()
  return { token, expiresAt }
}

/** The session behind a token; null where there is none, it has ended, or the account is closed. */
export async function sessionOf(db: Db, clock: Clock, token: string): Promise<Session | null> {
  const at = clock()
  const hash = sha256(token)
  const row = await db
    .selectFrom('session')
    .innerJoin('account', 'account.id', 'session.account_id')
    .select(['account.id', 'account.name', 'account.role', 'session.csrf', 'session.seen_at'])
    .where('session.token_hash', '=', hash)
    .where('session.expires_at', '>', at)
    .where('session.seen_at', '>', at - sessionLasts.idle)
    .where('account.disabled_at', 'is', null)
    .executeTakeFirst()
  if (!row) return null

  const { csrf, seen_at, ...account } = row
  if (at - seen_at >= seenEvery) {
    await db.updateTable('session').set({ seen_at: at }).where('token_hash', '=', hash).execute()
    await wasSeen(db, account.id, at)
  }
  return { account, csrf }
}

export async function closeSession(db: Db, token: string): Promise<void> {
  await db.deleteFrom('session').where('token_hash', '=', sha256(token)).execute()
}

/** Compares two secrets in a time that tells nothing of where they differ. */
export const sameSecret = (sent: string, kept: string): boolean =>
  timingSafeEqual(Buffer.from(sha256(sent)), Buffer.from(sha256(kept)))
