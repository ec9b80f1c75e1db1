import { levelAt } from '../iron.ts'
import type { IronLevel } from '../reading.ts'
import { isDegreeWord } from './degrees.ts'
import { has, type Item } from './items.ts'
import { sparesPrint } from './kept-off.ts'
import { ownLine, type Phrase, verbLast } from './phrase.ts'
import { hasFor, isLevelWord, isNot, verbsIn } from './verbs.ts'

export interface Level {
  readonly level: IronLevel | null
  /** The colder of several was taken, or a word may belong to another verb. */
  readonly doubtful: boolean
}

const coldestFirst: readonly IronLevel[] = ['none', 'cool', 'warm', 'hot']

export const colder = (a: IronLevel, b: IronLevel): IronLevel =>
  coldestFirst.indexOf(a) <= coldestFirst.indexOf(b) ? a : b

/** The level that an ironing phrase gives. */
export function levelOf(phrase: Phrase): Level {
  const { before, after, leadsOn } = phrase
  const takes = verbTakesLevel(phrase)
  const line = before.findIndex(({ kind }) => kind === 'line')
  // Words on the line of a verb before are that verb's.
  const own = takes && line >= 0 ? before.slice(line) : before
  const behind = levelsIn(near(withoutLots(after, 1), 1, phrase), phrase)
  const inFront = levelsIn(near(withoutLots(own, -1), -1, phrase), phrase)
  if (inFront.length === 0) {
    const { level, doubtful } = coldest(behind)
    if (level !== null) return tempered({ level, doubtful }, phrase)
    // A level that stands apart counts only where it is colder than none.
    const apart = levelsApart(phrase)
    const mildest = apart.filter((one) => one !== 'hot')
    return {
      level: mildest.length > 0 ? mildest.reduce<IronLevel>(colder, 'warm') : null,
      doubtful: apart.length > 0 || phrase.leavesLevel,
    }
  }
  const claimed = takes && line < 0 && startsWithLevel(before, phrase)
  if (behind.length > 0)
    return coldest(claimed ? behind : leadsOn ? inFront : [...behind, ...inFront])
  if (!claimed) return coldest(inFront)
  // "Wash hot | warm iron": the first level is the other verb's, the one beside the iron its own.
  if (inFront.length > 1) return coldest(inFront.slice(0, 1))
  return { level: inFront.reduce(colder) === 'cool' ? 'cool' : null, doubtful: true }
}

/** Levels that stand behind words which could not be read, or in the sentence behind. */
export function levelsApart(phrase: Phrase): IronLevel[] {
  const { after } = phrase.leadsOn ? { after: [] } : ownLine(phrase)
  return levelsIn([...withoutLots(after, 1), ...phrase.beyond], phrase)
}

/** A colder level further on makes doubtful what stands beside the verb. */
function tempered(told: Level, phrase: Phrase): Level {
  const apart = levelsApart(phrase).reduce(colder, told.level!)
  return apart === told.level ? told : { level: apart, doubtful: true }
}

/** Numbers of other lines that are no temperatures: "Lot 0520 ⏎ iron medium". */
function withoutLots(items: readonly Item[], side: 1 | -1): Item[] {
  const lines = items.flatMap(({ kind }, at) => (kind === 'line' ? [at] : []))
  const isApart = (at: number) =>
    side === 1 ? at > (lines[0] ?? items.length) : at < (lines.at(-1) ?? -1)
  return items.filter(({ kind }, at) => kind !== 'number' || !isApart(at) || isDegrees(items, at))
}

/** A sign or a word of degrees stands behind the number, or behind the one that ends its range. */
const isDegrees = (items: readonly Item[], at: number): boolean =>
  items.slice(at + 1, at + 4).some((item) => item.kind === 'degree' || isDegreeWord(item))

/** "Not a hot iron", "do not iron hot": says how hot it may not be, and nothing of how hot it may. */
export const forbidsHeatOnly = (phrase: Phrase): boolean => {
  const own = ownLine(phrase)
  // Where the ban stands on the verb's line, the heat of another line is another's.
  const whole = phrase.verb.role === 'iron' && ![...own.before, ...own.after].some(isNot)
  const onLine = whole ? phrase : own
  const inFront = near(withoutLots(onLine.before, -1), -1, phrase)
  const behind = phrase.leadsOn ? [] : near(withoutLots(onLine.after, 1), 1, phrase)
  const levels = levelsIn([...inFront, ...behind], phrase)
  if (levels.length === 0 || levels.some((level) => level !== 'hot')) return false
  const not = inFront.findIndex(isNot)
  const hot = inFront.findIndex((item) => levelWord(item, phrase) !== null)
  const bansBehind = not < 0 && phrase.languages.some((code) => verbLast.includes(code))
  return hot < 0 || hot < not || bansBehind
}

const coldest = (levels: readonly IronLevel[]): Level =>
  levels.length === 0
    ? { level: null, doubtful: false }
    : { level: levels.reduce(colder), doubtful: new Set(levels).size > 1 }

