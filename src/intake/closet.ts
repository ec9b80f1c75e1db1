import { Failure } from '../base/failures.ts'
import type { Followed, Item } from '../flow/followed.ts'
import type { Act, Flow, Question, Replies, Reply } from '../flow/grammar.ts'
import { questionsOf } from '../flow/kept.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanLine, isBlank } from '../flow/text.ts'
import { partsRead, wordsCheck } from './own-words.ts'
import { chosen } from './replies.ts'

/** Many garments told at once: a line each, then what each is, and what is true of none, or of some. */

/** As many as one page looks over. */
export const mostAtOnce = 30
/** As long as the question for a name takes it. */
const longestLine = 400

/** Questions that sort out what stays at home or waits for a person, and the answer where nothing is said. */
export const screening = { wear: 'sound', history: 'none', details: 'none' } as const
export type Screening = keyof typeof screening
export const screenings = Object.keys(screening) as readonly Screening[]

/** Passed over where many are told at once; they can be answered later. */
const left: readonly string[] = ['colours', 'story']

/** One line, and how many garments it stands for: "3 x grey T-shirt, L". */
export interface ClosetLine {
  readonly words: string
  readonly count: number
}

const counted = /^(\d{1,2})(?: x |\s*[×*]\s*)(.+)$/iu

function lineOf(raw: string): ClosetLine {
  const text = cleanLine(raw.replace(/^\s*[-•*]\s+/u, ''))
  const [, count, words] = counted.exec(text) ?? []
  const line = count && Number(count) > 0 ? { words: words!, count: Number(count) } : null
  if (lengthOf(text) > longestLine) throw new Failure('line_too_long', { longest: longestLine })
  return line ?? { words: text, count: 1 }
}

/** Lines as they were typed. Throws `empty_answer`, `line_too_long` {longest}, `too_many_lines` {most}. */
export function closetLines(raw: string): ClosetLine[] {
  const lines = raw
    .split(/\r\n?|\n/)
    .filter((line) => !isBlank(line))
    .map(lineOf)
  if (lines.length === 0) throw new Failure('empty_answer')
  if (lines.reduce((all, { count }) => all + count, 0) > mostAtOnce)
    throw new Failure('too_many_lines', { most: mostAtOnce })
  return lines
}

const nextNumber = ({ items }: Followed): number => Math.max(0, ...items.map(({ n }) => n)) + 1

const answer = (item: number, question: string, reply: Reply, ahead = false): Act => ({
  act: 'answer',
  item,
  question,
  reply,
  ...(ahead && { ahead: true as const }),
})

/** A garment for each line, called by it; alike ones are copies of the first. */
export function addLines(followed: Followed, lines: readonly ClosetLine[]): Act[] {
  let next = nextNumber(followed)
  return lines.flatMap(({ words, count }) => {
    const first = next
    next += count
    const copies = Array.from({ length: count - 1 }, (_, nth): Act => {
      return { act: 'copy', item: first + 1 + nth, from: first }
    })
    return [{ act: 'add', item: first }, answer(first, 'name', { given: words }), ...copies]
  })
}

/** A garment without a name, of a kind that was tapped. */
export function addKind(flow: Flow, followed: Followed, kind: string): Act[] {
  if (!offers(flow, 'kind', kind)) throw new Failure('answer_not_offered')
  const item = nextNumber(followed)
  return [
    { act: 'add', item },
    answer(item, 'name', { skipped: true }),
    answer(item, 'kind', { given: kind }),
  ]
}

const optionsOf = (question: Question | undefined): readonly string[] =>
  (question?.options ?? []).map((one) => (typeof one === 'string' ? one : one.option))

const offers = (flow: Flow, question: string, value: string): boolean =>
  optionsOf(questionsOf(flow).repeated.get(question)).includes(value)

/** What a screening question may have true of a garment, in the flow's order; empty where a flow does not ask it. */
export const marksOf = (flow: Flow, question: Screening): readonly string[] =>
  optionsOf(questionsOf(flow).repeated.get(question)).filter((one) => one !== screening[question])

export const isStanding = ({ dropped }: Pick<Item, 'dropped'>): boolean => !dropped

