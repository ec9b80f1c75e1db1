import { describe, expect, test } from 'vitest'
import { admit, follow } from '../../src/flow/follow.ts'
import type { Act } from '../../src/flow/grammar.ts'
import { longestPath } from '../../src/flow/longest.ts'
import { rules } from '../../src/intake/rules.ts'
import { learnAt } from '../help/app.ts'
import { type Answers, pileAnswers, shirt } from '../help/chat.ts'
import { FlowWalk } from '../help/flow-walk.ts'
import { pileOf } from '../help/pile.ts'
import { nextAct, onward, picker, wander } from '../help/wander.ts'

const knowledge = learnAt('2026-06-01')
const { flow } = knowledge

/** Walks to the end of a garment; the questions that were counted as effort, in order. */
function countedOf(garment: Answers): string[] {
  const walk = new FlowWalk(flow, rules)
  const answerAll = (answers: Answers): string[] => {
    const asked: string[] = []
    for (let { place } = walk.state; place.at === 'question'; { place } = walk.state) {
      const { id, optional } = place.question
      if (!optional) asked.push(id)
      const fields = answers[id] ?? (optional ? { act: 'skip' } : null)
      if (!fields) throw new Error(`this test is lost: it has no answer for "${id}"`)
      walk.answer(walk.place, fields)
    }
    return asked
  }
  answerAll(pileAnswers)
  walk.add()
  return answerAll(garment)
}

describe('how much a garment asks', () => {
  test('a plain woven shirt takes at most 7 answers', () => {
    expect(countedOf(shirt)).toEqual([
      'kind',
      'size',
      'label',
      'wear',
      'history',
      'pattern',
      'details',
    ])
  })

  test('a garment that is too frail or too far gone is asked nothing more', () => {
    const frail = { ...shirt, wear: { value: 'shattered' } }
    expect(countedOf(frail)).toEqual(['kind', 'size', 'label', 'wear'])
    const mouldy = { ...shirt, history: { value: ['damp'] } }
    expect(countedOf(mouldy)).toEqual(['kind', 'size', 'label', 'wear', 'history'])
  })

  test('no garment takes more than 14', () => {
    const part = flow.parts.find(({ repeat }) => repeat)!
    const { count, example } = longestPath(flow, part, rules)
    expect(count, example).toBeLessThanOrEqual(14)
    expect(count).toBeGreaterThan(7)
  })
})

describe('whatever a visitor does', () => {
  const seeds = Array.from({ length: 40 }, (_, seed) => seed)

  test('each act is taken, and the pile it makes can be shown and graded', () => {
    for (const seed of seeds) {
      const pick = picker(seed)
      const acts: Act[] = []
      for (let step = 0; step < 70; step += 1) {
        const state = follow(flow, acts, rules)
        const act = nextAct(state, rules, pick)
        admit(flow, state, act)
        acts.push(act)
      }
      const pile = pileOf(knowledge, acts)
      for (const { open, grading, facts } of pile.garments) {
        expect(grading === null).toBe(open !== null)
        if (grading) expect(['sound', 'care', 'eyes', 'home']).toContain(grading.grade)
        expect(Object.values(facts)).not.toContain(undefined)
      }
    }
  })

  test('answering what is open always ends, and then the pile can be closed', () => {
    for (const seed of seeds) {
      const pick = picker(seed + 1_000)
      const acts: Act[] = [...wander(flow, rules, pick, 40)]
      const items = () => follow(flow, acts, rules).items
      const finish = (): void => {
        for (let steps = 0; ; steps += 1) {
          const act = onward(follow(flow, acts, rules), rules, pick)
          if (!act) return
          acts.push(act)
          // Every question of every garment, and none twice.
          expect(steps).toBeLessThan(25 * (items().length + 1))
        }
      }
      finish()
      if (items().every(({ dropped }) => dropped))
        acts.push({ act: 'add', item: items().length + 1 })
      finish()
      expect(pileOf(knowledge, acts).canClose).toBe(true)
      acts.push({ act: 'close' })
      finish()
      expect(follow(flow, acts, rules).place).toEqual({ at: 'end' })
    }
  })
})
