import { fold } from './clean.ts'

export interface Token {
  readonly kind: 'word' | 'run' | 'number' | 'percent' | 'degree' | 'mark' | 'line'
  readonly raw: string
  /** The folded word; of a run its signs without the spaces. */
  readonly text: string
  readonly value: number
  /** Of a run: where a space or a line break stood, by index into `text`. */
  readonly breaks: ReadonlyMap<number, ' ' | '\n'>
}

const noBreaks: ReadonlyMap<number, ' ' | '\n'> = new Map()

// Chinese, Japanese and Korean are written in runs whose spaces and line ends part no words.
const sign = '[\\p{Script=Han}\\p{Script=Hiragana}\\p{Script=Katakana}\\p{Script=Hangul}ー々]'
/** Signs that print the dots of an iron; one alone also parts phrases. */
export const dotSigns = '•●∙⋅·'
const pieces = new RegExp(
  `(?<line>\\n)|(?<number>\\d+[.,]\\d{1,2}(?!\\d))|(?<run>${sign}(?:[ \\n]{0,3}${sign})*)|(?<word>[\\p{Script=Latin}\\p{M}\\d]+)|(?<percent>%)|(?<degree>°)|(?<dots>[${dotSigns}]{2,3})|(?<other>\\p{L}+)|(?<mark>[^\\s])`,
  'gu',
)

/** What is known of words when a text is cut, all in folded form. */
export interface WordSense {
  /** Tells which mixtures of letters and digits are words. */
  readonly isWord: (folded: string) => boolean
  /** The words that are printed in one; null where it is one word. */
  readonly split: (folded: string) => readonly string[] | null
}

/** Cuts a cleaned text into words, numbers and marks. */
export function tokenise(text: string, sense: WordSense): Token[] {
  const tokens: Token[] = []
  for (const match of text.matchAll(pieces)) {
    const raw = match[0]
    const { line, number, run, word, percent, degree, other } = match.groups!
    if (line) tokens.push(token('line', '\n'))
    else if (number) tokens.push(numberToken(raw))
    else if (run) tokens.push(runToken(raw))
    else if (word) tokens.push(...alphanumeric(raw, text[match.index + raw.length] === '%', sense))
    else if (percent) tokens.push(token('percent', raw))
    else if (degree) tokens.push(token('degree', raw))
    else tokens.push(token(other ? 'word' : 'mark', raw))
  }
  return tokens
}

const token = (kind: Token['kind'], raw: string): Token => ({
  kind,
  raw,
  text: kind === 'word' ? fold(raw) : raw,
  value: 0,
  breaks: noBreaks,
})

const numberToken = (raw: string): Token => ({
  ...token('number', raw),
  value: Number(raw.replace(',', '.')),
})

function runToken(raw: string): Token {
  const breaks = new Map<number, ' ' | '\n'>()
  let text = ''
  for (const char of raw) {
    if (char === '\n') breaks.set(text.length, '\n')
    else if (char === ' ') {
      if (!breaks.has(text.length)) breaks.set(text.length, ' ')
    } else text += char
  }
  return { ...token('run', raw), text: text.toLowerCase(), breaks }
}

// Readers of print take O for 0 and I or l for 1, in words and in numbers.
const looksLikeNumber = /^[0-9oil]{1,3}$/i
const asDigits = (raw: string): string => raw.replaceAll(/o/gi, '0').replaceAll(/[il]/gi, '1')

function alphanumeric(raw: string, percentFollows: boolean, { isWord, split }: WordSense): Token[] {
  if (/^\d+$/.test(raw)) return [numberToken(raw)]
  const numeric =
    looksLikeNumber.test(raw) && (/\d/.test(raw) || (percentFollows && raw.length > 1))
  if (numeric && !isWord(fold(raw))) return [numberToken(asDigits(raw))]
  if (!/\d/.test(raw)) return wordTokens(raw, split)

  const word = wordOf(raw, isWord)
  if (word) return [{ ...token('word', raw), text: word }]
  const glued = raw.match(/\d{1,3}|\D+/g)!
  if (glued.length > 3 && glued.every((part) => /^\d/.test(part) || isWord(fold(part)))) {
    return glued.map((part) => (/^\d/.test(part) ? numberToken(part) : token('word', part)))
  }
  const parts = /^(\d*)(.*?)(\d*)$/s.exec(raw)!
  return [
    ...(parts[1] ? [numberToken(parts[1])] : []),
    ...(parts[2] ? innerWords(parts[2], { isWord, split }) : []),
    ...(parts[3] ? [numberToken(parts[3])] : []),
  ]
}

function innerWords(raw: string, { isWord, split }: WordSense): Token[] {
  const word = wordOf(raw, isWord)
  return word ? [{ ...token('word', raw), text: word }] : wordTokens(raw, split)
}

function wordTokens(raw: string, split: WordSense['split']): Token[] {
  const pieces = split(fold(raw))
  return pieces ? pieces.map((piece) => token('word', piece)) : [token('word', raw)]
}

function wordOf(raw: string, isWord: (folded: string) => boolean): string | undefined {
  if (/^\d+.?$/.test(raw)) return undefined
  const base = fold(raw).replaceAll('0', 'o').replaceAll('5', 's')
  return [base, base.replaceAll('1', 'i'), base.replaceAll('1', 'l')].find(
    (word) => !/\d/.test(word) && isWord(word),
  )
}
