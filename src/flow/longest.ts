import { answersOf } from './edges.ts'
import type { Flow, Part, Question, Reply, Rules } from './grammar.ts'
import { rulesOf } from './pin.ts'
import { replyWords } from './replies-of.ts'
import { type Given, repliesIn, type Split, split } from './split.ts'
import { chosenIn, type Step } from './walk.ts'

export interface LongestPath {
  /** Questions that must be answered on the way; optional ones are not counted. */
  readonly count: number
  readonly path: readonly Step[]
  /** The path in words. */
  readonly example: string
  /** Rules that were let hold or not, as what they read cannot be listed: `count` is then a bound. */
  readonly free: readonly string[]
}

/**
 * The longest way through a part. Rules are followed exactly over every reply they read, while those can
 * be listed (no sampling); others are let hold or not, but never both on one path. `given` narrows the
 * replies to some questions, of this part or earlier ones; `assumed` says of some rules whether they hold.
 * Where these leave no path the path is empty.
 */
export function longestPath(
  flow: Flow,
  part: Part,
  rules: Rules,
  given: Given = {},
  assumed: Assumed = {},
): LongestPath {
  const search = new Search(flow, part, rules, given, assumed)
  const found = search.begin()
  const path: Step[] = []
  for (let link = found.first; link; link = link.rest) path.push(link.step)
  return {
    count: Math.max(0, found.count),
    path,
    example: path.map(({ question, reply }) => `${question.id}=${replyWords(reply)}`).join(', '),
    free: search.parts.free,
  }
}

/** By the name of a rule: whether it holds. A path on which it does not turn out so is left out. */
export type Assumed = Readonly<Record<string, boolean>>

interface Link {
  readonly step: Step
  readonly rest: Link | null
}

interface Found {
  readonly count: number
  readonly first: Link | null
}

/** Of no path at all. */
const impossible: Found = { count: Number.NEGATIVE_INFINITY, first: null }

/** The group of the reply in each slot; behind them the truth of each free rule, -1 while open. */
type Env = readonly number[]

class Search {
  readonly parts: Split
  private readonly part: Part
  private readonly rules: Rules
  private readonly assumed: Assumed
  private readonly outside: number
  private readonly live: readonly (readonly number[])[]
  private readonly known = new Map<string, Found>()

  constructor(flow: Flow, part: Part, rules: Rules, given: Given, assumed: Assumed) {
    this.part = part
    this.rules = rules
    this.assumed = assumed
    this.parts = split(flow, part, rules, given)
    this.outside = this.parts.slots.length - part.questions.length
    this.live = part.questions.map((_, at) => this.watched(part.questions.slice(at)))
  }

  begin(): Found {
    const { slots, free } = this.parts
    const start = [
      ...slots.map(({ groupOf }) => groupOf[0]!),
      ...free.map((name) => this.assumedOf(name)),
    ]
    return this.longest(this.outsides(start, 0).map((env) => this.from(0, env)))
  }

  /** -1 while open, as in an Env. */
  private assumedOf(rule: string): number {
    return Object.hasOwn(this.assumed, rule) ? Number(this.assumed[rule]) : -1
  }

  /** What is said in earlier parts, in every combination. */
  private outsides(env: Env, at: number): Env[] {
    if (at === this.outside) return [env]
    return this.parts.slots[at]!.groups.flatMap((_, group) =>
      this.outsides(env.with(at, group), at + 1),
    )
  }

  /** Slots and free rules that the rules of these questions look at. */
  private watched(questions: readonly Question[]): number[] {
    const names = new Set(questions.flatMap(rulesOf).map(({ rule }) => rule))
    const places = [...names].flatMap((name) => this.parts.exact.get(name) ?? [this.freeAt(name)])
    return [...new Set(places)].sort((a, b) => a - b)
  }

  private freeAt(name: string): number {
    return this.parts.slots.length + this.parts.free.indexOf(name)
  }

  private longest(found: readonly Found[]): Found {
    return found.reduce((best, one) => (one.count > best.count ? one : best), impossible)
  }

  private from(at: number, env: Env): Found {
    if (at >= this.part.questions.length) return { count: 0, first: null }
    const key = `${at}:${this.live[at]!.map((place) => env[place]).join()}`
    const before = this.known.get(key)
    if (before) return before
    const { when } = this.part.questions[at]!
    const found = this.longest(
      this.truths(when?.rule, env).map(([holds, next]) =>
        holds ? this.asked(at, next) : this.from(at + 1, next),
      ),
    )
    this.known.set(key, found)
    return found
  }

  private asked(at: number, env: Env): Found {
    const question = this.part.questions[at]!
    const place = this.outside + at
    const ways = this.parts.slots[place]!.groups.flatMap((members, group) => {
      const reply = members.find((member) => this.mayGive(question, member, env))
      if (!reply) return []
      const best = this.longest(this.targets(at, reply, env.with(place, group)))
      if (best === impossible) return [impossible]
      return [{ count: best.count, first: { step: { question, reply }, rest: best.first } }]
    })
    // Where nothing is offered the path stops at the question.
    const best = ways.length > 0 ? this.longest(ways) : { count: 0, first: null }
    if (best === impossible) return impossible
    return { ...best, count: best.count + (question.optional ? 0 : 1) }
  }

  /** The paths on from an answered question, by the first edge that holds. */
  private targets(at: number, reply: Reply, env: Env): Found[] {
    const { next } = this.part.questions[at]!
    if (!next) return [this.from(at + 1, env)]
    const found: Found[] = []
    let open: Env[] = [env]
    for (const { when, to } of next) {
      const stays: Env[] = []
      for (const one of open) {
        for (const [holds, then] of this.edgeTruths(when, reply, one)) {
          if (holds) found.push(this.from(this.place(to, at), then))
          else stays.push(then)
        }
      }
      open = stays
    }
    return open.length > 0 ? [...found, { count: 0, first: null }] : found
  }

  private edgeTruths(
    when: NonNullable<Question['next']>[number]['when'],
    reply: Reply,
    env: Env,
  ): [boolean, Env][] {
    if (!when || 'rule' in when) return this.truths(when?.rule, env)
    return [[chosenIn(reply).some((name) => answersOf(when.answer).includes(name)), env]]
  }

  private place(to: string, from: number): number {
    const at = this.part.questions.findIndex(({ id }) => id === to)
    return at > from ? at : this.part.questions.length
  }

  /**
   * Whether a rule holds: exactly, or both ways where that is open; once settled it stays so. Neither
   * way where it is assumed to be otherwise.
   */
  private truths(rule: string | undefined, env: Env): [boolean, Env][] {
    if (rule === undefined) return [[true, env]]
    const read = this.parts.exact.get(rule)
    if (read) {
      const holds = this.rules[rule]!.holds(repliesIn(this.parts.slots, env, read))
      return this.assumedOf(rule) === Number(!holds) ? [] : [[holds, env]]
    }
    const at = this.freeAt(rule)
    if (env[at] !== -1) return [[env[at] === 1, env]]
    return [
      [true, env.with(at, 1)],
      [false, env.with(at, 0)],
    ]
  }

  private mayGive(question: Question, reply: Reply, env: Env): boolean {
    return chosenIn(reply).every((name) => {
      const option = question.options?.find((one) => typeof one !== 'string' && one.option === name)
      if (!option || typeof option === 'string') return true
      return this.truths(option.when.rule, env).some(([holds]) => holds)
    })
  }
}
