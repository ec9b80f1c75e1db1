import { type HTMLElement, parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { marksOff } from '../../src/photo/look/marked-sheet.ts'
import type { Visitor } from '../help/desk-visitor.ts'
import { bodyOf } from '../help/forms.ts'
import { photoOf } from '../help/kept-photo.ts'
import { signedIn } from '../help/signed-in.ts'
import { eachStore } from '../help/stores.ts'
import { lookOf, sizesOf, type ToldLane, toldLane } from '../help/told-lane.ts'
import type { Fields } from '../help/walker.ts'
import { confirmPile, openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const path = '/desk/piles/1/garments/1/photos/p1/sheet'
const four: Fields = {
  x: ['10', '40', '40', '10'],
  y: ['20', '20', '70', '70'],
  sheet: 'a4',
  act: 'measure',
}

eachStore('a sheet of paper at the desk', (store) => {
  let workshop: Workshop
  let lane: ToldLane
  let pileId: string
  let marta: Visitor

  beforeEach(async () => {
    lane = toldLane()
    lane.measures = sizesOf(10.9, 9.1, 'a4')
    workshop = await openWorkshop(store(), clock, { lane })
    await confirmPile(workshop.conversation, [
      { kind: { given: 'tshirt' }, size: { given: 'L' }, photos: { given: ['p1'] } },
    ])
    const { db } = store()
    pileId = (await db.selectFrom('pile').select('id').executeTakeFirstOrThrow()).id
    await db
      .insertInto('photo')
      .values({
        id: 'p1',
        pile_id: pileId,
        item: 1,
        question: 'photos',
        hash: await workshop.photos.keep(photoOf('shirt')),
        width: 700,
        height: 500,
        bytes: 4,
        look: JSON.stringify(
          lookOf({ ...sizesOf(7, 6), size: { ...sizesOf(7, 6).size!, garmentWidthIn: 20 } }),
        ),
        focal35: 24,
        kept: 1,
        at: 1,
      })
      .execute()
    marta = await signedIn(store(), clock, workshop.app, { name: 'Marta' })
  })
  afterEach(() => workshop.close())

  const page = async (url = path) => parse((await marta.get(url)).body)
  const words = (root: HTMLElement, selector: string) =>
    root.querySelectorAll(selector).map(({ text }) => text.replaceAll(/\s+/g, ' ').trim())
  const card = async () => words(await page('/desk/piles/1'), '.pictures .hint').join(' ')
  const press = async (changes: Fields) =>
    marta.postRaw(path, bodyOf((await page()).querySelector('form[data-sheet]')!, changes))
  /** As the customer marked it while the pile was open. */
  const markedByCustomer = () =>
    store()
      .db.insertInto('sheet_mark')
      .values({
        id: 'theirs',
        pile_id: pileId,
        photo_id: 'p1',
        sheet: 'letter',
        corners: JSON.stringify([
          [0.1, 0.1],
          [0.3, 0.1],
          [0.3, 0.4],
          [0.1, 0.4],
        ]),
        sizes: JSON.stringify({
          ...sizesOf(5, 4),
          size: { ...sizesOf(5, 4).size!, garmentWidthIn: 25 },
        }),
        who: null,
        at: 2,
        undone_at: null,
        undone_by: null,
      })
      .execute()

  test('is marked by staff: it counts, its page and the card say by whom, and what was found beside', async () => {
    expect(await card()).toContain('about 20 × 27 inches (± 2 %)')
    expect(words(await page('/desk/piles/1'), '.pictures a')).toContain('Mark a sheet of paper')
    const answer = await press(four)
    expect([answer.status, answer.to]).toEqual([303, '/desk/piles/1#garment-1'])
    expect(lane.marked).toMatchObject([
      { marked: { sheet: 'a4', off: marksOff.fine }, focal35: 24 },
    ])
    const told = await card()
    expect(told).toContain('about 30 × 27 inches (± 2 %)')
    expect(told).toContain('Measured by A4 paper, 21 by 29.7 cm; corners marked by Marta, ')
    expect(told).toContain('Found by itself: Letter paper, 8 1/2 by 11 inches (± 2 %).')
    expect(words(await page(), '.sheet-standing')[0]).toContain('corners marked by Marta')
    const { id: who } = await store()
      .db.selectFrom('account')
      .select('id')
      .executeTakeFirstOrThrow()
    const rows = await store().db.selectFrom('sheet_mark').selectAll().execute()
    expect(rows).toMatchObject([{ pile_id: pileId, photo_id: 'p1', who, undone_at: null }])
  })

  test('marked by the customer counts before what was found, and staff’s before that', async () => {
    await markedByCustomer()
    expect(await card()).toContain('about 25 × 27 inches')
    expect(await card()).toContain('corners marked by the customer')
    await press(four)
    expect(await card()).toContain('about 30 × 27 inches')
    await press({ act: 'take-back' })
    const told = await card()
    expect(told).toContain('about 20 × 27 inches')
    expect(told).not.toContain('corners marked by')
    const rows = await store().db.selectFrom('sheet_mark').selectAll().execute()
    expect(rows).toHaveLength(2)
    expect(rows.every(({ undone_at, undone_by }) => undone_at && undone_by)).toBe(true)
  })

  test('sent twice is kept once', async () => {
    for (let time = 0; time < 2; time += 1) await press(four)
    expect(await store().db.selectFrom('sheet_mark').selectAll().execute()).toHaveLength(1)
  })

  test('is refused on its own page, with what to do and the corners as they were', async () => {
    lane.measures = new Failure('corners_other_sheet', { other: 'letter' })
    const answer = await press(four)
    expect(answer.status).toBe(422)
    const shown = parse(answer.body)
    expect(words(shown, '[role=alert]')[0]).toContain('more like this one: Letter paper')
    expect(shown.querySelector('#corner-x-2')!.getAttribute('value')).toBe('40')
    expect((await press({ ...four, x: ['NaN', '40', '40', '10'] })).status).toBe(422)
    expect((await press({ ...four, sheet: 'banknote' })).status).toBe(422)
    expect((await press({ ...four, csrf: 'x' })).status).toBe(403)
    expect((await press({ ...four, act: 'burn' })).status).toBe(400)
    expect(await store().db.selectFrom('sheet_mark').selectAll().execute()).toEqual([])
  })

  test('on another garment’s photo, or one that was taken away, is not found', async () => {
    const body = bodyOf((await page()).querySelector('form[data-sheet]')!, four)
    for (const url of [
      path.replace('garments/1', 'garments/2'),
      path.replace('p1', 'p2'),
      path.replace('piles/1', 'piles/9'),
    ]) {
      expect((await marta.get(url)).status, url).toBe(404)
      expect((await marta.postRaw(url, body)).status, url).toBe(404)
    }
    await store().db.updateTable('photo').set({ removed_at: 5 }).execute()
    expect((await marta.postRaw(path, body)).status).toBe(404)
  })
})
