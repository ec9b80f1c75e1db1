import { describe, expect, test } from 'vitest'
import { follow } from '../../src/flow/follow.ts'
import type { Act, Question, Reply } from '../../src/flow/grammar.ts'
import { makesSense } from '../../src/flow/sense.ts'
import { clothColours } from '../../src/intake/cloth-colours.ts'
import type { Pile } from '../../src/intake/pile.ts'
import { asKnown } from '../../src/intake/planned.ts'
import { readers } from '../../src/intake/readers.ts'
import { rules } from '../../src/intake/rules.ts'
import { toPlan } from '../../src/intake/to-plan.ts'
import { saidOf } from '../../src/web/chat/present-garment.ts'
import { confirmedPapers } from '../../src/web/chat/present-pages.ts'
import { tallyOf } from '../../src/web/chat/present-tally.ts'
import { readerAt } from '../../src/web/desk/present-garment.ts'
import { learnAt } from '../help/app.ts'
import { pileOf, rowOf } from '../help/pile.ts'
import { onward, type Pick, picker, repliesOf } from '../help/wander.ts'

const knowledge = learnAt('2026-06-01')
const { flow } = knowledge
const english = knowledge.languages.get('en')!
const clock = () => Date.UTC(2026, 5, 2)

type ReaderName = keyof typeof readers

const paperOf = (pile: Pile) =>
  confirmedPapers(
    { row: rowOf(knowledge, 0), flow, entries: [], pile, cloths: [] },
    { knowledge, clock, plans: { known: () => null } },
  ).en!

const unplanned = (pile: Pile) => asKnown(toPlan({ pile, cloths: [] }), { known: () => null })

/** What each reader makes of a pile. */
const makes: Readonly<Record<ReaderName, (pile: Pile) => unknown>> = {
  heat: ({ garments }) =>
    garments.map(({ facts, grading }) => [facts.heat, facts.iron, grading?.press]),
  grade: ({ garments }) => garments.map(({ grading }) => [grading?.grade, grading?.flags]),
  panels: ({ garments }) => garments.map(({ panels }) => panels),
  layout: ({ wish, garments }) => [
    wish.layout,
    wish.size,
    garments.map(({ grading }) => grading?.layouts),
  ],
  picture: ({ garments }) => garments.map(({ told }) => clothColours(told, null)),
  tally: (pile) => tallyOf(pile, unplanned(pile), readerAt(english)),
  estimate: (pile) => paperOf(pile).estimate,
  checklist: (pile) => paperOf(pile).checklist,
  staff: ({ garments, followed }) => [
    ...garments.map(({ path, n }) => saidOf(path, n, readerAt(english))),
    ...followed.parts.map(({ path }) => saidOf(path, 0, readerAt(english))),
  ],
}

/** Answers everything that is open, and nothing more. */
function answered(acts: readonly Act[], pick: Pick): Act[] {
  const all = [...acts]
  for (;;) {
    const next = onward(follow(flow, all, rules), rules, pick)
    if (!next) return all
    all.push(next)
  }
}

function wholePile(pick: Pick): Act[] {
  let acts = answered([], pick)
  for (const item of [1, 2, 3]) acts = answered([...acts, { act: 'add', item }], pick)
  return answered([...acts, { act: 'close' }], pick)
}

interface Place {
  readonly item: number
  readonly question: Question
  readonly reply: Reply
  readonly others: readonly Reply[]
}

/** Every answer of a pile, with some others that might have been given in its place. */
function placesIn(acts: readonly Act[], pick: Pick): Place[] {
  const { parts, items } = follow(flow, acts, rules)
  const walks = [...parts.map((part) => ({ n: 0, ...part })), ...items]
  return walks.flatMap(({ n, path, replies }) =>
    path.map(({ question, reply }) => {
      const all = repliesOf(question).filter((one) => makesSense(question, one, replies, rules))
      const others = Array.from({ length: 8 }, () => all[pick(all.length)]!)
      return { item: n, question, reply, others }
    }),
  )
}

const named = new Map(
  flow.parts.flatMap(({ questions }) =>
    questions.map(({ id, read_by }) => [id, read_by as readonly ReaderName[]] as const),
  ),
)

/** By question: the named readers for whom some other answer in its place made a difference. */
const moved = new Map([...named.keys()].map((question) => [question, new Set<ReaderName>()]))

const mostPiles = 120
const allMoved = () => [...named].every(([id, names]) => moved.get(id)!.size === names.length)

for (let seed = 0; seed < mostPiles && !allMoved(); seed += 1) {
  const acts = wholePile(picker(seed))
  for (const { item, question, reply, others } of placesIn(acts, picker(seed + 100))) {
    const found = moved.get(question.id)!
    const open = () => named.get(question.id)!.filter((name) => !found.has(name))
    const withReply = (one: Reply) => {
      const act: Act = { act: 'answer', item, question: question.id, reply: one }
      return pileOf(knowledge, answered([...acts, act], picker(seed)))
    }
    for (const other of open().length > 0 ? others : []) {
      const [before, after] = [withReply(reply), withReply(other)]
      for (const name of open()) {
        const [was, is] = [before, after].map((pile) => JSON.stringify(makes[name](pile)))
        if (was !== is) found.add(name)
      }
    }
  }
}

test('every reader that a flow may name is tried here', () => {
  expect(Object.keys(makes).sort()).toEqual(Object.keys(readers).sort())
})

describe('another answer makes a difference to whoever is named as its reader:', () => {
  test.each([...named])('%s, read by %o', (question, names) => {
    expect(names.filter((name) => !moved.get(question)!.has(name))).toEqual([])
  })
})
