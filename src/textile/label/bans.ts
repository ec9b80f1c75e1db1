import type { LanguageCode } from '../languages/types.ts'
import { has, type Item } from './items.ts'
import {
  endsPhrase,
  hasFor,
  isFiller,
  isLevelWord,
  isNot,
  languagesOfVerb,
  type VerbAt,
  verbsIn,
} from './verbs.ts'
import type { Role } from './vocabulary.ts'

/** Numbers that may be the heat of an iron, °C or °F. */
const leastHeat = 100
const mostHeat = 450

/** "Not above 110 °C", "not hotter than warm" set a limit and forbid nothing. */
function limits(items: readonly Item[], item: Item): boolean {
  const behind = items.slice(items.indexOf(item) + 1).slice(0, 3)
  const line = behind.findIndex(({ kind }) => kind === 'line')
  const near = line < 0 ? behind : behind.slice(0, line)
  const than = near.findIndex((one) => has(one, 'than'))
  if (than >= 0 && near.slice(than + 1).some(isLevelWord)) return true
  return near.some(isHeatNumber)
}

/** By verb: whether it is forbidden. A negation stays with its own verb unless "or" carries it on. */
export function forbiddenVerbs(items: readonly Item[], verbs: readonly VerbAt[]): boolean[] {
  const forbidden = verbs.map((verb, i) => verb.forbidden || isForbidden(items, verbs, i))
  for (let i = 1; i < verbs.length; i++) {
    if (forbidden[i] || !forbidden[i - 1]) continue
    if (carriesOn(items, verbs, i)) forbidden[i] = true
  }
  return forbidden
}

function isForbidden(items: readonly Item[], verbs: readonly VerbAt[], i: number): boolean {
  const { at } = verbs[i]!
  const before = items.slice((verbs[i - 1]?.at ?? -1) + 1, at)
  const after = items.slice(at + 1, verbs[i + 1]?.at)
  const lastEnd = before.findLastIndex((item) => endsPhrase(item))
  // A ban never reaches its verb over a share of the make-up.
  const lastShare = before.findLastIndex(({ kind }) => kind === 'percent')
  const ownBefore = before.slice(Math.max(lastEnd, lastShare) + 1)
  const firstEnd = after.findIndex((item) => endsPhrase(item))
  const ownAfter = firstEnd < 0 ? after : after.slice(0, firstEnd)
  const languages = languagesOfVerb(items, verbs[i]!)
  const negates = (item: Item, role: Role) => hasFor(item, role, languages)
  if (onlyBut(ownBefore, ownAfter, languages)) return false
  if (limitsBehind(ownAfter)) return false
  const spared = sparedPrint(ownBefore)
  const bans = (item: Item) => negates(item, 'not') && !limits(ownBefore, item)
  if (ownBefore.some((item) => bans(item) && !spared.includes(item))) return true
  const behind = ownAfter.filter((item) => negates(item, 'notAfter') && !limits(ownAfter, item))
  if (behind.some((item) => !leadsNext(ownAfter, item, firstEnd < 0))) return true
  if (answersNo(ownAfter) && (firstEnd >= 0 || !verbs[i + 1])) return true
  const told = firstEnd < 0 && verbs[i + 1] ? withoutNextLine(ownAfter) : ownAfter
  return eitherSide(items, verbs, i, ownBefore, told)
}

/** "Do not iron above 110 °C": how hot it may be. */
function limitsBehind(after: readonly Item[]): boolean {
  const than = after.findIndex((item) => has(item, 'than'))
  if (than < 0 || !after.slice(0, than).every(isFiller)) return false
  const told = after.slice(than + 1).find((item) => !isFiller(item) || isLevelWord(item))
  return told !== undefined && (isLevelWord(told) || isHeatNumber(told))
}

const isHeatNumber = ({ kind, value }: Item): boolean =>
  kind === 'number' && value >= leastHeat && value <= mostHeat

/** "Do not iron except on the reverse", "ne repasser qu'à fer doux": leave of a kind, no ban. */
function onlyBut(
  before: readonly Item[],
  after: readonly Item[],
  languages: readonly LanguageCode[],
): boolean {
  if (!before.some(isNot)) return false
  const at = after.findIndex((item) => hasFor(item, 'except', languages))
  if (at < 0) return false
  const told = after.slice(at + 1).find((item) => !isFiller(item) || isLevelWord(item))
  return told !== undefined && (has(told, 'reverse') || isLevelWord(told))
}

/** A ban that is spent on the print in front of a level: "avoiding the print, iron low". */
function sparedPrint(before: readonly Item[]): readonly Item[] {
  const print = before.findIndex((item) => has(item, 'print'))
  if (print < 0 || !before.slice(print).some(isLevelWord)) return []
  return before.slice(0, print).filter(isNot)
}

const crosses = /^[×✗✘✕❌]$/u
const noes: ReadonlySet<string> = new Set('nein nee nej hayir nao non no nie ne nu yok'.split(' '))

