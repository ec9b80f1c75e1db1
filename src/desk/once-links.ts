import { type Clock, days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newKey, sha256 } from '../base/ids.ts'
import type { Store } from '../store/open.ts'
import type { Db } from '../store/schema.ts'
import { accountRow, insertAccount, type NewAccount } from './accounts.ts'
import { type OpenedSession, openSession } from './sessions.ts'

/** `owner`: makes the first account. `password`: one person chooses a password. */
export type OncePurpose = 'owner' | 'password'

const purpose: OncePurpose = 'owner'
/** Milliseconds. */
export const onceLinkLasts = days(7)

/** A new token; earlier ones for the same end that were not used end with it. Only its hash is kept. */
export async function mintOnceLink(
  trx: Db,
  clock: Clock,
  to: { readonly purpose: OncePurpose; readonly account: string | null },
): Promise<string> {
  await endOnceLinks(trx, to)
  const token = newKey()
  const at = clock()
  await trx
    .insertInto('once_link')
    .values({
      token_hash: sha256(token),
      purpose: to.purpose,
      account_id: to.account,
      made_at: at,
      expires_at: at + onceLinkLasts,
      used_at: null,
    })
    .execute()
  return token
}

/** Ends the links to this end that nobody used. */
export async function endOnceLinks(
  trx: Db,
  to: { readonly purpose: OncePurpose; readonly account: string | null },
): Promise<void> {
  await trx
    .deleteFrom('once_link')
    .where('purpose', '=', to.purpose)
    .where('account_id', to.account === null ? 'is' : '=', to.account)
    .where('used_at', 'is', null)
    .execute()
}

async function anyAccount(db: Db): Promise<boolean> {
  return (await db.selectFrom('account').select('id').limit(1).executeTakeFirst()) !== undefined
}

/**
 * A token for the first account's page, or null where there is an account. An earlier one that was
 * not used ends, so that the newest line of the log is the one that works.
 */
export const ownerLink = (store: Store, clock: Clock): Promise<string | null> =>
  store.transaction(async (trx) =>
    (await anyAccount(trx)) ? null : mintOnceLink(trx, clock, { purpose, account: null }),
  )

/** Throws `link_unknown`, `once_link_used` or `link_expired`. */
export async function checkOwnerLink(db: Db, clock: Clock, token: string): Promise<void> {
  const link = await db
    .selectFrom('once_link')
    .select(['used_at', 'expires_at'])
    .where('token_hash', '=', sha256(token))
    .where('purpose', '=', purpose)
    .executeTakeFirst()
  if (!link) throw new Failure('link_unknown')
  if (link.used_at !== null || (await anyAccount(db))) throw new Failure('once_link_used')
  if (link.expires_at <= clock()) throw new Failure('link_expired')
}

/**
 * Makes the owner's account, uses the link up and opens a session: all or nothing. Of two that come
 * at once one gets `once_link_used`. Throws what `checkOwnerLink` and `accountRow` throw.
 */
export async function welcomeOwner(
  store: Store,
  clock: Clock,
  token: string,
  owner: Omit<NewAccount, 'role'>,
): Promise<OpenedSession> {
  await checkOwnerLink(store.db, clock, token)
  const account = await accountRow({ ...owner, role: 'owner' }, clock())
  return store.transaction(async (trx) => {
    // Every unused link is taken, so that two tokens of two starts wait for each other as well.
    const taken = await trx
      .updateTable('once_link')
      .set({ used_at: clock() })
      .where('purpose', '=', purpose)
      .where('used_at', 'is', null)
      .returning('token_hash')
      .execute()
    const ours = taken.some(({ token_hash }) => token_hash === sha256(token))
    if (!ours || (await anyAccount(trx))) throw new Failure('once_link_used')
    await insertAccount(trx, account)
    await trx
      .updateTable('once_link')
      .set({ account_id: account.id })
      .where('token_hash', '=', sha256(token))
      .execute()
    return openSession(trx, clock, account.id)
  })
}
