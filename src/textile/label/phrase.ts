import type { LanguageCode } from '../languages/types.ts'
import { isDegreeWord } from './degrees.ts'
import { has, type Item } from './items.ts'
import { endsPhrase, isFiller, isLevelWord, isNot, languagesOfVerb, type VerbAt } from './verbs.ts'

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
  /** Levels in front of that verb on its line were left to it. */
  readonly leavesLevel: boolean
  /** What follows on the line of the phrase's end, up to the next verb, and was not taken in. */
  readonly beyond: readonly Item[]
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
  while (from - 1 > Math.max(least, at - furthest) && !beginsAfter(items, from - 1, least)) from--
  let to = at
  while (to + 1 < Math.min(most, at + furthest) && !stops(items, to + 1, most)) to++
  const touches = last !== null && least === from - 1
  const leadsOn = next !== null && to + 1 === most
  const after = items.slice(at + 1, to + 1)
  const own = leadsOn ? withoutNextLine(after, languagesOfVerb(items, verbs[next]!)) : after
  return {
    verb,
    item: items[at]!,
    before: items.slice(from, at),
    after: own,
    languages: languagesOfVerb(items, verb),
    verbBefore: touches ? verbs[last]! : null,
    verbBeforeFree: touches && (forbidden[last]! || hasLevel(items, verbs[last]!)),
    leadsOn,
    leavesLevel: after.slice(own.length).some(isLevelWord),
    beyond: restOfLine(items, to + 1, nextCare(verbs, i) ?? items.length),
  }
}

/** Where the next verb stands that may take a level: "keep away", "use" take none. */
const nextCare = (verbs: readonly VerbAt[], i: number): number | undefined =>
  verbs.slice(i + 1).find(({ role }) => role !== 'otherVerbs')?.at

function restOfLine(items: readonly Item[], from: number, nextVerb: number): readonly Item[] {
  let end = from
  while (end < Math.min(nextVerb, from + furthest) && !isLine(items[end]!)) end++
  // What leads to the next verb is that verb's.
  if (end === nextVerb && nextVerb < items.length) end = lastEnd(items, from, end)
  return items.slice(from, end)
}

function lastEnd(items: readonly Item[], from: number, end: number): number {
  let at = end
  while (at > from && !endsPhrase(items[at - 1])) at--
  return at
}

/** A mark begins the phrase, but where what stands before a comma is an aside: "inside out, iron low". */
function beginsAfter(items: readonly Item[], at: number, least: number): boolean {
  if (items[at]!.kind === 'line') return ironsLineBefore(items, at)
  if (!endsPhrase(items[at])) return false
  if (!isComma(items[at]!)) return true
  let from = at
  while (from - 1 > Math.max(least, at - longestAside) && !endsAside(items[from - 1])) from--
  if (from - 1 === least && least >= 0) return true
  const aside = items.slice(from, at)
  return !(endsAside(items[from - 1]) && isAside(aside) && aside.some((item) => !isFiller(item)))
}

/** A line before that has its own ironing word tells nothing of this one. */
function ironsLineBefore(items: readonly Item[], line: number): boolean {
  for (let at = line - 1; at >= Math.max(0, line - furthest); at--) {
    const item = items[at]!
    if (item.kind === 'line') return false
    if (has(item, 'iron') || has(item, 'ironNot')) return true
  }
  return false
}

function ironsLineBehind(items: readonly Item[], line: number): boolean {
  const next = items.slice(line + 1, line + furthest)
  const end = next.findIndex((item) => item.kind === 'line')
  const behind = end < 0 ? next : next.slice(0, end)
  return behind.some((item) => (has(item, 'iron') && !isFiller(item)) || has(item, 'ironNot'))
}

const isComma = ({ raw }: Item): boolean => /^[,，、]$/.test(raw)

/** Languages whose verb, or whose ban, may stand behind what it speaks of. */
export const verbLast: readonly LanguageCode[] = ['de', 'nl', 'sv', 'da', 'tr', 'zh', 'ja', 'ko']

/** "Iron ⏎ warm wash": what stands in front of the next verb on its line is that verb's. */
function withoutNextLine(
  after: readonly Item[],
  languages: readonly LanguageCode[],
): readonly Item[] {
  const line = after.findLastIndex(({ kind }) => kind === 'line')
  if (line < 0 || line === after.length - 1) return after
  const next = after.slice(line + 1)
  const takesAll = languages.every((code) => verbLast.includes(code))
  // A cool level stays with the iron too: the colder reading stands.
  const warmer = next.every((item) => has(item, 'warm') || has(item, 'hot'))
  return takesAll || warmer ? after.slice(0, line) : after
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

/**
 * A mark ends the phrase, but where what stands behind a comma tells more of the same ironing, and
 * where a sentence of its own spares the print.
 */
function stops(items: readonly Item[], at: number, most: number): boolean {
  if (items[at]!.kind === 'line') return ironsLineBehind(items, at)
  if (!endsPhrase(items[at])) return false
  const from = items[at + 1]?.kind === 'line' ? at + 2 : at + 1
  let end = from
  while (end < most && end < from + longestAside && !endsAside(items[end])) end++
  const aside = items.slice(from, end)
  if (!endsAside(items[end]) || !isAside(aside)) return true
  if (isComma(items[at]!)) return false
  return withoutWords.has(aside[0]!.text) || !aside.some((item) => has(item, 'print'))
}

/** "Ohne Verzierung" as a sentence speaks of the make-up, not of the iron. */
const withoutWords: ReadonlySet<string> = new Set(
  'without sans sin ohne senza sem zonder bez utan uden fara exkl excl hors'.split(' '),
)

/** Items of "in the warmest case, if need be": no aside between commas is longer. */
const longestAside = 8

const endsAside = (item: Item | undefined): boolean => endsPhrase(item) || item!.kind === 'line'

/** "Low heat", "if needed", "on the reverse", "not on the print", and nothing else. */
function isAside(items: readonly Item[]): boolean {
  if (items.length === 0 || !items.every(isTelling)) return false
  const bans = items.some((item) => isNot(item) || has(item, 'except'))
  if (items.some((item) => has(item, 'print')))
    return bans && !items.some((item) => has(item, 'iron'))
  return !bans || items.some((item) => has(item, 'steam') || has(item, 'noSteam') || isFigure(item))
}

const isTelling = (item: Item): boolean =>
  !has(item, 'ironNot') &&
  (!has(item, 'iron') || has(item, 'fillers')) &&
  (isLevel(item) ||
    isNot(item) ||
    tellingRoles.some((role) => has(item, role)) ||
    isDegreeWord(item) ||
    /^[()~-]$/.test(item.raw))

const tellingRoles = [
  'fillers',
  'than',
  'reverse',
  'face',
  'print',
  'except',
  'steam',
  'noSteam',
] as const

const isLevel = (item: Item): boolean => isLevelWord(item) || isFigure(item)

const isFigure = ({ kind, value }: Item): boolean =>
  kind === 'degree' || (kind === 'number' && value >= 100)

/** What of the phrase stands on the line of its verb. */
export function ownLine({ before, after }: Phrase): Pick<Phrase, 'before' | 'after'> {
  const end = after.findIndex(isLine)
  return {
    before: before.slice(before.findLastIndex(isLine) + 1),
    after: end < 0 ? after : after.slice(0, end),
  }
}

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
