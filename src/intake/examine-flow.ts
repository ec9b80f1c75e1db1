import { checkFlow } from '../flow/check.ts'
import { type Finding, finding } from '../flow/finding.ts'
import type { Flow } from '../flow/grammar.ts'
import { longestPath } from '../flow/longest.ts'
import { type PathLength, type PathLimit, pathLengths } from '../flow/path-limits.ts'
import { readFlow, readPathLimits } from '../flow/read.ts'
import { tried } from './examine-read.ts'
import { flowWords } from './flow-words.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { wordsOf } from './knowledge.ts'
import { readers } from './readers.ts'
import { rules } from './rules.ts'

export interface ExaminedFlow {
  readonly findings: readonly Finding[]
  readonly questions: number
  readonly longestPath: number
  readonly paths: readonly PathLength[]
}

/** A sentence of nothing but blanks says as little as none. */
const keysUnder = (words: ReadonlyMap<string, string>, prefix: string) => ({
  has: (key: string) => (words.get(prefix + key)?.trim() ?? '') !== '',
})

const namesUnder = (words: ReadonlyMap<string, string>, prefix: string): string[] =>
  [...words.keys()].filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length))

/** What can be told of the flow without following it. */
function standing(folder: FlowsFolder, flow: Flow, drawings: Iterable<string>): Finding[] {
  const words = wordsOf(folder)
  const wrong = checkFlow(flow, {
    rules,
    readers: Object.keys(readers),
    words: new Map([...words].map(([code, all]) => [code, keysUnder(all, 'intake.')])),
    drawings,
    cautions: namesUnder([...words.values()][0] ?? new Map(), 'cautions.'),
    where: folder.flow,
  })
  const unsaid = [...words].flatMap(([code, all]) =>
    flowWords(flow)
      .filter((key) => !all.has(`intake.${key}`))
      .map((key) => finding(`intake/words/${code}.yaml`, 'missing-words', `no words for ${key}`)),
  )
  return [...wrong, ...unsaid]
}

/** The flow by itself, and how many answers it may ask a garment for. */
export function examineFlow(folder: FlowsFolder, drawings: Iterable<string>): ExaminedFlow {
  const { value: flow, findings } = tried(() => readFlow(folder.flow.value, folder.flow))
  const limits = tried(() => readPathLimits(folder.pathLimits.value, folder.pathLimits))
  const questions = flow?.parts.reduce((sum, part) => sum + part.questions.length, 0) ?? 0
  const wrong = [...findings, ...(flow ? standing(folder, flow, drawings) : []), ...limits.findings]
  if (!flow || !limits.value || wrong.length > 0) {
    return { findings: wrong, questions, longestPath: 0, paths: [] }
  }
  return { questions, ...followed(folder, flow, limits.value) }
}

function followed(folder: FlowsFolder, flow: Flow, limits: readonly PathLimit[]) {
  const repeated = flow.parts.find(({ repeat }) => repeat)
  if (!repeated) return { findings: [], longestPath: 0, paths: [] }
  const { findings, lengths } = pathLengths(limits, flow, repeated, rules, folder.pathLimits)
  const any = limits.findIndex((limit) => isAny(limit))
  const longest = lengths[any]?.longest ?? longestPath(flow, repeated, rules).count
  return { findings, longestPath: longest, paths: lengths }
}

/** Narrows nothing: its longest path is the flow's. */
const isAny = ({ given, rules: assumed }: PathLimit): boolean =>
  Object.keys(given).length + Object.keys(assumed).length === 0