const levelRoles = ['cool', 'warm', 'hot'] as const

const levelWord = (item: Item, { languages }: Phrase): IronLevel | null =>
  levelRoles.find((role) => hasFor(item, role, languages)) ?? null

function levelsIn(items: readonly Item[], phrase: Phrase): IronLevel[] {
  const heats = items.filter(
    (item, at) => isHeat(item) && (item.value < 1000 || isDegrees(items, at)),
  )
  const worded = items.flatMap((item) => levelWord(item, phrase) ?? [])
  if (heats.length === 0) return worded
  // "Maximum 110 °C" is a figure, where "three dots, 110 °C" contradicts itself.
  const said = items.flatMap((item) =>
    mostWords.test(item.text) ? [] : (levelWord(item, phrase) ?? []),
  )
  return [levelAt(Math.max(...heats.map((item) => celsius(items, item)))), ...said]
}

const mostWords = /^(?:max|maks|massim|hojst|hogst|hoechst|najwyz|nejvy|en yuksek|最高|최고)/

/** Items next to the verb as far as small words reach. */
function near(items: readonly Item[], side: 1 | -1, phrase: Phrase): Item[] {
  const ordered = side === 1 ? items : [...items].reverse()
  const spares = sparesPrint(phrase)
  const passes = (item: Item) =>
    isSmall(item) || isTelling(item, phrase) || (spares && has(item, 'print'))
  const end = ordered.findIndex((item) => !passes(item))
  return end < 0 ? [...ordered] : ordered.slice(0, end)
}

const isSmall = (item: Item): boolean =>
  has(item, 'fillers') ||
  item.kind === 'line' ||
  /^[,，、]$/.test(item.raw) ||
  isNot(item) ||
  has(item, 'except') ||
  has(item, 'than') ||
  has(item, 'steam') ||
  has(item, 'noSteam')

const isTelling = (item: Item, phrase: Phrase): boolean =>
  levelWord(item, phrase) !== null ||
  isTemperatureMark(item) ||
  has(item, 'reverse') ||
  has(item, 'face') ||
  has(item, 'iron')

const isTemperatureMark = (item: Item): boolean =>
  item.kind === 'degree' || item.kind === 'number' || /^[cf~〜∼\-–():]$/i.test(item.raw)

const isHeat = ({ kind, value }: Item): boolean =>
  kind === 'number' && value >= 110 && value <= 2200

// No label lets an iron reach 220 °C: above it the figure is in °F, where 230, 300 and 390 stand for
// 110, 150 and 200 °C, or the sign of degrees was read as a nought.
function celsius(items: readonly Item[], item: Item): number {
  const at = items.indexOf(item)
  const value = item.value >= 1000 ? Math.floor(item.value / 10) : item.value
  const beside = items.slice(Math.max(0, at - 2), at + 3)
  if (value <= 220 && !beside.some(({ text }) => text === 'f')) return value
  const exact = (value - 32) / 1.8
  const round = Math.round(exact / 10) * 10
  return Math.abs(exact - round) <= 1.5 ? round : exact
}

/** A level stands between the ban and the verb or behind it, so that one of them may be misread. */
export function namesLevel(phrase: Phrase): boolean {
  const inFront = near(phrase.before, -1, phrase)
  const not = inFront.findIndex(isNot)
  const behind = near(phrase.after, 1, phrase)
  const bansItself = not < 0 && !phrase.verbBefore
  const told = bansItself ? inFront : inFront.slice(0, Math.max(0, not))
  return levelsIn([...told, ...behind], phrase).length > 0
}

/** The verb right before may take a level for itself: "wash warm | iron", "tumble dry low | iron". */
function verbTakesLevel({ verbBefore, verbBeforeFree }: Phrase): boolean {
  if (!verbBefore || verbBeforeFree) return false
  return verbBefore.verb === 'wash' || verbBefore.verb === 'tumble' || verbBefore.role === 'lineDry'
}

function startsWithLevel(before: readonly Item[], phrase: Phrase): boolean {
  const level = before.findIndex((item) => levelWord(item, phrase) !== null)
  return before.slice(0, level).every((item) => has(item, 'fillers'))
}

/** "Medium heat." as a sentence without a verb, where none before it dries or washes. */
export function levelsAlone(items: readonly Item[]): IronLevel[] {
  const sentences: Item[][] = [[]]
  for (const item of items) {
    if (item.kind === 'line' || (item.kind === 'mark' && /[.;!。；]/.test(item.raw)))
      sentences.push([])
    else sentences.at(-1)!.push(item)
  }
  return sentences.flatMap((sentence, at) => {
    const alone =
      sentence.length > 0 && sentence.every((item) => isLevelWord(item) || isSmall(item))
    const verbs = verbsIn(sentences[at - 1] ?? [])
    if (!alone || verbs.some(({ verb }) => verb !== 'iron' && verb !== 'other')) return []
    return sentence.flatMap((item) => levelRoles.find((role) => has(item, role)) ?? [])
  })
}
