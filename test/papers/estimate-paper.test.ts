import { describe, expect, test } from 'vitest'
import { estimatePaper } from '../../src/papers/estimate-paper.ts'
import { priceChangeWords } from '../../src/papers/price-change-words.ts'
import { workingWords } from '../../src/papers/working-words.ts'
import { type Estimate, estimate } from '../../src/quilt/estimate.ts'
import { quiltSizes } from '../../src/quilt/layout.ts'
import { workingCodes } from '../../src/quilt/workings.ts'
import { shopKnowledge } from '../help/bench-garments.ts'
import { layouts, rates } from '../help/knowledge.ts'
import { shirt, squaresOf } from '../help/priced.ts'

const { languages } = shopKnowledge()
const [en, es] = [languages.get('en')!, languages.get('es')!]

const garments = [
  shirt({}, 'L', 1),
  shirt({ wear: 'thin', test: 'passed' }, 'unknown', 2),
  shirt({ wear: 'thin', iron: 'none', heat: 'none' }, 'L', 3),
]
const settled = {
  pieces: [1, 2, 3].map((n) => squaresOf(n, 12)),
  cloth: [{ role: 'background', quilt: 1, yards: 1.5, pieces: 63, lengthIn: 52 }],
  proven: false,
}

/** Rough and planned, one quilt and two, and one for which no batting reaches. */
const estimates: Estimate[] = layouts.flatMap((layout) =>
  quiltSizes.flatMap((size) => {
    const quilts = [{ layout, size }]
    const short = { ...rates, batting: rates.batting.slice(0, 1) }
    return [
      estimate({ garments, quilts, rates }),
      estimate({ garments, quilts, rates, settled }),
      estimate({ garments, quilts, alike: 2, rates: short, settled }),
    ]
  }),
)

test.each([en, es])('every way of counting has its sentence: $code', (language) => {
  const workings = estimates.flatMap(({ lines }) => lines.flatMap((line) => line.workings))
  expect([...new Set(workings.map(({ code }) => code))].sort()).toEqual([...workingCodes].sort())
  for (const working of workings) {
    const sentence = workingWords(working, language)
    expect(sentence).toMatch(/^[\p{Lu}\p{N}].*\.$/u)
    expect(sentence).not.toMatch(/[{}]|undefined|NaN|Infinity/)
  }
})

describe('a working', () => {
  const layout = layouts.find(({ id }) => id === 'plain-squares')!
  const lines = estimate({ garments, quilts: [{ layout, size: 'throw' }], rates, settled }).lines
  const said = (code: string, language = en) =>
    lines.find((line) => line.code === code)!.workings.map((one) => workingWords(one, language))

  test('tells of a back with its seam', () => {
    expect(said('backing')).toEqual([
      '60 × 72 inches, 6 more each way than the quilt. 2 widths of cloth side by side, 40 inches wide and 60 long. The seams run across the quilt. That is 3.5 yards.',
    ])
  })

  test('tells of each roll by its name', () => {
    expect(said('interfacing')).toEqual([
      'Light interfacing, behind 12 pieces, each cut 1 inch larger both ways and none turned. Side by side on a roll 20 inches wide they take 45 inches: 1.25 yards.',
      'Sewn-in backing, behind 12 pieces, each cut 1 inch larger both ways and none turned. Side by side on a roll 44 inches wide they take 22.5 inches: 0.75 yards.',
    ])
  })

  test('tells of cloth by what it is for', () => {
    expect(said('top-up')).toEqual([
      'Quiet pieces, 63 pieces. In strips across the cloth they take 52 inches. That is 1.5 yards.',
    ])
  })
})

test.each([en, es])('the groups hold every line once and add up: $code', (language) => {
  for (const found of estimates) {
    const of = { layout: layouts[0]!, size: 'throw' as const, quilts: 1 }
    const { groups, likely } = estimatePaper(found, of, language)
    const shown = groups.flatMap(({ lines }) => lines)
    expect(shown).toHaveLength(found.lines.filter(({ high }) => high > 0).length)
    const minor = (money: string) => Number(money.replace(/\D/g, ''))
    const sum = (all: readonly { amount: string }[]) =>
      all.reduce((total, { amount }) => total + minor(amount), 0)
    expect(sum(groups)).toBe(minor(likely))
    expect(sum(shown)).toBe(minor(likely))
  }
})

describe('what a change does to the price, in words', () => {
  const change = (byMinor: readonly [number, number]) => ({
    lines: [
      { code: 'teardown' as const, byMinor: byMinor[0] },
      { code: 'top-up' as const, byMinor: byMinor[1] },
    ],
    totalMinor: byMinor[0] + byMinor[1],
    currency: 'USD',
  })
  const what = en.say('cost.change.without', { garment: 'the blue flannel' })

  test.each<[readonly [number, number], string]>([
    [
      [-1200, 1300],
      'Without the blue flannel: $12.00 less for taking garments apart, $13.00 more for extra cloth: $1.00 more in all.',
    ],
    [
      [-1200, 300],
      'Without the blue flannel: $12.00 less for taking garments apart, $3.00 more for extra cloth: $9.00 less in all.',
    ],
    [
      [-1200, 1200],
      'Without the blue flannel: $12.00 less for taking garments apart, $12.00 more for extra cloth: the same in all.',
    ],
  ])('%o', (byMinor, sentence) => {
    expect(priceChangeWords(change(byMinor), what, en)).toBe(sentence)
  })

  test('in Spanish', () => {
    const sin = es.say('cost.change.without', { garment: 'la franela azul' })
    expect(priceChangeWords(change([-1200, 1300]), sin, es)).toBe(
      'Sin la franela azul: $12.00 menos por descoser prendas, $13.00 más por tela comprada: $1.00 más en total.',
    )
  })

  test('nothing at all', () => {
    const nothing = { lines: [], totalMinor: 0, currency: 'USD' }
    expect(priceChangeWords(nothing, what, en)).toBe(
      'Without the blue flannel: the price stays as it is.',
    )
  })
})
