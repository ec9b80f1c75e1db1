import {
  clothNames,
  landMarks,
  leadIns,
  mixtureWords,
  sizeWords,
} from '../languages/known-names.ts'
import type { ProblemCode } from '../reading.ts'
import { fold } from './clean.ts'
import type { Element } from './elements.ts'
import type { Pair } from './pairing.ts'
import { careWords, firstSign, isReadWord, meaningOf, once } from './vocabulary.ts'

export interface Doubts {
  readonly problems: Set<ProblemCode>
  /** Words and numbers that could not be read. */
  readonly unread: readonly Element[]
}

/** What stands among the shares and was not understood: such a make-up is asked about. */
export function doubtsAmong(elements: readonly Element[], pairs: readonly Pair[]): Doubts {
  const told = new Set<Element>(pairs.flatMap(({ share, fibre }) => [share, fibre]))
  const doubts = new Set<ProblemCode>()
  const unread: Element[] = []
  const sentences = sentenceOf(elements)
  for (const { share, fibre } of pairs)
    if (
      sentences.has(share) &&
      sentences.has(fibre) &&
      sentences.get(share) !== sentences.get(fibre)
    )
      doubts.add('pairing')
  for (const clause of clausesOf(elements)) {
    if (clause.some((_, at) => isNegated(clause, at))) doubts.add('fibre_unexplained')
    const first = clause.findIndex((element) => told.has(element))
    if (first < 0) continue
    const last = clause.findLastIndex((element) => told.has(element))
    if (pairs.length === 1 && clause.some(({ raw }) => mixtures.has(fold(raw))))
      doubts.add('words_unread')
    for (const [at, element] of clause.entries()) {
      const within = at > first && at < last
      if (
        isUnread(element) &&
        (at < first ? standsBefore(clause, at) : within || isBehind(clause, last, at))
      )
        unread.push(element)
      if (isStrayNumber(clause, at, last, told)) unread.push(element)
      if (element.kind === 'limit' && limitsShare(clause, at, told)) doubts.add('share_limited')
      if (element.kind === 'or' && (within || leadsTo(clause, at, told))) doubts.add('alternatives')
      if (isBan(element) && at < last && leadsTo(clause, at, told)) doubts.add('words_unread')
    }
  }
  return { problems: doubts, unread }
}

const mixtures: ReadonlySet<string> = new Set(mixtureWords.map(fold))

/** "No wool", "不含羊毛": a name that stands so may still have been given a share. */
const isNegated = (clause: readonly Element[], at: number): boolean => {
  const before = clause[at - 1]
  return (
    clause[at]!.kind === 'fibre' &&
    before !== undefined &&
    (before.kind === 'excluded' || isBan(before))
  )
}

/** Lines and sentences; a name and its share may stand on two lines. */
function clausesOf(elements: readonly Element[]): Element[][] {
  const clauses: Element[][] = [[]]
  for (const element of elements) {
    const last = clauses.at(-1)!
    const ends =
      element.kind === 'line' || (element.kind === 'mark' && /[.;!|•。；]/.test(element.raw))
    if (ends && !isShortened(last.at(-1), element)) clauses.push([])
    else last.push(element)
  }
  return clauses
}

/** By element: the number of its sentence. */
function sentenceOf(elements: readonly Element[]): ReadonlyMap<Element, number> {
  let sentence = 0
  return new Map(
    elements.map((element, at) => {
      const ends = element.kind === 'mark' && /[.!?。]/.test(element.raw)
      if (ends && !isShortened(elements[at - 1], element)) sentence++
      return [element, sentence]
    }),
  )
}

/** The point of "max." and "ca." ends nothing. */
const isShortened = (before: Element | undefined, mark: Element): boolean =>
  mark.raw === '.' && (before?.kind === 'limit' || sizes.has(fold(before?.raw ?? '')))

/** A word that no table here has. */
export const isUnread = ({ kind, raw }: Element): boolean =>
  kind === 'word' && /\p{L}{2}/u.test(raw) && !isKnown(fold(raw))

const isKnown = (word: string): boolean =>
  isReadWord(word) ||
  said.has(word) ||
  cloths().has(word) ||
  landMarks.has(word) ||
  beginsCare(word)

const said: ReadonlySet<string> = new Set(leadIns.map(fold))

const cloths = once(
  (): ReadonlySet<string> => new Set(clothNames.flatMap((name) => fold(name).split(/[ -]/))),
)

/** Signs that run on from the shares into what is told of care. */
const beginsCare = (word: string): boolean =>
  word.codePointAt(0)! >= firstSign &&
  Array.from({ length: Math.min(word.length, 4) }, (_, end) => word.slice(0, end + 1)).some(
    (start) => careWords().runs.has(start),
  )

/** A share's size, without a fibre and without a word of care that takes it. */
function isStrayNumber(
  clause: readonly Element[],
  at: number,
  last: number,
  told: ReadonlySet<Element>,
): boolean {
  const element = clause[at]!
  if (element.kind !== 'number' || told.has(element) || at > last + 1) return false
  if (isSizeOrPrice(clause, at)) return false
  const before = clause[clause[at - 1]?.raw === ':' ? at - 2 : at - 1]
  const isCare = before?.kind === 'word' && careWords().single(fold(before.raw)) !== undefined
  return element.value > 0 && element.value <= 100 && !isCare
}

/** Right behind the last share, with nothing but words of its finish between: "wool-like". */
const isBehind = (clause: readonly Element[], last: number, at: number): boolean =>
  at > last &&
  clause
    .slice(last + 1, at)
    .every(({ kind, raw }) => kind === 'detail' || kind === 'filler' || /^[-‐–,，、]$/.test(raw))

/** Right before the share, with nothing that would end a sentence of its own. */
const standsBefore = (clause: readonly Element[], at: number): boolean => {
  const next = /^[-‐–]$/.test(clause[at + 1]?.raw ?? '') ? clause[at + 2] : clause[at + 1]
  return next?.kind === 'number' || next?.kind === 'fibre'
}

/** Small words and marks at most stand between the limit and a share on either side. */
function limitsShare(clause: readonly Element[], at: number, told: ReadonlySet<Element>): boolean {
  return [1, -1].some((step) => {
    let next = at + step
    while (clause[next]?.kind === 'filler' || clause[next]?.kind === 'mark') next += step
    const element = clause[next]
    return element !== undefined && told.has(element)
  })
}

const sizes: ReadonlySet<string> = new Set(sizeWords.map(fold))

/** "Size 40", "19,95 €", "$ 49.99". */
function isSizeOrPrice(clause: readonly Element[], at: number): boolean {
  const before = clause[clause[at - 1]?.raw === '.' ? at - 2 : at - 1]
  if (before?.kind === 'section' || sizes.has(fold(before?.raw ?? ''))) return true
  const money = [clause[at - 1], clause[at + 1]].some((beside) => moneys.test(beside?.raw ?? ''))
  return money || /[.,]\d\d$/.test(clause[at]!.raw)
}

const moneys = /^(?:[€$£¥₩₺₤]|eur|euro|usd|gbp|chf|zł|zl|kr|kč|lei|ron|tl|dkk|sek|円|元|원)$/i

const banRoles = ['not', 'notAfter', 'notEither'] as const

const isBan = ({ kind, raw }: Element): boolean =>
  kind !== 'number' &&
  kind !== 'fibre' &&
  banRoles.some((role) => meaningOf(careWords().single(fold(raw)), role))

const leadsTo = (clause: readonly Element[], at: number, told: ReadonlySet<Element>): boolean =>
  clause.slice(at + 1, at + 3).some((element) => told.has(element))
