import { describe, expect, test } from 'vitest'
import type { Replies, Reply, Value } from '../../src/flow/grammar.ts'
import { resolve } from '../../src/garment/derive.ts'
import { domains, type FactName, type Facts, untold } from '../../src/garment/facts.ts'
import { rules } from '../../src/intake/rules.ts'
import { tell } from '../../src/intake/told.ts'
import { learnAt } from '../help/app.ts'
import { pileOf } from '../help/pile.ts'
import { picker, wander } from '../help/wander.ts'

type Said = Readonly<Record<string, Value>>

const words = (text: string): Value => ({ found: 'words', words: text, iron: null })

const told = (said: Said, fits = (inches: number) => inches <= 12) => {
  const replies: Replies = Object.fromEntries(
    Object.entries(said).map(([question, given]) => [question, { given }]),
  )
  return tell(replies, () => 5, fits)
}
const factsOf = (said: Said): Facts => resolve(told(said).known)

const cases: readonly [said: Said, facts: Partial<Facts>][] = [
  [
    { kind: 'button-shirt' },
    {
      kind: 'button-shirt',
      surface: 'woven',
      stretch: 'none',
      weight: 'medium',
      trims: 'removable',
    },
  ],
  [{ kind: 'dress' }, { kind: 'dress', surface: 'unknown', stretch: 'unknown', weight: 'unknown' }],
  [{ kind: 'coat', surface: 'fur' }, { surface: 'fur' }],
  // What the customer says stands above what the kind implies.
  [{ kind: 'tshirt', stretch: 'much' }, { stretch: 'much' }],
  [{ label: words('100% cotton, hot iron') }, { heat: 'hot', iron: 'hot' }],
  [{ label: words('100% wool, cool iron') }, { iron: 'cool' }],
  [{ label: words('60% cotton, hot iron') }, { heat: 'unknown', iron: 'silent' }],
  [{ label: words('100% cotton') }, { labelDoubt: 'no' }],
  [
    { label: { found: 'words', words: '100% cotton, hot iron', iron: null, doubted: true } },
    { heat: 'hot', iron: 'hot', labelDoubt: 'yes' },
  ],
  [{ label: { found: 'none', words: '', iron: null } }, { heat: 'unknown', iron: 'missing' }],
  [
    { label: { found: 'signs', words: '', iron: null }, signs: ['iron-none'] },
    { heat: 'unknown', iron: 'none' },
  ],
  [{ wear: 'thin' }, { wear: 'thin' }],
  [{ wear: 'shattered' }, { wear: 'shattered' }],
  [{ history: ['none'] }, { soil: 'clean', wash: 'washed', age: 'modern', bleed: 'untested' }],
  [{ history: ['stained'] }, { soil: 'soiled', wash: 'washed' }],
  [{ history: ['body-fluid'] }, { soil: 'body-fluid' }],
  [{ history: ['damp'] }, { soil: 'mould' }],
  [{ history: ['pests'] }, { soil: 'pests' }],
  [{ history: ['chemical'] }, { soil: 'chemical' }],
  // The gravest of several holds.
  [{ history: ['stained', 'pests', 'damp', 'chemical'] }, { soil: 'chemical' }],
  [{ history: ['stained', 'body-fluid'] }, { soil: 'body-fluid' }],
  [{ history: ['softener'] }, { wash: 'softener', soil: 'clean' }],
  [{ history: ['unwashed', 'softener'] }, { wash: 'unwashed' }],
  [{ history: ['scent', 'unwashed'] }, { wash: 'never' }],
  [{ history: ['bleeds'] }, { bleed: 'bleeds' }],
  [{ history: ['old'] }, { age: 'old' }],
  [{ history: ['old', 'historic'] }, { age: 'historic' }],
  [{ history: [] }, { soil: 'unknown', wash: 'unwashed', age: 'unknown', bleed: 'untested' }],
  [{ pattern: 'solid' }, { pattern: 'solid', printMake: 'none', graphic: 'none' }],
  [{ pattern: 'stripe-check' }, { printMake: 'in-cloth', graphic: 'none' }],
  [
    { pattern: 'allover', print_make: 'screen' },
    { printMake: 'screen', graphic: 'none' },
  ],
  [
    { pattern: 'single', print_make: 'film', graphic_size: { amount: 9.5, unit: 'inches' } },
    { printMake: 'film', graphic: 'fits' },
  ],
  [
    { pattern: 'single', graphic_size: { amount: 12.5, unit: 'inches' } },
    { printMake: 'unknown', graphic: 'too-large' },
  ],
  [{ pattern: 'single' }, { graphic: 'unknown' }],
  [{ details: ['none'] }, { trims: 'none', consent: 'yes', oneWay: 'no' }],
  [{ kind: 'jeans', details: ['none'] }, { trims: 'removable' }],
  [{ details: ['hard-trims'] }, { trims: 'removable' }],
  [{ details: ['hard-trims', 'melting-trims'] }, { trims: 'meltable' }],
  [{ kind: 'hoodie', details: ['melting-trims', 'glued-trims'] }, { trims: 'glued' }],
  [{ details: ['one-way'] }, { oneWay: 'yes' }],
  [{ details: ['keep-a-spot'] }, { consent: 'part' }],
  [{ details: ['keep-a-spot', 'no-cut'] }, { consent: 'no-cut' }],
  [{}, untold],
]

