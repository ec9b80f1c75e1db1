import { afterAll, beforeAll, expect, test } from 'vitest'
import { sha256 } from '../../src/base/ids.ts'
import { formOf } from '../help/agreeing.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { photoOf } from '../help/kept-photo.ts'
import { oneStore } from '../help/stores.ts'
import { leadTo, openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 12)

oneStore('what is kept of a customer', (store) => {
  let shop: Workshop
  beforeAll(async () => {
    shop = await openWorkshop(store(), clock)
  })
  afterAll(() => shop?.close())

  const pileOf = async (key: string) => (await shop.conversation.open(key)).row.id

  test('stands on a page of their own, for how long by the shop file, in both languages', async () => {
    const key = await shop.conversation.start('en')
    const customer = new Visitor(shop.app)
    expect((await customer.get(`/i/${key}/keep`)).body).toContain(`/i/${key}/yours`)
    const { keeping } = shop.knowledge.shop
    for (const code of ['en', 'es']) {
      await shop.conversation.speak(key, code)
      const { say } = shop.knowledge.languages.get(code)!
      const { status, body } = await customer.get(`/i/${key}/yours`)
      expect(status).toBe(200)
      expect(body).toContain(say('yours.kinds.finished_days'))
      expect(body).toContain(say('yours.days', { days: keeping.finished_days }))
    }
  })

  test('is erased when they tick and say so: rows, photos and the link', async () => {
    const key = await leadTo('confirmed', shop.conversation, [{}])
    const id = await pileOf(key)
    const hash = await shop.photos.keep(photoOf('shirt'))
    await store()
      .db.insertInto('photo')
      .values({
        id: 'p1',
        pile_id: id,
        item: 1,
        question: 'photos',
        hash,
        width: 1,
        height: 1,
        bytes: 1,
        kept: 1,
        at: 1,
      })
      .execute()
    const customer = new Visitor(shop.app)
    const path = `/i/${key}/erase`
    const fields = formOf((await customer.get(`/i/${key}/yours`)).body, path)

    const unticked = await customer.postRaw(path, fields)
    expect(unticked.status).toBe(422)
    expect(await pileOf(key)).toBe(id)

    const done = await customer.postRaw(path, { ...fields, sure: 'yes' })
    expect(done.status).toBe(200)
    expect(done.body).not.toContain(key)
    expect(await store().db.selectFrom('act').selectAll().execute()).toEqual([])
    await expect(shop.photos.open(hash, 'thumb')).rejects.toMatchObject({ code: 'not_found' })
    expect(await store().db.selectFrom('erasure').selectAll().execute()).toEqual([
      { what_hash: sha256(id), what: 'pile', by_whom: 'customer', at: clock() },
    ])
    expect((await customer.get(`/i/${key}`)).status).toBe(404)
  })

  test('stays while a garment is in the house, and the page says why', async () => {
    const key = await leadTo('confirmed', shop.conversation, [{}])
    const moved = { kind: 'garment', code: 'A1-1', place: 'shelf', since: 1, last_seq: 1 }
    const customer = new Visitor(shop.app)
    const path = `/i/${key}/erase`
    const fields = formOf((await customer.get(`/i/${key}/yours`)).body, path)
    await store()
      .db.insertInto('custody')
      .values({
        ...moved,
        pile_id: await pileOf(key),
        subject: '1',
        state: 'received',
        whereabouts: 'here',
      })
      .execute()
    const { say } = shop.knowledge.languages.get('en')!
    const refused = await customer.postRaw(path, { ...fields, sure: 'yes' })
    expect(refused.status).toBe(409)
    expect(refused.body).toContain(say('yours.kept.here'))
    expect(refused.body).not.toContain(path)
    expect((await customer.get(`/i/${key}`)).status).toBe(200)
  })
})
