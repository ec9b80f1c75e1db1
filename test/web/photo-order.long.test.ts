import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { fieldsOf } from '../help/forms.ts'
import { plain } from '../help/pictures.ts'
import { eachStore } from '../help/stores.ts'
import { lookOf, type ToldLane, toldLane } from '../help/told-lane.ts'
import { type Fields, Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const holed = { ...shirt, kind: { value: 'tshirt' }, wear: { value: 'holes' } }

const picture = async (background: string) => ({
  bytes: await plain(700, 500, background).jpeg().toBuffer(),
  name: 'shirt.jpg',
  type: 'image/jpeg',
})

eachStore('photos of a garment', (store) => {
  let app: TestApp
  let lane: ToldLane
  let walker: Walker
  beforeAll(async () => {
    lane = toldLane()
    app = await openApp(store(), { clock: clock.read, lane })
  })
  afterAll(() => app?.close())

  /** A garment with so many photos that were sent, its question about them open again. */
  const sent = async (count: number) => {
    lane.tells = lookOf()
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
    await addGarment(walker, holed, 'photos')
    const files = ['#1d2a52', '#80662a', '#123321'].slice(0, count).map(picture)
    await sendFiles(walker, await Promise.all(files))
    await walker.open(`${walker.pilePath}/1/photos`)
  }
  beforeEach(() => sent(3))

  const shown = () =>
    walker.root.querySelectorAll('input[name=order]').map((one) => one.getAttribute('value')!)
  const sides = () =>
    walker.root
      .querySelectorAll('select[name=shows] option[selected]')
      .map((one) => one.getAttribute('value'))
  const garment = async () => {
    const open = await app.conversation.open(walker.pilePath.split('/')[2]!)
    return open.pile.garments[0]!
  }
  /** The form as a browser sends it, with changes; a list stands for a name sent several times. */
  async function send(changes: Fields, files: Awaited<ReturnType<typeof picture>>[] = []) {
    const form = walker.root.querySelector('form[data-question]')!
    const body = new FormData()
    for (const [name, value] of fieldsOf(form)) if (!(name in changes)) body.append(name, value)
    for (const [name, value] of Object.entries(changes)) {
      for (const one of typeof value === 'string' ? [value] : value) body.append(name, one)
    }
    for (const { bytes, name, type } of files) {
      body.append('photo', new Blob([new Uint8Array(bytes)], { type }), name)
    }
    return walker.open(form.getAttribute('action')!, { method: 'POST', body })
  }

  test('move up and down by buttons alone, and stay so once they are answered', async () => {
    const [a, b, c] = shown()
    await send({ up: c! })
    expect(shown()).toEqual([a, c, b])
    await send({ down: a! })
    expect(shown()).toEqual([c, a, b])
    expect((await garment()).told.photoIds).toEqual([a, b, c])
    await send({ act: 'answer' })
    expect((await garment()).told.photoIds).toEqual([c, a, b])
    await walker.open(`${walker.pilePath}/1/photos`)
    expect(shown()).toEqual([c, a, b])
  })

  test('the first cannot go up nor the last down', async () => {
    const before = shown()
    const rows = walker.root.querySelectorAll('.photos-held li')
    expect(rows[0]!.querySelector('button[name=up]')).toBeNull()
    expect(rows[2]!.querySelector('button[name=down]')).toBeNull()
    await send({ up: before[0]! })
    expect(shown()).toEqual(before)
    await send({ down: before[2]! })
    expect(shown()).toEqual(before)
  })

  test('say what they show, and moving keeps what was chosen and ticked', async () => {
    const [a, b, c] = shown()
    await send({ shows: ['front', 'back', 'close-up'], remove: b!, down: a! })
    expect(shown()).toEqual([b, a, c])
    expect(sides()).toEqual(['back', 'front', 'close-up'])
    const ticked = walker.root.querySelectorAll('input[name=remove][checked]')
    expect(ticked.map((one) => one.getAttribute('value'))).toEqual([b])
    await send({ act: 'answer' })
    expect((await garment()).told.photoIds).toEqual([a, c])
    await walker.open(`${walker.pilePath}/1/photos`)
    expect(sides()).toEqual(['front', 'close-up'])
  })

  test('a photo that comes as another moves is there, and nothing is answered yet', async () => {
    await sent(2)
    const [a, b] = shown()
    await send({ up: b! }, [await picture('#445566')])
    expect(shown().slice(0, 2)).toEqual([b, a])
    expect(shown()).toHaveLength(3)
    expect((await garment()).told.photoIds).toEqual([a, b])
  })

  test('a mark on the back lies on the back, one close up on no part that is known', async () => {
    await send({ act: 'answer', shows: ['back', 'close-up', ''] })
    await answerAll(walker, holed, 'spots')
    const parts: (string | undefined)[] = []
    for (const id of shownGrids()) {
      await send({ tap: `${id}:0.5:0.5`, mark: 'yes', what: 'hole' })
      parts.push(walker.root.querySelectorAll('.spot-list option[selected]').at(-1)?.text)
    }
    expect(parts).toEqual(['Back', 'I am not sure', 'Front'])
  })
  const shownGrids = () =>
    walker.root
      .querySelectorAll('[data-spot-photo]')
      .map((one) => one.getAttribute('data-spot-photo')!)

  test('what cannot be is refused or counts for nothing, and all photos stay', async () => {
    const theirs = shown()
    await sent(2)
    const mine = shown()
    await send({ order: [theirs[0]!, mine[1]!, mine[0]!], shows: ['back', '', ''], up: theirs[0]! })
    expect(shown()).toEqual([mine[1], mine[0]])
    await send({ act: 'answer', shows: ['inside', ''] })
    expect(walker.status).toBe(422)
    expect(walker.text('#error-photo')).toContain('not one of the choices')
    expect(shown().toSorted()).toEqual(mine.toSorted())
    await send({ act: 'answer', order: ['__proto__', '../..'], shows: ['front', 'front'] })
    expect((await garment()).told.photoIds.toSorted()).toEqual(mine.toSorted())
    const row = await app.store.db
      .selectFrom('photo')
      .select('shows')
      .where('id', '=', theirs[0]!)
      .executeTakeFirstOrThrow()
    expect(row.shows).toBeNull()
  })

  test('in Spanish', async () => {
    await walker.open(`${walker.pilePath}/language/es`)
    await walker.open(`${walker.pilePath}/1/photos`)
    expect(walker.text('.photos-held')).toContain('¿Qué muestra?')
    expect(walker.text('.photos-held button[name=down]')).toContain('Bajar')
  })
})
