import { levelAt } from '../iron.ts'
import type { IronLevel, IronReading } from '../reading.ts'
import { endsPhrase, forbiddenVerbs, isNot, type VerbAt, verbsIn } from './care.ts'
import { has, type Item } from './items.ts'

export interface Ironing {
  readonly reading: IronReading
  /** The colder of two readings stands, or a word was read through a mistake. */
  readonly doubtful: boolean
}

interface Mention {
  readonly level: IronLevel | null
  readonly notOnPrint: boolean
  readonly wrongSide: boolean
  readonly doubtful: boolean
  readonly words: string
}

const coldestFirst: readonly IronLevel[] = ['none', 'cool', 'warm', 'hot']
export const colder = (a: IronLevel, b: IronLevel): IronLevel =>
  coldestFirst.indexOf(a) <= coldestFirst.indexOf(b) ? a : b

/** What the words say of ironing; of several levels the coldest. */
export function ironingOf(items: readonly Item[]): Ironing {
  const verbs = verbsIn(items)
  const forbidden = forbiddenVerbs(items, verbs)
  const mentions = verbs.flatMap((verb, i) =>
    verb.verb === 'iron' ? [mentionOf(items, verbs, forbidden, i)] : [],
  )
  const levels = mentions.flatMap(({ level }) => (level ? [level] : []))
  const level = levels.length > 0 ? levels.reduce(colder) : null
  const telling = mentions.filter((mention) => mention.level === level)
  return {
    reading: {
      level,
      noSteam: verbs.some(({ verb }, i) => verb === 'steam' && forbidden[i]),
      notOnPrint: mentions.some(({ notOnPrint }) => notOnPrint),
      wrongSide: mentions.some(({ wrongSide }) => wrongSide),
      words: mentions.length === 0 ? null : (telling[0] ?? mentions[0]!).words,
    },
    doubtful: new Set(levels).size > 1 || mentions.some(({ doubtful }) => doubtful),
  }
}

/** Items that a phrase may reach to either side; no label's sentence is longer. */
const furthest = 24

/** The phrase of one ironing word: between the verbs or phrase ends on both its sides. */
function phraseOf(items: readonly Item[], verbs: readonly VerbAt[], i: number) {
  const { at } = verbs[i]!
  const [least, most] = [otherVerb(verbs, i, -1) ?? -1, otherVerb(verbs, i, 1) ?? items.length]
  let from = at
  while (from - 1 > Math.max(least, at - furthest) && !endsPhrase(items[from - 1])) from--
  let to = at
  while (to + 1 < Math.min(most, at + furthest) && !endsPhrase(items[to + 1])) to++
  return { before: items.slice(from, at), after: items.slice(at + 1, to + 1), from, to }
}

/** Where the next verb of other care stands. "Steam iron", "iron with the iron" are one phrase. */
function otherVerb(verbs: readonly VerbAt[], i: number, step: 1 | -1): number | undefined {
  for (let j = i + step; j >= 0 && j < verbs.length && Math.abs(j - i) <= furthest; j += step) {
    const { verb, at } = verbs[j]!
    if (verb !== 'iron' && verb !== 'steam') return at
  }
  return undefined
}

function mentionOf(
  items: readonly Item[],
  verbs: readonly VerbAt[],
  forbidden: readonly boolean[],
  i: number,
): Mention {
  const verb = verbs[i]!
  const { before, after, from, to } = phraseOf(items, verbs, i)
  const phrase = [...before, items[verb.at]!, ...after]
  const words = phrase
    .map(({ raw }) => raw.trim())
    .filter((raw) => raw !== '')
    .join(' ')
  const wrongSide = phrase.some((item) => has(item, 'reverse'))
  const not = forbidden[i] || startsDoNot(items, verb.at)
  if (not) {
    const kept = keptOff(items, before, after, verb)
    if (kept)
      return {
        level: null,
        wrongSide: wrongSide || kept === 'face',
        notOnPrint: kept === 'print',
        doubtful: false,
        words,
      }
    const notThat =
      verb.role === 'iron' &&
      [...near(before, -1), ...near(after, 1)].some((item) => levelOf(item) !== null)
    if (notThat && !ownLevelApart(before, after))
      return { level: 'cool', wrongSide, notOnPrint: false, doubtful: true, words }
    return { level: 'none', wrongSide: false, notOnPrint: false, doubtful: !forbidden[i], words }
  }
  const { level, doubtful } = levelBeside(verbs, forbidden, i, before, after, from, to)
  return { level, wrongSide, notOnPrint: false, doubtful, words }
}

/** "Do no7 iron": a word between "do" and "iron" that is not read is a "not". */
function startsDoNot(items: readonly Item[], at: number): boolean {
  const first = items[at - 2]
  return first?.text === 'do' && items[at - 1]?.kind === 'word' && items[at - 1]!.text.length <= 4
}

/** What an iron is kept off: the print or the outer side, where the phrase says so. */
function keptOff(
  items: readonly Item[],
  before: readonly Item[],
  after: readonly Item[],
  verb: VerbAt,
): 'print' | 'face' | null {
  const sameLine = after.slice(0, firstLine(after))
  const print = sameLine.findIndex((item) => has(item, 'print'))
  if (print >= 0 && print < 6)
    return sameLine.slice(0, print).every(isPassing) && !saysMore(sameLine[print + 1])
      ? 'print'
      : null
  if (before.some((item) => has(item, 'print'))) return 'print'
  if (sameLine.some((item) => has(item, 'face'))) return 'face'
  const wrapped = after.filter(({ kind }) => kind !== 'line')
  const next = wrapped.findIndex((item) => has(item, 'print'))
  const only = next >= 0 && wrapped.slice(0, next).every(isPassing)
  if (only && next > 0 && !saysMore(wrapped[next + 1])) return 'print'
  return only && next === 0 && endsLine(items, verb, after) ? 'print' : null
}

