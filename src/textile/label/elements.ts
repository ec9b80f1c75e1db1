import type { FibreKey } from '../fibres.ts'
import type { LanguageCode, Section } from '../languages/types.ts'
import type { ProblemCode } from '../reading.ts'
import {
  besideShare,
  everyday,
  fibreFollows,
  isLine,
  isPercent,
  isProgramme,
  passable,
} from './beside.ts'
import { letterCodes } from './codes.ts'
import { dropDecoys } from './decoys.ts'
import { has, type Item } from './items.ts'
import { guessName } from './spelling.ts'
import { isLabelWord, isPureWord, meaningOf } from './vocabulary.ts'

/** What matters for the make-up of a garment, in the order of the label. */
export type Element =
  | NumberElement
  | FibreElement
  | {
      readonly kind: 'section'
      readonly sections: readonly Section[]
      readonly raw: string
      /** Read through a mistake, and another name may be meant. */
      readonly guessed?: boolean
    }
  | {
      readonly kind: 'pure' | 'detail' | 'filler' | 'excluded' | 'hedge' | 'limit' | 'likeness'
      readonly raw: string
    }
  | { readonly kind: 'decoyBefore' | 'decoyAfter' | 'or' | 'variant'; readonly raw: string }
  | { readonly kind: 'line' | 'mark'; readonly raw: string }
  | WordElement

/** A word that means nothing here. */
export interface WordElement {
  readonly kind: 'word'
  readonly raw: string
}

export interface NumberElement {
  readonly kind: 'number'
  readonly value: number
  readonly percent: boolean
  readonly raw: string
}

export interface FibreElement {
  readonly kind: 'fibre'
  readonly fibre: FibreKey
  readonly raw: string
  readonly languages: readonly LanguageCode[]
  readonly doubt: ProblemCode | null
  readonly detail?: string
  readonly code?: boolean
  /** The name itself says that there is no other fibre. */
  readonly pure?: boolean
}

export interface Ways {
  /** Letter codes count as names. */
  readonly codes: boolean
}

/** Reads items as elements: which numbers are percentages, which words are fibres. */
export function elementsOf(items: readonly Item[], ways: Ways): Element[] {
  const percents = percentages(items)
  const elements: Element[] = []
  for (const [at, item] of items.entries()) {
    const element = elementAt(items, at, percents, ways)
    if (element) elements.push(element)
    else if (item.kind === 'degree') dropTemperature(elements)
  }
  return dropDecoys(elements)
}

function dropTemperature(elements: Element[]): void {
  if (elements.at(-1)?.kind === 'number') elements.pop()
}

/** By number: the signs or words that make it a percentage. "60 %", "60 percent", "%60", "yüzde 60". */
function percentages(items: readonly Item[]): ReadonlySet<number> {
  const percents = new Set<number>()
  const used = new Set<number>()
  for (const [at, item] of items.entries()) {
    if (item.kind !== 'number') continue
    const before = at - 1
    if (isPercent(items[before]) && !used.has(before)) {
      used.add(before)
      percents.add(at)
      continue
    }
    const after = isLine(items[at + 1]) ? at + 2 : at + 1
    if (!isPercent(items[after])) continue
    used.add(after)
    percents.add(at)
  }
  return percents
}

function elementAt(
  items: readonly Item[],
  at: number,
  percents: ReadonlySet<number>,
  ways: Ways,
): Element | null {
  const item = items[at]!
  const { raw } = item
  if (item.kind === 'number')
    return { kind: 'number', value: item.value, percent: percents.has(at), raw }
  if (item.kind === 'line' || item.kind === 'mark') return { kind: item.kind, raw }
  if (item.kind === 'percent' || item.kind === 'degree') return null

  const beside = besideShare(items, at, percents, true) || isJoinedPoly(items, at)
  const code = beside && ways.codes ? codeElement(item) : null
  if (code) return code
  if (item.term) return termElement(items, at, percents, beside)
  const guess = isGuessable(items, at, percents, inSentence) ? guessName(item.text) : undefined
  if (!guess) return { kind: 'word', raw }
  const doubt = guess.sure && isGuessable(items, at, percents, onLine) ? null : 'spelling'
  return fibreElement({ ...item, term: guess.term }, doubt)
}

/** A word of care is no slip of the pen, and a new sentence speaks of something else. */
const isGuessable = (
  items: readonly Item[],
  at: number,
  percents: ReadonlySet<number>,
  passes: (item: Item | undefined) => boolean,
): boolean => !isLabelWord(items[at]!.text) && besideShare(items, at, percents, false, passes)

const inSentence = (item: Item | undefined): boolean => passable(item) && item!.raw !== '.'
const onLine = (item: Item | undefined): boolean => inSentence(item) && !isLine(item)

