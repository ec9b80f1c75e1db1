import { describe, expect, test } from 'vitest'
import type { Question, Replies, Value } from '../../src/flow/grammar.ts'
import { questionsOf } from '../../src/flow/kept.ts'
import { allReplies, sampleReplies } from '../../src/flow/replies-of.ts'
import { rules } from '../../src/intake/rules.ts'
import { learnAt } from '../help/app.ts'
import { labels, picker } from '../help/wander.ts'

const { flow } = learnAt('2026-06-01')

const said = (values: Readonly<Record<string, Value>>): Replies =>
  Object.fromEntries(Object.entries(values).map(([question, given]) => [question, { given }]))

const words = (text: string): Value => ({ found: 'words', words: text, iron: null })

const telling = 'red velvet dress, size M, thin at the seams, thick, very stretchy'
const pictured = 'black T-shirt with a logo, vinyl print'

const cases: readonly [rule: string, values: Readonly<Record<string, Value>>, holds: boolean][] = [
  ['words_tell_enough', { name: telling }, true],
  ['words_tell_enough', { name: 'scarf' }, false],
  // Without a kind there is no garment to confirm.
  ['words_tell_enough', { name: 'red, size M' }, false],
  ['words_tell_enough', { name: 'is a red dress in size M ok?' }, false],
  ['words_tell_size', { name: telling }, true],
  ['words_tell_size', { name: 'scarf, size M' }, false],
  ['words_tell_surface', { name: telling }, true],
  ['words_tell_surface', { name: pictured }, false],
  ['words_tell_wear', { name: telling }, true],
  ['words_tell_wear', { name: 'dress in good condition' }, false],
  ['words_tell_stretch', { name: telling }, true],
  ['words_tell_stretch', { name: 'stretchy T-shirt' }, false],
  ['words_tell_weight', { name: telling }, true],
  ['words_tell_weight', { name: 'thick T-shirt' }, false],
  ['words_tell_pattern', { name: pictured }, true],
  ['words_tell_pattern', { name: telling }, false],
  ['words_tell_colours', { name: telling }, true],
  ['words_tell_colours', { name: 'Sunday' }, false],
  ['words_tell_print_make', { name: pictured }, true],
  ['words_tell_print_make', { name: 'vinyl print' }, false],
  ['has_a_size', { kind: 'tshirt' }, true],
  ['has_a_size', { kind: 'blanket' }, false],
  ['has_a_size', {}, true],
  ['may_be_a_babys', { kind: 'baby-suit' }, true],
  ['may_be_a_babys', { kind: 'uniform' }, false],
  ['outgrew_toddler', { kind: 'baby-suit' }, false],
  ['outgrew_toddler', { kind: 'dress' }, true],
  ['label_is_signs', { label: { found: 'signs', words: '', iron: null } }, true],
  ['label_is_signs', { label: words('100% cotton') }, false],
  ['label_is_unsure', { label: words('60% cotton') }, true],
  ['label_is_unsure', { label: words('100% cotton') }, false],
  ['label_is_unsure', { label: { found: 'none', words: '', iron: null } }, false],
  ['surface_is_open', { kind: 'dress' }, true],
  ['surface_is_open', { kind: 'tshirt' }, false],
  ['weight_is_open', { kind: 'jumper' }, true],
  ['weight_is_open', { kind: 'jeans' }, false],
  ['pull_test_is_wanted', { kind: 'dress', wear: 'sound', history: ['none'] }, true],
  ['pull_test_is_wanted', { kind: 'button-shirt', wear: 'sound', history: ['none'] }, false],
  // Pulling tears what is brittle, and tells nothing of leather, fur or film.
  ['pull_test_is_wanted', { kind: 'dress', wear: 'shattered' }, false],
  ['pull_test_is_wanted', { kind: 'dress', wear: 'sound', history: ['historic'] }, false],
  ['pull_test_is_wanted', { kind: 'coat', surface: 'leather', wear: 'sound' }, false],
  ['stays_at_home', { history: ['damp', 'stained'] }, true],
  ['stays_at_home', { history: ['chemical'] }, true],
  ['stays_at_home', { history: ['body-fluid', 'pests'] }, false],
  ['picture_is_single', { pattern: 'single' }, true],
  ['picture_is_single', { pattern: 'allover' }, false],
  ['print_is_open', { pattern: 'allover' }, true],
  ['print_is_open', { pattern: 'stripe-check' }, false],
  ['has_a_spot_to_mark', { photos: ['p1'], wear: 'holes' }, true],
  ['has_a_spot_to_mark', { photos: ['p1'], history: ['stained'] }, true],
  ['has_a_spot_to_mark', { photos: ['p1'], wear: 'sound' }, false],
  ['has_a_spot_to_mark', { wear: 'holes' }, false],
  ['has_a_spot_to_tell', { wear: 'thin' }, true],
  ['has_a_spot_to_tell', { history: ['stained'] }, true],
  ['has_a_spot_to_tell', { details: ['keep-a-spot'] }, true],
  ['has_a_spot_to_tell', { wear: 'sound', history: ['old'], details: ['no-cut'] }, false],
]

test.each(cases)('%s of %o is %s', (rule, values, holds) => {
  expect(rules[rule]!.holds(said(values))).toBe(holds)
})

test('every rule is tried both ways here', () => {
  const tried = new Set(cases.map(([rule, , holds]) => `${rule} ${holds}`))
  const wanted = Object.keys(rules).flatMap((rule) => [`${rule} true`, `${rule} false`])
  expect(wanted.filter((one) => !tried.has(one))).toEqual([])
})

describe('a rule', () => {
  const { once, repeated } = questionsOf(flow)
  const questions = new Map([...once, ...repeated])
  const pick = picker(7)
  const offered = new Map(
    [...questions.values()].map((one) => [one, allReplies(one) ?? sampleReplies(one)]),
  )
  const some = (question: Question) => {
    if (question.kind === 'label') return { given: words(labels[pick(labels.length)]!) }
    const replies = offered.get(question)!
    return replies[pick(replies.length)]!
  }
  const anything = (): Replies =>
    Object.fromEntries(
      [...questions.values()].filter(() => pick(4) > 0).map((one) => [one.id, some(one)]),
    )

  test.each(Object.keys(rules))('%s looks at no question that it does not name', (name) => {
    const { reads, holds } = rules[name]!
    expect(reads.filter((question) => !questions.has(question))).toEqual([])
    for (let run = 0; run < 400; run += 1) {
      const only = new Proxy(anything(), {
        get: (replies, question) => {
          expect(reads, `${name} looks at ${String(question)}`).toContain(question)
          return Reflect.get(replies, question)
        },
      })
      expect(typeof holds(only)).toBe('boolean')
    }
  })
})
