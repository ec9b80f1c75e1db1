import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { marksOff } from '../../src/photo/look/marked-sheet.ts'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { bodyOf } from '../help/forms.ts'
import { plain } from '../help/pictures.ts'
import { oneStore } from '../help/stores.ts'
import { lookOf, sizesOf, type ToldLane, toldLane } from '../help/told-lane.ts'
import { type Fields, Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const printed = { ...shirt, pattern: { value: 'single' }, print_make: { value: 'screen' } }

oneStore('a sheet of paper on a photo', (store) => {
  let app: TestApp
  let lane: ToldLane
  let walker: Walker
  beforeAll(async () => {
    lane = toldLane()
    app = await openApp(store(), { clock: clock.read, lane })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    lane.marked.length = 0
    lane.measures = sizesOf(10.9, 9.1)
  })

  /** Where the size of a shirt's one picture is asked, or another question; what its photo told by itself. */
  const atSize = async (found = {}, question = 'graphic_size') => {
    lane.tells = lookOf(found)
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
    await addGarment(walker, printed, 'photos')
    const bytes = await plain(700, 500, '#1d2a52').jpeg().toBuffer()
    await sendFiles(walker, [{ bytes, name: 'shirt.jpg', type: 'image/jpeg' }])
    return answerAll(walker, printed, question)
  }
  const follow = () =>
    walker.open(walker.root.querySelector('.measure-offer a')!.getAttribute('href')!)
  const form = () => walker.root.querySelector('form[data-sheet]')!
  /** Sends the page's form as a browser does, one of its buttons pressed. */
  const press = (changes: Fields) =>
    walker.open(form().getAttribute('action')!, {
      method: 'POST',
      body: bodyOf(form(), changes),
    })
  const tap = (x: number, y: number) => press({ 'at.x': String(x), 'at.y': String(y) })
  const corners = () =>
    ['x', 'y'].map((name) =>
      form()
        .querySelectorAll(`input[type=number][name=${name}]`)
        .map((one) => one.getAttribute('value')),
    )
  const four = {
    x: ['10', '40', '40', '10'],
    y: ['20', '20', '70', '70'],
    sheet: 'a4',
    act: 'measure',
  }
  const size = () => walker.root.querySelector('input[name=value]')!.getAttribute('value') ?? ''
  const newest = async () => {
    const rows = await store().db.selectFrom('photo').select(['id', 'pile_id']).execute()
    const pile = await store()
      .db.selectFrom('pile')
      .select('id')
      .orderBy('number', 'desc')
      .executeTakeFirstOrThrow()
    return rows.find(({ pile_id }) => pile_id === pile.id)!.id
  }
  const rows = () =>
    store()
      .db.selectFrom('sheet_mark')
      .innerJoin('pile', 'pile.id', 'sheet_mark.pile_id')
      .selectAll('sheet_mark')
      .orderBy('pile.number', 'desc')
      .execute()

  test('that was not found is offered to be marked, a corner a tap, without a script', async () => {
    await atSize()
    expect(size()).toBe('')
    expect(walker.text('.measure-offer')).toBe(
      'Is there a sheet of paper in the photo? Tap its four corners and we can measure. Mark the four corners',
    )
    await follow()
    expect(walker.text('#sheet-told')).toBe('Tap the first corner of the sheet.')
    const photo = form().querySelector('input[type=image]')!
    const [wide, tall] = ['width', 'height'].map((name) => Number(photo.getAttribute(name)))
    expect(wide! / tall!).toBeCloseTo(700 / 500, 1)
    expect((await fetch(app.url + photo.getAttribute('src')!)).status).toBe(200)
    for (const [x, y] of [
      [0.1, 0.2],
      [0.4, 0.2],
      [0.4, 0.7],
      [0.1, 0.7],
    ] as const)
      await tap(x * wide!, y * wide! * (500 / 700))
    expect(corners()).toEqual([
      ['10', '40', '40', '10'],
      ['20', '20', '70', '70'],
    ])
    expect(walker.text('#sheet-told')).toContain('All four are marked.')
    expect(form().querySelectorAll('svg g')).toHaveLength(4)
    await press({ act: 'measure', sheet: 'a4' })
    expect(walker.question?.id).toBe('graphic_size')
    expect(size()).toBe('11')
    expect(walker.text('.seen figcaption')).toContain(
      'about 11 by 9 inches (28 by 23 cm). That may be off by 1/4 inch. We measured by the corners that were marked (Letter paper',
    )
    expect(walker.root.querySelector('.seen-sheet')!.getAttribute('points')).toBe(
      '0.1,0.1 0.2,0.1 0.2,0.2 0.1,0.2',
    )
    expect(lane.marked).toEqual([
      {
        marked: {
          sheet: 'a4',
          corners: [
            [0.1, 0.2],
            [0.4, 0.2],
            [0.4, 0.7],
            [0.1, 0.7],
          ],
          off: marksOff.coarse,
        },
        focal35: 26,
      },
    ])
    const [row] = await rows()
    expect(row).toMatchObject({ who: null, sheet: 'a4', undone_at: null })
    await walker.send({ value: '9', unit: 'inches' })
    expect(walker.question?.id).not.toBe('graphic_size')
  })

  test('marked by a person counts before the one that was found, until the marks are taken back', async () => {
    await atSize(sizesOf(7, 6))
    expect(size()).toBe('7')
    expect(walker.text('.seen figcaption')).toContain('We measured by the sheet beside it')
    await follow()
    expect(walker.text('.sheet-standing')).toContain('We found the sheet by ourselves: Letter')
    expect(corners()[0]).toEqual(['10', '20', '20', '10'])
    expect(form().querySelector('[data-sheet-act=take-back]')).toBeNull()
    await press(four)
    expect(size()).toBe('11')
    await follow()
    expect(walker.text('.sheet-standing')).toContain('You marked the corners')
    expect(walker.text('.sheet-standing')).toContain('30 by 27 inches (77 by 70 cm)')
    await press({ act: 'take-back' })
    expect(size()).toBe('7')
    const [row] = await rows()
    expect(row).toMatchObject({ undone_at: clock.read(), undone_by: null })
  })

  test('that is measured too roughly to tell a size by itself is told where a person marked it', async () => {
    const rough = { ...sizesOf(10.9, 9.1), scale: { ...sizesOf(1, 1).scale!, errorPct: 5 } }
    await atSize(rough)
    expect(size()).toBe('')
    lane.measures = rough
    await follow()
    await press(four)
    expect(size()).toBe('11')
    expect(walker.text('.seen figcaption')).toContain('That may be off by 3/4 inch')
  })

  test('where the picture’s size stays unclear says so, and fills in nothing', async () => {
    lane.measures = { ...sizesOf(1, 1), size: null }
    await atSize()
    await follow()
    await press(four)
    expect(size()).toBe('')
    expect(walker.text('.measure-offer')).toContain('we cannot tell how large the picture is')
  })

  test.each([
    ['corners_no_sheet', {}, 'two lie on one spot'],
    ['corners_not_that_sheet', {}, 'check which sheet it is'],
    ['corners_other_sheet', { other: 'letter' }, 'more like this one: Letter paper'],
    ['sheet_small', {}, 'a photo from closer by'],
    ['sheet_unsure', {}, 'exactly on the tip'],
    ['photo_failed', {}, 'We could not work on that photo'],
    ['busy', {}, 'try again in a few seconds'],
  ] as const)(
    'is refused (%s) with what to do, the corners as they were, and nothing kept',
    async (code, details, words) => {
      await atSize()
      await follow()
      lane.measures = new Failure(code, details)
      await press(four)
      expect(walker.status).toBe(lane.measures.status)
      expect(walker.text('[role=alert]')).toContain(words)
      expect(corners()).toEqual([four.x, four.y])
      expect(form().querySelector('input[name=sheet][checked]')!.getAttribute('value')).toBe('a4')
      await walker.open(walker.pilePath)
      expect(size()).toBe('')
    },
  )

  test.each<[string, Fields, string]>([
    ['three corners', { ...four, x: ['10', '40', '40', ''], y: ['20', '20', '70', ''] }, 'One is'],
    ['none', { ...four, x: ['', '', '', ''], y: ['', '', '', ''] }, '4 are'],
    ['no field at all', { ...four, x: [], y: [] }, '4 are'],
    ['no sheet named', { ...four, sheet: '' }, 'which sheet'],
    ['an unknown sheet', { ...four, sheet: 'banknote' }, 'which sheet'],
    ['a corner off the photo', { ...four, x: ['10', '140', '40', '10'] }, 'must lie on the photo'],
    ['a corner below nothing', { ...four, x: ['-1', '40', '40', '10'] }, 'must lie on the photo'],
    ['NaN', { ...four, x: ['NaN', '40', '40', '10'] }, 'must lie on the photo'],
    ['Infinity', { ...four, y: ['Infinity', '20', '70', '70'] }, 'must lie on the photo'],
    ['an exponent', { ...four, y: ['1e1', '20', '70', '70'] }, 'must lie on the photo'],
    ['half a corner', { ...four, y: ['', '20', '70', '70'] }, 'must lie on the photo'],
    ['words', { ...four, x: ['<script>', '40', '40', '10'] }, 'must lie on the photo'],
  ])('%s: nobody measures', async (_, fields, words) => {
    await atSize()
    await follow()
    await press(fields)
    expect(walker.status).toBe(422)
    expect(walker.text('[role=alert]')).toContain(words)
    expect(walker.html).not.toContain('<script>')
    expect(lane.marked).toEqual([])
  })

  test('undo, start again, larger and a frame for keys work without a script', async () => {
    await atSize()
    await follow()
    await tap(20, 30)
    await tap(60, 30)
    await press({ act: 'last' })
    expect(walker.text('#sheet-told')).toBe('One corner is marked. Tap the next.')
    await press({ act: 'larger' })
    const photo = form().querySelector('input[type=image]')!
    expect(Number(photo.getAttribute('width'))).toBeGreaterThan(1000)
    expect(form().querySelector('.sheet-scroll')!.getAttribute('tabindex')).toBe('0')
    await press({ act: 'clear' })
    expect(corners()[0]).toEqual(['', '', '', ''])
    // A key on the photo's button tells no place.
    await tap(0, 0)
    expect(corners()[0]).toEqual(['', '', '', ''])
    await press({ act: 'frame' })
    expect(corners()[0]).toEqual(['35', '65', '65', '35'])
    // With four set a tap moves the nearest; on the large photo that is exact enough.
    await tap(1056 * 0.7, 1056 * (5 / 7) * 0.7)
    expect(corners()).toEqual([
      ['35', '65', '70', '35'],
      ['35', '35', '70', '65'],
    ])
    await press({ act: 'measure', sheet: 'letter' })
    expect(lane.marked[0]!.marked.off).toBe(marksOff.fine)
  })

  test('sent twice is kept once', async () => {
    await atSize()
    await follow()
    const [to, body] = [form().getAttribute('action')!, bodyOf(form(), four)]
    const before = (await rows()).length
    for (let time = 0; time < 2; time += 1) await walker.open(to, { method: 'POST', body })
    expect(walker.question?.id).toBe('graphic_size')
    expect(await rows()).toHaveLength(before + 1)
  })

  test('of another pile, or that is not there, is not found; a confirmed pile’s is closed', async () => {
    await atSize()
    const theirs = walker.root.querySelector('.measure-offer a')!.getAttribute('href')!
    const mine = walker.pilePath
    await atSize()
    await walker.open(theirs.replace(mine, walker.pilePath))
    expect(walker.status).toBe(404)
    await walker.open(`${walker.pilePath}/photos/none/sheet`)
    expect(walker.status).toBe(404)
    const own = theirs
      .replace(mine, walker.pilePath)
      .replace(/photos\/[^/]+/, `photos/${await newest()}`)
    await walker.open(own)
    expect(walker.status).toBe(200)
    await store()
      .db.updateTable('pile')
      .set({ status: 'confirmed' })
      .where('id', 'in', (eb) =>
        eb.selectFrom('photo').select('pile_id').where('id', '=', own.split('/')[4]!),
      )
      .execute()
    await press(four)
    expect(walker.status).toBe(409)
    expect(lane.marked).toEqual([])
  })

  test('leads back to a question of ours and nowhere else', async () => {
    await atSize()
    const at = walker.root.querySelector('.measure-offer a')!.getAttribute('href')!
    await walker.open(at.replace('graphic_size', '//elsewhere.example'))
    expect(walker.root.querySelector('.asides a')!.getAttribute('href')).toBe(walker.pilePath)
    await press(four)
    expect(walker.url).toBe(app.url + walker.pilePath)
  })

  test('speaks Spanish where the pile does', async () => {
    await atSize()
    const at = walker.root.querySelector('.measure-offer a')!.getAttribute('href')!
    await walker.open(`${walker.pilePath}/language/es`)
    await walker.open(at)
    expect(walker.text('h1')).toBe('Marque la hoja de papel')
    lane.measures = new Failure('corners_other_sheet', { other: 'letter' })
    await press(four)
    expect(walker.text('[role=alert]')).toContain('Se parece más a esta: Papel carta')
  })

  test('is not asked for where the picture’s size is asked and no picture was seen', async () => {
    await atSize({ graphic: null })
    expect(walker.root.querySelector('.measure-offer')).toBeNull()
  })

  test('tells how large a plain garment is too, marked beside the question for its print', async () => {
    const plainLook = {
      print: {
        class: 'solid',
        confidence: 0.9,
        scores: { solid: 0.9, single: 0.05, allover: 0.03, 'stripe-check': 0.02 },
      },
      graphic: null,
    } as const
    await atSize(plainLook, 'pattern')
    expect(walker.text('.measure-offer')).toBe(
      'Is there a sheet of paper beside the garment? Tap its four corners and we can tell how large the garment is. Mark the four corners',
    )
    lane.measures = sizesOf(10.9, 9.1)
    const { size } = lane.measures
    lane.measures = {
      ...lane.measures,
      size: { ...size!, graphicWidthIn: null, graphicHeightIn: null },
    }
    await follow()
    await press(four)
    expect(walker.question?.id).toBe('pattern')
    expect(walker.text('.measure-offer')).toContain(
      'By it the garment is about 30 by 27 inches (77 by 70 cm)',
    )
    expect(walker.root.querySelector('.seen-sheet')).not.toBeNull()
  })

  test('is not offered on a photo that is not fit to tell', async () => {
    await atSize({ fitness: { ok: false, problems: ['blurred'] } }, 'pattern')
    expect(walker.root.querySelector('.measure-offer')).toBeNull()
  })
})
