import type { LanguageCode } from '../languages/types.ts'
import { endsPhrase, languagesOfVerb, type VerbAt } from './care.ts'
import { has, type Item } from './items.ts'

/** The words around one ironing word, between the verbs or phrase ends on both its sides. */
export interface Phrase {
  readonly verb: VerbAt
  readonly item: Item
  readonly before: readonly Item[]
  readonly after: readonly Item[]
  /** Languages in which the ironing word is one. */
  readonly languages: readonly LanguageCode[]
  /** The verb of other care that the phrase begins right after. */
  readonly verbBefore: VerbAt | null
  /** That verb takes no level from behind it: it is forbidden, or has its level in front. */
  readonly verbBeforeFree: boolean
  /** A verb of other care follows without a mark between. */
  readonly leadsOn: boolean
}

/** Items that a phrase may reach to either side; no label's sentence is longer. */
const furthest = 24

export function phraseAt(
  items: readonly Item[],
  verbs: readonly VerbAt[],
  forbidden: readonly boolean[],
  i: number,
): Phrase {
  const verb = verbs[i]!
  const { at } = verb
  const [last, next] = [otherVerb(verbs, i, -1), otherVerb(verbs, i, 1)]
  const least = last === null ? -1 : verbs[last]!.at
  const most = next === null ? items.length : verbs[next]!.at
  let from = at
  while (from - 1 > Math.max(least, at - furthest) && !endsPhrase(items[from - 1])) from--
  let to = at
  while (to + 1 < Math.min(most, at + furthest) && !stops(items, to + 1, most)) to++
  const touches = last !== null && least === from - 1
  return {
    verb,
    item: items[at]!,
    before: items.slice(from, at),
    after: items.slice(at + 1, to + 1),
    languages: languagesOfVerb(items, verb),
    verbBefore: touches ? verbs[last]! : null,
    verbBeforeFree: touches && (forbidden[last]! || hasLevel(items, verbs[last]!)),
    leadsOn: next !== null && to + 1 === most,
  }
}

/** "Hot wash | cool iron"; in Chinese a level always stands in front of its verb. */
function hasLevel(items: readonly Item[], verb: VerbAt): boolean {
  const languages = languagesOfVerb(items, verb)
  if (languages.length === 1 && languages[0] === 'zh') return true
  const [level, start] = [items[verb.at - 1], items[verb.at - 2]]
  return level !== undefined && isLevel(level) && (endsPhrase(start) || start!.kind === 'line')
}

/** Where the next verb of other care stands. "Steam iron", "iron with the iron" are one phrase. */
function otherVerb(verbs: readonly VerbAt[], i: number, step: 1 | -1): number | null {
  for (let j = i + step; j >= 0 && j < verbs.length && Math.abs(j - i) <= furthest; j += step) {
    const { verb } = verbs[j]!
    if (verb !== 'iron' && verb !== 'steam') return j
  }
  return null
}

/** A comma ends the phrase, but for a level alone behind it: "iron inside out, low heat". */
function stops(items: readonly Item[], at: number, most: number): boolean {
  if (!endsPhrase(items[at])) return false
  if (!/^[,，、]$/.test(items[at]!.raw)) return true
  let end = at + 1
  while (end < most && end < at + 6 && !endsPhrase(items[end]) && items[end]!.kind !== 'line') end++
  const behind = items.slice(at + 1, end)
  const ends = end === items.length || endsPhrase(items[end]) || items[end]!.kind === 'line'
  return !(
    ends &&
    behind.some(isLevel) &&
    behind.every((item) => isLevel(item) || has(item, 'fillers'))
  )
}

const isLevel = (item: Item): boolean =>
  has(item, 'cool') || has(item, 'warm') || has(item, 'hot') || isFigure(item)

const isFigure = ({ kind, value }: Item): boolean =>
  kind === 'degree' || (kind === 'number' && value >= 100)

/** The words of the phrase on its verb's line, and on the next one where that line holds no more. */
export function phraseWords({ before, item, after }: Phrase): string {
  const words = [...lastLine(before), item, ...firstLine(after)].map(({ raw }) => raw.trim())
  return words.filter((raw) => raw !== '').join(' ')
}

const isLine = ({ kind }: Item): boolean => kind === 'line'

function firstLine(items: readonly Item[]): readonly Item[] {
  const from = items.findIndex((item) => !isLine(item))
  if (from < 0) return []
  const end = items.findIndex((item, at) => at > from && isLine(item))
  return items.slice(from, end < 0 ? items.length : end)
}

const lastLine = (items: readonly Item[]): readonly Item[] =>
  [...firstLine([...items].reverse())].reverse()
