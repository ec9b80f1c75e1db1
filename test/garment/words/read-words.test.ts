import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readWords } from '../../../src/garment/words/read-words.ts'
import { faultsOf, lexicons, vocabulary } from '../../../src/garment/words/vocabulary.ts'
import { halves, percent, phrasesOf, score, toldIn } from './phrases.ts'

/** What a line surely tells, as fact=value. */
const surely = (line: string): string[] =>
  toldIn(readWords(line))
    .filter(({ sure }) => sure)
    .map(({ fact, value }) => `${fact}=${value}`)
    .sort()

const inDoubt = (line: string): string[] =>
  toldIn(readWords(line))
    .filter(({ sure }) => !sure)
    .map(({ fact, value }) => `${fact}=${value}`)
    .sort()

describe.each(halves)('the %s lines', (half) => {
  const phrases = phrasesOf(half)
  const { all } = score(phrases)

  test('are filled in rightly, 98 in 100', () => {
    expect(all.filled).toBeGreaterThan(300)
    expect(percent(all.right, all.filled)).toBeGreaterThanOrEqual(98)
  })

  test('are read, 80 in 100 of what they say', () => {
    expect(percent(all.found, all.present)).toBeGreaterThanOrEqual(80)
  })
})

test('there are three hundred lines of each kind, no line twice', () => {
  const lines = halves.flatMap((half) => phrasesOf(half).map(({ line }) => line))
  expect(lines.length).toBeGreaterThanOrEqual(300)
  expect(new Set(lines).size).toBe(lines.length)
})

test.each([
  ['red and black plaid flannel', 'red and black plaid flannel', 'red', ['black']],
  ['my red and navy check shirt, XL', 'red and navy check shirt', 'red', ['blue']],
  [
    'light blue and dark green plaid shirt',
    'light blue and dark green plaid shirt',
    'blue',
    ['green'],
  ],
  ['a red, white and blue t-shirt, L', 'red, white and blue t-shirt', 'red', ['white', 'blue']],
  ['camisa roja y negra de papá, talla L', 'camisa roja y negra de papá', 'red', ['black']],
  ['soft and warm blue jumper', 'warm blue jumper', 'blue', []],
])('"%s" is one garment of several colours', (line, name, colour, also) => {
  const { facts, name: called } = readWords(line)
  expect(called).toBe(name)
  expect(facts.kind).toMatchObject({ sure: true })
  expect(facts.colour).toMatchObject({ value: colour, also, sure: true })
})

test('names are what the lines call their garments', () => {
  const named = phrasesOf('development').filter(({ name }) => name !== null)
  expect(named.length).toBeGreaterThan(2)
  for (const { line, name } of named) expect(readWords(line).name).toBe(name)
})

describe('what is not said is no fact', () => {
  test.each([
    ['is wool ok?', []],
    ['do you take shirts with holes', []],
    ['¿aceptan camisas manchadas?', []],
    ['if it has moth holes I will mend them', []],
    ['red scarf, is silk fine?', ['colour=red', 'kind=scarf']],
    ['red scarf, no holes or stains', ['colour=red', 'kind=scarf']],
    ['bufanda roja sin agujeros ni manchas', ['colour=red', 'kind=scarf']],
    ['green scarf with red flowers', ['colour=green', 'kind=scarf', 'pattern=allover']],
    ['green scarf, it has a large hole', ['colour=green', 'kind=scarf', 'wear=holes']],
    ['he shot a hole in one in this hat', ['kind=other']],
    ['scarf to match my red coat', ['kind=scarf']],
    ['dad was 45 years old when he bought this scarf', ['kind=scarf']],
  ])('%s', (line, facts) => {
    expect(surely(line)).toEqual(facts)
  })

  test('a guess is asked about', () => {
    expect(inDoubt('scarf, maybe silk')).toEqual(['fibres=silk'])
    expect(inDoubt('bufanda, creo que azul')).toEqual(['colour=blue'])
    expect(inDoubt('size M or L')).toEqual(['size=M'])
    expect(inDoubt('a red scarf and a blue hat')).toEqual(['colour=red', 'kind=scarf'])
  })

  test('a fibre without its share is asked about, never taken for all of the cloth', () => {
    const { fibres } = readWords('cotton shirt').facts
    expect(fibres).toMatchObject({
      sure: false,
      value: [{ fibres: [{ fibre: 'cotton', percent: null }], complete: false }],
    })
  })
})

describe('a slip', () => {
  test.each([
    ['swaeter', ['kind=jumper']],
    ['camsieta', ['kind=tshirt']],
    ['polyesterr 100%', ['fibres=polyester:100']],
  ])('in %s is read through', (line, facts) => {
    expect([...surely(line), ...inDoubt(line)]).toEqual(facts)
  })

  test.each(['whole', 'strained', 'strike', 'gustado', 'pasado', 'unclean', 'smell', 'kitten'])(
    '%s is another word, not one of ours',
    (word) => {
      expect(toldIn(readWords(`it is ${word}`))).toEqual([])
    },
  )
})

test('months and years of age are the sizes of the chart', () => {
  expect(surely('baby suit, 6 months')).toContain('size=3-6m')
  expect(surely('baby suit, 18M')).toContain('size=12-18m')
  expect(surely('body de bebé, 24 meses')).toContain('size=18-24m')
  expect(surely('dress, age 7')).toContain('size=youth-S')
})

test('everything that was not read is there, in its words', () => {
  const { unread } = readWords('red scarf, from the train to Lisbon. Is that enough?')
  expect(unread).toEqual(['train to Lisbon', 'Is that enough'])
})

test('the words are sound: each phrase tells one value of a fact that there is', () => {
  for (const lexicon of lexicons) expect(faultsOf(lexicon)).toEqual([])
  expect(vocabulary().size).toBeGreaterThan(1000)
  const [english] = lexicons
  const wrong = {
    ...english!,
    tells: { ...english!.tells, wear: { holes: ['x'], thin: ['x'], lost: ['y'] } },
  }
  expect(faultsOf(wrong)).toEqual(['wear: "x" tells holes and thin', 'wear: no value lost'])
})

/** Ours and anybody's: words that tell, marks, other scripts, what steers direction. */
const pieces = [
  ...phrasesOf('development').flatMap(({ line }) => line.split(' ')),
  '\u202e',
  '\u0000',
  '<b>',
  '&amp;',
  '？',
  '👕',
  'مرحبا',
  '毛',
  '1e9',
  '%%',
  "''",
  '-',
  '/',
]

test('whatever is sent, it never throws, reads alike twice, and quotes what stands there', () => {
  const line = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 120 }),
    fc.array(fc.constantFrom(...pieces), { maxLength: 25 }).map((words) => words.join(' ')),
  )
  fc.assert(
    fc.property(line, (raw) => {
      const read = readWords(raw)
      expect(readWords(raw)).toEqual(read)
      for (const { because } of Object.values(read.facts)) {
        expect(because).not.toBe('')
        expect(raw).toContain(because)
      }
      expect(raw).toContain(read.name)
      for (const one of read.unread) expect(raw).toContain(one)
    }),
    { numRuns: 400 },
  )
})

test.each([
  ['a megabyte of one letter', 'x'.repeat(1_000_000)],
  ['a megabyte of holes', 'hole or '.repeat(125_000)],
  ['a megabyte of marks', '?,'.repeat(500_000)],
  ['a megabyte of shares', '100 % cotton '.repeat(80_000)],
])('%s is read to its beginning, and the rest given back', (_, raw) => {
  const { unread } = readWords(raw)
  expect(unread.at(-1)).toHaveLength(raw.length - 4_000)
})
