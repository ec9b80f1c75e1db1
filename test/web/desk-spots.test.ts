import { type HTMLElement, parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { changeSpots } from '../../src/desk/spots.ts'
import type { SpotValue } from '../../src/flow/grammar.ts'
import type { Visitor } from '../help/desk-visitor.ts'
import { bodyOf } from '../help/forms.ts'
import { signedIn } from '../help/signed-in.ts'
import { eachStore } from '../help/stores.ts'
import { lookOf } from '../help/told-lane.ts'
import { confirmPile, openWorkshop, type Script, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const hole: SpotValue = { photo: 'p1', x: 0.5, y: 0.5, what: 'hole', part: 'front' }

eachStore('spots at the desk', (store) => {
  let workshop: Workshop
  let marta: Visitor
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterEach(() => workshop.close())

  const photoRow = (pile_id: string, id: string) => ({
    id,
    pile_id,
    item: 1,
    question: 'photos',
    hash: 'a'.repeat(64),
    width: 700,
    height: 500,
    bytes: 4,
    look: JSON.stringify(lookOf()),
    kept: 1 as const,
    at: 1,
  })

  /** A confirmed pile of one T-shirt with a photo, and Marta at the desk. */
  async function sent(more: Script = {}): Promise<string> {
    await confirmPile(workshop.conversation, [
      {
        kind: { given: 'tshirt' },
        size: { given: 'L' },
        photos: { given: ['p1'] },
        wear: { given: 'sound' },
        history: { given: ['none'] },
        ...more,
      },
    ])
    const { id } = await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()
    await store().db.insertInto('photo').values(photoRow(id, 'p1')).execute()
    marta = await signedIn(store(), clock, workshop.app, { name: 'Marta' })
    return id
  }

  const path = '/desk/piles/1/garments/1/spots'
  const page = async (url = path) => parse((await marta.get(url)).body)
  const words = (root: HTMLElement, selector: string) =>
    root.querySelectorAll(selector).map(({ text }) => text.replaceAll(/\s+/g, ' ').trim())
  const marked = async () =>
    (await page()).querySelectorAll('.spot-list li').map((one) => ({
      words: one.querySelector('strong')!.text,
      part: one.querySelector('option[selected]')!.text,
      by: one.querySelector('.hint')!.text,
    }))
  const mark = async (cell = 'p1:0.5:0.5', what = 'hole') => {
    await page()
    return marta.post(path, { act: 'mark', what, ...(cell && { cell }) })
  }
  /** Sends the form of the nth mark, one of its buttons pressed. */
  const change = async (n: number, fields: Record<string, string>) => {
    const form = (await page()).querySelectorAll('.spot-list form')[n]!
    return marta.post(path, Object.fromEntries(bodyOf(form, fields)))
  }
  const queued = () =>
    store().db.selectFrom('garment').select(['facts', 'flags']).executeTakeFirstOrThrow()

  test('staff mark one, the garment counts as holed at once, and the page says by whom', async () => {
    await sent()
    const answer = await mark()
    expect([answer.status, answer.to]).toEqual([303, path])
    const [one] = await marked()
    expect(one).toMatchObject({ words: '1: Hole', part: 'Front' })
    expect(one!.by).toContain('Marta')
    expect(JSON.parse((await queued()).facts)).toMatchObject({ wear: 'holes' })
    const card = await page('/desk/piles/1')
    expect(words(card, '.spots-told li')[0]).toContain('1: Hole (Front). Marked by Marta')
    expect(words(card, '.flag')).toContain(
      'A hole is marked, but the customer said that there is none. It counts as having holes.',
    )
    expect(card.querySelector('.pictures .marked circle')).not.toBeNull()
  })

  test('the sheet for the bench names the part and shows the photo', async () => {
    await sent()
    await mark('p1:0.15:0.2', 'stain')
    const sheet = await page('/desk/piles/1/garments/1/teardown')
    expect(words(sheet, '.bench-spots li')).toEqual(['1: Stain (Right sleeve)'])
    expect(sheet.querySelector('.bench-spots img')!.getAttribute('src')).toBe(
      '/desk/piles/1/photos/p1/view',
    )
    expect(words(sheet, '.bench-spots circle')).toHaveLength(2)
  })

  test('the same form sent twice marks once', async () => {
    await sent()
    await page()
    for (let time = 0; time < 2; time += 1) {
      await marta.post(path, { act: 'mark', what: 'hole', cell: 'p1:0.5:0.5' })
      await page()
    }
    expect(await marked()).toHaveLength(1)
  })

  test('the customer’s is put into another part, and taken away, by staff; the answer stays', async () => {
    await sent({ wear: { given: 'holes' }, spots: { given: [hole] } })
    expect(await marked()).toMatchObject([{ words: '1: Hole', part: 'Front' }])
    await change(0, { act: 'part', part: 'left-sleeve' })
    const [moved] = await marked()
    expect(moved).toMatchObject({ words: '1: Hole', part: 'Left sleeve' })
    expect(moved!.by).toContain('Marta')
    await change(0, { act: 'unmark' })
    expect(await marked()).toEqual([])
    const acts = await store().db.selectFrom('act').select('act').execute()
    expect(acts.map(({ act }) => act).join()).toContain('"what":"hole"')
    expect(words(await page('/desk/piles/1'), '.answers dd')).toContain('Hole (Front)')
  })

  test('what staff marked is gone when it is taken away, and nothing is left of it', async () => {
    await sent()
    const before = await queued()
    await mark()
    expect(await queued()).not.toEqual(before)
    await change(0, { act: 'unmark' })
    expect(await queued()).toEqual(before)
  })

  test('a garment without a photo has nothing to mark on', async () => {
    await sent({ photos: { skipped: true } })
    expect((await marta.get(path)).status).toBe(404)
    expect((await marta.get('/desk/piles/1')).body).not.toContain(path)
  })

  test('those of a pile that is deleted are gone with it', async () => {
    const id = await sent()
    await mark()
    await store().db.deleteFrom('pile').where('id', '=', id).execute()
    expect(await store().db.selectFrom('plan_mark').select('id').execute()).toEqual([])
  })

  test('in Spanish', async () => {
    await sent()
    await mark()
    const root = await page(`${path}?lang=es`)
    expect(words(root, 'h1')).toEqual(['Agujeros y manchas de Camiseta o playera'])
    expect(words(root, '.spot-list strong')).toEqual(['1: Agujero'])
  })

  test('what cannot be is refused on the page, and what was marked before stays', async () => {
    const id = await sent()
    await store().db.insertInto('photo').values(photoRow(id, 'label-photo')).execute()
    await mark()
    const refused: [Record<string, string>, number, string][] = [
      [{ act: 'mark', what: 'hole' }, 400, 'a place on the photo'],
      [{ act: 'mark', what: 'hole', cell: 'p1:2:0.5' }, 422, 'must lie on the photo'],
      [{ act: 'mark', what: 'hole', cell: 'p1:-1:NaN' }, 422, 'must lie on the photo'],
      [{ act: 'mark', what: 'hole', cell: 'p9:0.5:0.5' }, 422, 'not one of this garment'],
      [{ act: 'mark', what: 'hole', cell: 'label-photo:0.5:0.5' }, 422, 'not one of this garment'],
      [{ act: 'mark', what: 'fire', cell: 'p1:0.1:0.1' }, 422, 'not one of the choices'],
      [{ act: 'part', spot: 'p1:0.5:0.5:hole', part: 'left-leg-front' }, 422, 'not one of the'],
      [{ act: 'part', spot: 'p1:5:0.5:hole', part: 'back' }, 422, 'must lie on the photo'],
      [{ act: 'burn', spot: 'p1:0.5:0.5:hole' }, 400, 'could not read what was sent'],
    ]
    for (const [fields, status, sentence] of refused) {
      await page()
      const answer = await marta.post(path, fields)
      expect(answer.status, JSON.stringify(fields)).toBe(status)
      expect(
        parse(answer.body).querySelector('[role=alert]')?.text,
        JSON.stringify(fields),
      ).toContain(sentence)
    }
    await page()
    const forged = await marta.postRaw(path, { csrf: 'x', act: 'mark', what: 'hole' })
    expect(forged.status).toBe(403)
    expect(await marked()).toMatchObject([{ words: '1: Hole', part: 'Front' }])
    await page()
    for (const url of ['/desk/piles/1/garments/9/spots', '/desk/piles/7/garments/1/spots']) {
      await page()
      const there = await marta.post(url, { act: 'mark', what: 'hole', cell: 'p1:0.1:0.1' })
      expect(there.status, url).toBe(404)
    }
  })

  test('there is room for so many, and no more', async () => {
    const id = await sent()
    const { id: who } = await store()
      .db.selectFrom('account')
      .select('id')
      .executeTakeFirstOrThrow()
    const at = { store: store(), clock, knowledge: workshop.knowledge }
    for (let n = 0; n < 24; n += 1) {
      const cell = `p1:${(n % 6) * 0.15 + 0.1}:${Math.floor(n / 6) * 0.2 + 0.1}`
      await changeSpots(at, id, 1, { act: 'mark', at: cell, what: 'hole' }, who)
    }
    expect(await marked()).toHaveLength(24)
    const answer = await mark('p1:0.9:0.95', 'stain')
    expect(answer.status).toBe(422)
    expect(answer.body).toContain('room for 24 marks')
    expect(await marked()).toHaveLength(24)
  })
})
