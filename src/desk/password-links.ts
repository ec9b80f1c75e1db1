import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { sha256 } from '../base/ids.ts'
import type { Store } from '../store/open.ts'
import type { Db } from '../store/schema.ts'
import { endOnceLinks, mintOnceLink, type OncePurpose } from './once-links.ts'
import { hashPassword } from './passwords.ts'
import { type OpenedSession, openSession } from './sessions.ts'

const purpose: OncePurpose = 'password'

/** Who a link is for. */
export interface Invited {
  readonly name: string
  readonly email: string
}

/** A token with which this person chooses a password; an earlier one that was not used ends. */
export const passwordLink = (trx: Db, clock: Clock, account: string): Promise<string> =>
  mintOnceLink(trx, clock, { purpose, account })

export const endPasswordLinks = (trx: Db, account: string): Promise<void> =>
  endOnceLinks(trx, { purpose, account })

/** Null where the token is of no such link, or its person's account is closed. Throws `once_link_used` or `link_expired`. */
export async function invitedBy(db: Db, clock: Clock, token: string): Promise<Invited | null> {
  const link = await db
    .selectFrom('once_link')
    .innerJoin('account', 'account.id', 'once_link.account_id')
    .select(['account.name', 'account.email', 'once_link.used_at', 'once_link.expires_at'])
    .where('once_link.token_hash', '=', sha256(token))
    .where('once_link.purpose', '=', purpose)
    .where('account.disabled_at', 'is', null)
    .executeTakeFirst()
  if (!link) return null
  if (link.used_at !== null) throw new Failure('once_link_used')
  if (link.expires_at <= clock()) throw new Failure('link_expired')
  return { name: link.name, email: link.email }
}

/**
 * Gives the link's person this password, uses the link up, ends every session they had and opens a new one: all or
 * nothing. Throws `link_unknown`, `once_link_used`, `link_expired`, `password_too_short` or `password_too_long`.
 */
export async function choosePassword(
  store: Store,
  clock: Clock,
  token: string,
  password: string,
): Promise<OpenedSession> {
  if (!(await invitedBy(store.db, clock, token))) throw new Failure('link_unknown')
  const password_hash = await hashPassword(password)
  return store.transaction(async (trx) => {
    const link = await trx
      .updateTable('once_link')
      .set({ used_at: clock() })
      .where('token_hash', '=', sha256(token))
      .where('purpose', '=', purpose)
      .where('used_at', 'is', null)
      .returning('account_id')
      .executeTakeFirst()
    if (!link) throw new Failure('once_link_used')
    const account = await trx
      .updateTable('account')
      .set({ password_hash })
      .where('id', '=', link.account_id)
      .where('disabled_at', 'is', null)
      .returning('id')
      .executeTakeFirst()
    if (!account) throw new Failure('link_unknown')
    await trx.deleteFrom('session').where('account_id', '=', account.id).execute()
    return openSession(trx, clock, account.id)
  })
}