const firstLine = (items: readonly Item[]): number => {
  const at = items.findIndex(({ kind }) => kind === 'line')
  return at < 0 ? items.length : at
}

const endsLine = (items: readonly Item[], verb: VerbAt, after: readonly Item[]): boolean => {
  const rest = after.filter(({ kind }) => kind !== 'line')
  return (
    rest.length === 1 &&
    (items[verb.at + after.length + 1] === undefined ||
      endsPhrase(items[verb.at + after.length + 1]))
  )
}

const isPassing = (item: Item): boolean =>
  has(item, 'fillers') ||
  has(item, 'face') ||
  has(item, 'not') ||
  item.kind === 'line' ||
  has(item, 'print')

const saysMore = (item: Item | undefined): boolean =>
  item?.kind === 'word' || ['may', 'can', 'be', 'will', 'is'].includes(item?.text ?? '')

const levelRoles = ['cool', 'warm', 'hot'] as const

function levelOf(item: Item | undefined): IronLevel | null {
  return item ? (levelRoles.find((role) => has(item, role)) ?? null) : null
}

/** Items next to the verb as far as small words reach. */
function near(items: readonly Item[], side: 1 | -1): Item[] {
  const ordered = side === 1 ? items : [...items].reverse()
  const found: Item[] = []
  for (const item of ordered) {
    const small =
      has(item, 'fillers') ||
      item.kind === 'line' ||
      isNot(item) ||
      has(item, 'steam') ||
      has(item, 'noSteam')
    const telling =
      levelOf(item) !== null ||
      isHeat(item) ||
      has(item, 'reverse') ||
      has(item, 'face') ||
      has(item, 'iron')
    if (!small && !telling && !isTemperatureMark(item)) break
    found.push(item)
  }
  return found
}

/** The level is told beside the negation for another verb's sake. */
const ownLevelApart = (before: readonly Item[], after: readonly Item[]): boolean => {
  const inFront = near(before, -1)
  const not = inFront.findIndex(isNot)
  const level = inFront.findIndex((item) => levelOf(item) !== null)
  const behind = near(after, 1).some((item) => levelOf(item) !== null)
  return !behind && level >= 0 && not >= 0 && level > not
}

const isTemperatureMark = (item: Item): boolean =>
  item.kind === 'degree' || item.kind === 'number' || /^[cf~\-–(:]$/i.test(item.raw)

const isHeat = (item: Item): boolean =>
  item.kind === 'number' && item.value >= 100 && item.value <= 420

interface Level {
  readonly level: IronLevel | null
  readonly doubtful: boolean
}

function levelBeside(
  verbs: readonly VerbAt[],
  forbidden: readonly boolean[],
  i: number,
  before: readonly Item[],
  after: readonly Item[],
  from: number,
  to: number,
): Level {
  const behind = levelsIn(near(after, 1))
  const takes = takesLevel(verbs, forbidden, i, from)
  const line = before.findIndex(({ kind }) => kind === 'line')
  // Words on the line of a verb before are that verb's.
  const own = takes && line >= 0 ? before.slice(line) : before
  const inFront = levelsIn(near(own, -1))
  const stolen = behind.length > 0 && inFront.length > 0 && leadsOn(verbs, i, to)
  const claimed = takes && line < 0 && inFront.length > 0 && startsWithLevel(before)
  if (behind.length > 0 && (claimed || inFront.length === 0)) return coldest(behind)
  if (inFront.length > 0 && stolen) return coldest(inFront)
  if (behind.length > 0) return coldest([...behind, ...inFront])
  if (!claimed) return coldest(inFront)
  const level = inFront.reduce(colder)
  return level === 'cool' ? { level, doubtful: true } : { level: null, doubtful: true }
}

const coldest = (levels: readonly IronLevel[]): Level =>
  levels.length === 0
    ? { level: null, doubtful: false }
    : { level: levels.reduce(colder), doubtful: new Set(levels).size > 1 }

function levelsIn(items: readonly Item[]): IronLevel[] {
  const heats = items.filter(isHeat)
  if (heats.length > 0) return [levelAt(Math.max(...heats.map((item) => celsius(items, item))))]
  return items.flatMap((item) => levelOf(item) ?? [])
}

// 230, 300 and 390 °F are the usual words for 110, 150 and 200 °C; no iron reaches 230 °C by a label.
function celsius(items: readonly Item[], item: Item): number {
  const after = items.slice(items.indexOf(item) + 1, items.indexOf(item) + 3)
  const fahrenheit = after.some(({ text }) => text === 'f') || item.value > 220
  if (!fahrenheit) return item.value
  const exact = (item.value - 32) / 1.8
  const round = Math.round(exact / 10) * 10
  return Math.abs(exact - round) <= 1.5 ? round : exact
}

/** The verb right before may take a level for itself: "wash warm | iron", "tumble dry low | iron". */
function takesLevel(
  verbs: readonly VerbAt[],
  forbidden: readonly boolean[],
  i: number,
  from: number,
): boolean {
  const last = verbs[i - 1]
  if (!last || last.at !== from - 1 || forbidden[i - 1]) return false
  return last.verb !== 'bleach' && last.verb !== 'dryClean'
}

function startsWithLevel(before: readonly Item[]): boolean {
  const level = before.findIndex((item) => levelOf(item) !== null)
  return before.slice(0, level).every((item) => has(item, 'fillers'))
}

/** A verb follows without a phrase end, so that words before it may be its own. */
const leadsOn = (verbs: readonly VerbAt[], i: number, to: number): boolean =>
  otherVerb(verbs, i, 1) === to + 1
