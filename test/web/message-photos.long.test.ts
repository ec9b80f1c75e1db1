import { parse } from 'node-html-parser'
import sharp from 'sharp'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { messagesOf, writeAsStaff } from '../../src/desk/messages.ts'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { once } from '../help/custody.ts'
import { addStaff } from '../help/desk.ts'
import type { Visitor } from '../help/desk-visitor.ts'
import { plain } from '../help/pictures.ts'
import { signedIn } from '../help/signed-in.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, leadTo, said } from '../help/workshop.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const flannel = { name: said('Dad’s blue flannel'), kind: said('button-shirt') }

eachStore('photos with an answer', (store) => {
  let app: TestApp
  let marta: Visitor
  let key: string
  let pileId: string
  let who: string

  beforeAll(async () => {
    app = await openApp(store(), { clock: clock.read })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    key = await confirmPile(app.conversation, [flannel])
    pileId = (await app.conversation.open(key)).row.id
    who = await addStaff(store().db, 'Lena')
    marta = await signedIn(store(), clock.read, app.app as never, { name: 'Marta' })
    await ask(pileId)
  })

  const ask = (pile: string) =>
    writeAsStaff({ store: store(), clock: clock.read, knowledge: app.knowledge }, pile, {
      item: 1,
      text: 'May we see the collar?',
      wantsAnswer: true,
      idem: once(),
      who,
    })
  /** With a place in its Exif, as phones write it. */
  const picture = async (): Promise<Uint8Array> =>
    plain(700, 500, '#1d2a52')
      .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
      .jpeg()
      .toBuffer()
  const send = async (
    files: readonly Uint8Array[],
    fields: Readonly<Record<string, string>> = {},
    to = key,
  ) => {
    const body = new FormData()
    const all = {
      text: 'Here it is.',
      item: '1',
      idem: `idem-${once()}-x`,
      form: 'answer-1',
      ...fields,
    }
    for (const [name, value] of Object.entries(all)) body.append(name, value)
    for (const bytes of files) {
      body.append('photo', new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }), 'collar.jpg')
    }
    const answer = await fetch(`${app.url}/i/${to}/messages`, {
      method: 'POST',
      body,
      redirect: 'manual',
      headers: { accept: 'text/html' },
    })
    return { status: answer.status, body: await answer.text() }
  }
  const kept = () =>
    store()
      .db.selectFrom('photo')
      .select(['id', 'item', 'question', 'kept', 'removed_at'])
      .orderBy('at')
      .execute()
  const standing = async () => (await kept()).filter((one) => one.removed_at === null)
  const messages = () => messagesOf(store().db, pileId)

  test('come with it, once, and are seen by both sides without the place they were taken at', async () => {
    const idem = `idem-${once()}-twice`
    expect((await send([await picture(), await picture()], { idem })).status).toBe(303)
    expect((await send([await picture()], { idem })).status).toBe(303)
    const [, answer, ...others] = await messages()
    expect(others).toEqual([])
    expect(answer).toMatchObject({ by: null, text: 'Here it is.' })
    expect(answer!.photos).toHaveLength(2)
    expect(await standing()).toHaveLength(2)
    const desk = parse((await marta.get('/desk/piles/1/messages')).body)
    const shown = desk.querySelectorAll('.talk-photos img')
    expect(shown).toHaveLength(2)
    const view = desk.querySelector('.talk-photos a')!.getAttribute('href')!
    expect((await marta.get(view)).status).toBe(200)
    const theirs = await (await fetch(`${app.url}/i/${key}`)).text()
    const own = parse(theirs).querySelector('.talk-photos a')!.getAttribute('href')!
    const bytes = Buffer.from(await (await fetch(app.url + own)).arrayBuffer())
    expect((await sharp(await picture()).metadata()).exif).toBeDefined()
    expect((await sharp(bytes).metadata()).exif).toBeUndefined()
    expect((await marta.get('/desk/piles/1')).body).toContain(shown[0]!.getAttribute('src')!)
  })

  test('may come without words, and stand for none of the garment’s own photos', async () => {
    expect((await send([await picture()], { text: ' ' })).status).toBe(303)
    expect((await messages()).at(-1)).toMatchObject({ text: '', photos: [expect.any(String)] })
    expect((await marta.get('/desk/messages')).body).toContain('A photo, without words.')
    expect((await standing()).map(({ question }) => question)).toEqual([
      expect.stringMatching(/^message [\w-]+$/),
    ])
  })

  test('are refused as a whole, with the words still on the page', async () => {
    const good = await picture()
    for (const [files, status] of [
      [[good, Buffer.from('no picture at all')], 415],
      [[good, good, good, good], 422],
      [[good, await plain(10, 10, '#ffffff').jpeg().toBuffer()], 422],
    ] as const) {
      const refused = await send(files, { text: 'Look at the collar <here>' })
      expect(refused.status).toBe(status)
      expect(refused.body).toContain('Look at the collar &lt;here')
    }
    expect((await send([good], { text: 'x'.repeat(2001) })).status).toBe(422)
    expect((await send([good], { item: '9' })).status).toBe(404)
    expect((await send([good], { item: '' })).status).toBe(400)
    expect((await send([], { text: ' ' })).status).toBe(422)
    expect(await messages()).toHaveLength(1)
    expect(await standing()).toEqual([])
  })

  test('another pile’s key reaches none of them, and of an open intake the workshop sees these alone', async () => {
    const open = await leadTo('review', app.conversation, [flannel])
    const { row } = await app.conversation.open(open)
    await ask(row.id)
    expect((await send([await picture()], {}, open)).status).toBe(303)
    const [photo] = await standing()
    const at = (pile: number, id: string) => `/desk/piles/${pile}/photos/${id}/thumb`
    expect((await marta.get(at(row.number, photo!.id))).status).toBe(200)
    expect((await marta.get(at(1, photo!.id))).status).toBe(404)
    expect((await fetch(`${app.url}/i/${key}/photos/${photo!.id}/view`)).status).toBe(404)
    await store().db.updateTable('photo').set({ question: 'photos' }).execute()
    expect((await marta.get(at(row.number, photo!.id))).status).toBe(404)
  })
})
