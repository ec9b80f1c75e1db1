import { expect, test } from 'vitest'
import { days } from '../../src/base/clock.ts'
import { sha256 } from '../../src/base/ids.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import {
  closeSession,
  openSession,
  sameSecret,
  sessionLasts,
  sessionOf,
} from '../../src/desk/sessions.ts'
import type { Store } from '../../src/store/open.ts'
import { eachStore } from '../help/stores.ts'

const minute = 60_000
const start = Date.UTC(2026, 2, 2, 9)
const at = (ms: number) => () => start + ms

async function signedIn(store: Store) {
  const { id } = await addAccount(store, at(0), {
    email: 'marta@lantern-street.example',
    name: 'Marta',
    role: 'staff',
    password: 'needle and thimble',
  })
  const { token } = await openSession(store.db, at(0), id)
  return { id, token }
}

test.each([
  ['the same', 'thread', 'thread', true],
  ['another', 'thread', 'threads', false],
  ['none', '', 'thread', false],
])('%s secret compares so', (_, sent, kept, same) => {
  expect(sameSecret(sent, kept)).toBe(same)
})

eachStore('sessions', (store) => {
  test('a session says who is at the desk', async () => {
    const { id, token } = await signedIn(store())
    expect(await sessionOf(store().db, at(minute), token)).toMatchObject({
      account: { id, name: 'Marta', role: 'staff' },
    })
  })

  test('the store never holds what is in the cookie', async () => {
    const { token } = await signedIn(store())
    const rows = await store().db.selectFrom('session').selectAll().execute()
    expect(JSON.stringify(rows)).not.toContain(token)
    expect(rows[0]!.token_hash).toBe(sha256(token))
  })

  test('a session that nobody uses for twelve hours has ended', async () => {
    const { token } = await signedIn(store())
    expect(await sessionOf(store().db, at(sessionLasts.idle), token)).toBeNull()
  })

  test('a session that is used goes on', async () => {
    const { token } = await signedIn(store())
    for (let hour = 11; hour < 40; hour += 11) {
      expect(await sessionOf(store().db, at(hour * 60 * minute), token)).not.toBeNull()
    }
  })

  test('a session ends after seven days however much it is used', async () => {
    const { token } = await signedIn(store())
    for (let hour = 0; hour < 7 * 24; hour += 8) {
      expect(await sessionOf(store().db, at(hour * 60 * minute), token)).not.toBeNull()
    }
    expect(await sessionOf(store().db, at(days(7)), token)).toBeNull()
  })

  test('signing out ends this session and no other', async () => {
    const { id, token } = await signedIn(store())
    const other = await openSession(store().db, at(0), id)
    await closeSession(store().db, token)
    expect(await sessionOf(store().db, at(minute), token)).toBeNull()
    expect(await sessionOf(store().db, at(minute), other.token)).not.toBeNull()
  })

  test('a closed account is signed out at once', async () => {
    const { id, token } = await signedIn(store())
    await store().db.updateTable('account').set({ disabled_at: 1 }).where('id', '=', id).execute()
    expect(await sessionOf(store().db, at(minute), token)).toBeNull()
  })

  test.each([[''], ['x'], ["' or '1'='1"], ['\u0000']])('%j is no session', async (token) => {
    await signedIn(store())
    expect(await sessionOf(store().db, at(0), token)).toBeNull()
  })

  test('sessions that have ended are cleared away when the next one opens', async () => {
    const { id } = await signedIn(store())
    await openSession(store().db, at(days(8)), id)
    expect(await store().db.selectFrom('session').select('made_at').execute()).toHaveLength(1)
  })
})
