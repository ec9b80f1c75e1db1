import type {
  LabelSeen,
  LabelValue,
  NumberValue,
  Question,
  Replies,
  Reply,
  Rules,
  SpotValue,
} from './grammar.ts'
import { isOffered } from './rules.ts'

export const longestText = 300
export const longestLabel = 2000
export const longestName = 120
export const longestEmail = 254
export const longestPhone = 40

export const labelFinds = ['words', 'signs', 'none'] as const
export const labelIrons = ['none', 'cool', 'warm', 'hot', 'absent'] as const

/** Characters as a person counts them, not the halves of which some are made. */
export const lengthOf = (text: string): number => {
  let count = 0
  for (const _ of text) count += 1
  return count
}

const fits = (text: unknown, longest: number): text is string =>
  typeof text === 'string' && (text.length <= longest || lengthOf(text) <= longest)

export const longestOf = (question: Question): number =>
  question.longest ?? (question.kind === 'label' ? longestLabel : longestText)

/** `iron-hot` and `iron-cool` are signs of one group; a label shows one of each group. */
export const signGroup = (sign: string): string => sign.split('-', 1)[0]!

/** Nothing ticked says nothing: where none is true, a visitor ticks `none`, or passes over. */
export const mayBeEmpty = (question: Question): boolean => question.optional === true

/**
 * Whether a reply still answers the question where it stands now: what was given is still offered
 * and within bounds. `replies` are those before it. Never throws for a reply of whatever shape.
 */
export function makesSense(
  question: Question,
  reply: Reply,
  replies: Replies,
  rules: Rules,
): boolean {
  if (!isObject(reply)) return false
  if ('skipped' in reply) return question.optional === true
  if ('asked' in reply) return typeof reply.asked === 'string' && isSeen(question, reply)
  const { given } = reply
  const open = (name: unknown) =>
    typeof name === 'string' && isOffered(question, name, replies, rules)
  switch (question.kind) {
    case 'choice':
    case 'confirm':
      return open(given)
    case 'many':
    case 'symbols':
      return isList(given) && given.every(open) && goTogether(question, given)
    case 'photo':
      return isList(given) && given.length > 0 && given.length <= (question.max ?? 1)
    case 'spots':
      return isSpots(question, given, open)
    case 'number':
      return isObject(given) && isWithin(question, given as NumberValue)
    case 'text':
      return fits(given, longestOf(question)) && given !== ''
    case 'label':
      return isObject(given) && isLabel(question, given as LabelValue)
    case 'contact':
      return isObject(given) && isContact(given)
  }
}

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isList = (value: unknown): value is readonly string[] =>
  Array.isArray(value) &&
  value.every((one) => typeof one === 'string') &&
  new Set(value).size === value.length

function goTogether(question: Question, given: readonly string[]): boolean {
  if (given.length === 0) return question.kind === 'many' && mayBeEmpty(question)
  if (question.kind === 'many') return given.length === 1 || !given.includes('none')
  return new Set(given.map(signGroup)).size === given.length
}

function isSpots(
  question: Question,
  given: unknown,
  open: (name: unknown) => boolean,
): given is readonly SpotValue[] {
  return (
    Array.isArray(given) &&
    given.length > 0 &&
    given.length <= (question.max ?? 1) &&
    given.every((one) => isObject(one) && isSpot(one as SpotValue) && open((one as SpotValue).what))
  )
}

const isShare = (value: unknown): boolean => typeof value === 'number' && value >= 0 && value <= 1

const isSpot = ({ photo, x, y, part }: SpotValue): boolean =>
  typeof photo === 'string' &&
  photo !== '' &&
  isShare(x) &&
  isShare(y) &&
  (part === null || typeof part === 'string')

export const isWithin = (question: Question, { amount, unit }: NumberValue): boolean =>
  Number.isFinite(amount) &&
  unit === (question.unit ?? '') &&
  amount >= (question.min ?? -Infinity) &&
  amount <= (question.max ?? Infinity) &&
  Number.isInteger(amount / (question.step ?? 1))

const isLabel = (question: Question, label: LabelValue): boolean => {
  const { found, words, iron, doubted } = label
  return (
    labelFinds.includes(found) &&
    fits(words, longestOf(question)) &&
    (found !== 'words' || words !== '') &&
    (iron === null || labelIrons.includes(iron)) &&
    (doubted === undefined || (doubted === true && found === 'words')) &&
    isSeen(question, label)
  )
}

const isSeen = (question: Question, { photo, read }: LabelSeen): boolean =>
  (photo === undefined || (typeof photo === 'string' && photo !== '')) &&
  (read === undefined || (photo !== undefined && fits(read, longestOf(question))))

function isContact(given: object): boolean {
  const { name, email, phone } = given as Record<string, unknown>
  return (
    fits(name, longestName) &&
    name !== '' &&
    fits(email, longestEmail) &&
    email !== '' &&
    fits(phone, longestPhone)
  )
}
