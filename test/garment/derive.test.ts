import { expect, test } from 'vitest'
import { implied, resolve } from '../../src/garment/derive.ts'
import { domains, type FactName, type Known, type Source, untold } from '../../src/garment/facts.ts'

const known = (value: string, source: Source, at = 0): Known => ({ value, source, at })

test('every implied value is one its fact may have', () => {
  const wrong = domains.kind.flatMap((kind) =>
    Object.entries(implied(kind)).filter(
      ([fact, value]) => !(domains[fact as FactName] as readonly string[]).includes(value),
    ),
  )
  expect(wrong).toEqual([])
})

test('a kind never implies what may hurt: fibre, label, print, wear, age, soil, washing, consent', () => {
  const risky = ['heat', 'iron', 'printMake', 'wear', 'age', 'soil', 'wash', 'bleed', 'consent']
  const told = domains.kind.flatMap((kind) => Object.keys(implied(kind)))
  expect(told.filter((fact) => risky.includes(fact))).toEqual([])
})

test('the knit of a jumper is asked, a shirt is woven', () => {
  expect(implied('jumper').surface).toBeUndefined()
  expect(implied('button-shirt')).toMatchObject({ surface: 'woven', stretch: 'none' })
})

test('nothing known gives what promises least', () => {
  expect(resolve({})).toEqual(untold)
})

test.each<[Source, Source]>([
  ['measured', 'implied'],
  ['read', 'measured'],
  ['said', 'read'],
  ['confirmed', 'said'],
  ['staff', 'confirmed'],
  ['bench', 'staff'],
])('what is %s overrules what was %s, whichever came first', (strong, weak) => {
  const both = [known('knit', strong, 1), known('woven', weak, 2)]
  expect(resolve({ surface: both }).surface).toBe('knit')
  expect(resolve({ surface: both.toReversed() }).surface).toBe('knit')
})

test('of one source the later word stands', () => {
  const twice = [known('knit', 'said', 5), known('woven', 'said', 9)]
  expect(resolve({ surface: twice }).surface).toBe('woven')
})

test.each<['heat' | 'iron' | 'soil', Known[], string]>([
  ['heat', [known('hot', 'confirmed', 9), known('cool', 'measured')], 'cool'],
  ['heat', [known('hot', 'read'), known('unknown', 'said', 9)], 'hot'],
  ['heat', [known('unknown', 'said')], 'unknown'],
  ['iron', [known('none', 'read'), known('hot', 'said', 9)], 'none'],
  ['iron', [known('missing', 'said'), known('warm', 'read')], 'warm'],
  ['soil', [known('mould', 'measured'), known('clean', 'confirmed', 9)], 'mould'],
  ['soil', [known('mould', 'said', 1), known('clean', 'said', 9)], 'clean'],
  ['heat', [known('none', 'read'), known('warm', 'staff', 9)], 'warm'],
  ['soil', [known('mould', 'said'), known('clean', 'bench', 9)], 'clean'],
])('of %s the most cautious word holds until staff decide: %j gives %s', (fact, told, value) => {
  expect(resolve({ [fact]: told })[fact]).toBe(value)
})