test.each(cases)('%o tells %o', (said, facts) => {
  expect(factsOf(said)).toMatchObject(facts)
})

test('what is passed over or left to a person tells nothing', () => {
  for (const reply of [{ skipped: true }, { asked: 'What is meant?' }] as Reply[]) {
    const questions = ['kind', 'label', 'wear', 'history', 'pattern', 'graphic_size', 'details']
    const replies = Object.fromEntries(questions.map((question) => [question, reply]))
    const { known, size, graphicInches, mustUse } = tell(
      replies,
      () => 5,
      () => true,
    )
    expect(resolve(known)).toEqual({ ...untold, iron: 'missing' })
    expect({ size, graphicInches, mustUse }).toEqual({
      size: 'unknown',
      graphicInches: null,
      mustUse: false,
    })
  }
})

test('each fact says who told it and when', () => {
  const at = (question: string) => (question === 'wear' ? 7 : 5)
  const replies = { kind: { given: 'tshirt' }, wear: { given: 'thin' } }
  const { known } = tell(replies, at, () => true)
  expect(known.wear).toEqual([{ value: 'thin', source: 'said', at: 7 }])
  expect(known.surface).toEqual([{ value: 'knit', source: 'implied', at: 5 }])
})

test('a wish to see it in the quilt and its size are told beside the facts', () => {
  expect(told({ size: 'XL', details: ['must-use'] })).toMatchObject({ size: 'XL', mustUse: true })
  expect(told({ graphic_size: { amount: 4, unit: 'inches' } }).graphicInches).toBe(4)
})

test('colours and photos are told beside the facts too', () => {
  expect(told({ colours: ['red', 'blue', 'many-colours'] })).toMatchObject({
    colours: ['red', 'blue'],
    manyColours: true,
  })
  expect(told({ photos: ['b', 'a'] }).photoIds).toEqual(['b', 'a'])
  expect(told({ kind: 'tie' })).toMatchObject({ colours: [], manyColours: false, photoIds: [] })
})

test('a colour that the shop has added has no place in the picture, and does no harm', () => {
  expect(told({ colours: ['teal', 'green'] }).colours).toEqual(['green'])
})

/** What no answer of a customer can tell, and who does. */
const notTheirs: Readonly<Partial<Record<FactName, Readonly<Record<string, string>>>>> = {
  bleed: { fast: 'a damp white cloth at the bench' },
  test: { passed: 'a test patch at the bench', failed: 'a test patch at the bench' },
}

describe('the vocabulary', () => {
  const knowledge = learnAt('2026-06-01')
  const reached = new Map<FactName, Set<string>>()
  for (let seed = 0; seed < 60; seed += 1) {
    const acts = wander(knowledge.flow, rules, picker(seed), 90)
    for (const { facts } of pileOf(knowledge, acts).garments) {
      for (const [fact, value] of Object.entries(facts)) {
        const values = reached.get(fact as FactName) ?? new Set()
        reached.set(fact as FactName, values.add(value))
      }
    }
  }

  test.each(Object.keys(domains) as FactName[])(
    'every value of %s can be told by some answers',
    (fact) => {
      const elsewhere = Object.keys(notTheirs[fact] ?? {})
      const missing = domains[fact].filter((value) => !reached.get(fact)?.has(value))
      expect(missing.filter((value) => !elsewhere.includes(value))).toEqual([])
    },
  )
})
