import { z } from 'zod'
import type { Finding, Path, Where } from './finding.ts'
import { type Flow, name, type Part, type Question, type Reply, type Rules } from './grammar.ts'
import { longestPath } from './longest.ts'
import { rulesOf } from './pin.ts'
import { optionNames } from './rules.ts'

/** One answer; several, any of which may be given; or any but some. Of `many`: one tick by itself. */
const answers = z.union([
  name,
  z.array(name).min(1),
  z.strictObject({ not: z.union([name, z.array(name).min(1)]) }),
])

/**
 * How many answers one item of the repeated part may be asked for, by named example. `given` narrows the
 * answers to some questions, `rules` says of some rules that they hold or do not; the limit is for every
 * path that is left.
 */
export const pathLimitsSchema = z
  .array(
    z.strictObject({
      name: z.string().min(1),
      most: z.number().int().positive(),
      given: z.record(name, answers).default({}),
      rules: z.record(name, z.boolean()).default({}),
    }),
  )
  .min(1)

export type PathLimit = z.infer<typeof pathLimitsSchema>[number]

export interface PathLength {
  readonly name: string
  readonly most: number
  /** Answers that the longest path asks for; optional ones are not counted. */
  readonly longest: number
}

const listed = (value: string | readonly string[]): readonly string[] => [value].flat()

/** The options an example allows for a question. */
function allowed(question: Question, said: PathLimit['given'][string]): readonly string[] {
  if (typeof said === 'string' || Array.isArray(said)) return listed(said)
  return optionNames(question).filter((option) => !listed(said.not).includes(option))
}

const replyOf = (question: Question, option: string): Reply => ({
  given: question.kind === 'many' ? [option] : option,
})

/** What is wrong with the examples by themselves: questions, options and rules that are not there. */
function wrongNames(
  limits: readonly PathLimit[],
  questions: ReadonlyMap<string, Question>,
  rules: ReadonlySet<string>,
  where: Where,
): Finding[] {
  const findings: Finding[] = []
  const note = (rule: string, message: string, path: Path) =>
    findings.push({ file: where.file, line: where.lineOf(path), rule, message })
  for (const [at, { name: called, given, rules: assumed }] of limits.entries()) {
    if (limits.findIndex((one) => one.name === called) < at) {
      note('duplicate-name', `another example is called ${called}`, [at, 'name'])
    }
    for (const [id, said] of Object.entries(given)) {
      const question = questions.get(id)
      const why = question ? wrongAnswer(question, said) : 'is no question that comes so early'
      if (why) note('unknown-answer', `${called}: ${id} ${why}`, [at, 'given', id])
    }
    for (const rule of Object.keys(assumed)) {
      if (rules.has(rule)) continue
      note('unknown-rule', `${called}: no question here asks the rule ${rule}`, [at, 'rules', rule])
    }
  }
  return findings
}

function wrongAnswer(question: Question, said: PathLimit['given'][string]): string | null {
  const options = optionNames(question)
  if (!['choice', 'confirm', 'many'].includes(question.kind)) return 'has no options to name'
  const named = typeof said === 'string' || Array.isArray(said) ? listed(said) : listed(said.not)
  const unknown = named.find((option) => !options.includes(option))
  if (unknown !== undefined) return `has no option ${unknown}`
  return allowed(question, said).length === 0 ? 'is left no answer' : null
}

/** How long each example's longest path is, and a finding for each that is longer than allowed. */
export function pathLengths(
  limits: readonly PathLimit[],
  flow: Flow,
  part: Part,
  rules: Rules,
  where: Where,
): { findings: readonly Finding[]; lengths: readonly PathLength[] } {
  const seen = flow.parts.slice(0, flow.parts.indexOf(part) + 1)
  const questions = new Map(
    seen.flatMap((one) => one.questions.map((question) => [question.id, question] as const)),
  )
  const used = new Set(part.questions.flatMap(rulesOf).map(({ rule }) => rule))
  const wrong = wrongNames(limits, questions, used, where)
  if (wrong.length > 0) return { findings: wrong, lengths: [] }

  const findings: Finding[] = []
  const lengths = limits.map(({ name: called, most, given, rules: assumed }, at): PathLength => {
    const replies = Object.entries(given).map(([id, said]) => {
      const question = questions.get(id)!
      return [id, allowed(question, said).map((option) => replyOf(question, option))]
    })
    const found = longestPath(flow, part, rules, Object.fromEntries(replies), assumed)
    const note = (rule: string, message: string, example?: string) =>
      findings.push({
        file: where.file,
        line: where.lineOf([at, 'most']),
        rule,
        message: `${called}: ${message}`,
        ...(example !== undefined && { example }),
      })
    if (found.path.length === 0) note('no-path', 'no path answers like this')
    else if (found.count > most) {
      note(
        'too-long',
        `asked for ${found.count} answers, at most ${most} are allowed`,
        found.example,
      )
    }
    return { name: called, most, longest: found.count }
  })
  return { findings, lengths }
}
