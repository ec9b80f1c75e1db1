import { expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { triesPerAccount, usualQuotas } from '../../src/web/quotas.ts'
import { SharedCounts } from '../../src/web/use-limits.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { eachStore } from '../help/stores.ts'
import { openWorkshop, type Workshop, type WorkshopOptions } from '../help/workshop.ts'

const start = Date.UTC(2026, 5, 1, 9, 20)
const marta = { email: 'marta@lantern-street.example', password: 'needle and thimble' }
const html = { accept: 'text/html' }

eachStore('limits that several processes share', (store) => {
  /** Two products over one store, as two processes are. */
  const pair = async (
    work: (one: Workshop, two: Workshop, clock: { now: number }) => Promise<void>,
    options: WorkshopOptions = {},
  ) => {
    const clock = { now: start }
    const one = await openWorkshop(store(), () => clock.now, options)
    const two = await openWorkshop(store(), () => clock.now, options)
    try {
      await work(one, two, clock)
    } finally {
      await one.close()
      await two.close()
    }
  }

  const account = () => addAccount(store(), () => start, { ...marta, name: 'Marta', role: 'owner' })

  const guess = async (workshop: Workshop, from: string, email = marta.email) => {
    const visitor = new Visitor(workshop.app, { from })
    await visitor.get('/desk/sign-in')
    return visitor.post('/desk/sign-in', { email, password: 'a guess' })
  }

  test('tries to sign in count together, and in the next quarter of an hour anew', () =>
    pair(async (one, two, clock) => {
      await account()
      for (let n = 0; n < 10; n += 1) {
        expect((await guess(n % 2 ? one : two, '192.0.2.1')).status).toBe(401)
      }
      for (const workshop of [one, two]) {
        const held = await guess(workshop, '192.0.2.1')
        expect(held.status).toBe(429)
        expect(held.body).toContain('Please wait 10 minutes')
      }
      expect((await guess(one, '192.0.2.2')).status).toBe(401)
      clock.now += 10 * 60_000
      expect((await guess(two, '192.0.2.1')).status).toBe(401)
    }))

  // OWASP ASVS 4.0.3, 2.2.1: no more than 100 failed attempts per hour on a single account.
  test('an account is guessed at no more than a hundred times an hour, from wherever', () =>
    pair(async (one, two) => {
      await account()
      for (let n = 2; n < triesPerAccount; n += 1) await two.app.quotas.signIn(marta.email)
      // Every try comes from somewhere else.
      expect((await guess(one, '198.51.100.1')).status).toBe(401)
      expect((await guess(two, '198.51.100.2')).status).toBe(401)
      const held = await guess(two, '198.51.100.3')
      expect(held.status).toBe(429)
      expect(held.body).toContain('Please wait 40 minutes')
      expect((await guess(one, '203.0.113.1', 'ivo@lantern-street.example')).status).toBe(401)
    }))

  test('a session that one of them opened is known to the other, and ends in both', () =>
    pair(async (one, two) => {
      await account()
      const visitor = new Visitor(one.app)
      await visitor.get('/desk/sign-in')
      await visitor.post('/desk/sign-in', marta)
      const elsewhere = new Visitor(two.app)
      for (const [cookie, value] of visitor.cookies) elsewhere.cookies.set(cookie, value)
      expect((await elsewhere.get('/desk')).status).toBe(200)
      expect((await elsewhere.post('/desk/sign-out', {})).status).toBe(303)
      expect((await visitor.get('/desk')).status).toBe(303)
    }))

  test('new intakes are counted by address and in all, and refused with when to try again', () =>
    pair(
      async (one, two, clock) => {
        const begin = (workshop: Workshop, from: string) =>
          workshop.app.inject({
            method: 'POST',
            url: '/i',
            payload: { lang: 'es' },
            remoteAddress: from,
            headers: { ...html, 'accept-language': 'es' },
          })
        expect((await begin(one, '192.0.2.1')).statusCode).toBe(303)
        expect((await begin(two, '192.0.2.1')).statusCode).toBe(303)
        const refused = await begin(one, '192.0.2.1')
        expect(refused.statusCode).toBe(429)
        expect(refused.headers['retry-after']).toBe(String(40 * 60))
        expect(refused.body).toContain('data-code="too_many_intakes"')
        expect(refused.body).toContain('40 minutos')
        // One network of a household: the same first 64 bits (RFC 6177).
        expect((await begin(one, '2001:db8:1:2::1')).statusCode).toBe(303)
        expect((await begin(two, '2001:db8:1:2::2')).statusCode).toBe(303)
        // Now the day is full for everybody.
        const full = await begin(two, '192.0.2.9')
        expect(full.statusCode).toBe(429)
        expect(full.headers['retry-after']).toBe(String((24 - 9) * 3600 - 20 * 60))
        clock.now += 24 * 60 * 60_000
        expect((await begin(two, '192.0.2.9')).statusCode).toBe(303)
        const piles = await store().db.selectFrom('pile').select('id').execute()
        expect(piles).toHaveLength(5)
      },
      { quotas: { ...usualQuotas, intakesPerAddress: 2, intakesPerDay: 4 } },
    ))

  test('all requests of one address are added up once a second, where it asks a lot', async () => {
    const parts = { store: store(), clock: () => start, log: openLog('silent') }
    const [one, two] = [new SharedCounts(parts), new SharedCounts(parts)]
    try {
      const ask = (counts: SharedCounts, times: number, key = '192.0.2.1') => {
        let current = 0
        for (let n = 0; n < times; n += 1) ({ current } = counts.count(key, 60_000, 1_000))
        return current
      }
      expect(ask(one, 600)).toBe(600)
      expect(ask(two, 500)).toBe(500)
      ask(one, 9, '192.0.2.2')
      await one.share()
      await two.share()
      expect(ask(two, 1)).toBe(1_101)
      expect(ask(one, 1)).toBe(601)
      await two.share()
      await one.share()
      expect(ask(one, 1)).toBe(1_103)
      // Who asks little is told to nobody.
      expect(await store().db.selectFrom('use_count').select('uses').execute()).toHaveLength(1)
    } finally {
      one.close()
      two.close()
    }
  })
})
