import { describe, expect, test } from 'vitest'
import type { Flow, Replies, Rules } from '../../src/flow/grammar.ts'
import { longestPath } from '../../src/flow/longest.ts'
import { readFlow } from '../../src/flow/read.ts'
import { parseSource } from '../../src/flow/source.ts'
import { chosenIn } from '../../src/flow/walk.ts'
import { parcelRules, parcels } from './parcels.ts'

const picked = (name: string, option: string) => ({
  reads: [name],
  holds: (replies: Replies) =>
    replies[name] !== undefined && chosenIn(replies[name]).includes(option),
})

const flowOf = (questions: string): Flow =>
  readFlow(parseSource(`flow: f\nparts:\n  - id: p\n    questions:\n${questions}`, 'f').value)

const pathOf = (flow: Flow, rules: Rules, given = {}) => {
  const { count, path, free } = longestPath(flow, flow.parts[0]!, rules, given)
  return { count, path: path.map(({ question }) => question.id), free }
}

const choice = (id: string, rest = '') =>
  `      - { id: ${id}, kind: choice, options: [x, y], read_by: [r]${rest} }\n`

describe('the longest path', () => {
  test('takes the edge that asks more, and does not count optional questions', () => {
    const parcel = parcels.parts[1]!
    const { count, example } = longestPath(parcels, parcel, parcelRules)
    expect(count).toBe(4)
    expect(example).toBe('size=large, weight=26 kg, floor=yes, contents=none, picture=…')
  })

  test('looks no further than what is given', () => {
    const given = { size: { given: 'large' }, weight: { given: { amount: 25, unit: 'kg' } } }
    expect(longestPath(parcels, parcels.parts[1]!, parcelRules, given).count).toBe(3)
    const small = { size: [{ given: 'small' }, { asked: '' }] }
    expect(longestPath(parcels, parcels.parts[1]!, parcelRules, small).count).toBe(4)
  })

  test('heeds that an option is open only after some answers in an earlier part', () => {
    const flow: Flow = {
      ...parcels,
      parts: parcels.parts.map((part) => ({
        ...part,
        questions: part.questions.map((question) =>
          question.id === 'size'
            ? {
                ...question,
                next: [{ when: { answer: 'huge' }, to: 'weight' }, { to: 'contents' }],
              }
            : question,
        ),
      })),
    }
    const here = { country: { given: 'here' } }
    const abroad = { country: { given: 'abroad' } }
    expect(longestPath(flow, flow.parts[1]!, parcelRules, here).count).toBe(4)
    expect(longestPath(flow, flow.parts[1]!, parcelRules, abroad).count).toBe(2)
  })

  test('never takes two guards that exclude each other', () => {
    const flow = flowOf(
      choice('a') + choice('b', ', when: { rule: is_x }') + choice('c', ', when: { rule: is_y }'),
    )
    const rules: Rules = { is_x: picked('a', 'x'), is_y: picked('a', 'y') }
    expect(pathOf(flow, rules)).toEqual({ count: 2, path: ['a', 'b'], free: [] })
  })

  test('knows that a question passed by has no reply', () => {
    const flow = flowOf(
      choice('a') + choice('b', ', when: { rule: is_x }') + choice('c', ', when: { rule: b_is_x }'),
    )
    const rules: Rules = { is_x: picked('a', 'x'), b_is_x: picked('b', 'x') }
    expect(pathOf(flow, rules, { a: { given: 'y' } }).path).toEqual(['a'])
    expect(pathOf(flow, rules).path).toEqual(['a', 'b', 'c'])
  })

  test('lets a rule over free text hold or not, but not both on one path', () => {
    const text = '      - { id: t, kind: text, read_by: [r] }\n'
    const flow = flowOf(
      text +
        choice('a', ', when: { rule: long }') +
        choice('b') +
        choice('c', ', when: { rule: long }'),
    )
    const rules: Rules = { long: { reads: ['t'], holds: () => false } }
    expect(pathOf(flow, rules)).toEqual({ count: 4, path: ['t', 'a', 'b', 'c'], free: ['long'] })
    expect(pathOf(flow, rules, { t: { given: 'hello' } })).toEqual({
      count: 2,
      path: ['t', 'b'],
      free: [],
    })
  })

  test('takes no path on which such a rule both holds and does not', () => {
    const edges = 'next: [{ when: { rule: long }, to: end }, { to: b }]'
    const flow = flowOf(
      '      - { id: t, kind: text, read_by: [r] }\n' +
        choice('a', `, when: { rule: long }, ${edges}`) +
        choice('b'),
    )
    const rules: Rules = { long: { reads: ['t'], holds: () => false } }
    expect(pathOf(flow, rules).count).toBe(2)
  })

  test('finds the one set of ticks that leads on, among thousands', () => {
    const flow = flowOf(
      '      - { id: m, kind: many, options: [a, b, c, d, e, f, g, h, i, j], read_by: [r] }\n' +
        choice('q', ', when: { rule: just_so }'),
    )
    const just: Rules = {
      just_so: {
        reads: ['m'],
        holds: ({ m }) => m !== undefined && chosenIn(m).join('') === 'bdfhi',
      },
    }
    const { count, example } = longestPath(flow, flow.parts[0]!, just)
    expect([count, example]).toEqual([2, 'm=b+d+f+h+i, q=x'])
  })
})
