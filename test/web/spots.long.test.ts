import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
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
import { bodyOf } from '../help/forms.ts'
import { plain } from '../help/pictures.ts'
import { oneStore } from '../help/stores.ts'
import { lookOf, type ToldLane, toldLane } from '../help/told-lane.ts'
import { type Fields, Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))

const picture = async (background = '#1d2a52') => ({
  bytes: await plain(700, 500, background).jpeg().toBuffer(),
  name: 'shirt.jpg',
  type: 'image/jpeg',
})

const holed: Answers = { ...shirt, kind: { value: 'tshirt' }, wear: { value: 'holes' } }

const impossible: readonly [string, (photo: string) => Fields, number, string][] = [
  ['beside the photo', (id) => ({ tap: `${id}:1.01:0.5` }), 422, 'must lie on the photo'],
  ['before its edge', (id) => ({ tap: `${id}:-0.2:0.5` }), 422, 'must lie on the photo'],
  ['at no number', (id) => ({ tap: `${id}:NaN:0.5` }), 422, 'must lie on the photo'],
  ['at infinity', (id) => ({ tap: `${id}:Infinity:1e999` }), 422, 'must lie on the photo'],
  ['at a half place', (id) => ({ tap: `${id}:0.5` }), 422, 'must lie on the photo'],
  ['on no photo', () => ({ tap: ':0.5:0.5' }), 422, 'not one of this garment'],
  ['on a made-up photo', () => ({ tap: '../../etc/passwd:0.5:0.5' }), 422, 'not one of this'],
  ['of no kind', (id) => ({ tap: `${id}:0.5:0.5`, what: 'fire' }), 422, 'not one of the choices'],
  [
    'of a kind of objects',
    (id) => ({ tap: `${id}:0.5:0.5`, what: '__proto__' }),
    422,
    'not one of the choices',
  ],
  ['nowhere', () => ({}), 400, 'a place on the photo'],
  ['kept at a wrong place', (id) => ({ spot: `${id}:7:7:hole`, part: '' }), 422, 'must lie on'],
  [
    'kept of no kind',
    (id) => ({ spot: `${id}:0.1:0.1:fire`, part: '' }),
    422,
    'not one of the choices',
  ],
  [
    'in no part',
    (id) => ({ spot: `${id}:0.1:0.1:hole`, part: 'left-leg-front' }),
    422,
    'not one of the choices',
  ],
]

