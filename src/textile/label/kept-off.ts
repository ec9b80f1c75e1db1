import type { LanguageCode } from '../languages/types.ts'
import { has, type Item } from './items.ts'
import { ownLine, type Phrase, verbLast } from './phrase.ts'
import { isFiller, isNot } from './verbs.ts'
import { meaningOf } from './vocabulary.ts'

/** What an iron is kept off, where a phrase forbids only that: the print, or the outer side. */
export function keptOff(phrase: Phrase): 'print' | 'face' | null {
  const line = phrase.after.findIndex(({ kind }) => kind === 'line')
  const sameLine = line < 0 ? phrase.after : phrase.after.slice(0, line)
  if (sameLine.some((item) => has(item, 'print'))) return namesPrint(sameLine) ? 'print' : null
  if (printStandsBefore(phrase)) return 'print'
  if (sameLine.some((item) => has(item, 'face'))) return 'face'
  return wrapsToPrint(phrase, line) ? 'print' : null
}

/** Right behind the verb and nothing more told of it: "print may fade" is another sentence. */
function namesPrint(after: readonly Item[]): boolean {
  const at = after.findIndex((item) => has(item, 'print'))
  return after.slice(0, at).every(isPassing) && !saysMore(after[at + 1])
}

const isPassing = (item: Item): boolean =>
  has(item, 'fillers') || has(item, 'face') || has(item, 'not') || has(item, 'print')

const sayings = new Set(['may', 'can', 'be', 'will', 'is', 'kann', 'peut', 'puede', 'kan'])
const saysMore = (item: Item | undefined): boolean =>
  item !== undefined && (item.kind === 'word' || sayings.has(item.text))

/** "Potisk nežehlit": what the verb speaks of may stand in front of it. */
const freeOrder: readonly LanguageCode[] = ['cs', 'pl']

/** "Aufdruck nicht bügeln": languages that may name the print before the verb. */
function printStandsBefore({ before, languages }: Phrase): boolean {
  if (!languages.some((code) => verbLast.includes(code) || freeOrder.includes(code))) return false
  const line = before.findLastIndex(({ kind }) => kind === 'line')
  const own = before.slice(line + 1)
  const print = own.findLastIndex((item) => has(item, 'print'))
  return print >= 0 && own.slice(print).every((item) => isPassing(item) || isNot(item))
}

/** "Do not iron on ⏎ print": a line end in the middle, where the next line holds the print alone. */
function wrapsToPrint({ after, languages }: Phrase, line: number): boolean {
  if (line < 0) return false
  const next = after.slice(line + 1)
  const end = next.findIndex(({ kind }) => kind === 'line')
  const alone = end < 0 ? next : next.slice(0, end)
  const bound = after.slice(0, line).some((item) => has(item, 'fillers'))
  // A line of its own may be another language's: "silk" is a print in Portuguese.
  const isPrint = ({ term }: Item): boolean =>
    meaningOf(term, 'print')?.languages.some((code) => languages.includes(code)) ?? false
  const only = alone.every((item) => isPrint(item) || has(item, 'fillers'))
  return only && alone.some(isPrint) && (bound || alone.length === 1)
}

/** "Iron low, not on the print", "プリントを避けて": leave to iron that spares the print. */
export function sparesPrint(phrase: Phrase): boolean {
  const unread = phrase.after.findIndex(({ kind }) => kind === 'word')
  const after = unread < 0 ? phrase.after : phrase.after.slice(0, unread)
  const { before } = ownLine(phrase)
  return [before, after].some((items) => isSpared(items) || isSpared([...items].reverse()))
}

/** "Except" or "not" with the print right behind it, on one line. */
function isSpared(items: readonly Item[]): boolean {
  return items.some((item, at) => {
    if (!has(item, 'except') && !isNot(item)) return false
    const behind = items.slice(at + 1)
    const print = behind.findIndex((other) => has(other, 'print'))
    return print >= 0 && behind.slice(0, print).every(isFiller)
  })
}
