import { describe, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { type Question, questionSchema } from '../../src/flow/grammar.ts'
import { type RawReply, readReply } from '../../src/flow/reply.ts'
import { optionNames } from '../../src/flow/rules.ts'

const question = (rest: Record<string, unknown>): Question =>
  questionSchema.parse({ id: 'q', read_by: ['clerk'], ...rest })

const choice = question({ kind: 'choice', options: ['red', 'blue'] })
const yesNo = question({ kind: 'confirm', options: ['yes', 'no'] })
const many = question({ kind: 'many', options: ['none', 'holes', 'stains'] })
const bare = question({ kind: 'many', options: ['holes', 'stains'] })
const signs = question({ kind: 'symbols', options: ['iron-cool', 'iron-hot', 'wash-30'] })
const weeks = question({ kind: 'number', min: 1, max: 104, unit: 'weeks' })
const inches = question({ kind: 'number', min: 1, max: 40, unit: 'inches', step: 0.25 })
const text = question({ kind: 'text', longest: 10 })
const label = question({ kind: 'label' })
const photo = question({ kind: 'photo', max: 2 })
const contact = question({ kind: 'contact' })
const optional = (one: Question): Question => ({ ...one, optional: true })

const read = (one: Question, raw: RawReply) => readReply(one, optionNames(one), raw)

const refusal = (one: Question, raw: RawReply): [string, object] => {
  try {
    read(one, raw)
  } catch (error) {
    if (error instanceof Failure) return [error.code, error.details]
    throw error
  }
  return ['none', {}]
}

describe('what a form sends', () => {
  test.each<[string, Question, RawReply, unknown]>([
    ['an option', choice, { value: 'red' }, 'red'],
    ['an option in a list of one', choice, { value: ['blue'] }, 'blue'],
    ['a yes', yesNo, { value: 'yes' }, 'yes'],
    ['several, in the order offered', many, { value: ['stains', 'holes'] }, ['holes', 'stains']],
    ['one of several, sent twice', many, { value: ['holes', 'holes'] }, ['holes']],
    ['nothing ticked where it is optional', optional(bare), { value: '' }, []],
    ['one sign a group', signs, { value: ['wash-30', 'iron-hot'] }, ['iron-hot', 'wash-30']],
    ['photos', photo, { value: ['a', 'b'] }, ['a', 'b']],
    ['text without blanks around it', text, { value: '  a hem ' }, 'a hem'],
    ['composed letters', text, { value: 'cafe\u0301' }, 'caf\u00e9'],
    [
      'text of ten signs that need two halves each',
      text,
      { value: '🧵'.repeat(10) },
      '🧵'.repeat(10),
    ],
    ['text without control characters', text, { value: 'a\u0000b\u0007c' }, 'abc'],
    ['text that cannot be turned around', text, { value: 'a\u202eb\u2066c' }, 'abc'],
    ['lines, whatever ends them', text, { value: 'a\r\nb\u2028c' }, 'a\nb\nc'],
  ])('%s is kept', (_, one, raw, given) => {
    expect(read(one, raw)).toEqual({ given })
  })

  test.each<[string, Question, RawReply, string, object]>([
    ['nothing chosen', choice, {}, 'empty_answer', {}],
    ['an empty value', choice, { value: '' }, 'empty_answer', {}],
    ['an unknown option', choice, { value: 'green' }, 'answer_not_offered', {}],
    ['two options for one', choice, { value: ['red', 'blue'] }, 'answer_not_offered', {}],
    ['an unknown one among several', many, { value: ['holes', 'ink'] }, 'answer_not_offered', {}],
    ['none with others', many, { value: ['none', 'holes'] }, 'none_with_others', {}],
    ['nothing ticked where none is an option', many, {}, 'nothing_ticked', {}],
    ['nothing ticked where nothing says so', bare, { value: [] }, 'empty_answer', {}],
    [
      'two ironing signs',
      signs,
      { value: ['iron-cool', 'iron-hot'] },
      'signs_conflict',
      { group: 'iron' },
    ],
    ['no signs', signs, {}, 'empty_answer', {}],
    ['no photo', photo, {}, 'empty_answer', {}],
    [
      'three photos of two',
      photo,
      { value: ['a', 'b', 'c'] },
      'number_out_of_range',
      { min: 1, max: 2, unit: 'photos' },
    ],
    ['blank text', text, { value: ' \u200b\u2003\n' }, 'empty_answer', {}],
    ['text that cannot be seen', text, { value: '\u200d\u200c' }, 'empty_answer', {}],
    ['long text', text, { value: '12345678901' }, 'answer_too_long', { longest: 10 }],
    ['passing over what is needed', choice, { act: 'skip' }, 'empty_answer', {}],
  ])('%s is refused', (_, one, raw, code, details) => {
    expect(refusal(one, raw)).toEqual([code, { question: 'q', ...details }])
  })

  test('a label keeps its photo and what was read there, if it was read', () => {
    const typed = { found: 'words', words: 'wool' }
    const value = { ...typed, iron: null, photo: 'p1' }
    expect(read(label, { ...typed, labelPhoto: { id: 'p1', read: 'w00l' } })).toEqual({
      given: { ...value, read: 'w00l' },
    })
    expect(read(label, { ...typed, labelPhoto: { id: 'p1', read: null } })).toEqual({
      given: value,
    })
  })

  test('a label left to a person keeps them as well, and no words', () => {
    const asks = { act: 'ask', note: 'wool?', found: 'words', words: 'wool' } as const
    expect(read(label, { ...asks, labelPhoto: { id: 'p1', read: 'w00l' } })).toEqual({
      asked: 'wool?',
      photo: 'p1',
      read: 'w00l',
    })
    expect(read(label, { ...asks, labelPhoto: { id: 'p1', read: null } })).toEqual({
      asked: 'wool?',
      photo: 'p1',
    })
  })

  test('words of a label are doubted where they are sent as they were read with doubt', () => {
    const doubtedWords = ['100% w00l', 'cool iron']
    const doubtOf = (raw: RawReply) => read(label, { ...raw, doubtedWords })
    const given = { found: 'words', words: '100% w00l', iron: null, doubted: true }
    expect(doubtOf({ found: 'words', words: ' 100% w00l\r\n' })).toEqual({ given })
    for (const words of ['100% wool', '100% w00l cool iron']) {
      expect(doubtOf({ found: 'words', words })).not.toHaveProperty('given.doubted')
    }
    const signs = { found: 'signs', words: '100% w00l' }
    expect(doubtOf(signs)).not.toHaveProperty('given.doubted')
  })

  test.each<[string, Question]>([
    ['choice', choice],
    ['text', text],
    ['number', weeks],
    ['label', label],
    ['photo', photo],
    ['contact', contact],
    ['symbols', signs],
  ])('an optional %s left empty counts as passed over', (_, one) => {
    expect(read(optional(one), {})).toEqual({ skipped: true })
  })

  test('an option that is not open now is refused', () => {
    expect(() => readReply(choice, ['red'], { value: 'blue' })).toThrow('answer_not_offered')
  })

  test('an optional question may be passed over', () => {
    expect(read(optional(choice), { act: 'skip', value: 'red' })).toEqual({ skipped: true })
  })

  test('a question may be left to a person, with or without a note', () => {
    expect(read(choice, { act: 'ask', note: ' is it red? ' })).toEqual({ asked: 'is it red?' })
    expect(read(choice, { act: 'ask' })).toEqual({ asked: '' })
    expect(refusal(choice, { act: 'ask', note: 'x'.repeat(301) })[0]).toBe('answer_too_long')
  })

  test('text without a limit of its own takes 300 characters, a label 2000', () => {
    const free = question({ kind: 'text' })
    expect(read(free, { value: 'x'.repeat(300) })).toEqual({ given: 'x'.repeat(300) })
    expect(refusal(free, { value: 'x'.repeat(301) })[1]).toMatchObject({ longest: 300 })
    expect(refusal(label, { words: 'x'.repeat(2001) })[1]).toMatchObject({ longest: 2000 })
  })
})

describe('a number', () => {
  test.each<[string, number]>([
    ['12', 12],
    [' 12 ', 12],
    ['+12', 12],
    ['012', 12],
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['12.50', 12.5],
    ['12 1/2', 12.5],
    ['12-1/2', 12.5],
    ['12½', 12.5],
    ['12 ¾', 12.75],
    ['5/4', 1.25],
    ['12 2/4', 12.5],
    ['１２', 12],
    ['１２．５', 12.5],
    ['12 inches', 12],
  ])('written %s is read', (value, amount) => {
    expect(read(inches, { value })).toEqual({ given: { amount, unit: 'inches' } })
  })

  test.each([
    'twelve',
    '12..5',
    '1e1',
    '0x10',
    '12 13',
    '1/0',
    '1,000',
    '1.000',
    '12 weeks',
    'Infinity',
    'NaN',
    '--3',
    '1/2/3',
  ])('written %s is no number', (value) => {
    expect(refusal(inches, { value })).toEqual(['not_a_number', { question: 'q', unit: 'inches' }])
  })

  test.each(['0', '41', '40.25', '-3', '−3', '999999999', '1/2'])(
    'of %s is outside 1 to 40',
    (value) => {
      expect(refusal(inches, { value })).toEqual([
        'number_out_of_range',
        { question: 'q', min: 1, max: 40, unit: 'inches' },
      ])
    },
  )

  test.each<[Question, string, number]>([
    [inches, '12.1', 0.25],
    [inches, '12 1/3', 0.25],
    [weeks, '2.5', 1],
    [weeks, '2 1/2', 1],
  ])('finer than the question takes is refused with the step', (one, value, step) => {
    expect(refusal(one, { value })).toEqual([
      'number_too_fine',
      { question: 'q', step, unit: one.unit },
    ])
  })

  test('in another unit is refused, never converted silently', () => {
    expect(refusal(inches, { value: '12', unit: 'cm' })[0]).toBe('answer_not_offered')
    expect(read(inches, { value: '12', unit: 'inches' })).toEqual({
      given: { amount: 12, unit: 'inches' },
    })
  })
})

describe('a label', () => {
  test.each<[string, RawReply, unknown]>([
    ['words', { words: ' 60% cotton ' }, { found: 'words', words: '60% cotton', iron: null }],
    [
      'words with an ironing sign',
      { found: 'words', words: '100% cotton', iron: 'warm' },
      { found: 'words', words: '100% cotton', iron: 'warm' },
    ],
    ['signs', { found: 'signs' }, { found: 'signs', words: '', iron: null }],
    ['none', { found: 'none', iron: '' }, { found: 'none', words: '', iron: null }],
  ])('with %s is kept', (_, raw, given) => {
    expect(read(label, raw)).toEqual({ given })
  })

  test.each<[string, RawReply, string]>([
    ['nothing said', {}, 'empty_answer'],
    ['words chosen but none written', { found: 'words', words: ' ' }, 'empty_answer'],
    ['an ironing sign alone', { iron: 'hot' }, 'empty_answer'],
    ['an unknown find', { found: 'tag' }, 'answer_not_offered'],
    ['an unknown ironing sign', { words: 'wool', iron: 'scorching' }, 'answer_not_offered'],
  ])('with %s is refused', (_, raw, code) => {
    expect(refusal(label, raw)[0]).toBe(code)
  })
})

describe('a contact', () => {
  // The shapes of addresses follow RFC 5321, sections 4.1.2 and 4.5.3.1 (64 and 254 octets).
  test.each([
    'ana@example.org',
    'ana.example+quilt@mail.example.co.uk',
    "o'neil@example.org",
    'ñandú@ejemplo.example',
  ])('at %s is kept', (email) => {
    expect(read(contact, { name: 'Ana', email })).toEqual({
      given: { name: 'Ana', email, phone: '' },
    })
  })

  test.each([
    'ana',
    'ana@',
    '@example.org',
    'ana@example',
    'a b@example.org',
    'ana@@example.org',
    'ana@example..org',
    '.ana@example.org',
    'ana@-example.org',
    'ana@example.org,eve@example.org',
    `${'a'.repeat(65)}@example.org`,
  ])('at %s is refused', (email) => {
    expect(refusal(contact, { name: 'Ana', email })[0]).toBe('email_not_valid')
  })

  test('cannot put a second line into a mail', () => {
    expect(
      refusal(contact, { name: 'Ana', email: 'ana@example.org\r\nBcc: eve@example.org' })[0],
    ).toBe('email_not_valid')
    expect(read(contact, { name: 'Ana\r\nBcc: x', email: 'ana@example.org' })).toMatchObject({
      given: { name: 'Ana Bcc: x' },
    })
  })

  test('needs a name and an address, and says which is missing', () => {
    expect(refusal(contact, {})[0]).toBe('empty_answer')
    expect(refusal(contact, { email: 'ana@example.org' })).toEqual([
      'form_incomplete',
      { question: 'q', field: 'name' },
    ])
    expect(refusal(contact, { name: 'Ana', phone: '555 0100' })).toEqual([
      'form_incomplete',
      { question: 'q', field: 'email' },
    ])
  })
})
