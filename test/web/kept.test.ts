import { strFromU8, unzipSync } from 'fflate'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Role } from '../../src/store/schema.ts'
import { formOf } from '../help/agreeing.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { photoOf } from '../help/kept-photo.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { leadTo, openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 12)
const forTheWorkshop = 'only the workshop reads this'

oneStore('what is kept of a customer', (store) => {
  let shop: Workshop
  beforeAll(async () => {
    shop = await openWorkshop(store(), clock)
  })
  afterAll(() => shop?.close())

  const person = (name: string, role: Role) => signedIn(store(), clock, shop.app, { name, role })
  const rowOf = async (key: string) => (await shop.conversation.open(key)).row
  const photosThere = () =>
    store().db.selectFrom('photo').select(['id', 'hash', 'label']).orderBy('id').execute()

  /** A confirmed pile with photos by the question that each answers. */
  async function pileWith(photos: Readonly<Record<string, string>>): Promise<string> {
    const key = await leadTo('confirmed', shop.conversation, [{}])
    const { id: pile_id } = await rowOf(key)
    for (const [id, question] of Object.entries(photos)) {
      const hash = await shop.photos.keep(photoOf(id))
      const row = { id, pile_id, item: 1, question, hash, width: 1, height: 1, bytes: 1 }
      const more = { kept: 1, at: 1, label: '{"words":"wool"}' } as const
      await store()
        .db.insertInto('photo')
        .values({ ...row, ...more })
        .execute()
    }
    return key
  }

  const bytesOf = async (url: string) => {
    const answer = await shop.app.inject({ url })
    return { status: answer.statusCode, bytes: answer.rawPayload, headers: answer.headers }
  }

  // The file is read by another implementation of the ZIP format (APPNOTE.TXT, PKWARE) than the one that writes it.
  test('is given as one file: what they said, its photos, and nothing of others or of the workshop', async () => {
    const key = await pileWith({ mine: 'photos', ours: 'custody' })
    await pileWith({ another: 'photos' })
    const { id: pile_id, number } = await rowOf(key)
    const { db } = store()
    await person('Tilda', 'staff')
    const { id: who } = await db.selectFrom('account').select('id').executeTakeFirstOrThrow()
    const staff = { pile_id, item: 1, verdict: 'take', who, at: 2 }
    await db
      .insertInto('decision')
      .values({ ...staff, id: 'd1', reason: forTheWorkshop })
      .execute()

    const { status, bytes, headers } = await bytesOf(`/i/${key}/yours.zip`)
    expect(status).toBe(200)
    expect(headers['content-disposition']).toBe(`attachment; filename="pile-${number}.zip"`)
    const files = unzipSync(bytes)
    expect(Object.keys(files).sort()).toEqual([
      'photos/mine.jpg',
      'photos/ours.jpg',
      'pile.json',
      'read-me.txt',
    ])
    expect(strFromU8(files['photos/mine.jpg']!)).toBe('mine')
    const text = strFromU8(files['pile.json']!)
    const { tables } = JSON.parse(text)
    expect(tables.pile).toEqual([expect.objectContaining({ number, status: 'confirmed' })])
    expect(tables.act).toHaveLength((await shop.conversation.open(key)).entries.length)
    expect(tables.act[0].act).toMatchObject({ act: 'answer' })
    expect(tables.decision).toEqual([{ id: 'd1', item: 1, verdict: 'take', who: 'staff', at: 2 }])
    expect(tables.photo.map(({ id }: { id: string }) => id).sort()).toEqual(['mine', 'ours'])
    for (const not of [forTheWorkshop, who, key, 'another', 'idem', 'key_hash'])
      expect(text).not.toContain(not)
    expect((await bytesOf('/i/nobody-has-this-key/yours.zip')).status).toBe(404)
  })

  test('photos are erased one by one, at once and in every size; the workshop’s stay', async () => {
    const key = await pileWith({ mine: 'label', ours: 'custody' })
    const other = await pileWith({ another: 'photos' })
    const customer = new Visitor(shop.app)
    const path = (id: string) => `/i/${key}/photos/${id}/erase`
    const page = async () => (await customer.get(`/i/${key}/yours`)).body
    expect(await page()).toContain(path('mine'))
    expect(await page()).not.toContain(path('ours'))
    const { hash } = (await photosThere()).find(({ id }) => id === 'mine')!

    expect((await customer.postRaw(path('ours'), {})).status).toBe(404)
    expect((await customer.postRaw(path('another'), {})).status).toBe(404)
    const fields = formOf(await page(), path('mine'))
    expect(await customer.postRaw(path('mine'), fields)).toMatchObject({
      status: 303,
      to: `/i/${key}/yours#photos`,
    })
    expect((await customer.postRaw(path('mine'), fields)).status).toBe(303)

    for (const size of ['cloth', 'thumb', 'view', 'full'] as const)
      await expect(shop.photos.open(hash, size)).rejects.toMatchObject({ code: 'not_found' })
    expect((await photosThere()).map(({ id, label }) => [id, label])).toEqual([
      ['another', '{"words":"wool"}'],
      ['mine', null],
      ['ours', '{"words":"wool"}'],
    ])
    expect(await page()).not.toContain(path('mine'))
    const gone = await bytesOf(`/i/${key}/photos/mine/view`)
    expect([gone.status, gone.headers['content-type']]).toEqual([410, 'image/svg+xml'])
    expect((await bytesOf(`/i/${other}/photos/another/view`)).status).toBe(200)
    expect((await bytesOf(`/i/${other}/photos/mine/view`)).status).toBe(404)
  })

  test('a browser asks each time whether a photo still stands', async () => {
    const key = await pileWith({ mine: 'photos' })
    const url = `/i/${key}/photos/mine/thumb`
    const { headers } = await bytesOf(url)
    expect(headers['cache-control']).toBe('private, no-cache')
    const again = await shop.app.inject({ url, headers: { 'if-none-match': headers.etag } })
    expect([again.statusCode, again.body]).toEqual([304, ''])
  })

  test('stands at the desk: staff take it out and erase photos, the owner alone the pile', async () => {
    const key = await pileWith({ mine: 'photos', ours: 'custody' })
    const { id, number } = await rowOf(key)
    const at = `/desk/piles/${number}`
    const bench = await person('Bruno', 'bench')
    for (const path of ['kept', 'kept.zip'])
      expect((await bench.get(`${at}/${path}`)).status).toBe(403)

    const staff = await person('Sana', 'staff')
    const { say } = shop.knowledge.languages.get('en')!
    const { body } = await staff.get(`${at}/kept`)
    expect(body).toContain(say('desk.kept.owner_only'))
    expect((await staff.get(`${at}/kept.zip`)).type).toBe('application/zip')
    await staff.get(`${at}/kept`)
    expect((await staff.post(`${at}/erase`, { sure: 'yes' })).status).toBe(403)
    await staff.get(`${at}/kept`)
    expect((await staff.post(`${at}/photos/ours/erase`, {})).to).toBe(`${at}/kept#photos`)

    const owner = await person('Odile', 'owner')
    await owner.get(`${at}/kept`)
    expect((await owner.post(`${at}/erase`, {})).status).toBe(422)
    const home = { kind: 'garment', code: 'A1-1', place: 'shelf', since: 1, last_seq: 1 }
    const here = { ...home, pile_id: id, subject: '1', state: 'received' } as const
    await store()
      .db.insertInto('custody')
      .values({ ...here, whereabouts: 'here' })
      .execute()
    expect((await owner.get(`${at}/kept`)).body).toContain(say('desk.kept.here'))
    expect((await owner.post(`${at}/erase`, { sure: 'yes' })).status).toBe(409)
    await store().db.deleteFrom('custody').execute()
    await owner.get(`${at}/kept`)
    expect((await owner.post(`${at}/erase`, { sure: 'yes' })).to).toBe('/desk')
    expect((await owner.get(`${at}/kept`)).status).toBe(404)
    expect(await store().db.selectFrom('act').selectAll().execute()).toEqual([])
    expect(await photosThere()).toEqual([])
  })

  test('photos of an open intake are not for the desk', async () => {
    const key = await leadTo('review', shop.conversation, [{}])
    const { id: pile_id, number } = await rowOf(key)
    const row = { id: 'early', pile_id, item: 1, question: 'photos', hash: 'a'.repeat(64) }
    const more = { width: 1, height: 1, bytes: 1, kept: 1, at: 1 } as const
    await store()
      .db.insertInto('photo')
      .values({ ...row, ...more })
      .execute()
    const staff = await person('Sana', 'staff')
    const at = `/desk/piles/${number}`
    expect((await staff.get(`${at}/kept`)).body).not.toContain('early')
    expect((await staff.post(`${at}/photos/early/erase`, {})).status).toBe(404)
  })
})
