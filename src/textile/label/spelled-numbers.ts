import { labelLanguages } from '../languages/all.ts'
import { fold } from './clean.ts'
import { has, type Item } from './items.ts'
import { once } from './vocabulary.ts'

const values = once(
  (): ReadonlyMap<string, number> =>
    new Map(
      labelLanguages.flatMap(({ numbers }) =>
        Object.entries(numbers ?? {}).map(([word, value]) => [fold(word), value] as const),
      ),
    ),
)

export const isNumberWord = (folded: string): boolean => values().has(folded)

const joiners = new Set(['-', 'and', 'y'])
/** "One hundred and twenty five" is more words than any share needs. */
const mostWords = 6

/** "Sixty-five percent", "sesenta y cinco por ciento": numbers in words where a percent sign follows. */
export function withSpelledNumbers(items: readonly Item[]): Item[] {
  const read: Item[] = []
  for (const item of items) {
    if (item.kind === 'percent' || has(item, 'percent')) takeNumber(read)
    read.push(item)
  }
  return read
}

function takeNumber(read: Item[]): void {
  let from = read.length
  while (from > 0 && read.length - from < mostWords && isPart(read[from - 1]!)) from--
  while (from < read.length && !values().has(read[from]!.text)) from++
  if (from === read.length) return
  const words = read.splice(from)
  const raw = words.map((word) => word.raw).join(' ')
  read.push({ kind: 'number', raw, text: raw, value: numberOf(words), term: null })
}

const isPart = ({ text }: Item): boolean => values().has(text) || joiners.has(text)

/** "Hundred" multiplies what stands before it; all else is added. */
const numberOf = (words: readonly Item[]): number =>
  words.reduce((sum, { text }) => {
    const value = values().get(text) ?? 0
    return value === 100 && sum > 0 && sum < 10 ? sum * value : sum + value
  }, 0)
