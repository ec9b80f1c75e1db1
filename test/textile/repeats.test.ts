import { describe, expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import { readLines } from '../../src/textile/label-lines.ts'

// Every label here is invented, and so is each slip; what is expected follows from the other languages.
const madeOf = (...lines: string[]) => {
  const { blocks, sure, problems } = readLabel(lines.join('\n'))
  return {
    sure,
    problems: problems.map(({ code }) => code),
    parts: blocks.map(({ section, fibres }) => ({
      section,
      shares: fibres.map(({ fibre, percent }) => `${percent} ${fibre}`).join(', '),
    })),
  }
}

const english = '95% cotton 5% elastane'
const french = '95% coton 5% élasthanne'
const parts = [{ section: null, shares: '95 cotton, 5 elastane' }]

describe('a make-up that two languages tell whole stands for sure where a third', () => {
  test.each([
    ['has another digit', '96% Baumwolle 5% Elasthan'],
    ['has lost a digit', '9% Baumwolle 5% Elasthan'],
    ['has a digit too many', '95% Baumwolle 59% Elasthan'],
    ['has lost a number', '95% Baumwolle Elasthan'],
    ['has lost the first number', 'Baumwolle 5% Elasthan'],
    ['has lost a percent sign', '95% Baumwolle 5 Elasthan'],
    ['has a name that is none', '95% Bznxwrlle 5% Elasthan'],
    ['has lost a share', '95% Baumwolle'],
    ['has names that are not known', '95% kaqtun 5% leqstan'],
  ])('%s', (_, third) => {
    for (const lines of [
      [english, french, third],
      [english, third, french],
      [third, english, french],
    ])
      expect(madeOf(...lines), lines.join(' | ')).toEqual({ parts, sure: true, problems: [] })
  })
})

test('a number lost among many does not move the others along', () => {
  const lines = [
    '60% cotton 30% polyester 10% wool',
    '60% coton polyester 10% laine',
    '60% algodón 30% poliéster 10% lana',
  ]
  expect(madeOf(...lines)).toMatchObject({
    parts: [{ section: null, shares: '60 cotton, 30 polyester, 10 wool' }],
    sure: true,
  })
})

test('two slips in one of several shares are outvoted by three languages, and not by two', () => {
  const two = ['60% cotton 30% polyester 10% wool', '60% coton 30% polyester 10% laine']
  const slips = '66% Baumwolle 30% Polyester 18% Wolle'
  expect(madeOf(...two, slips).sure).toBe(false)
  expect(madeOf(...two, '60% algodón 30% poliéster 10% lana', slips)).toMatchObject({
    parts: [{ shares: '60 cotton, 30 polyester, 10 wool' }],
    sure: true,
  })
})

describe('it stands, but is asked about, where a third', () => {
  test.each([
    ['has two slips', '96% Baumwolle 8% Elasthan'],
    ['names another fibre', '95% Viskose 5% Elasthan'],
    ['names one more fibre', '95% Baumwolle 5% Elasthan 12% Seide'],
    ['makes another whole', '85% Baumwolle 15% Elasthan'],
  ])('%s', (_, third) => {
    const { sure, parts: read } = madeOf(english, french, third)
    expect({ sure, read }).toEqual({ sure: false, read: parts })
  })
})

test('one whole make-up stands where the other language is half read', () => {
  expect(madeOf(english, '95% Bznxwrlle 5% Elasthan')).toMatchObject({ parts, sure: true })
  expect(madeOf(english, '96% Baumwolle 5% Elasthan')).toMatchObject({ parts, sure: false })
})

test('two whole make-ups in two languages are never sure', () => {
  const german = '85% Baumwolle 15% Elasthan'
  expect(madeOf(english, german).sure).toBe(false)
  expect(madeOf(english, french, german, '85% algodón 15% elastano').sure).toBe(false)
})

// Shifted by one place, the numbers of the one make-up stand beside the names of the other.
test('the same numbers the other way round in one language are never sure', () => {
  const names = ['linen viscose', 'lin viscose', 'Leinen Viskose', 'lino viscosa']
  for (const [first, second] of [
    [55, 45],
    [60, 40],
    [95, 5],
  ])
    for (const isShareFirst of [true, false])
      for (const joint of ['\n', ' / ', ' '])
        for (const languages of [2, 3, 4]) {
          const told = names.slice(0, languages).map((both, at) => {
            const [a, b] = at === languages - 1 ? [second, first] : [first, second]
            const [one, other] = both.split(' ')
            return isShareFirst ? `${a}% ${one} ${b}% ${other}` : `${one} ${a}% ${other} ${b}%`
          })
          expect(madeOf(told.join(joint)).sure, told.join(joint)).toBe(false)
        }
})

test('two make-ups of one language stay both, as alternatives', () => {
  expect(madeOf('95% cotton 5% elastane', '90% cotton 10% viscose')).toMatchObject({
    sure: false,
    problems: ['alternatives'],
    parts: [parts[0], { shares: '90 cotton, 10 viscose' }],
  })
})

describe('parts of a garment', () => {
  const two = [
    { section: 'body', shares: '95 cotton, 5 elastane' },
    { section: 'lining', shares: '100 polyester' },
  ]
  const told = ['Shell', english, 'Lining', '100% polyester']
  const again = ['Oberstoff', '95% Baumwolle 5% Elasthan', 'Futter', '100% Polyester']
  const third = ['Extérieur', french, 'Doublure', '100% polyester']

  test.each([
    ['of the lining is lost', 2],
    ['of the shell is lost', 0],
  ])('are the same where one language’s name %s', (_, lost) => {
    const without = again.filter((_, at) => at !== lost)
    for (const lines of [
      [...told, ...without, ...third],
      [...without, ...told, ...third],
      [...told, ...third, ...without],
    ]) {
      const { parts: read, sure } = madeOf(...lines)
      expect(read, lines.join(' | ')).toHaveLength(two.length)
      expect(read, lines.join(' | ')).toEqual(expect.arrayContaining(two))
      expect(sure, lines.join(' | ')).toBe(true)
    }
  })

  test('are asked about where one of two languages lost a name', () => {
    expect(madeOf(...told, ...again.filter((_, at) => at !== 2)).sure).toBe(false)
  })
})

test('unread words count for nothing where two other languages are without any', () => {
  const unread = '95% Baumwolle qorvex 5% Elasthan'
  expect(madeOf(english, french, unread)).toMatchObject({ parts, sure: true })
  expect(madeOf(english, unread)).toMatchObject({ parts, sure: false, problems: ['words_unread'] })
})

test('a line whose letters may be others counts for nothing where the other lines tell the same', () => {
  const lines = [english, french, '95% Baumwolle 5% Elasthan'].map((text) => ({ text, sure: 0.9 }))
  const [first, second, third] = lines
  expect(readLines([first!, second!, { ...third!, sure: 0.1 }]).sure).toBe(true)
  expect(readLines([{ ...first!, sure: 0.1 }]).sure).toBe(false)
})

test('a first name alone above a share with a name of its own leaves open which side is meant', () => {
  const lines = [
    'POLYAMIDE',
    '60 % POLYESTER 40 %',
    'POLYAMIDE',
    '60 % POLYESTER 40 %',
    'POLYAMIDE',
  ]
  const { sure, problems } = readLabel(lines.join('\n'))
  expect(sure).toBe(false)
  expect(problems.map(({ code }) => code)).toContain('pairing')
  // Where the lines pair them there is nothing to ask.
  expect(readLabel('POLYAMIDE\n60 %\nPOLYESTER\n40 %').sure).toBe(true)
  expect(readLabel('60 % POLYESTER 40 %\nPOLYAMIDE').sure).toBe(true)
})
