import { answersOf } from './edges.ts'
import type { Flow, Part, Question, Replies, Reply, Rule, Rules } from './grammar.ts'
import { rulesOf } from './pin.ts'
import { allReplies, sampleReplies } from './replies-of.ts'
import { chosenIn } from './walk.ts'

/** A rule is split exactly while its replies have at most this many combinations. */
const mostCombinations = 4_000_000

/** A question whose reply matters to a path, its replies sorted into groups no rule tells apart. */
export interface Slot {
  readonly question: Question
  /** `null` stands first: no reply, because the path passes the question by. */
  readonly replies: readonly (Reply | null)[]
  /** The group of each reply. */
  readonly groupOf: Int32Array
  /** By group, its replies other than null. */
  readonly groups: readonly (readonly Reply[])[]
}

export interface Split {
  /** First the questions of earlier parts that rules look at, then those of the part itself. */
  readonly slots: readonly Slot[]
  readonly placeOf: ReadonlyMap<string, number>
  /** Rules that are followed exactly, and the places of the slots they read. */
  readonly exact: ReadonlyMap<string, readonly number[]>
  /** Rules that are let hold or not: what they read cannot be listed. */
  readonly free: readonly string[]
}

/** Which replies are looked at, by question; for others all replies are. */
export type Given = Readonly<Record<string, Reply | readonly Reply[]>>

interface Listed {
  readonly question: Question
  readonly replies: readonly (Reply | null)[]
  readonly complete: boolean
}

/** Sorts the replies of a part's questions by what its rules and edges make of them. */
export function split(flow: Flow, part: Part, rules: Rules, given: Given): Split {
  const names = [...new Set(part.questions.flatMap(rulesOf).map(({ rule }) => rule))].sort()
  const read = new Set(names.flatMap((name) => ruleOf(rules, name)?.reads ?? []))
  const before = flow.parts
    .slice(0, flow.parts.indexOf(part))
    .filter(({ repeat }) => !repeat)
    .flatMap(({ questions }) => questions.filter(({ id }) => read.has(id)))
  const listed = [...before, ...part.questions].map((question) => list(question, given))
  const placeOf = new Map(listed.map(({ question }, at) => [question.id, at]))

  const exact = new Map<string, readonly number[]>()
  for (const name of names) {
    const places = placesRead(ruleOf(rules, name), placeOf)
    if (places && isListable(places.map((at) => listed[at]!))) exact.set(name, places)
  }
  const groups = listed.map(({ question, replies }) => byEdges(question, replies))
  for (const [name, places] of exact) regroup(ruleOf(rules, name)!, places, listed, groups)
  return {
    slots: listed.map(({ question, replies }, at) => slotOf(question, replies, groups[at]!)),
    placeOf,
    exact,
    free: names.filter((name) => !exact.has(name)),
  }
}

const ruleOf = (rules: Rules, name: string): Rule | undefined =>
  Object.hasOwn(rules, name) ? rules[name] : undefined

function list(question: Question, given: Given): Listed {
  const said = Object.hasOwn(given, question.id) ? given[question.id] : undefined
  if (said) return { question, replies: [null, ...[said].flat()], complete: true }
  const all = allReplies(question)
  return {
    question,
    replies: [null, ...(all ?? sampleReplies(question))],
    complete: all !== null,
  }
}

// A question the rule reads but no path gives a reply to is never there; it needs no slot.
const placesRead = (rule: Rule | undefined, placeOf: ReadonlyMap<string, number>) =>
  rule && [...new Set(rule.reads)].flatMap((read) => placeOf.get(read) ?? [])

const isListable = (read: readonly Listed[]): boolean =>
  read.every(({ complete }) => complete) &&
  read.reduce((product, { replies }) => product * replies.length, 1) <= mostCombinations

/** Sorts replies by the answer edges of their own question. */
function byEdges(question: Question, replies: readonly (Reply | null)[]): Int32Array {
  const groups = new Int32Array(replies.length)
  for (const { when } of question.next ?? []) {
    if (!when || 'rule' in when) continue
    const answers = answersOf(when.answer)
    const bits = replies.map((reply) =>
      Number(reply !== null && chosenIn(reply).some((name) => answers.includes(name))),
    )
    refine(groups, (at) => bits[at]!)
  }
  return groups
}

/** Parts groups whose members differ in one bit. */
function refine(groups: Int32Array, bitOf: (at: number) => number): void {
  const renamed = new Map<number, number>()
  for (let at = 0; at < groups.length; at += 1) {
    const key = groups[at]! * 2 + bitOf(at)
    const group = renamed.get(key) ?? renamed.size
    renamed.set(key, group)
    groups[at] = group
  }
}

/** Parts the groups of all that a rule reads, by its truth over every combination of replies. */
function regroup(
  rule: Rule,
  places: readonly number[],
  listed: readonly Listed[],
  groups: readonly Int32Array[],
): void {
  const sizes = places.map((at) => listed[at]!.replies.length)
  const truth = truthTable(
    rule,
    places.map((at) => listed[at]!),
  )
  let stride = truth.length
  for (const [dimension, at] of places.entries()) {
    const block = stride
    stride /= sizes[dimension]!
    for (let outer = 0; outer < truth.length; outer += block) {
      for (let inner = 0; inner < stride; inner += 1) {
        refine(groups[at]!, (value) => truth[outer + value * stride + inner]!)
      }
    }
  }
}

/** The rule's truth for each combination; the last of what it reads changes fastest. */
function truthTable(rule: Rule, read: readonly Listed[]): Uint8Array {
  const count = read.reduce((product, { replies }) => product * replies.length, 1)
  const truth = new Uint8Array(count)
  const replies: Record<string, Reply> = {}
  let next = 0
  const fill = (at: number): void => {
    if (at === read.length) {
      truth[next] = Number(rule.holds(replies))
      next += 1
      return
    }
    const { question, replies: all } = read[at]!
    for (const reply of all) {
      if (reply) replies[question.id] = reply
      else delete replies[question.id]
      fill(at + 1)
    }
    delete replies[question.id]
  }
  fill(0)
  return truth
}

function slotOf(question: Question, replies: readonly (Reply | null)[], groupOf: Int32Array): Slot {
  const groups: Reply[][] = []
  for (const [at, reply] of replies.entries()) {
    groups[groupOf[at]!] ??= []
    if (reply) groups[groupOf[at]!]!.push(reply)
  }
  return { question, replies, groupOf, groups }
}

/** Replies as rules see them, from the group of each slot. */
export function repliesIn(slots: readonly Slot[], env: readonly number[], read: readonly number[]) {
  const replies: Record<string, Reply> = {}
  for (const at of read) {
    const { question, groups, groupOf } = slots[at]!
    const group = env[at]!
    const reply = group === groupOf[0] ? undefined : groups[group]![0]
    if (reply) replies[question.id] = reply
  }
  return replies as Replies
}
