import type { Token } from './tokens.ts'
import {
  type Entry,
  type Helper,
  type LanguageCode,
  ownAlone,
  type Told,
  vocabulary,
} from './vocabulary.ts'

/** A phrase of a line that tells something, from its first token to its last. */
export interface Claim {
  readonly fact: Told
  readonly value: string
  readonly first: number
  readonly last: number
  sure: boolean
  negated: boolean
  /** Where the word stands that says it is not so. */
  deniedFrom?: number
}

/** A line as it is looked at: its tokens, and what each of them is. */
export interface Line {
  readonly raw: string
  readonly tokens: readonly Token[]
  readonly language: LanguageCode
  /** By helper, whether each token belongs to a phrase that helps so. */
  readonly helps: Readonly<Record<Helper, readonly boolean[]>>
}

const helperNames: readonly Helper[] = [
  'negates',
  'negatesBefore',
  'hedges',
  'asks',
  'asksAnywhere',
  'supposes',
  'people',
  'parts',
  'linings',
  'shades',
  'modifies',
  'ands',
  'ors',
  'sizeMarks',
  'besides',
  'fillers',
  'childish',
  'blocks',
]

const common: Readonly<Record<LanguageCode, ReadonlySet<string>>> = {
  en: new Set(
    "the a my of with and is it in on at size has was his her this that from no not never for he she i an its it's our shirt large small".split(
      ' ',
    ),
  ),
  es: new Set(
    'de la el mi con sin una un y es del los las su talla para que en tiene era muy papa abuela abuelo mama por al se le lo hay como camisa camiseta vestido color esta este'.split(
      ' ',
    ),
  ),
}

/** The language a line is in: whose small words it has most of; null where nothing tells. */
export function languageOf(tokens: readonly Token[]): LanguageCode | null {
  let lead = 0
  for (const { word, text } of tokens) {
    if (common.en.has(word)) lead += 1
    if (common.es.has(word)) lead -= 1
    if (/[ñáéíóú¿¡]/iu.test(text)) lead -= 1
    const entries = vocabulary().get(word) ?? []
    const telling = entries.filter(
      ({ role, words }) =>
        role === 'kind' || role === 'colour' || (role === 'wear' && words.length === 1),
    )
    if (telling.length === 0) continue
    if (telling.every(({ language }) => language === 'en')) lead += 0.5
    if (telling.every(({ language }) => language === 'es')) lead -= 0.5
  }
  return lead < 0 ? 'es' : lead > 0 ? 'en' : null
}

function fits({ words }: Entry, tokens: readonly Token[], at: number): boolean {
  let next = at
  for (const [nth, word] of words.entries()) {
    // A hyphen inside "tie-dye" is no word; nothing else may stand between.
    if (nth > 0 && tokens[next]?.isMark && /^[-‐‑/]$/.test(tokens[next]!.text)) next += 1
    if (tokens[next]?.word !== word || tokens[next]!.isMark) return false
    next += 1
  }
  return true
}

function lastOf({ words }: Entry, tokens: readonly Token[], at: number): number {
  let next = at
  for (const [nth] of words.entries()) {
    if (nth > 0 && tokens[next]?.isMark) next += 1
    next += 1
  }
  return next - 1
}

/** Whether a phrase counts in a line of this language. */
function isHeard({ language, words }: Entry, line: LanguageCode): boolean {
  if (language === line) return true
  return words.length > 1 || !ownAlone()[language].has(words[0]!)
}

/** The longest phrase of a role that begins at a token; of two languages the line's own. */
function longest(
  tokens: readonly Token[],
  at: number,
  role: Told | Helper,
  language: LanguageCode,
): Entry | null {
  let best: Entry | null = null
  for (const entry of vocabulary().get(tokens[at]!.word) ?? []) {
    if (entry.role !== role || !isHeard(entry, language) || !fits(entry, tokens, at)) continue
    const better =
      !best ||
      entry.words.length > best.words.length ||
      (entry.words.length === best.words.length && best.language !== language)
    if (better) best = entry
  }
  return best
}

function marked(tokens: readonly Token[], role: Helper, language: LanguageCode): boolean[] {
  const marks = tokens.map(() => false)
  for (let at = 0; at < tokens.length; at += 1) {
    const entry =
      tokens[at]!.isMark && tokens[at]!.text !== '&' && tokens[at]!.text !== '+'
        ? null
        : longest(tokens, at, role, language)
    const sign = role === 'ands' && /^[&+]$/.test(tokens[at]!.text)
    if (!entry && !sign) continue
    const last = entry ? lastOf(entry, tokens, at) : at
    for (let one = at; one <= last; one += 1) marks[one] = true
    at = last
  }
  return marks
}

export function lineOf(raw: string, tokens: readonly Token[], language: LanguageCode): Line {
  const helps = Object.fromEntries(
    helperNames.map((role) => [role, marked(tokens, role, language)]),
  ) as unknown as Line['helps']
  return { raw, tokens, language, helps }
}

/** Every phrase that tells a value of a fact, the longest at each place, in the line's order. */
export function claimsOf({ tokens, language, helps }: Line, fact: Told): Claim[] {
  const claims: Claim[] = []
  for (let at = 0; at < tokens.length; at += 1) {
    if (tokens[at]!.isMark || helps.blocks[at]) continue
    const entry = longest(tokens, at, fact, language)
    if (!entry) continue
    const last = lastOf(entry, tokens, at)
    claims.push({ fact, value: entry.value, first: at, last, sure: entry.sure, negated: false })
    at = last
  }
  return claims
}
