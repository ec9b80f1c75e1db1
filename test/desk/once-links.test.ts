import { expect, test } from 'vitest'
import { days } from '../../src/base/clock.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { checkOwnerLink, ownerLink, welcomeOwner } from '../../src/desk/once-links.ts'
import { sessionOf } from '../../src/desk/sessions.ts'
import { eachStore } from '../help/stores.ts'

const clock = () => 1_000
const owner = {
  email: 'owner@lantern-street.example',
  name: 'Ida',
  password: 'a needle in the hay',
}

eachStore('the first owner', (store) => {
  test('a start without an account gives a link, one with an account none', async () => {
    expect(await ownerLink(store(), clock)).toMatch(/^[\w-]{32}$/)
    await addAccount(store(), clock, { ...owner, role: 'owner' })
    expect(await ownerLink(store(), clock)).toBeNull()
  })

  test('the store never holds the link itself', async () => {
    const token = (await ownerLink(store(), clock))!
    const rows = await store().db.selectFrom('once_link').selectAll().execute()
    expect(JSON.stringify(rows)).not.toContain(token)
  })

  test('a new start ends the link of the one before', async () => {
    const first = (await ownerLink(store(), clock))!
    const second = (await ownerLink(store(), clock))!
    await expect(checkOwnerLink(store().db, clock, first)).rejects.toMatchObject({
      code: 'link_unknown',
    })
    await checkOwnerLink(store().db, clock, second)
  })

  test('the link makes an owner and signs in', async () => {
    const token = (await ownerLink(store(), clock))!
    const session = await welcomeOwner(store(), clock, token, owner)
    expect(await sessionOf(store().db, clock, session.token)).toMatchObject({
      account: { name: 'Ida', role: 'owner' },
    })
  })

  test('the link works once', async () => {
    const token = (await ownerLink(store(), clock))!
    await welcomeOwner(store(), clock, token, owner)
    await expect(
      welcomeOwner(store(), clock, token, { ...owner, email: 'thief@elsewhere.example' }),
    ).rejects.toMatchObject({ code: 'once_link_used' })
    expect(await store().db.selectFrom('account').select('email').execute()).toEqual([
      { email: owner.email },
    ])
  })

  test('of ten who use it at once one becomes the owner', async () => {
    const token = (await ownerLink(store(), clock))!
    const tries = await Promise.allSettled(
      Array.from({ length: 10 }, (_, n) =>
        welcomeOwner(store(), clock, token, { ...owner, email: `n${n}@lantern-street.example` }),
      ),
    )
    expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    const refused = tries.flatMap((one) => (one.status === 'rejected' ? [one.reason.code] : []))
    expect(refused).toEqual(Array(9).fill('once_link_used'))
    expect(await store().db.selectFrom('account').select('id').execute()).toHaveLength(1)
  })

  test('a refused form leaves the link as it was', async () => {
    const token = (await ownerLink(store(), clock))!
    await expect(
      welcomeOwner(store(), clock, token, { ...owner, password: 'short' }),
    ).rejects.toMatchObject({ code: 'password_too_short' })
    await welcomeOwner(store(), clock, token, owner)
  })

  test('the link runs out after a week', async () => {
    const token = (await ownerLink(store(), clock))!
    await expect(checkOwnerLink(store().db, () => clock() + days(7), token)).rejects.toMatchObject({
      code: 'link_expired',
    })
  })

  test('a guessed link opens nothing', async () => {
    await ownerLink(store(), clock)
    await expect(welcomeOwner(store(), clock, 'x'.repeat(32), owner)).rejects.toMatchObject({
      code: 'link_unknown',
    })
  })

  test('an account made on the command line closes the link', async () => {
    const token = (await ownerLink(store(), clock))!
    await addAccount(store(), clock, { ...owner, role: 'owner' })
    await expect(
      welcomeOwner(store(), clock, token, { ...owner, email: 'late@elsewhere.example' }),
    ).rejects.toMatchObject({ code: 'once_link_used' })
  })
})
