import { afterAll, beforeAll, expect, test } from 'vitest'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { addGarment, answerAll, pileAnswers, shirt } from '../help/chat.ts'
import { plain } from '../help/pictures.ts'
import { eachStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))

/** A server that dies behind an answer leaves what had to follow it undone; a page that heard nothing sends it again. */
eachStore('the form of an answer that was kept, sent once more', (store) => {
  let app: TestApp
  beforeAll(async () => {
    app = await openApp(store(), { clock: clock.read })
  })
  afterAll(() => app.close())

  const atPhotos = async () => {
    const walker = await answerAll(await new Walker(app.url).start(), pileAnswers)
    await addGarment(walker, shirt, 'photos')
    return `${walker.pilePath}/1/photos`
  }

  async function send(
    path: string,
    idem: string,
    { colour, remove = [] }: { colour?: string; remove?: readonly string[] },
  ) {
    const body = new FormData()
    for (const [name, value] of Object.entries({ act: 'answer', idem, anyway: '1' })) {
      body.append(name, value)
    }
    for (const id of remove) body.append('remove', id)
    if (colour) {
      const bytes = await plain(700, 500, colour).jpeg().toBuffer()
      body.append('photo', new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }), 'a.jpg')
    }
    const init = { method: 'POST', body, redirect: 'manual', headers: { accept: 'text/html' } }
    return (await fetch(app.url + path, init as RequestInit)).status
  }

  const photos = () =>
    store()
      .db.selectFrom('photo')
      .select(['id', 'kept', 'removed_at'])
      .orderBy('at')
      .orderBy('id')
      .execute()

  test('makes what it holds no draft, and takes no photo a second time', async () => {
    const path = await atPhotos()
    const form = { colour: '#35619f' }
    expect(await send(path, 'kept-before-1', form)).toBe(303)
    const [photo] = await photos()
    expect(photo).toMatchObject({ kept: 1, removed_at: null })
    await store().db.updateTable('photo').set({ kept: 0 }).execute()
    expect(await send(path, 'kept-before-1', form)).toBe(303)
    expect(await photos()).toEqual([photo])
  })

  test('takes away what it took away, and nothing that an answer holds by now', async () => {
    const path = await atPhotos()
    await send(path, 'first-photo-1', { colour: '#35619f' })
    const [first] = await photos()
    clock.now += 1000
    const form = { colour: '#9f3561', remove: [first!.id] }
    expect(await send(path, 'second-photo-1', form)).toBe(303)
    const settled = await photos()
    expect(settled).toMatchObject([
      { id: first!.id, removed_at: clock.now },
      { kept: 1, removed_at: null },
    ])
    await store().db.updateTable('photo').set({ removed_at: null, kept: 0 }).execute()
    expect(await send(path, 'second-photo-1', form)).toBe(303)
    expect(await photos()).toMatchObject([
      { id: first!.id, removed_at: clock.now },
      { id: settled[1]!.id, kept: 1, removed_at: null },
    ])
    // An old form that would take away what a later answer holds takes nothing.
    expect(await send(path, 'second-photo-1', { remove: [settled[1]!.id] })).toBe(303)
    expect((await photos())[1]).toMatchObject({ kept: 1, removed_at: null })
  })

  test('of a question without photos touches none', async () => {
    const path = await atPhotos()
    await send(path, 'first-photo-1', { colour: '#35619f' })
    const before = await photos()
    const wear = path.replace(/photos$/, 'wear')
    const body = () => new URLSearchParams({ act: 'answer', idem: 'wear-again-1', value: 'sound' })
    const sent = async () =>
      (await fetch(app.url + wear, { method: 'POST', body: body(), redirect: 'manual' })).status
    expect([await sent(), await sent()]).toEqual([303, 303])
    expect(await photos()).toEqual(before)
  })
})
