import { expect, test } from 'vitest'
import {
  type IronLevel,
  type LabelReading,
  type ProblemCode,
  problemWords,
} from '../../src/textile/reading.ts'
import { score } from './score.ts'
import type { Kind, TrueBlock, Truth } from './truth.ts'

const mix: TrueBlock = {
  section: null,
  fibres: [
    { fibre: 'cotton', percent: 60 },
    { fibre: 'polyester', percent: 40 },
  ],
}
const turned: TrueBlock = { ...mix, fibres: [...mix.fibres].reverse() }
const pure: TrueBlock = { section: null, fibres: [{ fibre: 'cotton', percent: 100 }] }

const truth = (
  file: string,
  blocks: readonly TrueBlock[],
  iron: IronLevel | null,
  kind: Kind = 'main',
): Truth => ({ file, kind, languages: ['en'], blocks, iron, text: '', traits: {} })

const reading = (
  blocks: readonly TrueBlock[],
  level: IronLevel | null,
  sure = true,
  problems: readonly ProblemCode[] = [],
): LabelReading => ({
  blocks: blocks.map((block) => ({ ...block, total: 100, complete: true })),
  iron: { level, noSteam: false, notOnPrint: false, wrongSide: false, words: null },
  care: [],
  languages: [],
  confidence: 1,
  sure,
  problems: problems.map((code) => ({ code, message: problemWords[code] })),
  text: [],
})

const one = (told: Truth, read: LabelReading) => score([told], new Map([[told.file, read]]))[0]!

test('a reading that says the same is right, in whatever order its shares stand', () => {
  expect(one(truth('a.jpg', [mix], 'warm'), reading([turned], 'warm'))).toEqual({
    kind: 'main',
    photos: 1,
    compositionExactPercent: 100,
    sureAndWrongPercent: 0,
    sureAmongRightPercent: 100,
    ironExactPercent: 100,
    readHotter: 0,
    ironInvented: 0,
    wrong: [],
    unsure: [],
  })
})

test('a share that differs by one is wrong, and sure and wrong where it is sure', () => {
  const near = { ...mix, fibres: [mix.fibres[0]!, { fibre: 'polyester' as const, percent: 41 }] }
  const told = truth('a.jpg', [mix], null)
  const sure = one(told, reading([near], null))
  expect(sure).toMatchObject({ compositionExactPercent: 0, sureAndWrongPercent: 100 })
  expect(sure.sureAmongRightPercent).toBeNull()
  expect(sure.wrong).toEqual([{ file: 'a.jpg', blocks: true, iron: false, sure: true }])
  expect(one(told, reading([near], null, false)).sureAndWrongPercent).toBe(0)
})

test.each([
  ['a fibre is missing', [pure], [mix]],
  ['nothing was read', [], [mix]],
  ['a block is read twice', [pure, pure], [pure]],
  [
    'another fibre has the share',
    [{ section: null, fibres: [{ fibre: 'linen', percent: 100 }] }],
    [pure],
  ],
] as const)('where %s the make-up is not exact', (_, read, told) => {
  expect(one(truth('a.jpg', told, null), reading(read, null)).compositionExactPercent).toBe(0)
})

test('the name of the part does not matter for one block, and does for two', () => {
  const body = { ...mix, section: 'body' }
  const lining = { ...pure, section: 'lining' }
  const exact = (told: TrueBlock[], read: TrueBlock[]) =>
    one(truth('a.jpg', told, null), reading(read, null)).compositionExactPercent
  expect(exact([mix], [body])).toBe(100)
  expect(exact([body, lining], [lining, body])).toBe(100)
  expect(
    exact(
      [body, lining],
      [
        { ...body, section: 'lining' },
        { ...lining, section: 'body' },
      ],
    ),
  ).toBe(0)
  expect(exact([body, lining], [body, { ...lining, section: 'rib' }])).toBe(0)
})

test('only a hotter level counts as hotter, and a level without words as invented', () => {
  const levels = (told: IronLevel | null, read: IronLevel | null) => {
    const { ironExactPercent, readHotter, ironInvented } = one(
      truth('a.jpg', [mix], told),
      reading([mix], read),
    )
    return [ironExactPercent, readHotter, ironInvented]
  }
  expect(levels('warm', 'warm')).toEqual([100, 0, 0])
  expect(levels('warm', 'hot')).toEqual([0, 1, 0])
  expect(levels('none', 'cool')).toEqual([0, 1, 0])
  expect(levels('hot', 'none')).toEqual([0, 0, 0])
  expect(levels('cool', null)).toEqual([0, 0, 0])
  expect(levels(null, 'cool')).toEqual([0, 0, 1])
  expect(levels(null, null)).toEqual([100, 0, 0])
})

test('kinds are counted apart, with every wrong photo by its file', () => {
  const truths = [
    truth('a.jpg', [mix], 'warm'),
    truth('b.jpg', [mix], 'warm'),
    truth('c.jpg', [pure], null),
    truth('d.jpg', [pure], null),
    truth('e.jpg', [pure], 'cool', 'covered'),
  ]
  const readings = new Map([
    ['a.jpg', reading([mix], 'hot')],
    ['b.jpg', reading([mix], 'warm', false)],
    ['c.jpg', reading([mix], null)],
    ['d.jpg', reading([pure], null)],
    ['e.jpg', reading([], 'cool', false)],
  ])
  const [main, covered, ...more] = score(truths, readings)
  expect(more).toEqual([])
  expect(main).toMatchObject({
    kind: 'main',
    photos: 4,
    compositionExactPercent: 75,
    sureAndWrongPercent: 25,
    ironExactPercent: 75,
    readHotter: 1,
  })
  expect(main!.sureAmongRightPercent).toBeCloseTo(200 / 3)
  expect(main!.wrong).toEqual([
    { file: 'a.jpg', blocks: false, iron: true, sure: true },
    { file: 'c.jpg', blocks: true, iron: false, sure: true },
  ])
  expect(covered).toMatchObject({ kind: 'covered', photos: 1, compositionExactPercent: 0 })
  expect(covered!.sureAndWrongPercent).toBe(0)
})

test('photos that are read right and not surely are told with every doubt', () => {
  const truths = ['a.jpg', 'b.jpg', 'c.jpg'].map((file) => truth(file, [mix], 'warm'))
  const readings = new Map([
    ['a.jpg', reading([turned], 'cool', false, ['iron_unclear', 'letters_unclear'])],
    ['b.jpg', reading([pure], 'warm', false, ['letters_unclear'])],
    ['c.jpg', reading([mix], 'warm')],
  ])
  const { unsure } = score(truths, readings)[0]!
  expect(unsure).toEqual([{ file: 'a.jpg', why: ['iron_unclear', 'letters_unclear'] }])
})

test('a photo without a reading is refused by name', () => {
  expect(() => score([truth('a.jpg', [mix], null)], new Map())).toThrow('a.jpg')
})