/** "Ironing: no". */
function answersNo(after: readonly Item[]): boolean {
  if (crosses.test(after.find(({ raw }) => raw !== ':')?.raw ?? '')) return true
  const words = after.filter(({ kind }) => kind !== 'mark' && kind !== 'line')
  return words.length === 1 && (isNot(words[0]!) || noes.has(words[0]!.text))
}

/** The same word may forbid the next verb where it stands on a line of its own or begins one. */
function leadsNext(after: readonly Item[], item: Item, verbFollows: boolean): boolean {
  if (!has(item, 'not') || !verbFollows) return false
  return after.slice(0, after.indexOf(item)).some(({ kind }) => kind === 'line')
}

/** "Strykes hett ⏎ ej blekning": where the verb has its level, a ban that leads the next line is the next verb's. */
function withoutNextLine(after: readonly Item[]): readonly Item[] {
  const first = after.findIndex(({ kind }) => kind === 'line')
  if (first < 0 || !after.slice(0, first).some(isLevelWord)) return after
  const last = after.findLastIndex(({ kind }) => kind === 'line')
  return after.slice(last + 1).some(isNot) ? after.slice(0, last) : after
}

function eitherSide(
  items: readonly Item[],
  verbs: readonly VerbAt[],
  i: number,
  before: readonly Item[],
  after: readonly Item[],
): boolean {
  const leads = before.some((item) => has(item, 'notEither'))
  const follows = after.some((item) => has(item, 'notEither'))
  if (follows && !before.some(isNot)) return !runLeads(items, verbs[i]!.at)
  if (endsLineBefore(items, verbs[i - 1], before)) return false
  return leads && (runLeads(items, verbs[i]!.at) || !verbEndsBefore(items, verbs, i))
}

/** "Torktumlas ej ⏎ strykes": the word right behind the verb before belongs to that verb's line. */
function endsLineBefore(
  items: readonly Item[],
  last: VerbAt | undefined,
  between: readonly Item[],
): boolean {
  const [first, second, ...others] = between
  if (!last || last.forbidden || !first || !isNot(first) || second?.kind !== 'line') return false
  return !others.some(isNot) && !bansInFront(items, last.at)
}

function bansInFront(items: readonly Item[], at: number): boolean {
  for (let before = at - 1; before >= 0; before--) {
    const item = items[before]!
    if (item.kind === 'line' || endsPhrase(item)) return false
    if (isNot(item)) return true
  }
  return false
}

const furthest = 24

/** Whether the phrase run that holds `at` begins with its negation ("ej tvätt, ej strykning"). */
function runLeads(items: readonly Item[], at: number): boolean {
  let from = at
  while (from > Math.max(0, at - furthest) && !endsPhrase(items[from - 1])) {
    if (items[from - 1]!.kind === 'line') break
    from--
  }
  const first = items.slice(from, at + 1).find((item) => isNot(item) || verbsIn([item]).length > 0)
  return first !== undefined && isNot(first)
}

const verbEndsBefore = (items: readonly Item[], verbs: readonly VerbAt[], i: number): boolean => {
  const before = verbs[i - 1]
  if (!before) return false
  return !items
    .slice(before.at, verbs[i]!.at)
    .some((item) => endsPhrase(item) || item.kind === 'line')
}

const longestChain = 8

/** "Do not bleach, iron or tumble dry": the chain of verbs up to an "or". */
function carriesOn(items: readonly Item[], verbs: readonly VerbAt[], i: number): boolean {
  for (let j = i; j < Math.min(verbs.length, i + longestChain); j++) {
    const gap = items.slice(verbs[j - 1]!.at + 1, verbs[j]!.at)
    const languages = languagesOfVerb(items, verbs[j]!)
    const joins = (role: 'or' | 'and') => gap.some((item) => hasFor(item, role, languages))
    const binds = gap.every((item) => isSmall(item) || isJoint(item, languages))
    if (!binds) return false
    if (joins('or')) return true
    if (joins('and')) return !hasLeave(items, verbs, j)
    if (!gap.some(({ raw }) => /^[,/]$/.test(raw))) return false
  }
  return false
}

const isSmall = (item: Item): boolean => isFiller(item) && !isLevelWord(item)

const isJoint = (item: Item, languages: readonly LanguageCode[]): boolean =>
  item.kind === 'line' ||
  /^[,/]$/.test(item.raw) ||
  hasFor(item, 'or', languages) ||
  hasFor(item, 'and', languages)

/** A mild level stands behind the verb: what may be done mildly is not forbidden. */
function hasLeave(items: readonly Item[], verbs: readonly VerbAt[], i: number): boolean {
  const behind = items.slice(verbs[i]!.at + 1, verbs[i + 1]?.at)
  const end = behind.findIndex((item) => endsPhrase(item) || item.kind === 'line')
  const own = end < 0 ? behind : behind.slice(0, end)
  return own.some((item) => has(item, 'cool') || has(item, 'warm'))
}
