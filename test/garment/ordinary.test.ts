import { describe, expect, test } from 'vitest'
import { implied } from '../../src/garment/derive.ts'
import { domains, type Facts, untold } from '../../src/garment/facts.ts'
import { grade } from '../../src/garment/grade.ts'
import { yieldFact } from '../../src/quilt/yield.ts'
import { plainShirt } from '../help/garments.ts'
import { knowledge } from '../help/knowledge.ts'

const adult = { recipient: 'adult' } as const
const codes = (facts: Facts, pile: Parameters<typeof grade>[1] = adult) =>
  grade(facts, pile, knowledge).flags.map(({ code }) => code)

test.each(['hot', 'warm'] as const)('a flannel shirt that may be ironed %s is sound', (iron) => {
  const { grade: given, press, layouts } = grade({ ...plainShirt, iron }, adult, knowledge)
  expect(given).toBe('sound')
  expect(press).toMatchObject({ method: 'press', backing: 'none', interfacing: null })
  expect(layouts.every(({ fits }) => fits)).toBe(true)
})

/** An ordinary garment of a kind in size M: what the kind implies, and plain answers to the rest. */
function ordinary(kind: Facts['kind'], told: Partial<Facts> = {}): Facts {
  const facts: Facts = {
    ...plainShirt,
    pattern: 'solid',
    printMake: 'none',
    trims: 'none',
    ...implied(kind),
    ...told,
    kind,
  }
  return { ...facts, yield: yieldFact(kind, kind === 'baby-suit' ? '3-6m' : 'M', facts) }
}

const screenPrint = { pattern: 'single', graphic: 'fits', printMake: 'screen' } as const
const filmPrint = { pattern: 'single', graphic: 'fits', printMake: 'film' } as const

test.each<[Facts['kind'], Partial<Facts>, string, string, string]>([
  ['tshirt', {}, 'sound', 'fuse', 'fused'],
  ['tshirt', screenPrint, 'care', 'press', 'sewn-in'],
  ['tshirt', filmPrint, 'care', 'press', 'sewn-in'],
  ['tshirt', { heat: 'unknown', iron: 'missing' }, 'care', 'press', 'sewn-in'],
  ['long-sleeve', {}, 'sound', 'fuse', 'fused'],
  ['polo', {}, 'sound', 'fuse', 'fused'],
  ['jersey', { ...filmPrint, heat: 'warm', stretch: 'little' }, 'care', 'press', 'sewn-in'],
  ['jersey', { printMake: 'sublimated', stretch: 'little' }, 'care', 'fuse-cool', 'fused'],
  ['sweatshirt', {}, 'sound', 'fuse', 'fused'],
  ['hoodie', screenPrint, 'care', 'press', 'sewn-in'],
  ['jumper', { surface: 'loose-knit', heat: 'warm' }, 'care', 'fuse-cool', 'fused'],
  ['jumper', { surface: 'loose-knit', iron: 'none' }, 'care', 'do-not-press', 'sewn-in'],
  ['thermal', {}, 'care', 'fuse', 'fused'],
  ['button-shirt', {}, 'sound', 'press', 'none'],
  ['blouse', { heat: 'warm' }, 'care', 'fuse', 'fused'],
  ['blouse', { heat: 'cool' }, 'care', 'press', 'sewn-in'],
  ['jeans', {}, 'sound', 'press', 'none'],
  ['jeans', { wear: 'holes' }, 'care', 'fuse', 'fused'],
  ['trousers', { heat: 'warm' }, 'sound', 'press', 'none'],
  ['skirt', {}, 'sound', 'press', 'none'],
  ['dress', { surface: 'knit', stretch: 'much', heat: 'warm' }, 'care', 'fuse', 'fused'],
  ['pyjamas', {}, 'sound', 'press', 'none'],
  ['baby-suit', {}, 'sound', 'fuse', 'fused'],
  ['blanket', { surface: 'pile', heat: 'warm' }, 'care', 'press', 'none'],
  ['blanket', { surface: 'pile', heat: 'unknown' }, 'care', 'do-not-press', 'none'],
  ['tie', { heat: 'unknown', iron: 'missing' }, 'care', 'press', 'sewn-in'],
  ['scarf', { weight: 'fine', heat: 'warm' }, 'care', 'fuse', 'fused'],
  ['apron', {}, 'sound', 'press', 'none'],
  ['uniform', {}, 'eyes', 'press', 'none'],
  ['swimwear', { heat: 'cool' }, 'care', 'press', 'sewn-in'],
  ['coat', { weight: 'padded', heat: 'warm' }, 'care', 'press', 'none'],
  ['other', {}, 'eyes', 'press', 'none'],
])('a %s with %j is graded %s: %s, backing %s', (kind, told, given, method, backing) => {
  const grading = grade(ordinary(kind, told), adult, knowledge)
  expect(grading.grade).toBe(given)
  expect(grading.press).toMatchObject({ method, backing })
})

test('every kind but uniforms and unnamed things can be sent without waiting for a person', () => {
  const waiting = domains.kind.filter((kind) => {
    const { grade: given } = grade(ordinary(kind), adult, knowledge)
    return given !== 'sound' && given !== 'care'
  })
  expect(waiting).toEqual(['uniform', 'other'])
})

test('nothing told means a person looks and no iron touches it', () => {
  const { grade: given, press } = grade(untold, { recipient: 'unknown' }, knowledge)
  expect(given).toBe('eyes')
  expect(press).toMatchObject({ method: 'do-not-press', backing: 'sewn-in', ceilingC: null })
})

describe('who set the ceiling', () => {
  test.each<[Partial<Facts>, number | null, string]>([
    [{ iron: 'cool', heat: 'cool' }, 110, 'label'],
    [{ iron: 'hot', heat: 'warm' }, 150, 'fibre'],
    [{ iron: 'hot', printMake: 'screen' }, 110, 'print'],
    [{ iron: 'hot', printMake: 'sublimated' }, 125, 'print'],
    [{ iron: 'hot', trims: 'glued' }, 110, 'trims'],
    [{ iron: 'hot', age: 'old' }, 150, 'age'],
    [{ iron: 'hot', surface: 'leather' }, null, 'surface'],
    [{ iron: 'hot', wear: 'shattered' }, null, 'wear'],
  ])('%j gives %s °C, set by %s', (told, ceilingC, setBy) => {
    expect(grade({ ...plainShirt, ...told }, adult, knowledge).press).toMatchObject({
      ceilingC,
      setBy,
    })
  })
})

test('a wish for a layout that does not suit is named, and asks for no person', () => {
  const graphic = { ...plainShirt, ...screenPrint }
  expect(codes(graphic, { ...adult, layout: 'plain-squares' })).toContain('not-for-the-layout')
  expect(codes(graphic, { ...adult, layout: 'framed' })).not.toContain('not-for-the-layout')
  expect(codes(graphic)).not.toContain('not-for-the-layout')
})

test('the gravest reason stands first', () => {
  expect(codes({ ...plainShirt, wear: 'thin', soil: 'mould', bleed: 'untested' })).toEqual([
    'mould',
    'do-not-post',
    'thin',
    'trims-come-off',
    'bleed-untested',
  ])
})
