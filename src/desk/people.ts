import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newKey } from '../base/ids.ts'
import type { Store } from '../store/open.ts'
import { lockPeople } from '../store/rows.ts'
import type { AccountRow, Db, Role } from '../store/schema.ts'
import { accountRow, insertAccount, type NewAccount } from './accounts.ts'
import { endPasswordLinks, passwordLink } from './password-links.ts'

/** Somebody with an account, open or closed. */
export interface Person {
  readonly id: string
  readonly name: string
  readonly email: string
  readonly role: Role
  readonly madeAt: number
  /** To the minute; null: not yet, or before that was written down. */
  readonly seenAt: number | null
  readonly closedAt: number | null
  /** Has a link and has not chosen a password with it. */
  readonly invited: boolean
}

const invitedIds = async (db: Db): Promise<ReadonlySet<string>> => {
  const rows = await db
    .selectFrom('once_link')
    .select('account_id')
    .where('account_id', 'is not', null)
    .where('used_at', 'is', null)
    .execute()
  return new Set(rows.flatMap(({ account_id }) => account_id ?? []))
}

const isInvited = (row: Pick<AccountRow, 'id' | 'seen_at'>, invited: ReadonlySet<string>) =>
  row.seen_at === null && invited.has(row.id)

/** Everybody, open accounts first, by name. */
export async function people(db: Db): Promise<Person[]> {
  const invited = await invitedIds(db)
  const rows = await db.selectFrom('account').selectAll().orderBy('name').orderBy('id').execute()
  const all = rows.map((row) => ({
    id: row.id,
    name: row.name,
    email: row.email,
    role: row.role,
    madeAt: row.made_at,
    seenAt: row.seen_at,
    closedAt: row.disabled_at,
    invited: isInvited(row, invited),
  }))
  return all.toSorted((a, b) => Number(a.closedAt !== null) - Number(b.closedAt !== null))
}

/** More open accounts than any workshop has people: every one is on the page, and its name on the desk's others. */
export const mostPeople = 200

/** Asked while the owners' rows are held, so that those who add take turns. Throws `people_full` {most}. */
async function roomForOne(db: Db): Promise<void> {
  const { open } = await db
    .selectFrom('account')
    .select((eb) => eb.fn.countAll<number | string>().as('open'))
    .where('disabled_at', 'is', null)
    .executeTakeFirstOrThrow()
  if (Number(open) >= mostPeople) throw new Failure('people_full', { most: mostPeople })
}

/**
 * Makes an account and the link with which its person chooses a password: until then it has one that nobody knows.
 * Throws what `accountRow` throws, `email_taken`, or `people_full` {most}.
 */
export async function addPerson(
  store: Store,
  clock: Clock,
  person: Omit<NewAccount, 'password'>,
): Promise<{ readonly id: string; readonly token: string }> {
  const row = await accountRow({ ...person, password: newKey() }, clock())
  return store.transaction(async (trx) => {
    await lockPeople(trx, row.id)
    await roomForOne(trx)
    await insertAccount(trx, row)
    return { id: row.id, token: await passwordLink(trx, clock, row.id) }
  })
}

/** A new link for a new password; the old password holds until it is used. Throws `not_found` or `person_closed`. */
export const newPasswordLink = (store: Store, clock: Clock, id: string): Promise<string> =>
  store.transaction(async (trx) => {
    const row = (await lockPeople(trx, id)).find((one) => one.id === id)
    if (!row) throw new Failure('not_found')
    if (row.disabled_at !== null) throw new Failure('person_closed')
    return passwordLink(trx, clock, id)
  })

/** How an account stands: as a page showed it, or as it should be. */
export interface Stand {
  readonly role: Role
  readonly closed: boolean
}

const standOf = ({ role, disabled_at }: AccountRow): Stand => ({
  role,
  closed: disabled_at !== null,
})

const sameStand = (a: Stand, b: Stand): boolean => a.role === b.role && a.closed === b.closed

const isOpenOwner = ({ role, closed }: Stand): boolean => role === 'owner' && !closed

/**
 * Changes a role, closes an account or opens it again. Closing ends its sessions and links at once; nobody is
 * deleted, as decisions name them. The same sent twice is one change. Throws `not_found`, `person_changed` where it
 * stands otherwise than the page had `seen`, `last_owner` where no open owner who has a password would be left, or
 * `people_full` {most} where one more would be open than there is room for.
 */
export const changePerson = (
  store: Store,
  clock: Clock,
  id: string,
  { seen, to }: { readonly seen: Stand; readonly to: Stand },
): Promise<void> =>
  store.transaction(async (trx) => {
    const rows = await lockPeople(trx, id)
    const row = rows.find((one) => one.id === id)
    if (!row) throw new Failure('not_found')
    const stands = standOf(row)
    if (sameStand(stands, to)) return
    if (!sameStand(stands, seen)) throw new Failure('person_changed')
    if (isOpenOwner(stands) && !isOpenOwner(to)) {
      const invited = await invitedIds(trx)
      const left = rows.filter(
        (one) => one.id !== id && isOpenOwner(standOf(one)) && !isInvited(one, invited),
      )
      if (left.length === 0) throw new Failure('last_owner')
    }
    if (stands.closed && !to.closed) await roomForOne(trx)
    const disabled_at = to.closed ? (row.disabled_at ?? clock()) : null
    await trx
      .updateTable('account')
      .set({ role: to.role, disabled_at })
      .where('id', '=', id)
      .execute()
    if (!to.closed) return
    await trx.deleteFrom('session').where('account_id', '=', id).execute()
    await endPasswordLinks(trx, id)
  })