oneStore('spots marked on photos', (store) => {
  let app: TestApp
  let lane: ToldLane
  let walker: Walker
  beforeAll(async () => {
    lane = toldLane()
    app = await openApp(store(), { clock: clock.read, lane })
  })
  afterAll(() => app?.close())

  const asked = async (answers: Answers, photos = 1) => {
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
    await addGarment(walker, answers, 'photos')
    const files = ['#1d2a52', '#80662a', '#123321'].slice(0, photos).map(picture)
    await sendFiles(walker, await Promise.all(files))
    await answerAll(walker, { ...answers, photos: { act: 'skip' } }, 'spots')
  }
  beforeEach(async () => {
    lane.tells = lookOf()
    await asked(holed)
  })

  const form = () => walker.root.querySelector('form[data-question]')!
  const send = (changes: Fields) =>
    walker.open(form().getAttribute('action')!, { method: 'POST', body: bodyOf(form(), changes) })
  const photoIds = () =>
    walker.root
      .querySelectorAll('[data-spot-photo]')
      .map((grid) => grid.getAttribute('data-spot-photo')!)
  const tap = (x: number | string, y: number | string, more: Fields = {}) =>
    send({ tap: `${photoIds()[0]}:${x}:${y}`, mark: 'yes', what: 'hole', ...more })
  const marked = () =>
    walker.root.querySelectorAll('.spot-list li').map((one) => ({
      words: one.querySelector('strong')!.text,
      part: one.querySelector('option[selected]')?.text ?? null,
    }))
  const values = () =>
    walker.root.querySelectorAll('input[name=spot]').map((one) => one.getAttribute('value'))

  async function garment() {
    const open = await app.conversation.open(walker.pilePath.split('/')[2]!)
    return open.pile.garments[0]!
  }
  const lost = async () =>
    (await garment()).panels.flatMap(({ name, defects }) =>
      defects.flatMap(({ what }) =>
        ['hole', 'stain', 'thin'].includes(what!) ? [`${what} ${name}`] : [],
      ),
    )

  test('are asked for where there is a photo of something worn, and of nothing else', async () => {
    expect(walker.question).toMatchObject({ id: 'spots', kind: 'spots', optional: true })
    walker = await new Walker(app.url).start()
    await answerAll(walker, pileAnswers)
    await addGarment(walker, holed, 'where')
    expect(walker.question?.id).toBe('where')
    await asked(shirt)
    expect(walker.question).toBeNull()
  })

  test('a tap marks the very place, with a part proposed, and another takes it away', async () => {
    await tap(0.5, 0.5)
    expect(walker.status).toBe(200)
    expect(marked()).toEqual([{ words: '1: Hole', part: 'Front' }])
    expect(walker.root.querySelector('.spot-picture g')!.getAttribute('transform')).toBe(
      'translate(500 357)',
    )
    await tap(0.15, 0.2, { what: 'thin' })
    expect(marked().at(-1)).toEqual({ words: '2: Thin place', part: 'Right sleeve' })
    await tap(0.52, 0.51)
    expect(marked()).toEqual([{ words: '1: Thin place', part: 'Right sleeve' }])
  })

  test('a place of the grid and the button do the same without a script', async () => {
    const cells = walker.root.querySelectorAll('input[name=cell]')
    expect(cells).toHaveLength(24)
    await send({ cell: cells[14]!.getAttribute('value')!, mark: 'yes' })
    expect(marked()).toEqual([{ words: '1: Hole', part: 'Front' }])
    await send({ unmark: '0' })
    expect(marked()).toEqual([])
  })

  test('a place that was chosen is not passed over by going on: it is shown first', async () => {
    const cell = walker.root.querySelectorAll('input[name=cell]')[14]!.getAttribute('value')!
    await send({ act: 'answer', cell })
    expect(walker.question?.id).toBe('spots')
    expect(marked()).toHaveLength(1)
  })

  test('once they are answered the cloth is lost in that part, and nobody asks where', async () => {
    await tap(0.15, 0.2)
    await send({ act: 'answer', part: 'left-sleeve' })
    expect(walker.question?.id).not.toBe('spots')
    expect(await lost()).toEqual(['hole sleeve'])
    const { path, told } = await garment()
    expect(path.map(({ question }) => question.id)).not.toContain('where')
    expect(told.spots).toMatchObject([
      { x: 0.15, y: 0.2, what: 'hole', part: 'left-sleeve', by: 'customer', at: clock.now },
    ])
  })

  test('those of a photo that is taken away go with it', async () => {
    await tap(0.5, 0.5)
    await send({ act: 'answer' })
    expect(await lost()).toEqual(['hole front'])
    await walker.open(`${walker.pilePath}/1/photos`)
    const id = walker.root.querySelector('input[name=remove]')!.getAttribute('value')!
    await sendFiles(walker, [await picture('#778899')], { remove: id })
    expect((await garment()).told.spots).toEqual([])
    expect(await lost()).toEqual(['hole back'])
    await walker.open(`${walker.pilePath}/1/spots`)
    expect(marked()).toEqual([])
  })

  test('a mark that says otherwise than an answer is asked about, and then counts', async () => {
    await tap(0.5, 0.5, { what: 'stain' })
    expect(walker.text('.spots .seen-advice')).toContain('you said nothing of stains')
    await send({ act: 'answer' })
    expect(walker.question?.id).not.toBe('spots')
    expect((await garment()).facts.soil).toBe('soiled')
    await walker.open(`${walker.pilePath}/1/spots`)
    await send({ unmark: '0' })
    await send({ act: 'answer' })
    expect((await garment()).facts.soil).toBe('clean')
  })

  test('a form that was sent without its page’s question about it comes back with it', async () => {
    const [photo] = photoIds()
    await send({ act: 'answer', spot: [`${photo}:0.5:0.5:stain`], part: ['front'] })
    expect(walker.question?.id).toBe('spots')
    expect(walker.text('.spots .seen-advice')).toContain('you said nothing of stains')
    expect((await garment()).told.spots).toEqual([])
  })

  test('several photos each have their grid, and marks are numbered through', async () => {
    await asked(holed, 3)
    expect(photoIds()).toHaveLength(3)
    expect(walker.root.querySelectorAll('details.spot-more')).toHaveLength(2)
    await tap(0.5, 0.5)
    await send({ tap: `${photoIds()[2]}:0.2:0.9`, mark: 'yes', what: 'hole' })
    expect(marked().map(({ words }) => words)).toEqual(['1: Hole, photo 1', '2: Hole, photo 3'])
    const unfolded = walker.root.querySelectorAll('details.spot-more[open]')
    expect(unfolded).toHaveLength(1)
  })

  test('where the photo does not tell, no part is proposed, and none need be chosen', async () => {
    lane.tells = null
    await asked(holed)
    await tap(0.5, 0.5)
    expect(marked()).toEqual([{ words: '1: Hole', part: 'I am not sure' }])
    await send({ act: 'answer' })
    expect(await lost()).toEqual(['hole back'])
  })

  test('all of it in Spanish', async () => {
    const key = walker.pilePath
    await walker.open(`${key}/language/es`)
    await tap(0.5, 0.5)
    expect(marked()).toEqual([{ words: '1: Agujero', part: 'Frente' }])
    await send({ act: 'answer' })
    await answerAll(walker, holed)
    await walker.open(`${key}/1/spots`)
    await answerAll(walker, { ...holed, spots: { act: 'skip' } })
    expect(walker.text('.answers')).not.toContain('spots.')
  })

  test('go with the pile to the workshop', async () => {
    await tap(0.5, 0.5)
    await send({ act: 'answer' })
    await answerAll(walker, holed)
    await walker.press('confirm-pile')
    await answerAll(walker, closingAnswers)
    expect(walker.text('.answers')).toContain('Hole (Front)')
    await walker.press('confirm-pile')
    expect(walker.confirmed).toBe(true)
  })

  test('a mark that cannot be is refused by name, and those before stay', async () => {
    const [photo] = photoIds()
    const sound = `${photo}:0.8:0.8:hole`
    for (const [what, changes, status, sentence] of impossible) {
      const { spot, part, ...others } = { spot: [], part: [], ...changes(photo!) } as Fields
      await send({
        spot: [sound, ...(typeof spot === 'string' ? [spot] : [])],
        part: ['front', ...(typeof part === 'string' ? [part] : [])],
        mark: 'yes',
        ...others,
      })
      expect(walker.status, what).toBe(status)
      expect(walker.text('#error-spots'), what).toContain(sentence)
      expect(values(), what).toEqual([sound])
      expect(marked(), what).toEqual([{ words: '1: Hole', part: 'Front' }])
    }
    expect((await garment()).told.spots).toEqual([])
  })

  test('another pile’s photo is none of this garment', async () => {
    const [theirs] = photoIds()
    await asked(holed)
    await send({ tap: `${theirs}:0.5:0.5`, mark: 'yes' })
    expect(walker.status).toBe(422)
    expect(walker.text('#error-spots')).toContain('not one of this garment')
    const spot = [`${theirs}:0.5:0.5:hole`]
    await send({ act: 'answer', spot, part: [''] })
    expect(walker.status).toBe(422)
    expect((await garment()).told.spots).toEqual([])
  })

  test('more marks than there is room for are refused, the twelve before stay', async () => {
    const [photo] = photoIds()
    const twelve = Array.from({ length: 12 }, (_, n) => `${photo}:0.${113 + n * 70}:0.5:hole`)
    const part = twelve.map(() => 'front')
    await send({ spot: twelve, part, tap: `${photo}:0.5:0.1`, mark: 'yes' })
    expect(walker.status).toBe(422)
    expect(walker.text('#error-spots')).toContain('room for 12 marks')
    expect(values()).toEqual(twelve)
    const more = [...twelve, `${photo}:0.5:0.1:hole`]
    await send({ act: 'answer', spot: more, part: [...part, 'front'] })
    expect(walker.status).toBe(422)
    expect((await garment()).told.spots).toEqual([])
    await send({ act: 'answer', spot: twelve, part })
    expect((await garment()).told.spots).toHaveLength(12)
  })
})
