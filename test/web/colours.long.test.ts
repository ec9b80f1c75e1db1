import { differenceCiede2000 } from 'culori'
import { parse } from 'node-html-parser'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { labOf } from '../../src/base/colour.ts'
import { colourWords, drawnAs } from '../../src/base/colour-words.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import {
  type Answers,
  addGarment,
  answerAll,
  closingAnswers,
  pileAnswers,
  sendFiles,
  shirt,
} from '../help/chat.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { plain } from '../help/pictures.ts'
import { oneStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const password = 'needle and thimble'
const navy = '#22315c'

const ciede2000 = differenceCiede2000()
const unlike = (one: string, other: string) => ciede2000(labOf(one), labOf(other))

/** The colours of a swatch, as it is drawn. */
const drawnIn = (within: { querySelectorAll: Walker['root']['querySelectorAll'] } | null) =>
  (within?.querySelectorAll('.swatch rect') ?? []).map((rect) => rect.getAttribute('fill')!)

const onTag = (walker: Walker, n: number) => {
  const name = walker.root.querySelector(`.tag[data-garment="${n}"] .tag-name`)
  return { colours: drawnIn(name), told: name?.querySelector('.unseen')?.text.trim() ?? null }
}

oneStore('the colours of a garment', (store) => {
  let app: TestApp
  let walker: Walker
  beforeAll(async () => {
    app = await openApp(store(), { clock: clock.read })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
  })

  const photographed = async (answers: Answers, background: string) => {
    await addGarment(walker, answers, 'photos')
    const bytes = await plain(600, 500, background).jpeg().toBuffer()
    await sendFiles(walker, [{ bytes, name: 'shirt.jpg', type: 'image/jpeg' }])
    await answerAll(walker, answers)
  }

  test('are asked with a swatch and a word for each, may be passed over, and stand beside the name', async () => {
    await addGarment(walker, shirt, 'colours')
    expect(walker.question).toMatchObject({ id: 'colours', kind: 'many', optional: true })
    expect(walker.question?.offered).toEqual([...colourWords, 'many-colours'])
    const options = walker.root.querySelectorAll('form[data-question] .option')
    expect(options.map(drawnIn).slice(0, -1)).toEqual(colourWords.map((word) => [drawnAs(word)]))
    expect(drawnIn(options.at(-1)!).length).toBeGreaterThan(2)
    for (const option of options) {
      expect(option.querySelector('label .option-words')!.text.trim()).not.toBe('')
      expect(option.querySelector('.swatch')!.getAttribute('aria-hidden')).toBe('true')
    }
    await walker.skip()
    expect(walker.question?.id).toBe('details')
    await answerAll(walker, shirt)

    await addGarment(walker, { ...shirt, colours: { value: ['blue', 'white'] } })
    expect(onTag(walker, 1)).toEqual({ colours: [], told: null })
    expect(onTag(walker, 2)).toEqual({
      colours: [drawnAs('white'), drawnAs('blue')],
      told: '(white and blue)',
    })
    await walker.open(`${walker.pilePath}/language/es`)
    expect(onTag(walker, 2).told).toBe('(blanco y azul)')
  })

  test('are those of its photo where nothing was said or both go together, and the desk sees whence', async () => {
    await photographed({ ...shirt, colours: { value: ['white', 'blue'] } }, navy)
    await photographed(shirt, navy)
    await photographed({ ...shirt, colours: { value: 'yellow' } }, navy)
    const [together, alone, apart] = [1, 2, 3].map((n) => onTag(walker, n))
    expect(alone!.told).toBe('(blue)')
    expect(alone!.colours).toHaveLength(1)
    expect(unlike(alone!.colours[0]!, navy)).toBeLessThan(1)
    expect(together).toEqual({
      colours: [alone!.colours[0], drawnAs('white')],
      told: '(white and blue)',
    })
    expect(apart).toEqual({ colours: [drawnAs('yellow')], told: '(yellow)' })

    // Its cloth is shown under its own pile and no other, and at the desk.
    const view = walker.root.querySelector('.photos a')!.getAttribute('href')!
    const cloth = view.replace(/view$/, 'cloth')
    const id = cloth.split('/').at(-2)!
    expect(cloth).toBe(`${walker.pilePath}/photos/${id}/cloth`)
    const served = await fetch(app.url + cloth)
    expect([served.status, served.headers.get('content-type')]).toEqual([200, 'image/jpeg'])

    const other = await new Walker(app.url).start()
    const elsewhere = `${app.url}${other.pilePath}/photos/${id}/cloth`
    expect((await fetch(elsewhere)).status).toBe(404)

    await walker.press('confirm-pile')
    await answerAll(walker, closingAnswers)
    if (!walker.confirmed) await walker.press('confirm-pile')
    const email = 'marta@lantern-street.example'
    await addAccount(store(), clock.read, { email, name: 'Marta', role: 'staff', password })
    const visitor = new Visitor(app.app)
    expect((await visitor.get(`/desk/piles/1/photos/${id}/cloth`)).status).not.toBe(200)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email, password })
    expect(await visitor.get(`/desk/piles/1/photos/${id}/cloth`)).toMatchObject({
      status: 200,
      type: 'image/jpeg',
    })

    const page = parse((await visitor.get('/desk/piles/1')).body)
    const rows = page.querySelectorAll('#garment-1 .facts tr')
    const row = (name: string) =>
      rows.find((one) => one.querySelector('th')?.text === name)!.querySelectorAll('td')
    expect(row('Colours of the cloth').map(({ text }) => text)).toEqual([
      'white and blue',
      'customer',
    ])
    const [value, from] = row('Drawn in')
    expect(value!.text).toBe(`blue and white, lightness ${Math.round(labOf(navy).l)} of 100`)
    expect(from!.text).toBe('measured in a photo')
    const [first, second] = drawnIn(value!)
    expect(unlike(first!, navy)).toBeLessThan(1)
    expect(second).toBe(drawnAs('white'))
  })
})
