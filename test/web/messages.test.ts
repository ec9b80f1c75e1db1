import { expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { addAccount, signIn } from '../../src/desk/accounts.ts'
import { mailsOf } from '../../src/desk/mail/mails.ts'
import { remindNow } from '../../src/desk/mail/reminders.ts'
import { openSender } from '../../src/desk/mail/sender.ts'
import { queue, queueLists } from '../../src/desk/queue.ts'
import type { Letter } from '../../src/mail/letter.ts'
import type { Role } from '../../src/store/schema.ts'
import { sessionCookie } from '../../src/web/desk/cookies.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, leadTo, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const minute = 60 * 1000
const day = 24 * 60 * minute
const start = Date.UTC(2026, 5, 1, 9)

eachStore('messages', (store) => {
  const clock = { now: start }
  const now = () => clock.now

  /** Runs a test with a workshop in which Marta works. */
  async function at(work: (shop: Workshop, marta: Visitor) => Promise<void>): Promise<void> {
    clock.now = start
    const shop = await openWorkshop(store(), now)
    try {
      await work(shop, await person(shop, 'Marta', 'staff'))
    } finally {
      await shop.close()
    }
  }

  async function person(shop: Workshop, name: string, role: Role): Promise<Visitor> {
    const password = 'needle and thimble'
    const email = `${name.toLowerCase()}@lantern-street.example`
    await addAccount(store(), now, { name, email, role, password })
    const { token } = await signIn(store(), now, { email, password })
    const visitor = new Visitor(shop.app)
    visitor.cookies.set(sessionCookie, token)
    return visitor
  }

  const flannel = { name: said("Dad's blue flannel"), kind: said('button-shirt') }

  const ask = async (who: Visitor, text: string, item = '1', pile = 1) => {
    await who.get(`/desk/piles/${pile}/messages`)
    return who.post(`/desk/piles/${pile}/messages`, {
      text,
      item,
      asks: '1',
      idem: `ask-${text}`.replace(/\W/g, '').padEnd(8, 'x'),
    })
  }

  const write = (customer: Visitor, key: string, fields: Record<string, string>) =>
    customer.postRaw(`/i/${key}/messages`, fields)

  /** How many questions of the first pile's customer the queue shows, in any of its lists. */
  async function questions(): Promise<number> {
    for (const list of queueLists) {
      const { piles } = await queue(store().db, { list, page: 1, at: now() })
      if (piles[0]) return piles[0].openNotes
    }
    throw new Error('the pile is in no list')
  }

  const rows = () => store().db.selectFrom('message').selectAll().orderBy('at').execute()

  test('staff ask about a garment, the customer answers on their page, and the queue tells it', () =>
    at(async (shop, marta) => {
      const key = await confirmPile(shop.conversation, [flannel])
      const asked = await ask(marta, 'Is it stretchy?')
      expect(asked).toMatchObject({ status: 303, to: '/desk/piles/1#thread-1' })
      expect((await mailsOf(store().db, { state: null, page: 1, now: now() })).mails).toMatchObject(
        [{ template: 'question', state: 'waiting', to: { address: 'ana@ruiz.example' } }],
      )

      const customer = new Visitor(shop.app)
      const page = (await customer.get(`/i/${key}`)).body
      expect(page).toContain("Marta asks about Dad's blue flannel")
      expect(page).toContain('Is it stretchy?')
      expect(await questions()).toBe(0)

      const answer = { item: '1', text: 'Not at all 李', idem: customer.field('idem') }
      expect(await write(customer, key, answer)).toMatchObject({
        status: 303,
        to: `/i/${key}?told=message#messages`,
      })
      expect((await customer.get(`/i/${key}?told=message`)).body).toContain(
        'Your message is with us',
      )
      // A double tap, and a page that was sent once more.
      expect((await write(customer, key, answer)).status).toBe(303)
      expect((await rows()).length).toBe(2)

      expect(await questions()).toBe(1)
      expect((await marta.get('/desk')).body).toContain('1 question for us')
      expect((await marta.get('/desk/messages')).body).toContain('Not at all 李')
      expect((await marta.get('/desk/piles/1')).body).toContain('Waits for us')

      await ask(marta, 'Thank you!')
      expect(await questions()).toBe(0)
      expect((await marta.get('/desk/messages')).body).toContain('No customer waits')
    }))

  test('a question is shown in the language of the pile and of who reads', () =>
    at(async (shop, marta) => {
      const key = await confirmPile(shop.conversation, [flannel])
      await shop.conversation.speak(key, 'es')
      await ask(marta, '¿Es elástica?')
      expect((await new Visitor(shop.app).get(`/i/${key}`)).body).toContain(
        "Marta pregunta sobre Dad's blue flannel",
      )
      expect((await marta.get('/desk/piles/1?lang=es')).body).toContain('Espera al cliente')
      expect((await mailsOf(store().db, { state: null, page: 1, now: now() })).mails).toMatchObject(
        [{ subject: "Lantern Street Quilts: una pregunta sobre Dad's blue flannel" }],
      )
    }))

  test('a note that was left to a person is answered and settled by a message, also in an open intake', () =>
    at(async (shop, marta) => {
      const key = await leadTo('review', shop.conversation, [
        { ...flannel, details: { asked: 'Can the pocket stay whole?' } },
      ])
      expect((await marta.get('/desk')).body).toContain('href="/desk/piles/1/messages"')
      const before = (await marta.get('/desk/piles/1/messages')).body
      expect(before).toContain('Can the pocket stay whole?')
      expect(before).not.toContain('/settle')
      const sent = await ask(marta, 'Yes, it can.')
      expect(sent.to).toBe('/desk/piles/1/messages#thread-1')
      const note = await store().db.selectFrom('note').selectAll().executeTakeFirstOrThrow()
      expect(note.settled_at).not.toBeNull()
      const page = (await new Visitor(shop.app).get(`/i/${key}/messages`)).body
      expect(page).toContain('Can the pocket stay whole?')
      expect(page).toContain('Yes, it can.')
      // Wherever the intake stands, it says that somebody asks.
      expect((await new Visitor(shop.app).get(`/i/${key}`)).body).toContain(
        `href="/i/${key}/messages"`,
      )
    }))

  test('asking sends its reason to the customer where the box is ticked, and once', () =>
    at(async (shop, marta) => {
      await confirmPile(shop.conversation, [flannel, flannel])
      const decide = async (n: number, fields: Record<string, string>) => {
        await marta.get('/desk/piles/1')
        return marta.post(`/desk/piles/1/garments/${n}/decision`, { seen: '0', ...fields })
      }
      const sending = { verdict: 'ask', reason: 'Is the collar torn?', send: '1' }
      expect((await decide(1, sending)).status).toBe(303)
      expect((await decide(1, sending)).status).toBe(303)
      expect((await decide(2, { verdict: 'ask', reason: 'For ourselves' })).status).toBe(303)
      expect(
        (await decide(2, { ...sending, verdict: 'decline', seen: String(clock.now + day) })).status,
      ).toBe(303)
      expect(await rows()).toMatchObject([
        { item: 1, text: 'Is the collar torn?', wants_answer: 1 },
      ])
    }))

  test('a refused message comes back with what was typed, to both', () =>
    at(async (shop, marta) => {
      const key = await confirmPile(shop.conversation, [flannel])
      await ask(marta, 'Is it stretchy?')
      const customer = new Visitor(shop.app)
      const long = 'x'.repeat(2001)
      const tooLong = await write(customer, key, { item: '1', text: long, form: 'answer-1' })
      expect(tooLong.status).toBe(422)
      expect(tooLong.body).toContain(long)
      expect(tooLong.body).toMatch(/aria-invalid="true"/)
      expect((await write(customer, key, { item: '', text: ' \u200b ' })).status).toBe(422)
      expect((await write(customer, key, { text: '李'.repeat(2000) })).status).toBe(303)

      await marta.get('/desk/piles/1/messages')
      const refused = await marta.post('/desk/piles/1/messages', {
        text: long,
        item: '1',
        asks: '1',
      })
      expect(refused.status).toBe(422)
      expect(refused.body).toContain(long)
      expect(refused.body).toContain('selected')
    }))

  test('what is written stays text on every page', () =>
    at(async (shop, marta) => {
      const key = await confirmPile(shop.conversation, [flannel])
      const evil = '<script>alert(1)</script>'
      await ask(marta, `${evil}\u202e`)
      await write(new Visitor(shop.app), key, { text: evil })
      for (const [who, url] of [
        [new Visitor(shop.app), `/i/${key}`],
        [new Visitor(shop.app), `/i/${key}/messages`],
        [marta, '/desk/piles/1'],
        [marta, '/desk/piles/1/messages'],
        [marta, '/desk/messages'],
        [marta, '/desk/mails'],
      ] as const) {
        const { body, status } = await who.get(url)
        expect([url, status]).toEqual([url, 200])
        expect(body).toContain('&lt;script')
        expect(body).not.toContain('<script>alert')
        expect(body).not.toContain('\u202e')
      }
    }))

  test('one pile’s customer neither sees nor answers another’s', () =>
    at(async (shop, marta) => {
      const mine = await confirmPile(shop.conversation, [flannel])
      const theirs = await confirmPile(shop.conversation, [flannel, flannel, flannel])
      await ask(marta, 'Only for the second', '3', 2)
      const customer = new Visitor(shop.app)
      expect((await customer.get(`/i/${mine}/messages`)).body).not.toContain('Only for the second')
      // Garment 3 is the other pile's: this one has none.
      expect((await write(customer, mine, { item: '3', text: 'Mine' })).status).toBe(404)
      expect((await ask(marta, 'Nor by staff', '3', 1)).status).toBe(404)
      expect((await write(customer, 'A'.repeat(32), { text: 'Mine' })).status).toBe(404)
      expect((await rows()).map(({ text }) => text)).toEqual(['Only for the second'])
      const [{ id } = { id: '' }] = await rows()
      await write(new Visitor(shop.app), theirs, { item: '3', text: 'Answer' })
      await marta.get('/desk/piles/1/messages')
      const answer = (await rows()).at(-1)!
      expect((await marta.post(`/desk/piles/1/messages/${answer.id}/settle`, {})).status).toBe(404)
      expect((await marta.post(`/desk/piles/2/messages/${id}/settle`, {})).status).toBe(404)
      expect((await marta.post(`/desk/piles/2/messages/${answer.id}/settle`, {})).status).toBe(303)
    }))

  test('the bench sees neither messages nor mails', () =>
    at(async (shop) => {
      await confirmPile(shop.conversation, [flannel])
      const bench = await person(shop, 'Beni', 'bench')
      for (const url of ['/desk/mails', '/desk/messages', '/desk/piles/1/messages']) {
        expect((await bench.get(url)).status).toBe(403)
      }
    }))

  const letters: Letter[] = []
  const sendAll = (shop: Workshop) =>
    openSender(
      {
        store: store(),
        knowledge: shop.knowledge,
        clock: now,
        post: {
          way: 'smtp',
          send: async (letter) => {
            letters.push(letter)
            return { sent: true }
          },
        },
        log: openLog('silent'),
        url: 'https://quilts.example',
      },
      () => Promise.resolve(),
    ).round()

  const remind = (shop: Workshop) =>
    remindNow({ store: store(), knowledge: shop.knowledge, clock: now, log: openLog('silent') })

  test('questions that are asked within a few minutes go in one mail, and no later than the first may wait', () =>
    at(async (shop, marta) => {
      letters.length = 0
      const key = await confirmPile(shop.conversation, [flannel, { kind: said('sweatshirt') }])
      await confirmPile(shop.conversation, [flannel])
      await ask(marta, 'Is it stretchy?')
      clock.now += 2 * minute
      await ask(marta, 'Whose <b>was</b> it?\r\nBcc: all@quilts.example', '2')
      // The same form once more, and a question to somebody else.
      await ask(marta, 'Whose <b>was</b> it?\r\nBcc: all@quilts.example', '2')
      await ask(marta, 'Is yours soft?', '1', 2)
      clock.now += 2 * minute
      await ask(marta, 'And the pocket?')
      await sendAll(shop)
      expect(letters).toEqual([])
      clock.now += minute
      await sendAll(shop)
      const [letter, ...others] = letters
      expect(others).toEqual([])
      expect(letter!.subject).toBe('Lantern Street Quilts: 3 questions about your pile')
      const quotes = letter!.parts.flatMap((part) => (part.kind === 'quote' ? [part.text] : []))
      expect(quotes).toEqual([
        'Is it stretchy?',
        'Whose <b>was</b> it?\nBcc: all@quilts.example',
        'And the pocket?',
      ])
      expect(letter!.parts.filter(({ kind }) => kind === 'link')).toHaveLength(1)
      const listed = (await marta.get('/desk/mails')).body
      for (const text of ['Whose &lt;b>was&lt;/b> it?', 'And the pocket?']) {
        expect(listed).toContain(text)
      }
      // One that is asked after the mail went out begins another; the other pile's had its own.
      await ask(marta, 'One more thing?')
      clock.now += 5 * minute
      await sendAll(shop)
      expect(letters.slice(1).map(({ subject }) => subject)).toEqual([
        "Lantern Street Quilts: a question about Dad's blue flannel",
        "Lantern Street Quilts: a question about Dad's blue flannel",
      ])
      // Each is remembered by itself.
      letters.length = 0
      clock.now += 5 * day
      await remind(shop)
      await sendAll(shop)
      expect(letters).toHaveLength(5)
      expect(key).not.toBe('')
    }))

  test('a question without an answer is remembered twice, an answered one no more', () =>
    at(async (shop, marta) => {
      letters.length = 0
      const key = await confirmPile(shop.conversation, [flannel])
      await ask(marta, 'Is it stretchy?')
      clock.now += 5 * minute
      await sendAll(shop)
      clock.now += 4 * day - 5 * minute - 1000
      expect(await remind(shop)).toBe(0)
      clock.now += 2000
      expect(await Promise.all([remind(shop), remind(shop)])).toEqual(
        expect.arrayContaining([1, 0]),
      )
      clock.now += 4 * day
      expect(await remind(shop)).toBe(1)
      clock.now += 30 * day
      expect(await remind(shop)).toBe(0)
      await sendAll(shop)
      expect(letters.map(({ stopHref }) => stopHref !== null)).toEqual([false, true, true])
      expect(letters[1]!.subject).toContain('we still wait')

      await ask(marta, 'And the collar?')
      await write(new Visitor(shop.app), key, { item: '1', text: 'It is fine' })
      clock.now += 30 * day
      expect(await remind(shop)).toBe(0)
    }))

  test('a customer who left an intake alone is reminded, until they stop it with one POST', () =>
    at(async (shop) => {
      letters.length = 0
      await leadTo('review', shop.conversation, [flannel])
      await shop.conversation.start('en')
      clock.now += 7 * day + 1
      expect(await remind(shop)).toBe(1)
      await sendAll(shop)
      const [letter] = letters
      const link = letter!.parts.find((part) => part.kind === 'link' && part.href.includes('/i/'))
      const opened = await new Visitor(shop.app).get(
        (link as { href: string }).href.replace('https://quilts.example', ''),
      )
      expect(opened.status).toBe(200)

      const path = letter!.stopHref!.replace('https://quilts.example', '')
      const page = await new Visitor(shop.app).get(path)
      expect(page.body).toContain('Stop these reminders')
      // As a mail program sends it (RFC 8058, 3.2): no cookie, no page, either kind of form.
      const oneClick = await shop.app.inject({
        method: 'POST',
        url: path,
        headers: { 'content-type': 'application/x-www-form-urlencoded' },
        payload: 'List-Unsubscribe=One-Click',
      })
      expect(oneClick.statusCode).toBe(200)
      const multipart = await shop.app.inject({
        method: 'POST',
        url: path,
        headers: { 'content-type': 'multipart/form-data; boundary=x' },
        payload:
          '--x\r\nContent-Disposition: form-data; name="List-Unsubscribe"\r\n\r\nOne-Click\r\n--x--\r\n',
      })
      expect(multipart.statusCode).toBe(200)
      clock.now += 7 * day
      expect(await remind(shop)).toBe(0)

      // What answers the customer is sent all the same.
      const olga = await person(shop, 'Olga', 'owner')
      expect((await ask(olga, 'Is it stretchy?')).status).toBe(303)
      clock.now += 5 * minute
      expect(await sendAll(shop)).toBe(1)

      const visitor = new Visitor(shop.app)
      expect((await visitor.get(path)).body).toContain('No more reminders')
      expect((await visitor.postRaw(path, { reminders: 'again' })).to).toBe(path)
      expect((await visitor.get(path)).body).toContain('Stop these reminders')
      expect((await visitor.get(`/stop/${'A'.repeat(16)}`)).status).toBe(404)
    }))

  test('the desk lists mails by state, tries one again and takes its link back', () =>
    at(async (shop, marta) => {
      letters.length = 0
      await confirmPile(shop.conversation, [flannel])
      await ask(marta, 'Is it stretchy?')
      await store()
        .db.updateTable('mail')
        .set({ state: 'failed', trouble: 'EENVELOPE 550', tries: 3, done_at: now() })
        .execute()
      const failed = (await marta.get('/desk/mails?state=failed')).body
      expect(failed).toContain('Given up')
      expect(failed).toContain('EENVELOPE 550')
      expect(failed).toContain('ana@ruiz.example')
      const [again] = /\/desk\/mails\/[\w-]+\/again/.exec(failed)!
      expect((await marta.post(again, {})).to).toBe('/desk/mails?state=waiting')
      await sendAll(shop)
      const sent = (await marta.get('/desk/mails?state=nonsense&lang=es')).body
      expect(sent).toContain('Enviado')
      const [revoke] = /\/desk\/mails\/[\w-]+\/revoke/.exec(sent)!
      const { href } = letters[0]!.parts.find((part) => part.kind === 'link') as { href: string }
      const path = href.replace('https://quilts.example', '')
      expect((await new Visitor(shop.app).get(path)).status).toBe(200)
      expect((await marta.post(revoke, {})).status).toBe(303)
      expect((await new Visitor(shop.app).get(path)).status).toBe(404)
    }))
})