/** "Poly-cotton 65/35": the short name beside a whole one, with the shares apart. */
const isJoinedPoly = (items: readonly Item[], at: number): boolean =>
  items[at]!.text === 'poly' &&
  [-1, 1].some((step) => {
    const beside = /^[-/&,]$/.test(items[at + step]?.raw ?? '') ? at + 2 * step : at + step
    return has(items[beside], 'fibre')
  })

function codeElement(item: Item): FibreElement | null {
  const code = item.kind === 'word' || item.kind === 'term' ? letterCodes[item.text] : undefined
  if (!code || !Object.hasOwn(letterCodes, item.text)) return null
  return {
    kind: 'fibre',
    fibre: code.fibre,
    raw: item.raw,
    languages: [],
    doubt: code.ask ? 'name_ambiguous' : null,
    code: true,
  }
}

function termElement(
  items: readonly Item[],
  at: number,
  percents: ReadonlySet<number>,
  beside: boolean,
): Element {
  const item = items[at]!
  const { raw, text } = item
  if (has(item, 'fibre') && (beside || !isProgramme(items, at))) {
    const accented = raw.toLowerCase() !== text && text === 'la'
    if (!everyday.has(text) || accented) return fibreElement(item, null)
    if (besideShare(items, at, percents, false) && !fibreFollows(items, at))
      return fibreElement(item, everydayDoubt(items, item))
  }
  if (has(item, 'section')) {
    return { kind: 'section', sections: [sectionOf(items, item)], raw }
  }
  const roles = [
    'likeness',
    'hedges',
    'limits',
    'excluded',
    'pure',
    'details',
    'fillers',
    'or',
    'variants',
  ] as const
  if (
    has(item, 'decoysBefore') &&
    !(has(item, 'limits') && shareFollows(items, at)) &&
    !has(item, 'fillers') &&
    !(has(item, 'pure') && fibreFollows(items, at))
  )
    return { kind: 'decoyBefore', raw }
  for (const role of roles) if (has(item, role)) return { kind: elementKinds[role], raw }
  return { kind: has(item, 'decoysAfter') ? 'decoyAfter' : 'word', raw }
}

/** "At least 60 % cotton": a limit of a share, where "at least 60 %" alone may be of anything. */
function shareFollows(items: readonly Item[], at: number): boolean {
  const from = items[at + 1]?.raw === '.' ? at + 2 : at + 1
  const [number, sign] = [items[from], items[from + 1]]
  let next = from + 2
  while (isLine(items[next]) || has(items[next], 'details')) next++
  return number?.kind === 'number' && isPercent(sign) && has(items[next], 'fibre')
}

/** "Kant" is lace in Dutch and a trim in Swedish: the languages of the label's fibres tell which. */
function sectionOf(items: readonly Item[], { term }: Item): Section {
  const meanings = term!.roles.filter(({ role }) => role === 'section')
  if (meanings.length === 1) return meanings[0]!.section!
  const codes = items.flatMap((item) => meaningOf(item.term, 'fibre')?.languages ?? [])
  const counts = meanings.map(({ languages }) =>
    Math.max(...languages.map((language) => codes.filter((code) => code === language).length)),
  )
  return meanings[counts.indexOf(Math.max(...counts))]!.section!
}

const elementKinds = {
  likeness: 'likeness',
  hedges: 'hedge',
  limits: 'limit',
  excluded: 'excluded',
  pure: 'pure',
  details: 'detail',
  fillers: 'filler',
  or: 'or',
  variants: 'variant',
} as const

/** An everyday word stands for a fibre for sure where the label has other words of its language. */
function everydayDoubt(items: readonly Item[], item: Item): ProblemCode | null {
  const { languages } = meaningOf(item.term, 'fibre')!
  if (languages.includes('en') && item.text !== 'in') return null
  const others = items.some((other) => {
    const fibre = other === item ? undefined : meaningOf(other.term, 'fibre')
    return (
      fibre &&
      !fibre.languages.includes('en') &&
      fibre.languages.some((code) => languages.includes(code))
    )
  })
  return others ? null : 'name_ambiguous'
}

function fibreElement(item: Item, doubt: ProblemCode | null): FibreElement {
  const meaning = meaningOf(item.term, 'fibre')!
  const fibre = meaning.fibre!
  const unusual = meaning.unusual ? { detail: item.text } : {}
  return {
    kind: 'fibre',
    fibre,
    raw: item.raw,
    languages: meaning.languages,
    doubt: doubt ?? (meaning.unusual ? 'name_unusual' : null),
    ...unusual,
    pure: saysPure(item),
  }
}

/** "Ren ull", "純毛": the name of the fibre begins with the word for pure. */
const saysPure = (item: Item): boolean => {
  const first = item.term!.words[0]!
  return /^[纯純全순]/.test(first) || (item.term!.words.length > 1 && isPureWord(first))
}
