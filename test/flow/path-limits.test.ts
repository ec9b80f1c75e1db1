import { describe, expect, test } from 'vitest'
import { Unreadable } from '../../src/flow/finding.ts'
import { pathLengths } from '../../src/flow/path-limits.ts'
import { readPathLimits } from '../../src/flow/read.ts'
import { parseSource } from '../../src/flow/source.ts'
import { rules } from '../../src/intake/rules.ts'
import { learnAt } from '../help/app.ts'
import { parcelRules, parcels } from './parcels.ts'

const parcel = parcels.parts[1]!

const measured = (text: string) => {
  const source = parseSource(text, 'limits.yaml')
  return pathLengths(readPathLimits(source.value, source), parcels, parcel, parcelRules, source)
}

describe('the limits of paths', () => {
  test('hold for each example by itself', () => {
    const { findings, lengths } = measured(`
- { name: any parcel, most: 4 }
- { name: a light one, most: 2, given: { size: small } }
- { name: neither large nor huge, most: 2, given: { size: { not: [large, huge] } } }
- { name: one of two, most: 4, given: { size: [small, large] } }
`)
    expect(findings).toEqual([])
    expect(lengths.map(({ longest }) => longest)).toEqual([4, 2, 2, 4])
    expect(lengths[1]).toEqual({ name: 'a light one', most: 2, longest: 2 })
  })

  test('are told by line, with the path that is longer, when the flow asks more', () => {
    const { findings } = measured(
      '- { name: any, most: 4 }\n- name: large\n  most: 3\n  given: { size: large }',
    )
    expect(findings).toEqual([
      {
        file: 'limits.yaml',
        line: 3,
        rule: 'too-long',
        message: 'large: asked for 4 answers, at most 3 are allowed',
        example: expect.stringMatching(/^size=large, weight=.*, floor=yes, contents=/),
      },
    ])
  })

  test.each([
    [
      'a question that is none',
      'given: { colour: red }',
      'unknown-answer',
      /colour is no question/,
    ],
    [
      'a question that comes later',
      'given: { rush: soon }',
      'unknown-answer',
      /rush is no question that comes so early/,
    ],
    [
      'an option that is none',
      'given: { size: [small, tiny] }',
      'unknown-answer',
      /size has no option tiny/,
    ],
    [
      'one left out that is none',
      'given: { size: { not: tiny } }',
      'unknown-answer',
      /size has no option tiny/,
    ],
    [
      'a question without options',
      'given: { weight: heavy }',
      'unknown-answer',
      /weight has no options/,
    ],
    [
      'every option left out',
      'given: { size: { not: [small, large, huge] } }',
      'unknown-answer',
      /left no answer/,
    ],
    ['a rule that is none', 'rules: { sings: true }', 'unknown-rule', /the rule sings/],
  ])('refuse %s, by line', (_, line, rule, message) => {
    const { findings, lengths } = measured(
      `- { name: any, most: 9 }\n- name: odd\n  most: 9\n  ${line}`,
    )
    expect(findings).toEqual([
      { file: 'limits.yaml', line: 4, rule, message: expect.stringMatching(message) },
    ])
    expect(lengths).toEqual([])
  })

  test('refuse a name twice', () => {
    const { findings } = measured('- { name: any, most: 9 }\n- { name: any, most: 8 }')
    expect(findings).toMatchObject([{ line: 2, rule: 'duplicate-name' }])
  })

  test.each([
    ['a list of nothing', '[]'],
    ['no list', 'most: 3'],
    ['a limit of nothing', '- { name: any, most: 0 }'],
    ['a key of its own', '- { name: any, most: 3, least: 1 }'],
    ['a rule that is neither', '- { name: any, most: 3, rules: { stays_here: perhaps } }'],
    ['no YAML', '- ]['],
  ])('refuse %s', (_, text) => {
    expect(() => measured(text)).toThrow(Unreadable)
  })
})

describe('the shop’s own limits', () => {
  const { flow } = learnAt('2026-06-01')
  const part = flow.parts.find(({ repeat }) => repeat)!
  const lengthOf = (text: string) => {
    const source = parseSource(text, 'limits.yaml')
    return pathLengths(readPathLimits(source.value, source), flow, part, rules, source)
  }
  const shirt = (more: string, holds = 'label_is_signs: false, label_is_unsure: false') => `
- name: shirt
  most: 7
  given: { kind: button-shirt, size: { not: unknown }, wear: sound, history: none, details: none, ${more} }
  rules: { ${holds} }`

  test('a plain woven shirt takes 7 answers on every path', () => {
    expect(lengthOf(shirt('pattern: [solid, stripe-check]'))).toEqual({
      findings: [],
      lengths: [{ name: 'shirt', most: 7, longest: 7 }],
    })
  })

  test('one more where its print is all over, and one more where its label is not read surely', () => {
    const all = lengthOf(shirt('pattern: allover, print_make: in-cloth'))
    expect(all.lengths).toMatchObject([{ longest: 8 }])
    expect(all.findings[0]!.example).toContain('print_make=in-cloth')
    const unsure = lengthOf(shirt('pattern: solid', 'label_is_signs: false, label_is_unsure: true'))
    expect(unsure.findings[0]!.example).toContain('label_check')
  })

  test('an example that no path answers like is refused', () => {
    const { findings } = lengthOf(
      '- { name: odd, most: 9, given: { kind: tshirt }, rules: { has_a_size: false } }',
    )
    expect(findings).toMatchObject([{ rule: 'no-path', message: 'odd: no path answers like this' }])
  })
})
