import { solePlateLimits } from '../iron.ts'
import { labelLanguages } from '../languages/all.ts'
import { has, type Item } from './items.ts'
import { dotSigns } from './tokens.ts'
import { endsPhrase, isFiller, isLevelWord } from './verbs.ts'
import { once, type Term } from './vocabulary.ts'

/** A level in every language, by the number of dots that print it. */
const levelsByDots = once(
  (): ReadonlyMap<number, Term> =>
    new Map(
      solePlateLimits.map(({ level, dots }) => {
        const languages = labelLanguages.map(({ code }) => code)
        return [dots, { words: ['•'.repeat(dots)], marks: '', roles: [{ role: level, languages }] }]
      }),
    ),
)

const onlyDots = new RegExp(`^[${dotSigns}]+$`)
export const isDots = (item: Item | undefined): boolean =>
  item?.kind === 'mark' && onlyDots.test(item.raw)

/** Reads dots beside an ironing word, "iron ••", as the level that they print. */
export function withDots(items: readonly Item[]): Item[] {
  const read: Item[] = []
  for (let at = 0; at < items.length; ) {
    const end = isDots(items[at]) ? endOfDots(items, at) : at
    const term = end > at ? levelsByDots().get(countOf(items.slice(at, end))) : undefined
    if (term && (followsIron(read, items, at, end) || leadsIron(items, at, end))) {
      const raw = items
        .slice(at, end)
        .map((item) => item.raw)
        .join(' ')
      read.push({ kind: 'term', raw, text: raw, value: 0, term })
    } else read.push(...items.slice(at, Math.max(end, at + 1)))
    at = Math.max(end, at + 1)
  }
  return read
}

const countOf = (dots: readonly Item[]): number =>
  dots.reduce((sum, { raw }) => sum + raw.length, 0)

/** Dots printed apart, "• •", belong together where nothing else stands behind them. */
function endOfDots(items: readonly Item[], from: number): number {
  let end = from + 1
  while (isDots(items[end])) end++
  return endsHere(items, end) ? end : from + 1
}

const endsHere = (items: readonly Item[], at: number): boolean => {
  const item = items[at]
  return item === undefined || item.kind === 'line' || endsPhrase(item) || /^[)\]]$/.test(item.raw)
}

/** One dot alone parts phrases too, and is a level only where the line ends behind it. */
function followsIron(
  before: readonly Item[],
  items: readonly Item[],
  from: number,
  end: number,
): boolean {
  if (countOf(items.slice(from, end)) === 1 && !endsHere(items, end)) return false
  if (isDots(items[end])) return false
  const verb = before.findLast((item) => !isBetween(item))
  return has(verb, 'iron')
}

const isBetween = (item: Item): boolean =>
  !has(item, 'iron') && (isFiller(item) || isLevelWord(item) || /^[:(=[-]$/.test(item.raw))

/** "•• iron" at the beginning of a line. */
const leadsIron = (items: readonly Item[], from: number, end: number): boolean =>
  end === from + 1 &&
  items[from]!.raw.length > 1 &&
  has(items[end], 'iron') &&
  (from === 0 || items[from - 1]!.kind === 'line')
