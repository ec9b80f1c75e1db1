import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { plain } from '../help/pictures.ts'
import { oneStore } from '../help/stores.ts'
import { lookOf, type ToldLane, toldLane } from '../help/told-lane.ts'
import { Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))

const picture = async (background = '#1d2a52') => ({
  bytes: await plain(700, 500, background).jpeg().toBuffer(),
  name: 'shirt.jpg',
  type: 'image/jpeg',
})

oneStore('a photo of a garment', (store) => {
  let app: TestApp
  let lane: ToldLane
  let walker: Walker
  beforeAll(async () => {
    lane = toldLane()
    app = await openApp(store(), { clock: clock.read, lane })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    lane.tells = lookOf()
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
    await addGarment(walker, shirt, 'photos')
  })

  const chosen = () =>
    walker.root
      .querySelectorAll('input[name=value][checked]')
      .map((one) => one.getAttribute('value'))
  const sendPhoto = async (background?: string, fields = {}) =>
    sendFiles(walker, [await picture(background)], fields)
  const on = (question: string) => answerAll(walker, shirt, question)

  test('proposes the print, with a frame around the picture', async () => {
    await sendPhoto()
    await on('pattern')
    expect(chosen()).toEqual(['single'])
    expect(walker.text('.seen figcaption')).toContain('as if it carries one picture')
    const frame = walker.root.querySelector('.seen rect')!
    expect(['x', 'y', 'width', 'height'].map((name) => frame.getAttribute(name))).toEqual([
      '0.4',
      '0.3',
      '0.2',
      '0.25',
    ])
    const view = walker.root.querySelector('.seen img')!.getAttribute('src')!
    expect((await fetch(app.url + view)).status).toBe(200)
  })

  const printed = { ...shirt, pattern: { value: 'single' }, print_make: { value: 'screen' } }
  const measured = (errorPct: number) =>
    lookOf({
      scale: { by: 'letter', mmPerPx: 1, errorPct, corners: [] },
      size: {
        garmentWidthIn: 30.2,
        garmentLengthIn: 27.4,
        graphicWidthIn: 10.9,
        graphicHeightIn: 9.1,
      },
    })

  test('with a sheet of paper beside it tells how large the picture is, and fills that in', async () => {
    lane.tells = measured(1.2)
    await sendPhoto()
    await on('pattern')
    expect(walker.text('.seen figcaption')).toContain('one picture. It is about 11 by 9 inches')
    await answerAll(walker, printed, 'graphic_size')
    expect(walker.root.querySelector('input[name=value]')!.getAttribute('value')).toBe('11')
    expect(walker.text('.seen figcaption')).toContain('about 11 by 9 inches')
    await walker.send({ value: '9', unit: 'inches' })
    await walker.open(`${walker.pilePath}/1/graphic_size`)
    expect(walker.root.querySelector('input[name=value]')!.getAttribute('value')).toBe('9')
    expect(walker.root.querySelector('.seen')).toBeNull()
  })

  test('tells and fills in no size that may be far off', async () => {
    lane.tells = measured(4)
    await sendPhoto()
    await on('pattern')
    expect(walker.text('.seen figcaption')).not.toContain('inches')
    await answerAll(walker, printed, 'graphic_size')
    expect(walker.root.querySelector('input[name=value]')!.getAttribute('value') ?? '').toBe('')
    expect(walker.root.querySelector('.seen')).toBeNull()
  })

  test('proposes the colours in words, small ones left out', async () => {
    const { print } = lookOf()
    lane.tells = lookOf({
      print: { ...print, class: 'allover' },
      colours: [
        { lab: [20, 4, -24], share: 0.7, hex: '#1d2a52' },
        { lab: [96, 0, 1], share: 0.25, hex: '#f5f5f3' },
        { lab: [45, 60, 38], share: 0.05, hex: '#b3282d' },
      ],
    })
    await sendPhoto()
    await answerAll(walker, { ...shirt, pattern: { value: 'allover' } }, 'colours')
    expect(chosen()).toEqual(['white', 'blue'])
    expect(walker.text('.seen')).toContain('blue and white')
    expect(walker.root.querySelector('.seen rect')).toBeNull()
  })

  test('proposes the cloth’s colour alone beside one picture', async () => {
    await sendPhoto()
    await answerAll(walker, { ...shirt, pattern: { value: 'single' } }, 'colours')
    expect(chosen()).toEqual(['blue'])
  })

  test('the customer’s word stands against it, and it is proposed no more', async () => {
    await sendPhoto()
    await on('pattern')
    await walker.send({ value: 'allover' })
    await walker.open(`${walker.pilePath}/1/pattern`)
    expect(chosen()).toEqual(['allover'])
    expect(walker.root.querySelector('.seen')).toBeNull()
  })

  test('that does not tell surely proposes no print', async () => {
    const { print } = lookOf()
    lane.tells = lookOf({ print: { ...print, confidence: 0.6 } })
    await sendPhoto()
    await on('pattern')
    expect(chosen()).toEqual([])
    expect(walker.root.querySelector('.seen')).toBeNull()
  })

  test('not looked at, or passed over, proposes nothing and stops nobody', async () => {
    lane.tells = null
    await sendPhoto()
    expect(walker.question?.id).toBe('wear')
    await on('pattern')
    expect(chosen()).toEqual([])
  })

  test('with a fault is advised on at once, is there, and may be kept all the same', async () => {
    lane.tells = lookOf({ fitness: { ok: false, problems: ['dark', 'cut-off'] } })
    await sendPhoto()
    expect(walker.status).toBe(200)
    expect(walker.question?.id).toBe('photos')
    expect(walker.text('.seen-advice')).toContain('It is dark.')
    expect(walker.text('.seen-advice')).toContain('outside the picture')
    expect(walker.root.querySelectorAll('.photos img')).toHaveLength(1)
    await sendFiles(walker, [], { anyway: 'yes' })
    expect(walker.question?.id).toBe('wear')
    await on('pattern')
    expect(chosen()).toEqual([])
  })

  test('taken again in place of a bad one asks for nothing more', async () => {
    lane.tells = lookOf({ fitness: { ok: false, problems: ['blurred'] } })
    await sendPhoto()
    const [bad] = walker.root.querySelectorAll('input[name=remove]')
    lane.tells = lookOf()
    await sendPhoto('#334455', { remove: bad!.getAttribute('value')! })
    expect(walker.question?.id).toBe('wear')
    await on('pattern')
    expect(chosen()).toEqual(['single'])
  })

  test('in place of a good one that is ticked to go is advised on, and that one is gone', async () => {
    const broken = { bytes: new Uint8Array(2000), name: 'torn.jpg', type: 'image/jpeg' }
    await sendFiles(walker, [await picture(), broken])
    const good = walker.root.querySelector('input[name=remove]')!.getAttribute('value')!
    lane.tells = lookOf({ fitness: { ok: false, problems: ['blurred'] } })
    await sendPhoto('#334455', { remove: good })
    expect(walker.text('.seen-advice')).toContain('It is blurred.')
    const left = walker.root.querySelectorAll('input[name=remove]')
    expect(left).toHaveLength(1)
    expect(left[0]!.getAttribute('value')).not.toBe(good)
  })

  test('a close look at a worn spot is no fault beside a good photo', async () => {
    await sendPhoto()
    await walker.open(`${walker.pilePath}/1/photos`)
    lane.tells = lookOf({ fitness: { ok: false, problems: ['cut-off', 'no-garment'] } })
    await sendPhoto('#556677')
    expect(walker.question?.id).toBe('wear')
  })

  test('of several the one with a single picture tells, though it came last', async () => {
    const { print } = lookOf()
    lane.tells = lookOf({ print: { ...print, class: 'solid' }, graphic: null })
    await sendPhoto()
    await walker.open(`${walker.pilePath}/1/photos`)
    lane.tells = lookOf()
    await sendPhoto('#556677')
    await on('pattern')
    expect(chosen()).toEqual(['single'])
  })
})
