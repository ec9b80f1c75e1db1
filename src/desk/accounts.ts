import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { lengthOf, longestEmail, longestName } from '../flow/sense.ts'
import { cleanLine, isEmail } from '../flow/text.ts'
import type { Store } from '../store/open.ts'
import type { AccountRow, Db, Role } from '../store/schema.ts'
import { isTaken } from '../store/trouble.ts'
import { hashPassword, passwordHolds } from './passwords.ts'
import { type OpenedSession, openSession } from './sessions.ts'

export interface NewAccount {
  readonly email: string
  readonly name: string
  readonly role: Role
  readonly password: string
}

/** How an address is stored and looked up. */
export const plainEmail = (email: string): string => cleanLine(email).toLowerCase()

/**
 * An account's row, checked and with its password hashed. Throws `name_missing`, `answer_too_long`
 * {longest}, `email_not_valid`, `password_too_short` {shortest} or `password_too_long` {longest}.
 */
export async function accountRow(account: NewAccount, at: number): Promise<AccountRow> {
  const name = cleanLine(account.name)
  const email = plainEmail(account.email)
  if (name === '') throw new Failure('name_missing')
  if (lengthOf(name) > longestName) throw new Failure('answer_too_long', { longest: longestName })
  if (!isEmail(email) || lengthOf(email) > longestEmail) throw new Failure('email_not_valid')
  return {
    id: newId(),
    email,
    name,
    role: account.role,
    password_hash: await hashPassword(account.password),
    made_at: at,
    disabled_at: null,
    seen_at: null,
  }
}

/** Throws `email_taken` where another account has the address. */
export async function insertAccount(db: Db, row: AccountRow): Promise<void> {
  try {
    await db.insertInto('account').values(row).execute()
  } catch (error) {
    throw isTaken(error) ? new Failure('email_taken') : error
  }
}

/** Makes an account. Throws what `accountRow` throws, or `email_taken`. */
export async function addAccount(
  store: Store,
  clock: Clock,
  account: NewAccount,
): Promise<{ id: string }> {
  const row = await accountRow(account, clock())
  await insertAccount(store.db, row)
  return { id: row.id }
}

/**
 * Opens a session. Throws `sign_in_wrong`, the same and after the same work, whether the address is
 * unknown, the password wrong or the account closed.
 */
export async function signIn(
  store: Store,
  clock: Clock,
  { email, password }: { email: string; password: string },
): Promise<OpenedSession> {
  const account = await store.db
    .selectFrom('account')
    .select(['id', 'password_hash', 'disabled_at'])
    .where('email', '=', plainEmail(email))
    .executeTakeFirst()
  const holds = await passwordHolds(account?.password_hash ?? null, password)
  if (!account || !holds || account.disabled_at !== null) throw new Failure('sign_in_wrong')
  return openSession(store.db, clock, account.id)
}

/** Names by the ids of their accounts, of those who left too. */
export async function accountNames(db: Db): Promise<ReadonlyMap<string, string>> {
  const rows = await db.selectFrom('account').select(['id', 'name']).execute()
  return new Map(rows.map(({ id, name }) => [id, name]))
}
