import { describe, expect, test } from 'vitest'
import { labOf } from '../../src/base/colour.ts'
import { type ColourWord, colourWords, drawnAs } from '../../src/base/colour-words.ts'
import { clothColours, clothsOf, mayBe, type Seen } from '../../src/intake/cloth-colours.ts'
import { tell } from '../../src/intake/told.ts'
import type { SeenCloth } from '../../src/photo/cloth.ts'
import type { NewRow } from '../../src/store/schema.ts'
import { eachStore } from '../help/stores.ts'
import { lookOf } from '../help/told-lane.ts'

const said = (colours: readonly ColourWord[], manyColours = false) => ({ colours, manyColours })

/** A photo of cloth in these colours; without shares each has as much. */
const seen = (...colours: readonly (string | readonly [string, number])[]): Seen => {
  const main = colours
    .map((one) => (typeof one === 'string' ? ([one, 1 / colours.length] as const) : one))
    .map(([colour, share]) => ({ colour, share }))
  return { id: 'photo-1', cloth: { mean: main[0]!.colour, main } }
}

const navy = '#22315c'
const wood = '#a9794a'

test('where nothing is told and nothing seen, nothing is known', () => {
  expect(clothColours(said([]), null)).toEqual({
    colour: null,
    from: null,
    second: null,
    photo: null,
    value: null,
  })
  expect(clothColours(said([], true), null).colour).toBeNull()
})

describe('what was said, without a photo', () => {
  test.each(colourWords)('%s is drawn in a colour of that name, with its lightness', (word) => {
    const { colour, from, second, value } = clothColours(said([word]), null)
    expect({ colour, from, second }).toEqual({ colour: drawnAs(word), from: 'said', second: null })
    expect(value).toBe(labOf(drawnAs(word)).l)
  })

  test('of several words the first two are drawn, as light as they are together', () => {
    const found = clothColours(said(['black', 'white', 'red']), null)
    expect(found).toMatchObject({ colour: drawnAs('black'), second: drawnAs('white') })
    const [dark, light] = [labOf(drawnAs('black')).l, labOf(drawnAs('white')).l]
    expect(found.value).toBeGreaterThan(dark)
    expect(found.value).toBeLessThan(light)
    // Light adds up, so that it is lighter than half way in the eye's own steps.
    expect(found.value).toBeGreaterThan((dark + light) / 2)
  })
})

describe('a photo', () => {
  test.each([
    ['nothing is told', said([])],
    ['many colours are told', said([], true)],
    ['many colours are told, and one', said(['yellow'], true)],
  ])('is taken as it is where %s', (_, told) => {
    expect(clothColours(told, seen([navy, 0.7], [wood, 0.3]))).toMatchObject({
      colour: navy,
      from: 'photo',
      second: wood,
      photo: 'photo-1',
      value: labOf(navy).l,
    })
  })

  test('gives the shade of a colour that was said', () => {
    expect(clothColours(said(['blue']), seen(navy))).toEqual({
      colour: navy,
      from: 'photo',
      second: null,
      photo: 'photo-1',
      value: labOf(navy).l,
    })
  })

  test('that shows no colour that was said is set aside: it may be of something else', () => {
    expect(clothColours(said(['blue']), seen(wood))).toEqual(clothColours(said(['blue']), null))
    expect(clothColours(said(['white', 'blue']), seen('#7a1f26', wood)).from).toBe('said')
  })

  test('orders two words by what it shows more of', () => {
    const found = clothColours(said(['white', 'blue']), seen([navy, 0.6], ['#efefee', 0.4]))
    expect(found).toMatchObject({ colour: navy, second: '#efefee', from: 'photo' })
  })

  test('leaves out what was not said, and is shown itself only where most of it was', () => {
    const mostly = clothColours(said(['blue']), seen([navy, 0.7], [wood, 0.3]))
    expect(mostly).toMatchObject({ colour: navy, second: null, photo: 'photo-1' })
    const hardly = clothColours(said(['blue']), seen([wood, 0.7], [navy, 0.3]))
    expect(hardly).toMatchObject({ colour: navy, from: 'photo', second: null, photo: null })
    expect(hardly.value).toBeCloseTo(labOf(navy).l, 5)
  })

  test('overrules no second colour that was said and is not to be seen', () => {
    const found = clothColours(said(['white', 'blue']), seen(navy))
    expect(found).toMatchObject({ colour: navy, second: drawnAs('white') })
  })
})

