import fc from 'fast-check'
import { expect, test } from 'vitest'
import { follow } from '../../src/flow/follow.ts'
import type { Act, Replies, Rules } from '../../src/flow/grammar.ts'
import { questionsOf } from '../../src/flow/kept.ts'
import { allReplies, sampleReplies } from '../../src/flow/replies-of.ts'
import { makesSense } from '../../src/flow/sense.ts'
import type { Walk } from '../../src/flow/walk.ts'
import { parcelRules, parcels } from './parcels.ts'
import { anyAct, anyActs, replyTo, steady } from './random.ts'

const stateOf = (acts: readonly Act[]) => follow(parcels, acts, parcelRules)

const walksOf = (acts: readonly Act[]): Walk[] => {
  const { parts, items } = stateOf(acts)
  return [...parts, ...items]
}

/** All that was said in a walk, on its path or aside. */
const saidIn = (walk: Walk): Replies => ({
  ...walk.aside,
  ...Object.fromEntries(walk.path.map(({ question, reply }) => [question.id, reply])),
})

const { once, repeated } = questionsOf(parcels)

test('whatever was done, answering what is open leads to the end', () => {
  fc.assert(
    fc.property(anyActs, fc.infiniteStream(fc.nat()), (begun, luck) => {
      const acts = [...begun]
      // No more steps than every question of five items and of the whole, with adding and closing.
      const most = once.size + 5 * repeated.size + 8
      for (let step = 0; step < most; step += 1) {
        const { place, items } = stateOf(acts)
        if (place.at === 'end') return
        if (place.at === 'gather') {
          const isTold = items.some(({ dropped }) => !dropped)
          const free = Math.max(0, ...items.map(({ n }) => n)) + 1
          acts.push(isTold ? { act: 'close' } : { act: 'add', item: free })
          continue
        }
        const { question, item } = place
        const walk =
          item === 0
            ? stateOf(acts).parts.find(({ part }) => part === place.part)!
            : items.find(({ n }) => n === item)!
        const ways = (allReplies(question) ?? sampleReplies(question)).filter((reply) =>
          makesSense(question, reply, walk.replies, parcelRules),
        )
        const reply = ways[luck.next().value % ways.length]!
        acts.push({ act: 'answer', item, question: question.id, reply })
      }
      expect(stateOf(acts).place.at).toBe('end')
    }),
    steady,
  )
})

test('an edit loses nothing, and what still makes sense is not asked again', () => {
  fc.assert(
    fc.property(anyActs, anyAct, (acts, edit) => {
      fc.pre(edit.act === 'answer')
      const before = stateOf(acts)
      const after = stateOf([...acts, edit])
      expect(after.items.map(({ n, dropped }) => [n, dropped])).toEqual(
        before.items.map(({ n, dropped }) => [n, dropped]),
      )
      const then = walksOf([...acts, edit])
      for (const [at, walk] of walksOf(acts).entries()) {
        const { [edit.question]: _, ...others } = saidIn(walk)
        expect(saidIn(then[at]!)).toMatchObject(others)
      }
      for (const { open, aside, replies } of then) {
        if (!open || !Object.hasOwn(aside, open.id)) continue
        expect(makesSense(open, aside[open.id]!, replies, parcelRules)).toBe(false)
      }
    }),
    steady,
  )
})

test('an edit that is taken back leaves everything as it was', () => {
  fc.assert(
    fc.property(anyActs, fc.nat(), fc.infiniteStream(fc.nat()), (acts, which, luck) => {
      const state = stateOf(acts)
      const steps = [
        ...state.parts.flatMap(({ path }) => path.map((step) => ({ item: 0, ...step }))),
        ...state.items.flatMap(({ n, path }) => path.map((step) => ({ item: n, ...step }))),
      ]
      fc.pre(steps.length > 0)
      const { item, question, reply } = steps[which % steps.length]!
      const ways = allReplies(question) ?? sampleReplies(question)
      const other = ways[luck.next().value % ways.length]!
      const answer = { act: 'answer', item, question: question.id } as const
      expect(stateOf([...acts, { ...answer, reply: other }, { ...answer, reply }])).toEqual(state)
    }),
    steady,
  )
})

const itemOf = (act: Act): number | 'all' => (act.act === 'close' ? 'all' : act.item)

test('acts on different items may come in either order', () => {
  fc.assert(
    fc.property(anyActs, anyAct, anyAct, anyActs, (before, one, other, rest) => {
      fc.pre(one.act !== 'copy' && other.act !== 'copy' && itemOf(one) !== itemOf(other))
      expect(stateOf([...before, one, other, ...rest])).toEqual(
        stateOf([...before, other, one, ...rest]),
      )
    }),
    steady,
  )
})

test('the same act twice is the same as once', () => {
  fc.assert(
    fc.property(anyActs, anyAct, (acts, act) => {
      expect(stateOf([...acts, act, act])).toEqual(stateOf([...acts, act]))
    }),
    steady,
  )
})

test('a copy says what its source said, but for photos', () => {
  fc.assert(
    fc.property(anyActs, fc.integer({ min: 1, max: 4 }), (acts, from) => {
      const source = stateOf(acts).items.find(({ n }) => n === from)
      fc.pre(source !== undefined)
      const copied = stateOf([...acts, { act: 'copy', item: 9, from }]).items.at(-1)!
      const { picture: _, ...said } = saidIn(source!)
      expect(saidIn(copied)).toEqual(said)
    }),
    steady,
  )
})

test('a rule sees nothing but the replies of the path before it', () => {
  fc.assert(
    fc.property(anyActs, (acts) => {
      const seen: Replies[] = []
      const spying: Rules = Object.fromEntries(
        Object.entries(parcelRules).map(([name, rule]) => [
          name,
          {
            ...rule,
            holds: (replies) => {
              seen.push({ ...replies })
              return rule.holds(replies)
            },
          },
        ]),
      )
      const { parts, items } = follow(parcels, acts, spying)
      const paths = [...parts, ...items].map(({ path }) => path)
      const whole = parts.flatMap(({ path }) => path)
      for (const replies of seen) {
        const isSeen = paths.some((path) => {
          // A reply of the path, or the one whose options are just being looked at.
          const known = new Map(
            [...whole, ...path].map(({ question, reply }) => [question.id, reply]),
          )
          return Object.entries(replies).every(([id, reply]) => known.get(id) === reply)
        })
        expect(isSeen).toBe(true)
      }
    }),
    steady,
  )
})

test('every listed reply that is offered makes sense', () => {
  fc.assert(
    fc.property(
      fc
        .constantFrom(...once.values(), ...repeated.values())
        .chain((question) => fc.tuple(fc.constant(question), replyTo(question))),
      ([question, reply]) => {
        const here: Replies = { country: { given: 'here' } }
        expect(makesSense(question, reply, here, parcelRules)).toBe(true)
      },
    ),
    steady,
  )
})
