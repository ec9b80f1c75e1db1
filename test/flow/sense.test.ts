import { describe, expect, test } from 'vitest'
import { type Question, questionSchema, type Reply } from '../../src/flow/grammar.ts'
import { makesSense } from '../../src/flow/sense.ts'

const question = (rest: Record<string, unknown>): Question =>
  questionSchema.parse({ id: 'q', read_by: ['clerk'], ...rest })

const questions = {
  choice: question({ kind: 'choice', options: ['a', 'b'] }),
  many: question({ kind: 'many', options: ['none', 'a', 'b'] }),
  bare: question({ kind: 'many', options: ['a', 'b'] }),
  signs: question({ kind: 'symbols', options: ['iron-hot', 'iron-cool', 'wash-30'] }),
  number: question({ kind: 'number', min: 1, max: 9, unit: 'weeks' }),
  halves: question({ kind: 'number', min: 1, max: 9, unit: 'weeks', step: 0.5 }),
  text: question({ kind: 'text', longest: 3 }),
  label: question({ kind: 'label' }),
  photo: question({ kind: 'photo', max: 2 }),
  contact: question({ kind: 'contact' }),
  optional: question({ kind: 'text', optional: true }),
}

const label = { found: 'words', words: 'wool', iron: null }
const contact = { name: 'Ana', email: 'ana@example.org', phone: '' }

describe('a reply that was kept', () => {
  test.each<[keyof typeof questions, unknown]>([
    ['choice', 'a'],
    ['many', ['a', 'b']],
    ['many', ['none']],
    ['signs', ['iron-hot', 'wash-30']],
    ['number', { amount: 9, unit: 'weeks' }],
    ['halves', { amount: 2.5, unit: 'weeks' }],
    ['text', 'abc'],
    ['text', '🧵🧵🧵'],
    ['label', label],
    ['label', { ...label, found: 'none', words: '' }],
    ['label', { ...label, photo: 'p1' }],
    ['label', { ...label, photo: 'p1', read: '' }],
    ['label', { ...label, doubted: true }],
    ['photo', ['p', 'r']],
    ['contact', contact],
  ])('still answers a %s: %j', (name, given) => {
    expect(makesSense(questions[name], { given } as Reply, {}, {})).toBe(true)
  })

  test.each<[keyof typeof questions, unknown]>([
    ['choice', 'c'],
    ['choice', ['a']],
    ['choice', null],
    ['many', []],
    ['many', ['a', 'c']],
    ['many', ['none', 'a']],
    ['many', ['a', 'a']],
    ['many', 'a'],
    ['bare', []],
    ['signs', ['iron-hot', 'iron-cool']],
    ['signs', []],
    ['number', { amount: 10, unit: 'weeks' }],
    ['number', { amount: 0, unit: 'weeks' }],
    ['number', { amount: 2.5, unit: 'weeks' }],
    ['number', { amount: 2, unit: 'days' }],
    ['number', { amount: '2', unit: 'weeks' }],
    ['number', { amount: Number.NaN, unit: 'weeks' }],
    ['number', 2],
    ['number', [2]],
    ['halves', { amount: 2.25, unit: 'weeks' }],
    ['text', 'abcd'],
    ['text', ''],
    ['text', 3],
    ['label', { ...label, words: '' }],
    ['label', { ...label, found: 'tag' }],
    ['label', { ...label, iron: 'scorching' }],
    ['label', { ...label, words: 3 }],
    ['label', { ...label, photo: '' }],
    ['label', { ...label, photo: 'p1', read: 3 }],
    ['label', { ...label, read: 'read on no photo' }],
    ['label', { ...label, doubted: false }],
    ['label', { ...label, found: 'none', words: '', doubted: true }],
    ['label', 'wool'],
    ['photo', []],
    ['photo', ['p', 'r', 's']],
    ['photo', [7]],
    ['contact', { ...contact, name: '' }],
    ['contact', { ...contact, email: '' }],
    ['contact', { name: 'Ana', email: 'ana@example.org' }],
    ['contact', null],
  ])('no longer answers a %s: %j', (name, given) => {
    expect(makesSense(questions[name], { given } as Reply, {}, {})).toBe(false)
  })

  test.each([null, 3, 'a', [], {}])('is refused where it is no reply at all: %j', (reply) => {
    expect(makesSense(questions.choice, reply as never, {}, {})).toBe(false)
  })

  test('passes over only what is optional, and may always be left to a person', () => {
    expect(makesSense(questions.optional, { skipped: true }, {}, {})).toBe(true)
    expect(makesSense(questions.text, { skipped: true }, {}, {})).toBe(false)
    expect(makesSense(questions.contact, { asked: '' }, {}, {})).toBe(true)
  })

  test.each([
    [{ photo: 'p1' }, true],
    [{ photo: 'p1', read: 'w00l' }, true],
    [{ photo: 3 }, false],
    [{ read: 'read on no photo' }, false],
    [{ photo: 'p1', read: 'x'.repeat(2001) }, false],
  ])('a label left to a person with %j', (seen, kept) => {
    expect(makesSense(questions.label, { asked: '', ...seen } as Reply, {}, {})).toBe(kept)
  })
})
