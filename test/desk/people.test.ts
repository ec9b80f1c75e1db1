import fc from 'fast-check'
import { expect, test } from 'vitest'
import { days } from '../../src/base/clock.ts'
import { newId } from '../../src/base/ids.ts'
import { addAccount, signIn } from '../../src/desk/accounts.ts'
import { choosePassword, invitedBy } from '../../src/desk/password-links.ts'
import {
  addPerson,
  changePerson,
  mostPeople,
  newPasswordLink,
  people,
} from '../../src/desk/people.ts'
import { sessionOf } from '../../src/desk/sessions.ts'
import type { Store } from '../../src/store/open.ts'
import { type Role, roles } from '../../src/store/schema.ts'
import { eachStore, oneStore } from '../help/stores.ts'

const clock = () => 5_000_000
const password = 'seven spools of thread'
const ida = { email: 'ida@lantern-street.example', name: 'Ida', role: 'owner' as const }
const bo = { email: 'bo@lantern-street.example', name: 'Bo', role: 'bench' as const }

const open = (role: Role) => ({ role, closed: false })
const closed = (role: Role) => ({ role, closed: true })

/** One fewer than there is room for; the first is an owner. */
const helpers = () =>
  Array.from({ length: mostPeople - 1 }, (_, n) => ({
    id: newId(),
    email: `${n}@lantern-street.example`,
    name: `Helper ${n}`,
    role: n === 0 ? ('owner' as const) : ('bench' as const),
    password_hash: '',
    made_at: clock(),
  }))

const codesOf = (tries: readonly PromiseSettledResult<unknown>[]) =>
  tries.flatMap((one) => (one.status === 'rejected' ? [one.reason.code] : []))

