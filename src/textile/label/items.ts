import type { Token } from './tokens.ts'
import { meaningOf, type Role, type Term, type Vocabulary } from './vocabulary.ts'

/** A token, or several that make one term. */
export interface Item {
  readonly kind: Token['kind'] | 'term'
  readonly raw: string
  readonly text: string
  readonly value: number
  readonly term: Term | null
}

/** Puts the longest terms of a vocabulary together; what is in none stays as it was. */
export function itemsOf(tokens: readonly Token[], vocabulary: Vocabulary): Item[] {
  const items: Item[] = []
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at]!
    if (token.kind === 'run') {
      items.push(...runItems(token, vocabulary))
      at++
      continue
    }
    const found = termAt(tokens, at, vocabulary)
    if (found) {
      items.push(...found.terms.map((term) => termItem(term, rawOf(tokens, at, found.end))))
      at = found.end
      continue
    }
    items.push({ ...token, kind: token.kind, term: null })
    at++
  }
  return items
}

export const has = (item: Item | undefined, role: Role): boolean =>
  meaningOf(item?.term, role) !== undefined

const termItem = (term: Term, raw: string): Item => ({
  kind: 'term',
  raw,
  text: term.words.join(' '),
  value: 0,
  term,
})

const rawOf = (tokens: readonly Token[], from: number, to: number): string =>
  tokens
    .slice(from, to)
    .map(({ raw }) => raw)
    .join(' ')
    .replaceAll(/\s+/g, ' ')

interface Found {
  readonly terms: readonly Term[]
  readonly end: number
}

/** A term may begin with a number: "2 dots". */
function termAt(tokens: readonly Token[], at: number, vocabulary: Vocabulary): Found | null {
  const { kind } = tokens[at]!
  if (kind === 'word') return findTerm(tokens, at, vocabulary)
  const found = kind === 'number' ? longestPhrase(tokens, at, vocabulary) : null
  return found && found.end > at + 1 ? found : null
}

function findTerm(tokens: readonly Token[], at: number, vocabulary: Vocabulary): Found | null {
  const alone = vocabulary.single(tokens[at]!.text)
  const plain = longestPhrase(tokens, at, vocabulary)
  const spansWords = plain !== null && plain.terms[0]!.words.length > 1
  const joined = spansWords || meaningOf(alone, 'fibre') ? null : brokenWord(tokens, at, vocabulary)
  if (joined !== null && meaningOf(joined.terms[0], 'fibre')) return joined
  return plain ?? joined
}

function longestPhrase(tokens: readonly Token[], at: number, vocabulary: Vocabulary): Found | null {
  for (const term of vocabulary.byFirst.get(tokens[at]!.text) ?? []) {
    const end = endOfPhrase(tokens, at, term)
    if (end !== null && !endsVerbBefore(tokens, at, vocabulary, term)) return { terms: [term], end }
  }
  return null
}

/** "Tørretumbles ikke ⏎ stryges": a ban for either side that ends a line belongs to what it follows. */
const endsVerbBefore = (
  tokens: readonly Token[],
  at: number,
  vocabulary: Vocabulary,
  term: Term,
): boolean =>
  term.words.length > 1 &&
  tokens[at + 1]?.kind === 'line' &&
  tokens[at - 1]?.kind === 'word' &&
  meaningOf(vocabulary.single(tokens[at]!.text), 'notEither') !== undefined

function endOfPhrase(tokens: readonly Token[], at: number, term: Term): number | null {
  let next = at + 1
  for (const word of term.words.slice(1)) {
    next = pastJoints(tokens, next, term.marks)
    const token = tokens[next]
    if (token?.text !== word) return null
    next++
  }
  return next
}

const joints = new Set(["'", '’', '‘', '´', '`', '-', '‐', '‑', '–'])

function pastJoints(tokens: readonly Token[], from: number, marks: string): number {
  let at = from
  while (at < from + 3) {
    const token = tokens[at]
    const joint = token?.kind === 'line' || (token?.kind === 'mark' && joints.has(token.raw))
    if (!joint && !(token?.kind === 'mark' && marks.includes(token.raw))) break
    at++
  }
  return at
}

const shortestJoined = 5

/** "POLY- ESTER", "BAUM / WOLLE": one word that a line end or a gap has broken in two or three. */
function brokenWord(tokens: readonly Token[], at: number, vocabulary: Vocabulary): Found | null {
  let text = tokens[at]!.text
  let end = at + 1
  for (let part = 0; part < 2; part++) {
    const next = pastJoints(tokens, end, '')
    if (tokens[next]?.kind !== 'word') return null
    text += tokens[next]!.text
    end = next + 1
    const term = text.length >= shortestJoined ? vocabulary.single(text) : undefined
    if (term) return { terms: [term], end }
  }
  return null
}

function runItems(token: Token, vocabulary: Vocabulary): Item[] {
  const items: Item[] = []
  const { text } = token
  let unread = ''
  const flush = () => {
    if (unread !== '') items.push({ kind: 'word', raw: unread, text: unread, value: 0, term: null })
    unread = ''
  }
  for (let at = 0; at < text.length; ) {
    const brokenHere = token.breaks.get(at)
    if (brokenHere) flush()
    if (brokenHere === '\n')
      items.push({ kind: 'line', raw: '\n', text: '\n', value: 0, term: null })
    const length = longestAt(text, at, vocabulary)
    const term = length > 0 ? vocabulary.runs.get(text.slice(at, at + length))! : null
    const loneSign = length === 1 && !standsAlone(token, at, unread === '', vocabulary)
    if (!term || loneSign) {
      unread += text[at]
      at++
      continue
    }
    flush()
    items.push(termItem(term, text.slice(at, at + length)))
    at += length
  }
  flush()
  return items
}

function longestAt(text: string, at: number, vocabulary: Vocabulary): number {
  for (let length = Math.min(vocabulary.longestRun, text.length - at); length > 0; length--)
    if (vocabulary.runs.has(text.slice(at, at + length))) return length
  return 0
}

/** One sign alone is a word only where what stands on both its sides is read. */
function standsAlone(
  token: Token,
  at: number,
  clearBefore: boolean,
  vocabulary: Vocabulary,
): boolean {
  if (!clearBefore) return false
  const next = at + 1
  return (
    next >= token.text.length ||
    token.breaks.has(next) ||
    longestAt(token.text, next, vocabulary) > 0
  )
}
