import fc from 'fast-check'
import { expect, test } from 'vitest'
import { limitOf } from '../../src/textile/iron.ts'
import { readLabel } from '../../src/textile/label.ts'
import { labelLanguages } from '../../src/textile/languages/all.ts'
import { randomLabels } from './random-labels.ts'
import { blocksTold, ironTold } from './told.ts'
import { trapLabels } from './trap-labels.ts'

const seed = { seed: 20_121, numRuns: 300 }

const labelWords = labelLanguages.flatMap(({ fibres, words, care, sections }) => [
  ...Object.values(fibres).flatMap(({ names }) => names),
  ...Object.values(words).flat(),
  ...Object.values(care).flat(),
  ...Object.values(sections).flat(),
])
const scraps = [
  '%',
  '100',
  '60%',
  '40 %',
  '3.3\n%',
  ',',
  '.',
  '/',
  '(',
  ')',
  '\n',
  '°C',
  '110',
  '0',
  '-',
  '\u202e',
]

const labelLike = fc
  .array(fc.oneof(fc.constantFrom(...labelWords), fc.constantFrom(...scraps)), { maxLength: 40 })
  .map((parts) => parts.join(' '))

test('any text is read without throwing, and the same each time', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), labelLike), (text) => {
      const reading = readLabel(text)
      expect(readLabel(text)).toEqual(reading)
      expect(reading.confidence).toBeGreaterThan(0)
      expect(reading.confidence).toBeLessThanOrEqual(1)
      expect(reading.sure).toBe(reading.problems.length === 0)
    }),
    seed,
  )
})

test('a sure reading has only whole make-ups of known fibres', () => {
  fc.assert(
    fc.property(labelLike, (text) => {
      const { sure, blocks } = readLabel(text)
      if (!sure) return
      expect(blocks.length).toBeGreaterThan(0)
      for (const { total, complete } of blocks) {
        expect(complete).toBe(true)
        expect(Math.abs(total - 100)).toBeLessThanOrEqual(0.2)
      }
    }),
    seed,
  )
})

const careLines = [
  'Machine wash hot',
  'Do not bleach',
  'Tumble dry high',
  'Do not dry clean',
  'Wash with like colours',
]

test.each([
  ['Do not iron', 'none'],
  ['Cool iron', 'cool'],
  ['Iron low', 'cool'],
  ['Warm iron', 'warm'],
  ['Iron on high heat', 'hot'],
])('the line %j means the same wherever it stands among other lines', (line, level) => {
  const orders = fc.shuffledSubarray([...careLines, line], { minLength: careLines.length + 1 })
  fc.assert(
    fc.property(orders, fc.constantFrom('\n', '. ', '; '), (lines, between) => {
      expect(ironTold(readLabel(`100% cotton\n${lines.join(between)}`))).toBe(level)
    }),
    { ...seed, numRuns: 100 },
  )
})

test('lines run together without any mark are never read hotter', () => {
  const warmth = ['none', 'cool', 'warm', 'hot']
  const orders = fc.shuffledSubarray(
    ['MACHINE WASH HOT', 'DO NOT BLEACH', 'TUMBLE DRY LOW', 'DO NOT DRY CLEAN'],
    { minLength: 2 },
  )
  const ironing = fc.constantFrom(
    ['DO NOT IRON', 0] as const,
    ['COOL IRON', 1] as const,
    ['IRON LOW', 1] as const,
    ['WARM IRON', 2] as const,
  )
  fc.assert(
    fc.property(orders, ironing, fc.nat(4), (lines, [line, said], at) => {
      const all = [...lines.slice(0, at), line, ...lines.slice(at)]
      const { level } = readLabel(`100% COTTON ${all.join(' ')}`).iron
      expect(level).not.toBeNull()
      expect(warmth.indexOf(level!)).toBeLessThanOrEqual(said)
    }),
    seed,
  )
})

test('labels of real names in one to five languages are never read wrong for sure, nor hotter', () => {
  let sure = 0
  fc.assert(
    fc.property(randomLabels, ({ text, shares, level, iron }) => {
      const reading = readLabel(text)
      expect(limitOf(reading.iron.level ?? 'silent'), text).toBeLessThanOrEqual(limitOf(level))
      if (!reading.sure) return
      sure++
      const told = reading.blocks.map(({ fibres }) =>
        fibres.map(({ fibre, percent }) => `${percent} ${fibre}`).sort(),
      )
      expect(told, text).toEqual([shares])
      expect(ironTold(reading), text).toBe(iron)
    }),
    { ...seed, numRuns: 2_000 },
  )
  // A reader that is sure of nothing would pass too.
  expect(sure).toBeGreaterThan(1_200)
})

test('labels with a trap among their lines are never read wrong for sure, nor hotter', () => {
  let sure = 0
  fc.assert(
    fc.property(trapLabels, ({ text, shares, level, iron, ask, bansHeat }) => {
      const reading = readLabel(text)
      expect(limitOf(reading.iron.level ?? 'silent'), text).toBeLessThanOrEqual(limitOf(level))
      if (!reading.sure) return
      sure++
      expect(ask, text).toBe(false)
      const told = reading.blocks.map(({ fibres }) =>
        fibres.map(({ fibre, percent }) => `${percent} ${fibre}`).sort(),
      )
      expect(told, text).toEqual([shares])
      if (!bansHeat) expect(ironTold(reading), text).toBe(iron)
    }),
    { ...seed, numRuns: 2_000 },
  )
  expect(sure).toBeGreaterThan(700)
})

test('parts of the garment may stand in any order', () => {
  const parts = [
    'Shell: 60% cotton 40% polyester',
    'Lining: 100% nylon',
    'Rib: 95% cotton 5% spandex',
  ]
  const told = parts.map((part) => blocksTold(readLabel(part)))
  fc.assert(
    fc.property(fc.shuffledSubarray([0, 1, 2], { minLength: 3 }), (order) => {
      const reading = readLabel(order.map((at) => parts[at]).join('\n'))
      expect(blocksTold(reading)).toBe(order.map((at) => told[at]).join(' | '))
      expect(reading.sure).toBe(true)
    }),
    seed,
  )
})

test.each([
  ['one fibre over and over', '100% cotton '.repeat(9000)],
  ['shares alone', '60% '.repeat(25_000)],
  ['bans without end', 'do not iron or '.repeat(7000)],
  ['ironing without end', 'iron '.repeat(20_000)],
  ['signs without spaces', '綿毛麻'.repeat(30_000)],
  ['empty lines', '\n'.repeat(100_000)],
  ['marks of direction', '\u202e\u0000'.repeat(50_000)],
  ['dots that lead nowhere', '. '.repeat(50_000)],
  ['likenesses', 'feels like 100% '.repeat(6000)],
  ['questions', 'iron hot? no '.repeat(7000)],
  ['glued words', 'cottonpolyester'.repeat(7000)],
])('100 kB of %s is read to its beginning and never for sure', (_name, text) => {
  expect(readLabel(text)).toMatchObject({ sure: false })
})

test.each(labelLanguages.map((language) => ({ language, code: language.code })))(
  'every name of a part in $code stands for its part, or is asked about',
  ({ language }) => {
    const [cotton, polyester] = [language.fibres.cotton!, language.fibres.polyester!]
    for (const [section, names] of Object.entries(language.sections)) {
      for (const name of names) {
        const text = `${name}: 60% ${cotton.names[0]} 40% ${polyester.names[0]}`
        const reading = readLabel(text)
        if (reading.sure)
          expect(blocksTold(reading), text).toBe(`${section}: 60 cotton, 40 polyester`)
      }
    }
  },
)
