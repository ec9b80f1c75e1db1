import { fold } from '../../textile/label/clean.ts'

/** A word, number or sign of a line. */
export interface Token {
  /** As it stands there. */
  readonly text: string
  /** Lower case without accents, a slip mended: how words are compared. */
  word: string
  readonly from: number
  readonly to: number
  readonly isMark: boolean
  /** What stands between two commas, and between two full stops. */
  readonly segment: number
  readonly sentence: number
}

/** A line is short; a longer text is read to here, so that the time stays bounded. */
export const mostCharacters = 4_000

const pieces =
  /(?:\d+(?:[.,]\d+)?(?![\p{L}\d]))|[\p{L}\p{M}\d]+(?:['’´`‘][\p{L}]+)*|[^\s\p{L}\p{M}\d]/gu

const endsSentence = /^[.!?¡¿;\n]$/
/** The marks inside "18-24" and "50/50" and "rock & roll" part no words. */
const partsNothing = /^['’´`‘"“”«»\-‐‑/&+%*#°_~]$/

/** Words behind which something else begins, as behind a comma. */
const turns: ReadonlySet<string> = new Set(
  'but though although except however yet pero aunque excepto salvo'.split(' '),
)

export const plainWord = (text: string): string =>
  fold(text.normalize('NFKC')).replaceAll(/[’´`‘]/g, "'")

/** The tokens of a line, in order; marks among them. */
export function tokensOf(line: string): Token[] {
  const tokens: Token[] = []
  let segment = 0
  let sentence = 0
  let end = 0
  for (const match of line.slice(0, mostCharacters).matchAll(pieces)) {
    const [text] = match
    const from = match.index
    if (line.slice(end, from).includes('\n')) {
      segment += 1
      sentence += 1
    }
    end = from + text.length
    const word = plainWord(text)
    const isMark = !/[\p{L}\p{M}\d]/u.test(text)
    const breaks = isMark && !isJoining(line, from, text)
    if (breaks && text === '¿') sentence += 1
    if (breaks && text === '¿') segment += 1
    if (turns.has(word)) segment += 1
    tokens.push({ text, word, from, to: end, isMark, segment, sentence })
    if (!breaks) continue
    segment += 1
    if (endsSentence.test(text) && text !== '¿' && text !== '¡') sentence += 1
  }
  return tokens
}

/** A dash with space around it parts like a comma; one inside a word, or a sign of sums, does not. */
function isJoining(line: string, at: number, text: string): boolean {
  if (!partsNothing.test(text)) return false
  const isDash = /^[-‐‑/]$/.test(text)
  return !(isDash && line[at - 1] === ' ' && line[at + 1] === ' ')
}

/** What stands in the line from one token to another, both included. */
export const between = (
  line: string,
  tokens: readonly Token[],
  first: number,
  last: number,
): string => line.slice(tokens[first]!.from, tokens[last]!.to)