eachStore('people of the workshop', (store) => {
  test('a person who is added chooses a password by the link, and is let in with it', async () => {
    const { id, token } = await addPerson(store(), clock, bo)
    expect(await people(store().db)).toMatchObject([{ id, invited: true, seenAt: null, ...bo }])
    expect(await invitedBy(store().db, clock, token)).toEqual({ name: bo.name, email: bo.email })
    const { token: session } = await choosePassword(store(), clock, token, password)
    expect(await sessionOf(store().db, clock, session)).toMatchObject({
      account: { id, role: 'bench' },
    })
    await signIn(store(), clock, { email: bo.email, password })
    expect(await people(store().db)).toMatchObject([{ invited: false, seenAt: clock() }])
  })

  test('the store holds neither link nor password', async () => {
    const { token } = await addPerson(store(), clock, bo)
    await choosePassword(store(), clock, token, password)
    const rows = [
      await store().db.selectFrom('once_link').selectAll().execute(),
      await store().db.selectFrom('account').selectAll().execute(),
    ]
    expect(JSON.stringify(rows)).not.toContain(token)
    expect(JSON.stringify(rows)).not.toContain(password)
  })

  test('a link works once, for a week, until there is a newer one', async () => {
    const { id, token } = await addPerson(store(), clock, bo)
    const later = () => clock() + days(7)
    await expect(choosePassword(store(), later, token, password)).rejects.toMatchObject({
      code: 'link_expired',
    })
    const newer = await newPasswordLink(store(), clock, id)
    await expect(choosePassword(store(), clock, token, password)).rejects.toMatchObject({
      code: 'link_unknown',
    })
    const tries = await Promise.allSettled(
      ['first one of these', 'second one of these'].map((one) =>
        choosePassword(store(), clock, newer, one),
      ),
    )
    expect(codesOf(tries)).toEqual(['once_link_used'])
  })

  test('a new password ends the sessions of the old one, and a refused one changes nothing', async () => {
    const first = await addPerson(store(), clock, bo)
    const session = await choosePassword(store(), clock, first.token, password)
    const token = await newPasswordLink(store(), clock, first.id)
    await expect(choosePassword(store(), clock, token, 'short')).rejects.toMatchObject({
      code: 'password_too_short',
    })
    expect(await sessionOf(store().db, clock, session.token)).not.toBeNull()
    await choosePassword(store(), clock, token, 'another needle case')
    expect(await sessionOf(store().db, clock, session.token)).toBeNull()
    await expect(signIn(store(), clock, { email: bo.email, password })).rejects.toMatchObject({
      code: 'sign_in_wrong',
    })
  })

  test('closing ends sessions and links at once; opened again, the password holds', async () => {
    await addAccount(store(), clock, { ...ida, password })
    const { id, token } = await addPerson(store(), clock, bo)
    const session = await choosePassword(store(), clock, token, password)
    const link = await newPasswordLink(store(), clock, id)
    await changePerson(store(), clock, id, { seen: open('bench'), to: closed('bench') })
    expect(await sessionOf(store().db, clock, session.token)).toBeNull()
    expect(await invitedBy(store().db, clock, link)).toBeNull()
    await expect(newPasswordLink(store(), clock, id)).rejects.toMatchObject({
      code: 'person_closed',
    })
    await changePerson(store(), clock, id, { seen: closed('bench'), to: open('bench') })
    expect(await sessionOf(store().db, clock, session.token)).toBeNull()
    await signIn(store(), clock, { email: bo.email, password })
  })

  test('two owners who close each other at once leave one', async () => {
    const a = await addAccount(store(), clock, { ...ida, password })
    const b = await addAccount(store(), clock, { ...ida, email: 'b@shop.example', password })
    for (let round = 0; round < 5; round += 1) {
      const tries = await Promise.allSettled(
        [a.id, b.id].map((id, n) =>
          changePerson(store(), clock, id, {
            seen: open('owner'),
            to: n === 0 ? closed('owner') : open('staff'),
          }),
        ),
      )
      expect(codesOf(tries)).toEqual(['last_owner'])
      const left = await people(store().db)
      expect(left.filter((one) => one.role === 'owner' && one.closedAt === null)).toHaveLength(1)
      await store().db.updateTable('account').set({ role: 'owner', disabled_at: null }).execute()
    }
  })

  test('an owner who has not chosen a password does not count as one who is left', async () => {
    const { id } = await addAccount(store(), clock, { ...ida, password })
    const second = await addPerson(store(), clock, { ...bo, role: 'owner' })
    const lower = () => changePerson(store(), clock, id, { seen: open('owner'), to: open('staff') })
    await expect(lower()).rejects.toMatchObject({ code: 'last_owner' })
    await choosePassword(store(), clock, second.token, password)
    await lower()
  })

  test('of two changes made from the same page the second is told, and the same twice is one', async () => {
    await addAccount(store(), clock, { ...ida, password })
    const { id } = await addPerson(store(), clock, bo)
    const to = (stand: ReturnType<typeof open>) =>
      changePerson(store(), clock, id, { seen: open('bench'), to: stand })
    await to(open('staff'))
    await to(open('staff'))
    await expect(to(closed('bench'))).rejects.toMatchObject({ code: 'person_changed' })
    await expect(to(open('owner'))).rejects.toMatchObject({ code: 'person_changed' })
    await expect(
      changePerson(store(), clock, 'nobody', { seen: open('bench'), to: open('staff') }),
    ).rejects.toMatchObject({ code: 'not_found' })
  })

  test('an address belongs to one person, however it is typed', async () => {
    await addPerson(store(), clock, bo)
    await expect(
      addPerson(store(), clock, { ...bo, email: ' BO@Lantern-Street.example ' }),
    ).rejects.toMatchObject({ code: 'email_taken' })
  })

  test('those who add at one time take turns: there is room for one', async () => {
    await store().db.insertInto('account').values(helpers()).execute()
    let ready = 0
    let begin = () => {}
    const together = new Promise<void>((resolve) => {
      begin = resolve
    })
    const gathered: Store = {
      ...store(),
      transaction: async (body) => {
        ready += 1
        if (ready === 8) begin()
        await together
        return store().transaction(body)
      },
    }
    const added = await Promise.allSettled(
      Array.from({ length: 8 }, (_, n) =>
        addPerson(gathered, clock, { ...bo, email: `bo-${n}@lantern-street.example` }),
      ),
    )
    expect(codesOf(added)).toEqual(Array(7).fill('people_full'))
    expect(await people(store().db)).toHaveLength(mostPeople)
  })

  test('there is room for so many open accounts, and closing one makes room for another', async () => {
    const { id } = await addPerson(store(), clock, bo)
    await store().db.insertInto('account').values(helpers()).execute()
    const full = { code: 'people_full', details: { most: mostPeople } }
    await expect(addPerson(store(), clock, ida)).rejects.toMatchObject(full)
    await changePerson(store(), clock, id, { seen: open('bench'), to: closed('bench') })
    await addPerson(store(), clock, ida)
    await expect(
      changePerson(store(), clock, id, { seen: closed('bench'), to: open('bench') }),
    ).rejects.toMatchObject(full)
    expect(await people(store().db)).toHaveLength(mostPeople + 1)
  })
})

oneStore('any row of changes', (store) => {
  test('never leaves the workshop without an open owner', async () => {
    const stand = fc.record({ role: fc.constantFrom(...roles), closed: fc.boolean() })
    const steps = fc.array(fc.record({ who: fc.nat(2), to: stand }), { maxLength: 12 })
    await fc.assert(
      fc.asyncProperty(steps, async (all) => {
        await store().db.deleteFrom('account').execute()
        const ids: string[] = []
        for (const [n, role] of (['owner', 'owner', 'staff'] as const).entries()) {
          const id = `person-${n}`
          await store()
            .db.insertInto('account')
            .values({
              id,
              email: `${id}@shop.example`,
              name: id,
              role,
              password_hash: '',
              made_at: 1,
              disabled_at: null,
              seen_at: 1,
            })
            .execute()
          ids.push(id)
        }
        for (const { who, to } of all) {
          const id = ids[who]!
          const now = (await people(store().db)).find((one) => one.id === id)!
          const seen = { role: now.role, closed: now.closedAt !== null }
          await changePerson(store(), clock, id, { seen, to }).catch((error) =>
            expect(error.code).toBe('last_owner'),
          )
          const left = await people(store().db)
          expect(
            left.filter((one) => one.role === 'owner' && one.closedAt === null).length,
          ).toBeGreaterThan(0)
        }
      }),
      { numRuns: 25 },
    )
  })
})