/** Begun, and nothing asked of it yet that could keep it at home. */
export const isUnscreened = (item: Pick<Item, 'dropped' | 'open' | 'replies' | 'aside'>): boolean =>
  !item.dropped && item.open !== null && !item.replies.history && !item.aside.history

/** What was said of a garment, with what was said before its turn. */
export function toldAhead({ replies, aside }: Pick<Item, 'replies' | 'aside'>): Replies {
  const ahead = screenings.flatMap((question) => {
    const reply = aside[question]
    return reply ? [[question, reply] as const] : []
  })
  return { ...Object.fromEntries(ahead), ...replies }
}

/** The garments that are looked over together next. */
export const toScreen = <T extends Pick<Item, 'dropped' | 'open' | 'replies' | 'aside'>>(
  items: readonly T[],
): readonly T[] => items.filter(isUnscreened).slice(0, mostAtOnce)

/** Garments that are called alike stand together; one without a name stands alone. */
export function alike<T extends Pick<Item, 'n' | 'replies'>>(garments: readonly T[]): T[][] {
  const groups = new Map<string, T[]>()
  for (const garment of garments) {
    const called = chosen(garment.replies, 'name') ?? `${garment.n}`
    groups.set(called, [...(groups.get(called) ?? []), garment])
  }
  return [...groups.values()]
}

/** Whether wear was read in a garment's own words: then it is confirmed there, and not asked of all. */
export const wearIsRead = ({ replies }: Pick<Item, 'replies'>): boolean =>
  partsRead(replies).has('wear')

/** What was said of the garments that were looked over, by their numbers. */
export interface Screened {
  readonly garments: readonly number[]
  /** These are asked about one by one. */
  readonly alone: ReadonlySet<number>
  /** Parts of their own words that are right. */
  readonly right: ReadonlyMap<number, readonly string[]>
  readonly kind: ReadonlyMap<number, string>
  readonly size: ReadonlyMap<number, string>
  /** What is true of them, by question. */
  readonly marks: ReadonlyMap<number, ReadonlyMap<Screening, readonly string[]>>
}

/** The answers of one garment. Throws `answer_not_offered`. */
function answersOf(flow: Flow, item: Item, said: Screened): Act[] {
  const { n, replies } = item
  const read = partsRead(replies)
  const right = [...read.keys()].filter((part) => said.right.get(n)?.includes(part))
  const acts: Act[] = []
  if (item.open?.id === wordsCheck) acts.push(answer(n, wordsCheck, { given: right }))
  for (const question of ['kind', 'size'] as const) {
    const value = said[question].get(n)
    if (value === undefined || right.includes(question)) continue
    if (!offers(flow, question, value)) throw new Failure('answer_not_offered')
    acts.push(answer(n, question, { given: value }, true))
  }
  if (said.alone.has(n)) return acts
  for (const question of screenings) {
    const marks = marksOf(flow, question)
    const ticked = said.marks.get(n)?.get(question) ?? []
    if (!ticked.every((mark) => marks.includes(mark))) throw new Failure('answer_not_offered')
    if (marks.length === 0 || (question === 'wear' && wearIsRead(item))) continue
    const trueOfIt = marks.filter((mark) => ticked.includes(mark))
    const none = screening[question]
    const given =
      question === 'wear' ? (trueOfIt.at(-1) ?? none) : trueOfIt.length > 0 ? trueOfIt : [none]
    acts.push(answer(n, question, { given }, true))
  }
  for (const question of left) {
    const asked = questionsOf(flow).repeated.get(question)
    const isRead = [...read.keys()].some((part) => part === question)
    if (asked?.optional && !replies[question] && !isRead)
      acts.push(answer(n, question, { skipped: true }, true))
  }
  return acts
}

/** All answers of a page that looks garments over; those that were left out or answered meanwhile are passed by. */
export function screened(flow: Flow, { items }: Followed, said: Screened): Act[] {
  const acts = items
    .filter((item) => said.garments.includes(item.n) && isUnscreened(item))
    .flatMap((item) => answersOf(flow, item, said))
  if (acts.length === 0) throw new Failure('question_moved_on')
  return acts
}
