import { expect, test } from 'vitest'
import { addAccount, signIn } from '../../src/desk/accounts.ts'
import { hashPassword, passwordHolds } from '../../src/desk/passwords.ts'
import { eachStore } from '../help/stores.ts'

const clock = () => 1_000
const marta = {
  email: 'Marta@Lantern-Street.example ',
  name: '  Marta   Quill ',
  role: 'staff' as const,
  password: 'needle and thimble',
}

test('a password is kept as Argon2id with 19 MiB, two passes and one lane', async () => {
  // OWASP Password Storage Cheat Sheet: m=19456 (19 MiB), t=2, p=1; the string form is that of PHC.
  expect(await hashPassword('needle and thimble')).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
})

test('the same password never gives the same hash twice', async () => {
  expect(await hashPassword('needle and thimble')).not.toBe(
    await hashPassword('needle and thimble'),
  )
})

test('a letter typed as one character or as two is the same password', async () => {
  // RFC 8265 and NIST SP 800-63B ask to normalise before hashing; é is U+00E9 or U+0065 U+0301.
  const hash = await hashPassword('cafe\u0301 con leche')
  expect(await passwordHolds(hash, 'caf\u00e9 con leche')).toBe(true)
})

test.each([
  ['nine signs', '🧵🧵🧵🧵🧵🧵🧵🧵🧵', 'password_too_short'],
  ['nothing', '', 'password_too_short'],
  ['201 letters', 'a'.repeat(201), 'password_too_long'],
])('%s make no password', async (_, password, code) => {
  await expect(hashPassword(password)).rejects.toMatchObject({ code })
})

test.each([
  ['ten signs', '🧵🧵🧵🧵🧵🧵🧵🧵🧵🧵'],
  ['200 letters', 'é'.repeat(200)],
])('%s make a password', async (_, password) => {
  expect(await passwordHolds(await hashPassword(password), password)).toBe(true)
})

test('no password is that of an account that is not there', async () => {
  expect(await passwordHolds(null, 'no account has this password')).toBe(false)
})

eachStore('accounts', (store) => {
  test('an account is found by its address however that is written', async () => {
    const { id } = await addAccount(store(), clock, marta)
    await signIn(store(), clock, {
      email: 'marta@lantern-street.EXAMPLE',
      password: 'needle and thimble',
    })
    const row = await store().db.selectFrom('session').select('account_id').executeTakeFirst()
    expect(row).toEqual({ account_id: id })
  })

  test('a name is kept tidy', async () => {
    await addAccount(store(), clock, marta)
    const row = await store().db.selectFrom('account').select(['name', 'email']).executeTakeFirst()
    expect(row).toEqual({ name: 'Marta Quill', email: 'marta@lantern-street.example' })
  })

  test('one address has one account', async () => {
    await addAccount(store(), clock, marta)
    await expect(addAccount(store(), clock, { ...marta, name: 'Other' })).rejects.toMatchObject({
      code: 'email_taken',
    })
  })

  test.each([
    ['no name', { name: ' \u200b ' }, 'name_missing'],
    ['a name of 121 letters', { name: 'a'.repeat(121) }, 'answer_too_long'],
    ['an address without a place', { email: 'marta' }, 'email_not_valid'],
    ['a short password', { password: 'short' }, 'password_too_short'],
  ])('%s makes no account', async (_, wrong, code) => {
    await expect(addAccount(store(), clock, { ...marta, ...wrong })).rejects.toMatchObject({ code })
    expect(await store().db.selectFrom('account').select('id').execute()).toEqual([])
  })

  test('a wrong password, an unknown address and a closed account are refused alike', async () => {
    const { id } = await addAccount(store(), clock, marta)
    const tries = [
      { email: marta.email, password: 'needle and thimbles' },
      { email: 'nobody@lantern-street.example', password: marta.password },
      { email: "' or 1=1 --", password: marta.password },
    ]
    for (const one of tries) {
      await expect(signIn(store(), clock, one)).rejects.toMatchObject({ code: 'sign_in_wrong' })
    }
    await store().db.updateTable('account').set({ disabled_at: 5 }).where('id', '=', id).execute()
    await expect(signIn(store(), clock, marta)).rejects.toMatchObject({ code: 'sign_in_wrong' })
    expect(await store().db.selectFrom('session').select('account_id').execute()).toEqual([])
  })
})
