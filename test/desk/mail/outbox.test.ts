import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openLog } from '../../../src/base/log.ts'
import type { MailQuotas } from '../../../src/desk/mail/mail-quotas.ts'
import { mailsOf, revokeLinks, setReminders } from '../../../src/desk/mail/mails.ts'
import { leaseMs, markSent, takeDue, tryAgain } from '../../../src/desk/mail/outbox.ts'
import { type MailToQueue, queueMail } from '../../../src/desk/mail/queue-mail.ts'
import { openSender } from '../../../src/desk/mail/sender.ts'
import { triedFor } from '../../../src/desk/mail/waits.ts'
import { pileOfKey } from '../../../src/intake/rows.ts'
import type { Letter } from '../../../src/mail/letter.ts'
import { openMailFolder, openSmtp, type Post } from '../../../src/mail/post.ts'
import type { Store } from '../../../src/store/open.ts'
import { type MailServer, openMailServer } from '../../help/smtp.ts'
import { eachStore } from '../../help/stores.ts'
import { confirmPile, openWorkshop, type Script, type Workshop } from '../../help/workshop.ts'

const url = 'https://quilts.example'
const start = Date.UTC(2026, 5, 1, 9)
const minute = 60_000

eachStore('the outbox', (store) => {
  const clock = { now: start }
  const now = () => clock.now
  let shop: Workshop
  let server: MailServer

  beforeEach(async () => {
    clock.now = start
    shop = await openWorkshop(store(), now)
    server = await openMailServer()
  })
  afterEach(async () => {
    await server.close()
    await shop.close()
  })

  const senderBy = (post: Post, over: Store = store(), log: string[] = [], quotas?: MailQuotas) =>
    openSender(
      {
        store: over,
        knowledge: shop.knowledge,
        clock: now,
        post,
        log: openLog('info', { write: (line: string) => void log.push(line) }),
        url,
        ...(quotas && { quotas }),
      },
      () => Promise.resolve(),
    )

  async function pileOf(about: Script = {}) {
    const key = await confirmPile(shop.conversation, [{}], about)
    return { key, row: (await shop.conversation.open(key)).row }
  }

  const queue = (pile: MailToQueue['pile'], changed: Partial<MailToQueue> = {}) =>
    store().transaction((trx) =>
      queueMail(trx, shop.knowledge, {
        pile,
        template: 'question',
        gaps: { who: 'Marta', about: 'the blue flannel' },
        quote: 'Is it stretchy?',
        once: 'test 1',
        at: now(),
        ...changed,
      }),
    )

  test('mails beyond the day’s number wait for the next day, none is lost, others go out', async () => {
    const one = await pileOf()
    const other = await pileOf({
      contact: { given: { name: 'Odo Tinderly', email: 'odo@tinderly.example', phone: '' } },
    })
    for (const nth of ['first', 'second', 'third']) await queue(one.row, { once: nth })
    await queue(other.row)
    const quotas = { perAddress: 2, perDay: 100 }
    const sender = senderBy(openSmtp(server.url), store(), [], quotas)
    expect(await sender.round()).toBe(4)
    const to = () => server.arrived.map((mail) => mail.to[0]).sort()
    expect(to()).toEqual(['ana@ruiz.example', 'ana@ruiz.example', 'odo@tinderly.example'])
    const waits = await store()
      .db.selectFrom('mail')
      .select(['state', 'tries', 'trouble', 'due_at'])
      .where('state', '!=', 'sent')
      .execute()
    const tomorrow = Date.UTC(2026, 5, 2)
    expect(waits).toEqual([{ state: 'waiting', tries: 0, trouble: 'quota', due_at: tomorrow }])
    clock.now = tomorrow
    expect(await sender.round()).toBe(1)
    expect(to()).toHaveLength(4)
    // Nowhere in the counts does an address stand.
    const counts = await store().db.selectFrom('use_count').select('what').execute()
    expect(JSON.stringify(counts)).not.toContain('ruiz')
  })

  test('a mail that was queued arrives once, and its link opens the pile until it is taken back', async () => {
    const { row } = await pileOf()
    expect(await queue(row)).toBe('queued')
    expect(await queue(row)).toBe('again')
    const sender = senderBy(openSmtp(server.url))
    expect(await sender.round()).toBe(1)
    expect(await sender.round()).toBe(0)

    expect(server.arrived.length).toBe(1)
    const { mail, to } = server.arrived[0]!
    expect(to).toEqual(['ana@ruiz.example'])
    expect(mail.subject).toBe('Lantern Street Quilts: a question about the blue flannel')
    expect(mail.text).toContain('> Is it stretchy?')
    const key = /https:\/\/quilts\.example\/i\/([\w-]{32})\/messages/.exec(mail.text!)![1]!
    expect((await pileOfKey(store().db, key, now)).id).toBe(row.id)

    const listed = await mailsOf(store().db, { state: null, page: 1, now: now() })
    expect(listed.counts).toEqual({ waiting: 0, sending: 0, sent: 1, failed: 0 })
    expect(listed.mails[0]).toMatchObject({ state: 'sent', tries: 1, way: 'smtp', linkLives: true })
    // Neither the key nor a link with it is kept.
    expect(JSON.stringify(await store().db.selectFrom('mail').selectAll().execute())).not.toContain(
      key,
    )

    await revokeLinks(store().db, listed.mails[0]!.id, now())
    await expect(pileOfKey(store().db, key, now)).rejects.toThrow('link_unknown')
    const after = await mailsOf(store().db, { state: 'sent', page: 9, now: now() })
    expect(after).toMatchObject({ page: 1, mails: [{ linkLives: false }] })
  })

  test('a mail is in the language of its pile', async () => {
    const { key } = await pileOf()
    await shop.conversation.speak(key, 'es')
    const { row } = await shop.conversation.open(key)
    await queue(row, { gaps: { who: 'Marta', about: 'la camisa de 李' } })
    await senderBy(openSmtp(server.url)).round()
    const { mail } = server.arrived[0]!
    expect(mail.subject).toBe('Lantern Street Quilts: una pregunta sobre la camisa de 李')
    expect(mail.headers.get('content-language')).toBe('es')
    expect(mail.text).toContain('Hola, Ana Ruiz:')
    expect(mail.html).toContain('Hola, Ana Ruiz:')
  })

  test('nothing is sent of what did not come to be', async () => {
    const { row } = await pileOf()
    const failing = store().transaction(async (trx) => {
      await queueMail(trx, shop.knowledge, {
        pile: row,
        template: 'message',
        gaps: { who: 'Marta', about: 'x' },
        once: 'test',
        at: now(),
      })
      throw new Error('the rest failed')
    })
    await expect(failing).rejects.toThrow('the rest failed')
    expect(await senderBy(openSmtp(server.url)).round()).toBe(0)
  })

  test('a customer without an address gets no mail, and one who stopped reminders none of these', async () => {
    const open = await shop.conversation.open(await shop.conversation.start('en'))
    expect(await queue(open.row)).toBe('no_address')

    const { row } = await pileOf()
    await setReminders(store().db, row.id, false, now())
    await setReminders(store().db, row.id, false, now())
    expect(await queue(row, { template: 'remind_open', once: 'a' })).toBe('stopped')
    expect(await queue(row, { template: 'message', once: 'b' })).toBe('queued')
    await setReminders(store().db, row.id, true, now())
    expect(await queue(row, { template: 'remind_open', once: 'a' })).toBe('queued')
    await senderBy(openSmtp(server.url)).round()
    const [first, second] = server.arrived
      .map(({ raw }) => raw.includes('List-Unsubscribe: <https://quilts.example/stop/'))
      .sort()
    expect([first, second]).toEqual([false, true])
  })

  test('while the server is away a mail waits longer and longer, and then arrives once', async () => {
    const { row } = await pileOf()
    await queue(row)
    const log: string[] = []
    const away = senderBy(openSmtp('smtp://127.0.0.1:1'), store(), log)
    const waits: number[] = []
    for (let i = 0; i < 9; i++) {
      expect(await away.round()).toBe(1)
      expect(await away.round()).toBe(0)
      const { due_at } = await store()
        .db.selectFrom('mail')
        .select('due_at')
        .executeTakeFirstOrThrow()
      waits.push((due_at - clock.now) / minute)
      clock.now = due_at
    }
    expect(waits).toEqual([1, 5, 15, 30, 60, 120, 240, 360, 360])
    expect(await senderBy(openSmtp(server.url)).round()).toBe(1)
    expect(server.arrived.length).toBe(1)
    const { mails } = await mailsOf(store().db, { state: 'sent', page: 1, now: now() })
    expect(mails[0]).toMatchObject({ tries: 10, trouble: null })
    expect(log.length).toBe(9)
    expect(log.join('')).not.toMatch(/ruiz|Ana|@/)
  })

  test('a mail that was queued by a clock that was ahead goes out, once, and its tries wait as others do', async () => {
    const { row } = await pileOf()
    await queue(row, { at: now() + 30 * 24 * 60 * minute })
    await queue(row, { at: now() + 5 * minute, once: 'test 2' })
    const away = senderBy(openSmtp('smtp://127.0.0.1:1'))
    expect(await away.round()).toBe(1)
    expect(await away.round()).toBe(0)
    const sender = senderBy(openSmtp(server.url))
    clock.now += 4 * minute
    expect(await sender.round()).toBe(1)
    expect(server.arrived).toHaveLength(1)
    clock.now += 2 * minute
    expect(await sender.round()).toBe(1)
    expect(server.arrived).toHaveLength(2)
  })

  test('what cannot be sent for four days is given up, and may be tried again to a new address', async () => {
    const { row } = await pileOf()
    await queue(row)
    const away = senderBy(openSmtp('smtp://127.0.0.1:1'))
    const state = () => store().db.selectFrom('mail').selectAll().executeTakeFirstOrThrow()
    while ((await state()).state === 'waiting') {
      clock.now = (await state()).due_at
      await away.round()
    }
    // RFC 5321, 4.5.4.1: "the give-up time generally needs to be at least 4-5 days".
    expect(clock.now - start).toBeGreaterThan(triedFor - 6 * 60 * minute)
    expect(clock.now - start).toBeLessThanOrEqual(triedFor)
    expect(await state()).toMatchObject({ state: 'failed', trouble: expect.stringMatching(/^E/) })

    const { id } = await state()
    await tryAgain(store(), now, id, { name: 'Ana', address: 'new@ruiz.example' })
    await senderBy(openSmtp(server.url)).round()
    expect(server.arrived.map(({ to }) => to)).toEqual([['new@ruiz.example']])
    // What was sent is not sent again.
    await tryAgain(store(), now, id, null)
    expect(await senderBy(openSmtp(server.url)).round()).toBe(0)
  })

  test('a refusal that lasts is given up at once', async () => {
    const { row } = await pileOf()
    await queue(row)
    server.unknown = 'ana@ruiz.example'
    await senderBy(openSmtp(server.url)).round()
    const { mails } = await mailsOf(store().db, { state: 'failed', page: 1, now: now() })
    expect(mails).toMatchObject([{ tries: 1, trouble: 'EENVELOPE 550' }])
  })

  test('several senders on one store send each mail once', async () => {
    const { row } = await pileOf()
    const queued = Array.from({ length: 25 }, (_, i) => `many ${i}`)
    for (const once of queued) await queue(row, { once, quote: once })
    const sent: string[] = []
    const slow: Post = {
      way: 'smtp',
      send: async ({ parts }: Letter) => {
        await new Promise((resolve) => setTimeout(resolve, 3))
        sent.push(parts.find(({ kind }) => kind === 'quote')!.text)
        return { sent: true }
      },
    }
    const senders = Array.from({ length: 4 }, () => senderBy(slow))
    while (sent.length < queued.length) {
      await Promise.all(senders.map((sender) => sender.round()))
    }
    expect(sent.toSorted()).toEqual(queued.toSorted())
  })

  test('a mail whose sender died is sent by another, and the dead one has no say any more', async () => {
    const { row } = await pileOf()
    await queue(row)
    const dead = (await takeDue(store(), now()))!
    const sender = senderBy(openSmtp(server.url))
    expect(await sender.round()).toBe(0)
    clock.now += leaseMs
    expect(await sender.round()).toBe(1)
    await store().db.updateTable('mail').set({ done_at: 1 }).execute()
    await markSent(store(), dead, { way: 'smtp', now: now() })
    const { mails } = await mailsOf(store().db, { state: 'sent', page: 1, now: now() })
    expect(mails).toMatchObject([{ doneAt: 1, tries: 2 }])
  })

  test('a mail keeps its Message-ID from try to try', async () => {
    const { row } = await pileOf()
    await queue(row)
    const ids: string[] = []
    const failing: Post = {
      way: 'smtp',
      send: async ({ id }) => {
        ids.push(id)
        return { sent: false, trouble: 'ETIMEDOUT', lasting: false }
      },
    }
    await senderBy(failing).round()
    clock.now += minute
    await senderBy(failing).round()
    expect(ids[1]).toBe(ids[0])
    const { id } = await store().db.selectFrom('mail').select('id').executeTakeFirstOrThrow()
    expect(ids[0]).not.toContain(id)
  })

  test('what somebody wrote begins no line of a header, and turns no word around', async () => {
    const { row } = await pileOf({
      contact: {
        given: { name: 'Ana\r\nBcc: x@evil.example', email: 'ana@ruiz.example', phone: '' },
      },
    })
    await queue(row, {
      gaps: { who: 'Marta\nCc: y@evil.example', about: `\u202eeulb\u202c ${'x'.repeat(500)}` },
      quote: '<script>alert(1)</script>\u202e',
    })
    await senderBy(openSmtp(server.url)).round()
    const { mail, raw } = server.arrived[0]!
    expect(raw).not.toMatch(/^(bcc|cc):/im)
    expect([...mail.subject!].length).toBe(150)
    expect(raw + mail.subject + mail.text).not.toMatch(/[\u202a-\u202e]/)
    expect(mail.html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;')
  })

  test('without a mail server each mail is a file', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'pieceworth-mail-'))
    try {
      const { row } = await pileOf()
      await queue(row)
      await senderBy(openMailFolder(folder)).round()
      expect(readdirSync(folder)).toEqual([expect.stringMatching(/^[0-9a-f]{32}\.eml$/)])
    } finally {
      rmSync(folder, { recursive: true })
    }
  })

  test('a sender that is closed ends its mail and begins no other', async () => {
    const { row } = await pileOf()
    await queue(row, { once: 'a' })
    await queue(row, { once: 'b' })
    let under = () => {}
    const begun = new Promise<void>((resolve) => {
      under = resolve
    })
    let go = () => {}
    const held = new Promise<void>((resolve) => {
      go = resolve
    })
    let sent = 0
    const sender = senderBy({
      way: 'smtp',
      send: async () => {
        under()
        await held
        sent += 1
        return { sent: true }
      },
    })
    sender.start()
    await begun
    const closing = sender.close()
    go()
    await closing
    expect(sent).toBe(1)
    const { counts } = await mailsOf(store().db, { state: null, page: 1, now: now() })
    expect(counts).toEqual({ waiting: 1, sending: 0, sent: 1, failed: 0 })
  })
})
