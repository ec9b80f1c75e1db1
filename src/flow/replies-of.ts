import type { Question, Reply } from './grammar.ts'
import { optionNames } from './rules.ts'
import { mayBeEmpty, signGroup } from './sense.ts'

const mostNumbers = 400
const mostSubsets = 1 << 13

/** Every reply a question may get, or null where they are too many to list, as for free text. */
export function allReplies(question: Question): Reply[] | null {
  const given = values(question)
  return given && [...given.map((value): Reply => ({ given: value })), ...withoutValue(question)]
}

/** One reply for each way to meet a question whose answers nobody can list. */
export const sampleReplies = (question: Question): Reply[] => [
  ...samples(question).map((given): Reply => ({ given })),
  ...withoutValue(question),
]

const withoutValue = (question: Question): Reply[] =>
  question.optional ? [{ skipped: true }, { asked: '' }] : [{ asked: '' }]

type Given = Extract<Reply, { given: unknown }>['given']

function values(question: Question): Given[] | null {
  switch (question.kind) {
    case 'choice':
    case 'confirm':
      return optionNames(question)
    case 'many':
      return ticks(question)
    case 'symbols':
      return signs(optionNames(question))
    case 'number':
      return numbers(question)
    default:
      return null
  }
}

function ticks(question: Question): string[][] | null {
  const names = optionNames(question)
  const free = names.filter((name) => name !== 'none')
  if (2 ** free.length > mostSubsets) return null
  const sets = subsets(free).filter((set) => set.length > 0 || mayBeEmpty(question))
  return names.includes('none') ? [['none'], ...sets] : sets
}

const subsets = (names: readonly string[]): string[][] =>
  names.reduce<string[][]>((sets, name) => sets.concat(sets.map((set) => [...set, name])), [[]])

function signs(names: readonly string[]): string[][] | null {
  const groups = [...new Set(names.map(signGroup))].map((group) =>
    names.filter((name) => signGroup(name) === group),
  )
  const count = groups.reduce((product, group) => product * (group.length + 1), 1)
  if (count > mostSubsets) return null
  const sets = groups.reduce<string[][]>(
    (all, group) => all.flatMap((set) => [set, ...group.map((sign) => [...set, sign])]),
    [[]],
  )
  return sets.filter((set) => set.length > 0)
}

function numbers(question: Question): Given[] | null {
  const { min, max, unit = '' } = question
  const step: number = question.step ?? 1
  if (min === undefined || max === undefined) return null
  const count = Math.max(0, Math.floor((max - min) / step) + 1)
  if (count > mostNumbers) return null
  return Array.from({ length: count }, (_, at) => ({ amount: min + at * step, unit }))
}

function samples(question: Question): Given[] {
  const { kind, min = 0, unit = '' } = question
  switch (kind) {
    case 'number':
      return [{ amount: min, unit }]
    case 'label':
      return [{ found: 'words', words: '…', iron: null }]
    case 'contact':
      return [{ name: '…', email: '…', phone: '' }]
    case 'photo':
      return [['…']]
    case 'spots':
      return optionNames(question).map((what) => [{ photo: '…', x: 0.5, y: 0.5, what, part: null }])
    case 'many':
    case 'symbols':
      return optionNames(question).map((name) => [name])
    default:
      return ['…']
  }
}

/** A reply in few words, for an example. */
export function replyWords(reply: Reply): string {
  if ('skipped' in reply) return '(skipped)'
  if ('asked' in reply) return '(left to a person)'
  const { given } = reply
  if (typeof given === 'string') return given
  if ('amount' in given) return `${given.amount} ${given.unit}`.trim()
  if ('found' in given) return given.found
  if ('email' in given) return given.name
  const named = given.map((one) => (typeof one === 'string' ? one : one.what))
  return named.length > 0 ? named.join('+') : '(nothing ticked)'
}
