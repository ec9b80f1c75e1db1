import fc from 'fast-check'
import type { Act, Flow, Question, Reply, Rules } from '../../src/flow/grammar.ts'
import { questionsOf } from '../../src/flow/kept.ts'
import { allReplies, sampleReplies } from '../../src/flow/replies-of.ts'
import { parcels } from './parcels.ts'

/** Fixed, so that a run can be repeated; a failing case prints its path. */
export const steady = { seed: 20_261_125, numRuns: 300 }

const { once, repeated } = questionsOf(parcels)
const all = [...once.values(), ...repeated.values()]

export const replyTo = (question: Question): fc.Arbitrary<Reply> =>
  fc.constantFrom(...(allReplies(question) ?? sampleReplies(question)))

const anyReply: fc.Arbitrary<Reply> = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...all).chain(replyTo) },
  {
    weight: 1,
    arbitrary: fc.oneof(
      fc.record({ given: fc.jsonValue() }),
      fc.record({ asked: fc.jsonValue() }),
      fc.constant({ skipped: true }),
      fc.jsonValue(),
    ) as fc.Arbitrary<Reply>,
  },
)

const item = fc.integer({ min: 0, max: 4 })

const fittingAnswer: fc.Arbitrary<Act> = fc
  .tuple(item, fc.constantFrom(...once.keys()), fc.constantFrom(...repeated.keys()))
  .chain(([n, whole, single]) => {
    const question = n === 0 ? once.get(whole)! : repeated.get(single)!
    return replyTo(question).map(
      (reply): Act => ({ act: 'answer', item: n, question: question.id, reply }),
    )
  })

const strayAnswer: fc.Arbitrary<Act> = fc.record({
  act: fc.constant('answer' as const),
  item: fc.oneof(item, fc.integer(), fc.constant(Number.NaN)),
  question: fc.oneof(
    fc.constantFrom(...all.map(({ id }) => id)),
    fc.constantFrom('hat', '__proto__', 'constructor'),
  ),
  reply: anyReply,
})

export const anyAct: fc.Arbitrary<Act> = fc.oneof(
  { weight: 12, arbitrary: fittingAnswer },
  { weight: 3, arbitrary: strayAnswer },
  { weight: 3, arbitrary: item.map((n): Act => ({ act: 'add', item: n })) },
  {
    weight: 1,
    arbitrary: fc.tuple(item, item).map(([n, from]): Act => ({ act: 'copy', item: n, from })),
  },
  { weight: 1, arbitrary: item.map((n): Act => ({ act: 'drop', item: n })) },
  { weight: 1, arbitrary: item.map((n): Act => ({ act: 'restore', item: n })) },
  { weight: 1, arbitrary: fc.constant<Act>({ act: 'close' }) },
)

export const anyActs = fc.array(anyAct, { maxLength: 60 })

/** A sound flow of one part with a few choices, edges forward, and rules over earlier questions. */
export const anyFlow: fc.Arbitrary<{ flow: Flow; rules: Rules }> = fc
  .integer({ min: 2, max: 5 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, at) => questionAt(at, count))))
  .map((made) => ({
    flow: {
      flow: 'random',
      parts: [{ id: 'part', questions: made.map(({ question }) => question) }],
    },
    rules: Object.fromEntries(made.flatMap(({ rules }) => Object.entries(rules))),
  }))

const name = (at: number) => `q${at}`

function questionAt(at: number, count: number) {
  const later = fc.integer({ min: at + 1, max: count }).map((to) => (to < count ? name(to) : 'end'))
  const guard = fc.oneof(
    fc.subarray(['a', 'b', 'c'], { minLength: 1 }).map((answer) => ({ answer })),
    fc.constant({ rule: `edge${at}` }),
  )
  return fc
    .record({
      kind: fc.constantFrom('choice' as const, 'many' as const),
      isOptional: fc.boolean(),
      isGuarded: fc.boolean(),
      isOptionGuarded: fc.boolean(),
      edges: fc.array(fc.record({ when: guard, to: later }), { maxLength: 2 }),
      rest: later,
      reads: fc.subarray(Array.from({ length: at }, (_, before) => name(before))),
      salt: fc.integer({ min: 0, max: 999 }),
    })
    .map(({ kind, isOptional, isGuarded, isOptionGuarded, edges, rest, reads, salt }) => {
      const asked = `asked${at}`
      const option = { option: 'c', when: { rule: asked } }
      const question: Question = {
        id: name(at),
        kind,
        options: ['a', 'b', isOptionGuarded ? option : 'c'],
        read_by: ['clerk'],
        next: [...edges, { to: rest }],
        ...(isOptional ? { optional: true } : {}),
        ...(isGuarded && at > 0 ? { when: { rule: asked } } : {}),
      }
      return {
        question,
        rules: {
          [asked]: coin(reads, salt),
          [`edge${at}`]: coin([...reads, name(at)], salt + 1),
        } as Rules,
      }
    })
}

/** A rule that holds for about half of what it reads, always the same for the same replies. */
const coin = (reads: readonly string[], salt: number): Rules[string] => ({
  reads,
  holds: (replies) => {
    const text = JSON.stringify(reads.map((read) => replies[read] ?? null))
    let sum = salt
    for (let at = 0; at < text.length; at += 1) sum = (sum * 31 + text.charCodeAt(at)) % 10_007
    return sum % 2 === 0
  },
})
