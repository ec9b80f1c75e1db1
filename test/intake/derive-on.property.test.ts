import { expect, test } from 'vitest'
import { followOn } from '../../src/flow/follow.ts'
import { deriving } from '../../src/intake/deriving.ts'
import { type Derived, derive, deriveOn, derivePile, type Pile } from '../../src/intake/pile.ts'
import type { Entry } from '../../src/intake/rows.ts'
import { rules } from '../../src/intake/rules.ts'
import { learnAt } from '../help/app.ts'
import { entriesOfActs } from '../help/large-pile.ts'
import { rowOf } from '../help/pile.ts'
import { picker, wander } from '../help/wander.ts'

const knowledge = learnAt('2026-06-01')

/** The same files read once more: what one remembers of gradings the other has to make. */
const another = learnAt('2026-06-01')

const oneMore = ({ following }: Derived, entry: Entry) => ({
  entries: [entry],
  following: followOn(knowledge.flow, following, entry.act, rules),
})

/** All that is told of a pile, what is made only when it is asked for too. */
const toldOf = ({ priced: _, followed, garments, ...pile }: Pile) => ({
  ...pile,
  place: followed.place,
  garments: garments.map((garment) => ({ ...garment })),
})

test('deriving one act more gives what deriving the whole pile gives', () => {
  for (let seed = 1; seed <= 4; seed += 1) {
    const entries = entriesOfActs(wander(knowledge.flow, rules, picker(seed), 60))
    let pile = derive(knowledge, knowledge.flow, rowOf(knowledge, 0), [])
    for (const [nth, entry] of entries.entries()) {
      const row = rowOf(knowledge, nth + 1)
      pile = deriveOn(knowledge, row, pile, oneMore(pile, entry))
      // Each step is followed on; the dear comparison is made now and then.
      if (nth % 15 !== seed && nth + 1 < entries.length) continue
      const whole = derivePile(another, another.flow, row, entries.slice(0, nth + 1))
      expect(toldOf(pile.pile)).toEqual(toldOf(whole))
    }
  }
})

test('a pile that is asked for now and then is what deriving all of it gives', () => {
  for (let seed = 1; seed <= 4; seed += 1) {
    const entries = entriesOfActs(wander(knowledge.flow, rules, picker(seed), 60))
    const begun = derive(knowledge, knowledge.flow, rowOf(knowledge, 0), [])
    let { following } = begun
    let pile = deriving(knowledge, begun)
    for (const [nth, entry] of entries.entries()) {
      const row = rowOf(knowledge, nth + 1)
      following = followOn(knowledge.flow, following, entry.act, rules)
      const before = pile
      pile = before.on(row, { entries: [entry], following })
      if (nth % 12 !== seed) continue
      const whole = derivePile(another, another.flow, row, entries.slice(0, nth + 1))
      expect(toldOf(pile.pile)).toEqual(toldOf(whole))
      // One that was left behind stays what it was.
      const earlier = derivePile(
        another,
        another.flow,
        rowOf(knowledge, nth),
        entries.slice(0, nth),
      )
      expect(toldOf(before.pile)).toEqual(toldOf(earlier))
    }
  }
})

test('a garment that an answer leaves as it was is the same object', () => {
  const acts = wander(knowledge.flow, rules, picker(5), 120)
  const entries = entriesOfActs(acts)
  const whole = derive(knowledge, knowledge.flow, rowOf(knowledge, acts.length), entries)
  const items = whole.pile.garments.filter(({ dropped }) => !dropped)
  const touched = items.at(-1)!
  const dropped: Entry = {
    seq: acts.length + 1,
    at: 1,
    who: 'customer',
    act: { act: 'drop', item: touched.n },
  }
  const row = rowOf(knowledge, acts.length + 1)
  const next = deriveOn(knowledge, row, whole, oneMore(whole, dropped))
  expect(next.pile.garments.find(({ n }) => n === touched.n)!.dropped).toBe(true)
  expect(items.length).toBeGreaterThan(1)
  for (const garment of items.slice(0, -1)) expect(next.pile.garments).toContain(garment)
})
