import { describe, expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import type { ProblemCode } from '../../src/textile/reading.ts'
import { blocksTold, ironTold } from './told.ts'

const problemsOf = (text: string): ProblemCode[] => readLabel(text).problems.map(({ code }) => code)

describe('a label reading', () => {
  test('has the shape that the command line prints', () => {
    expect(readLabel('60% cotton 40% polyester\nWarm iron')).toEqual({
      blocks: [
        {
          section: null,
          fibres: [
            { fibre: 'cotton', percent: 60 },
            { fibre: 'polyester', percent: 40 },
          ],
          total: 100,
          complete: true,
        },
      ],
      iron: {
        level: 'warm',
        noSteam: false,
        notOnPrint: false,
        wrongSide: false,
        words: 'Warm iron',
      },
      care: ['iron-warm'],
      languages: ['en'],
      confidence: 0.98,
      sure: true,
      problems: [],
      text: ['60% cotton 40% polyester', 'Warm iron'],
    })
  })

  test('folds breed and finish words into the fibre and keeps them as detail', () => {
    const fibres = readLabel('50% recycled polyester 50% organic cotton').blocks[0]!.fibres
    expect(fibres).toEqual([
      { fibre: 'polyester', percent: 50, detail: 'recycled' },
      { fibre: 'cotton', percent: 50, detail: 'organic' },
    ])
  })

  test('keeps the name of a fibre that has no key as detail', () => {
    expect(readLabel('60% wool 40% camel').blocks[0]!.fibres[1]).toEqual({
      fibre: 'other',
      percent: 40,
      detail: 'camel',
    })
  })

  test('names the languages it read, the fewest that explain the words', () => {
    expect(readLabel('60% cotton / coton / Baumwolle 40% polyester').languages).toEqual([
      'en',
      'fr',
      'de',
    ])
    expect(readLabel('%100 pamuk ütülemeyin').languages).toEqual(['tr'])
  })

  test('names care in plain codes, in the order of a label', () => {
    const text =
      'Cool iron. Do not bleach. Hand wash. Dry flat. Do not dry clean. Do not tumble dry.'
    expect(readLabel(text).care).toEqual([
      'hand-wash',
      'no-bleach',
      'no-tumble',
      'flat-dry',
      'iron-cool',
      'no-dry-clean',
    ])
  })

  test('holds shares of 97 to 103 complete, with a warning, and never for sure', () => {
    const reading = readLabel('60% cotton 41% polyester')
    expect(reading.blocks[0]).toMatchObject({ total: 101, complete: true })
    expect(reading).toMatchObject({ sure: false })
    expect(problemsOf('60% cotton 41% polyester')).toEqual(['total_near_100'])
  })
})

test.each<[text: string, problem: ProblemCode]>([
  ['', 'no_words'],
  ['\u202e\u0000', 'no_words'],
  ['Machine wash cold', 'no_fibres'],
  ['cotton and polyester', 'shares_missing'],
  ['60% cotton 20% polyester', 'total_not_100'],
  ['95% cotton 5% Blorbex', 'name_unknown'],
  ['60% wool 40% yak', 'name_unusual'],
  ['100% PE', 'name_ambiguous'],
  ['60% ポリウレタン 40% 綿', 'name_ambiguous'],
  ['100% pollyamide', 'spelling'],
  ['cotton polyester\n60%\n40%', 'pairing'],
  ['100% cotton 30%', 'number_unexplained'],
  ['100% cotton. Silk.', 'fibre_unexplained'],
  ['I think 100% cotton', 'guessed'],
  ['100% cotton\nheather: 90% cotton 10% polyester', 'alternatives'],
  ['100% cotton\n100% laine', 'languages_disagree'],
  ['100% cotton do not iron. Warm iron.', 'iron_unclear'],
  [`100% cotton ${'wash '.repeat(4000)}`, 'too_long'],
])('%j is doubtful: %s', (text, problem) => {
  expect(problemsOf(text)).toContain(problem)
  expect(readLabel(text).sure).toBe(false)
})

test.each([
  ['ポリウレタン 100%', 'polyurethane'],
  ['폴리우레탄 100%', 'polyurethane'],
])('%s alone is the coating, not elastane', (text, fibre) => {
  expect(blocksTold(readLabel(text))).toBe(`100 ${fibre}`)
})

test.each([['綿 95% ポリウレタン 5%'], ['면 95% 폴리우레탄 5%']])(
  'in %s the small share is elastane',
  (text) => {
    expect(blocksTold(readLabel(text))).toBe('95 cotton, 5 elastane')
  },
)

test('the Romanian word for linen is sure only among other Romanian words', () => {
  expect(readLabel('100% IN').sure).toBe(false)
  expect(readLabel('55% in 45% bumbac')).toMatchObject({ sure: true })
  expect(blocksTold(readLabel('100% cotton made in Italy'))).toBe('100 cotton')
})

test.each([
  ['buitenstof: 100% katoen kant: 100% polyester', 'body: 100 cotton | lace: 100 polyester'],
  ['yttertyg: 100% bomull kant: 100% polyester', 'body: 100 cotton | trim: 100 polyester'],
])(
  'a name of a part that two languages share is read in the language of the fibres: %s',
  (text, told) => {
    expect(blocksTold(readLabel(text))).toBe(told)
  },
)

test.each([
  ['IRON ••', 'warm'],
  ['IRON • DO NOT BLEACH', ''],
  ['Iron: 3 dots', 'hot'],
  ['Do not bleach and iron low', 'cool'],
  ['Do not bleach or iron', 'none'],
  ['IRON\nHOT WASH', ''],
  ['Strykes hett\nEj blekning', 'hot'],
  ["Ne repasser qu'à l'envers", ' r'],
  ['Warm iron, avoid the print', 'warm p'],
  ['Wash inside out\nWarm iron', 'warm'],
  ['Warm iron\nEN 14682:2014', 'warm'],
  ['Iron warm blorbly', 'warm'],
])('the line %j is read as %s', (line, iron) => {
  expect(ironTold(readLabel(`100% cotton\n${line}`))).toBe(iron)
})

test('an ironing line with a word that is not read is asked about', () => {
  expect(problemsOf('100% cotton. Iron warm blorbly.')).toEqual(['iron_unclear'])
})
