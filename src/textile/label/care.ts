import type { LanguageCode } from '../languages/types.ts'
import type { CareCode } from '../reading.ts'
import { has, type Item } from './items.ts'
import { meaningOf, type Role } from './vocabulary.ts'

export type Verb = 'iron' | 'steam' | 'wash' | 'bleach' | 'tumble' | 'dry' | 'dryClean' | 'other'

export interface VerbAt {
  readonly verb: Verb
  readonly role: Role
  readonly at: number
  /** The wording itself forbids it. */
  readonly forbidden: boolean
}

const verbRoles: readonly (readonly [Role, Verb, boolean])[] = [
  ['ironNot', 'iron', true],
  ['washNot', 'wash', true],
  ['bleachNot', 'bleach', true],
  ['tumbleNot', 'tumble', true],
  ['dryCleanNot', 'dryClean', true],
  ['ironFree', 'other', false],
  ['noSteam', 'steam', true],
  ['iron', 'iron', false],
  ['dryClean', 'dryClean', false],
  ['handWash', 'wash', false],
  ['wash', 'wash', false],
  ['bleach', 'bleach', false],
  ['tumble', 'tumble', false],
  ['flatDry', 'dry', false],
  ['lineDry', 'dry', false],
  ['steam', 'steam', false],
  ['otherVerbs', 'other', false],
]

export function verbsIn(items: readonly Item[]): VerbAt[] {
  return items.flatMap((item, at) => {
    const found = verbRoles.find(([role]) => has(item, role))
    return found ? [{ role: found[0], verb: found[1], forbidden: found[2], at }] : []
  })
}

/** A mark that ends a phrase. */
export const endsPhrase = (item: Item | undefined): boolean =>
  item === undefined || (item.kind === 'mark' && /[.;!•·|。；、/,，*&+…]/.test(item.raw))

export const isNot = (item: Item): boolean =>
  has(item, 'not') || has(item, 'notAfter') || has(item, 'notEither')

/**
 * A word in its meaning for a verb: where it means something in the verb's own language, what it
 * means in others does not count ("no" in Portuguese, "bez" in Turkish).
 */
export function hasFor(item: Item, role: Role, languages: readonly LanguageCode[]): boolean {
  const meaning = meaningOf(item.term, role)
  if (!meaning) return false
  const shared = (codes: readonly LanguageCode[]) => codes.some((code) => languages.includes(code))
  return shared(meaning.languages) || !item.term!.roles.some((other) => shared(other.languages))
}

export const languagesOfVerb = (
  items: readonly Item[],
  { at, role }: VerbAt,
): readonly LanguageCode[] => meaningOf(items[at]!.term, role)?.languages ?? []

/** "Not above 110 °C" sets a limit and forbids nothing. */
const limits = (items: readonly Item[], item: Item): boolean => {
  const at = items.indexOf(item)
  return items.slice(at + 1, at + 4).some(({ kind, value }) => kind === 'number' && value >= 100)
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
  const ownBefore = before.slice(lastEnd + 1)
  const firstEnd = after.findIndex((item) => endsPhrase(item))
  const ownAfter = firstEnd < 0 ? after : after.slice(0, firstEnd)
  const languages = languagesOfVerb(items, verbs[i]!)
  const negates = (item: Item, role: Role) => hasFor(item, role, languages)
  if (ownBefore.some((item) => negates(item, 'not') && !limits(ownBefore, item))) return true
  const behind = ownAfter.filter((item) => negates(item, 'notAfter') && !limits(ownAfter, item))
  if (behind.some((item) => !leadsNext(ownAfter, item, firstEnd < 0))) return true
  if (answersNo(ownAfter) && (firstEnd >= 0 || !verbs[i + 1])) return true
  return eitherSide(items, verbs, i, ownBefore, ownAfter)
}

/** "Ironing: no". */
function answersNo(after: readonly Item[]): boolean {
  const words = after.filter(({ kind }) => kind !== 'mark' && kind !== 'line')
  return words.length === 1 && isNot(words[0]!)
}

/** The same word may forbid the next verb where it stands on a line of its own or begins one. */
function leadsNext(after: readonly Item[], item: Item, verbFollows: boolean): boolean {
  if (!has(item, 'not') || !verbFollows) return false
  return after.slice(0, after.indexOf(item)).some(({ kind }) => kind === 'line')
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
  return leads && (runLeads(items, verbs[i]!.at) || !verbEndsBefore(items, verbs, i))
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
    const binds = gap.every(
      (item) => has(item, 'or') || item.kind === 'line' || /^[,/]$/.test(item.raw) || isSmall(item),
    )
    if (!binds) return false
    if (gap.some((item) => has(item, 'or'))) return true
    if (!gap.some(({ raw }) => /^[,/]$/.test(raw))) return false
  }
  return false
}

const isSmall = (item: Item): boolean =>
  has(item, 'fillers') && !has(item, 'cool') && !has(item, 'warm') && !has(item, 'hot')

const codeOf: Partial<Record<Verb, readonly [allowed: CareCode | null, forbidden: CareCode]>> = {
  wash: ['machine-wash', 'no-wash'],
  bleach: [null, 'no-bleach'],
  tumble: ['tumble-dry', 'no-tumble'],
  dryClean: ['dry-clean', 'no-dry-clean'],
}

const ofRole: Partial<Record<Role, CareCode>> = {
  handWash: 'hand-wash',
  flatDry: 'flat-dry',
  lineDry: 'line-dry',
}

/** Plain codes for washing, bleaching, drying and dry-cleaning. */
export function careCodesOf(items: readonly Item[]): Set<CareCode> {
  const verbs = verbsIn(items)
  const forbidden = forbiddenVerbs(items, verbs)
  const codes = new Set<CareCode>()
  for (const [i, { verb, role }] of verbs.entries()) {
    const pair = codeOf[verb]
    const code = forbidden[i] ? pair?.[1] : (ofRole[role] ?? pair?.[0])
    if (code) codes.add(code)
  }
  if (codes.has('hand-wash')) codes.delete('machine-wash')
  if (codes.has('no-wash')) codes.delete('machine-wash')
  if (codes.has('no-tumble')) codes.delete('tumble-dry')
  if (codes.has('no-dry-clean')) codes.delete('dry-clean')
  return codes
}