// Seen by a warm lamp, in shade and by a window; made up, as a phone might give them.
test.each<[string, ColourWord, boolean]>([
  ['#d9d2c3', 'white', true],
  ['#c9c7c2', 'white', true],
  ['#2f3036', 'black', true],
  ['#22315c', 'blue', true],
  ['#5c4a8c', 'blue', true],
  ['#8f2b3f', 'red', true],
  ['#a9794a', 'blue', false],
  ['#a9794a', 'white', false],
  ['#3f7d4e', 'red', false],
  ['#1d1d20', 'white', false],
  ['#ecc63f', 'purple', false],
])('%s may be meant by %s: %s', (colour, word, may) => {
  expect(mayBe(colour, word)).toBe(may)
})

test('no word may mean every colour, and every colour there is a word for', () => {
  const samples = colourWords.map(drawnAs)
  for (const word of colourWords) {
    const fits = samples.filter((colour) => mayBe(colour, word))
    expect(fits).toContain(drawnAs(word))
    expect(fits.length).toBeLessThanOrEqual(4)
  }
})

eachStore('the cloth of garments', (store) => {
  const cloth = (colour: string): SeenCloth => ({ mean: colour, main: [{ colour, share: 1 }] })
  const garment = (n: number, photos: readonly string[], colours: readonly string[] = []) => ({
    n,
    told: tell(
      { photos: { given: photos }, colours: { given: colours } },
      () => 0,
      () => true,
    ),
  })

  async function keep(...photos: Partial<NewRow<'photo'>>[]): Promise<void> {
    const { db } = store()
    await db
      .insertInto('flow_version')
      .values({ hash: 'f', body: '{}', first_used_at: 1 })
      .execute()
    for (const [at, id] of ['one', 'other'].entries()) {
      const row = { id, number: at + 1, language: 'en', flow_hash: 'f', status: 'open' as const }
      await db
        .insertInto('pile')
        .values({ ...row, seq: 0, started_at: 1, changed_at: 1 })
        .execute()
    }
    for (const photo of photos) {
      const row = { id: 'a', pile_id: 'one', hash: 'h', width: 9, height: 9, bytes: 9 }
      await db
        .insertInto('photo')
        .values({ ...row, kept: 1, at: 1, ...photo })
        .execute()
    }
  }

  test('the first photo whose cloth was looked at counts, in the order of the answer', async () => {
    await keep(
      { id: 'old', cloth: null },
      { id: 'blue', cloth: JSON.stringify(cloth(navy)) },
      { id: 'wood', cloth: JSON.stringify(cloth(wood)) },
      { id: 'gone', cloth: JSON.stringify(cloth('#ff0000')), removed_at: 2 },
      { id: 'theirs', pile_id: 'other', cloth: JSON.stringify(cloth('#ff0000')) },
    )
    const found = await clothsOf(store().db, { id: 'one' }, [
      garment(1, ['old', 'wood', 'blue']),
      garment(2, ['gone', 'theirs', 'blue']),
      garment(3, ['old'], ['green']),
      garment(4, []),
      garment(5, ['wood'], ['blue']),
    ])
    expect(found.map(({ garment, colour, from, photo }) => [garment, colour, from, photo])).toEqual(
      [
        [1, wood, 'photo', 'wood'],
        [2, navy, 'photo', 'blue'],
        [3, drawnAs('green'), 'said', null],
        [4, null, null, null],
        [5, drawnAs('blue'), 'said', null],
      ],
    )
  })

  test('a garment told from the floor it lies on has its own colours, whatever the photo’s middle shows', async () => {
    const look = (hex: string, isFit = true): string =>
      JSON.stringify(
        lookOf({
          fitness: isFit ? { ok: true, problems: [] } : { ok: false, problems: ['no-garment'] },
          colours: [{ lab: [0, 0, 0], share: 1, hex }],
        }),
      )
    await keep(
      { id: 'print', cloth: JSON.stringify(cloth('#ff0000')), look: look(navy) },
      { id: 'spot', cloth: JSON.stringify(cloth(wood)), look: look('#00ff00', false) },
    )
    const found = await clothsOf(store().db, { id: 'one' }, [
      garment(1, ['print']),
      garment(2, ['spot', 'print']),
      garment(3, ['spot']),
    ])
    expect(found.map(({ colour, photo }) => [colour, photo])).toEqual([
      [navy, 'print'],
      [navy, 'print'],
      [wood, 'spot'],
    ])
  })

  test('a pile without photos is not looked for', async () => {
    expect(await clothsOf(store().db, { id: 'none' }, [garment(1, [], ['red'])])).toMatchObject([
      { garment: 1, colour: drawnAs('red'), from: 'said' },
    ])
    expect(await clothsOf(store().db, { id: 'none' }, [])).toEqual([])
  })
})
