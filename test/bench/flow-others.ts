import { Engine, type RuleProperties } from 'json-rules-engine'
import { type AnyStateMachine, assign, createMachine } from 'xstate'
import type { Act, Flow, Part, Question, Replies, Reply, Rules } from '../../src/flow/grammar.ts'
import { repeatedPart } from '../../src/flow/kept.ts'
import { makesSense } from '../../src/flow/sense.ts'
import type { Cell, Table } from '../../src/flow/table-grammar.ts'
import { chosenIn } from '../../src/flow/walk.ts'

interface Told {
  /** What guards may look at: the part's own replies and those of earlier parts. */
  readonly replies: Replies
  /** Replies of the parts before the repeated one. */
  readonly around: Replies
}

type Event =
  | { readonly type: 'ANSWER'; readonly question: string; readonly reply: Reply }
  | { readonly type: 'ADD' }
  | { readonly type: 'CLOSE' }

/** The same questions, edges and rules as states of one machine of xstate: a question a state, an answer an event. */
export function machineOf(flow: Flow, rules: Rules): AnyStateMachine {
  const states: Record<string, unknown> = { end: {} }
  const repeated = repeatedPart(flow)!
  const begins = flow.parts.map((part) =>
    part === repeated ? 'gather' : `ask ${part.questions[0]!.id}`,
  )
  const after = (part: Part): string =>
    part === repeated ? 'gather' : (begins[flow.parts.indexOf(part) + 1] ?? 'end')
  for (const part of flow.parts) {
    for (const [at, question] of part.questions.entries()) {
      const next = part.questions[at + 1]
      states[`ask ${question.id}`] = asking(
        question,
        { next: next ? `ask ${next.id}` : after(part), end: after(part) },
        rules,
      )
    }
  }
  states.gather = {
    on: {
      ADD: {
        target: `ask ${repeated.questions[0]!.id}`,
        actions: assign(({ context }: { context: Told }) => ({ replies: context.around })),
      },
      CLOSE: {
        target: begins[flow.parts.indexOf(repeated) + 1] ?? 'end',
        actions: assign(({ context }: { context: Told }) => ({ replies: context.around })),
      },
    },
  }
  const first = flow.parts.indexOf(repeated)
  const around = new Set(
    flow.parts.slice(0, first).flatMap(({ questions }) => questions.map(({ id }) => id)),
  )
  return createMachine({
    initial: begins[0]!,
    context: { replies: {}, around: {} },
    states,
  } as never)

  function asking(
    question: Question,
    to: { readonly next: string; readonly end: string },
    own: Rules,
  ): unknown {
    const edges = question.next ?? [{ to: undefined }]
    const targetOf = (edge: (typeof edges)[number]) =>
      edge.to === undefined ? to.next : edge.to === 'end' ? to.end : `ask ${edge.to}`
    const take = assign(({ context, event }: { context: Told; event: Event }) => {
      if (event.type !== 'ANSWER') return {}
      const replies = { ...context.replies, [question.id]: event.reply }
      return around.has(question.id) ? { replies, around: replies } : { replies }
    })
    const leads = (edge: (typeof edges)[number], replies: Replies, reply: Reply): boolean => {
      if (!('when' in edge) || !edge.when) return true
      if ('rule' in edge.when)
        return own[edge.when.rule]!.holds({ ...replies, [question.id]: reply })
      const chosen = chosenIn(reply)
      const { answer } = edge.when
      return (Array.isArray(answer) ? answer : [answer]).some((one) => chosen.includes(one))
    }
    return {
      ...(question.when && {
        always: {
          guard: ({ context }: { context: Told }) =>
            !own[question.when!.rule]!.holds(context.replies),
          target: to.next,
        },
      }),
      on: {
        ANSWER: edges.map((edge) => ({
          guard: ({ context, event }: { context: Told; event: Event }) =>
            event.type === 'ANSWER' &&
            event.question === question.id &&
            makesSense(question, event.reply, context.replies, own) &&
            leads(edge, context.replies, event.reply),
          target: targetOf(edge),
          actions: take,
        })),
      },
    }
  }
}

export function eventOf(act: Act): Event {
  if (act.act === 'answer') return { type: 'ANSWER', question: act.question, reply: act.reply }
  if (act.act === 'add') return { type: 'ADD' }
  if (act.act === 'close') return { type: 'CLOSE' }
  throw new Error(`no event stands for ${act.act}`)
}

interface Condition {
  readonly fact: string
  readonly operator: string
  readonly value: string | number | readonly string[]
}

const condition = (fact: string, cell: Cell): Condition[] => {
  if (typeof cell === 'string') return [{ fact, operator: 'equal', value: cell }]
  if (Array.isArray(cell)) return [{ fact, operator: 'in', value: cell }]
  if ('not' in cell) {
    const value = Array.isArray(cell.not) ? cell.not : [cell.not]
    return [{ fact, operator: 'notIn', value }]
  }
  return [
    ...(cell.from === undefined
      ? []
      : [{ fact, operator: 'greaterThanInclusive', value: cell.from }]),
    ...(cell.to === undefined ? [] : [{ fact, operator: 'lessThanInclusive', value: cell.to }]),
  ]
}

/** The same table as rules of json-rules-engine: a row a rule. Gives the ids of the rows that match, in order. */
export function engineOf(table: Table): (facts: Record<string, unknown>) => Promise<string[]> {
  const engine = new Engine()
  for (const { id, when } of table.rows) {
    const all = Object.entries(when).flatMap(([fact, cell]) => condition(fact, cell))
    engine.addRule({ conditions: { all }, event: { type: id } } as RuleProperties)
  }
  const order = new Map(table.rows.map(({ id }, nth) => [id, nth]))
  return async (facts) => {
    const { events } = await engine.run(facts)
    const ids = events.map(({ type }) => type).sort((a, b) => order.get(a)! - order.get(b)!)
    return table.hit === 'first' ? ids.slice(0, 1) : ids
  }
}
