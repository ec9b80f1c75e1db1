import { admit, follow } from '../../src/flow/follow.ts'
import type { Act } from '../../src/flow/grammar.ts'
import { offered, readReply } from '../../src/flow/reply.ts'
import type { Knowledge } from '../../src/intake/knowledge.ts'
import type { Entry } from '../../src/intake/rows.ts'
import { rules } from '../../src/intake/rules.ts'
import { garments, pileAnswers } from '../demo/pile.ts'
import { replyOf } from '../demo/reply.ts'
import { startedAt } from './pile.ts'
import type { Fields } from './walker.ts'

/** An act, and what the form sends that it is read from; null: a button. */
export interface StepOfPile {
  readonly act: Act
  readonly fields: Fields | null
}

/** What a customer does who brings so many of the invented garments, one after the other, each to its end. */
export function stepsOfPile({ flow }: Pick<Knowledge, 'flow'>, count: number): StepOfPile[] {
  const steps: StepOfPile[] = []
  const acts: Act[] = []
  const take = (act: Act, fields: Fields | null) => {
    admit(flow, follow(flow, acts, rules), act)
    acts.push(act)
    steps.push({ act, fields })
  }
  const answerAll = (garment: (typeof garments)[number] | null) => {
    for (;;) {
      const { place, parts, items } = follow(flow, acts, rules)
      if (place.at !== 'question') return
      const { item, question } = place
      const walk =
        item === 0
          ? parts.find(({ part }) => part === place.part)!
          : items.find(({ n }) => n === item)!
      const asked = { id: question.id, kind: question.kind, optional: question.optional === true }
      const fields = replyOf(asked, garment, pileAnswers)
      const reply = readReply(question, offered(question, walk.replies, rules), fields)
      take({ act: 'answer', item, question: question.id, reply }, fields)
    }
  }
  answerAll(null)
  for (let n = 1; n <= count; n += 1) {
    take({ act: 'add', item: n }, null)
    answerAll(garments[(n - 1) % garments.length]!)
  }
  return steps
}

/** The same acts alone. */
export const actsOfPile = (knowledge: Pick<Knowledge, 'flow'>, count: number): Act[] =>
  stepsOfPile(knowledge, count).map(({ act }) => act)

/** The same as they are kept, one a minute. */
export const entriesOfActs = (acts: readonly Act[]): Entry[] =>
  acts.map((act, nth) => ({
    seq: nth + 1,
    at: startedAt + (nth + 1) * 60_000,
    who: 'customer',
    act,
  }))
