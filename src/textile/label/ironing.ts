import type { LanguageCode } from '../languages/types.ts'
import type { IronLevel, IronReading } from '../reading.ts'
import { forbiddenVerbs } from './bans.ts'
import { cautious, namesSetting, untold } from './caution.ts'
import { isDegreeWord } from './degrees.ts'
import { isDots } from './dots.ts'
import {
  colder,
  forbidsHeatOnly,
  levelOf,
  levelsAlone,
  levelsApart,
  namesLevel,
} from './iron-level.ts'
import { missesIron } from './iron-missed.ts'
import { has, type Item } from './items.ts'
import { keptOff, sparesPrint } from './kept-off.ts'
import { ownLine, type Phrase, phraseAt, phraseWords } from './phrase.ts'
import { isNumberWord } from './spelled-numbers.ts'
import { isLevelWord, verbsIn } from './verbs.ts'
import { isLabelWord } from './vocabulary.ts'

export interface Ironing {
  readonly reading: IronReading
  /** The colder of two readings stands, or a word may be misread. */
  readonly doubtful: boolean
}

/** What the words say of ironing; of several levels the coldest. */
export function ironingOf(items: readonly Item[]): Ironing {
  const verbs = verbsIn(items)
  const forbidden = forbiddenVerbs(items, verbs)
  const mentions = withoutHeatBans(
    verbs.flatMap(({ verb }, i) =>
      verb === 'iron'
        ? [mentionOf(phraseAt(items, verbs, forbidden, i), items, forbidden[i]!)]
        : [],
    ),
  )
  const agreed = agreedLevel(mentions)
  const said = agreed ? [agreed] : mentions.flatMap(({ level }) => (level ? [level] : []))
  const alone = said.length === 0 && mentions.length > 0 ? levelsAlone(items) : []
  const mild = alone.filter((one) => one !== 'hot')
  const levels = said.length > 0 ? said : mild
  const level = levels.length > 0 ? levels.reduce<IronLevel>(colder, 'hot') : null
  const telling = mentions.find((mention) => mention.level === level)
  return {
    reading: {
      level,
      noSteam: verbs.some(({ verb }, i) => verb === 'steam' && forbidden[i]),
      notOnPrint: mentions.some(({ notOnPrint }) => notOnPrint),
      wrongSide: mentions.some(({ wrongSide }) => wrongSide),
      words: telling?.words ?? null,
    },
    doubtful:
      alone.length > 0 ||
      new Set(levels).size > 1 ||
      (mentions.length === 0 && missesIron(items)) ||
      mentions.some((one) => one.doubtful && !(agreed && [agreed, null].includes(one.level))),
  }
}

/** Languages that must say a colder level clearly, for one that is not clear to count for nothing. */
const enough = { same: 2, colder: 3 }

/** The level that several languages say clearly, whatever was half read in others; null where there is none. */
function agreedLevel(mentions: readonly Mention[]): IronLevel | null {
  const clear = mentions.filter((one) => one.level && !one.doubtful && !one.heatOnly)
  const level = clear[0]?.level
  if (!level || clear.some((one) => one.level !== level)) return null
  const spoken: Mention[] = []
  for (const one of clear)
    if (!spoken.some(({ languages }) => languages.some((code) => one.languages.includes(code))))
      spoken.push(one)
  const isColder = mentions.some((one) => one.level && colder(one.level, level) !== level)
  return spoken.length >= enough[isColder ? 'colder' : 'same'] ? level : null
}

interface Mention {
  readonly languages: readonly LanguageCode[]
  readonly level: IronLevel | null
  readonly notOnPrint: boolean
  readonly wrongSide: boolean
  readonly doubtful: boolean
  readonly words: string
  /** It forbids a hot iron, or one without a cloth, and says nothing of others. */
  readonly heatOnly?: true
}

/** "Do not iron hot. Iron low.": the ban on heat adds nothing where leave is given. */
function withoutHeatBans(mentions: readonly Mention[]): readonly Mention[] {
  const others = mentions.filter(({ heatOnly }) => !heatOnly)
  return others.some(({ level }) => level !== null) ? others : mentions
}

const mentionOf = (phrase: Phrase, items: readonly Item[], forbidden: boolean): Mention => ({
  languages: phrase.languages,
  ...toldBy(phrase, items, forbidden),
})

type Told = Omit<Mention, 'languages'>

function toldBy(phrase: Phrase, items: readonly Item[], forbidden: boolean): Told {
  const words = phraseWords(phrase)
  const wrongSide = saysReverse(phrase)
  const misread = !forbidden && startsDoNot(items, phrase.verb.at)
  const unread = hasStray(phrase)
  if (!forbidden && !misread) {
    const { level: told, doubtful } = levelOf(phrase)
    const heard = told === 'hot' ? cautious(phrase, unread) : told === null ? untold(phrase) : told
    // What may be the rest of a "not" takes the leave away, and adds no ban.
    const level = heard !== 'none' && isHalfBanned(phrase) ? null : heard
    const notOnPrint = sparesPrint(phrase)
    const unclear =
      doubtful ||
      level !== told ||
      unread ||
      tellsMore(phrase) ||
      unreadDot(phrase, items) ||
      namesSetting([...phrase.before, ...phrase.after])
    return { level, doubtful: unclear, notOnPrint, wrongSide, words }
  }

  const kept = keptOff(phrase)
  if (kept === 'print') {
    // "Not the print, the rest at medium heat": told apart, it counts where it is colder than none.
    const apart = levelsApart(phrase)
    const mild = apart.filter((level) => level !== 'hot')
    const level = mild.length > 0 ? mild.reduce<IronLevel>(colder, 'warm') : null
    return { level, notOnPrint: true, wrongSide, doubtful: misread || apart.length > 0, words }
  }
  if (kept === 'face')
    return { level: null, notOnPrint: false, wrongSide: true, doubtful: misread, words }
  const direct = forbidsDirect(phrase)
  const hotOnly = forbidsHeatOnly(phrase)
  const heatOnly = hotOnly || direct ? { heatOnly: true as const } : {}
  if (hotOnly && phrase.verb.role === 'iron')
    return { level: 'cool', notOnPrint: false, wrongSide, doubtful: true, words, ...heatOnly }
  const doubtful = misread || unread || direct || namesLevel(phrase)
  return { level: 'none', notOnPrint: false, wrongSide: false, doubtful, words, ...heatOnly }
}

/**
 * The reverse of a verb before, "wash inside out ⏎ iron", is not the iron's; nor is one on a line
 * before with words that could not be read.
 */
function saysReverse({ before, after, verbBefore }: Phrase): boolean {
  const lines = before.flatMap(({ kind }, at) => (kind === 'line' ? [at] : []))
  const first = verbBefore ? (lines[0] ?? -1) : -1
  const last = lines.at(-1) ?? -1
  const from = before.slice(0, Math.max(0, last)).some(isStray) ? last : first
  return [...before.slice(from + 1), ...after].some((item) => has(item, 'reverse'))
}

/** The print or the reverse is named behind the phrase, by words that could not be read as one. */
const tellsMore = ({ beyond }: Phrase): boolean =>
  beyond.some((item) => has(item, 'print') || has(item, 'reverse') || has(item, 'except'))

/** One dot between other words parts phrases, but not where other care has its dots. */
const unreadDot = ({ verb }: Phrase, items: readonly Item[]): boolean =>
  isDots(items[verb.at + 1]) && items.some((item) => isDots(item) && item.raw.length > 1)

const directly =
  /^(?:direct|direkt|dirett|diret|rechtstreeks|bezposrednio|primo$|dogrudan|直接|직접)/

/** "Do not iron directly": with a cloth it may be ironed as is said elsewhere. */
const forbidsDirect = ({ before, after }: Phrase): boolean =>
  [before.at(-1), after[0]].some((item) => item !== undefined && directly.test(item.text))

/** A word on the line of the ironing word that could not be read may change what is said of it. */
function hasStray(phrase: Phrase): boolean {
  const { before, after } = ownLine(phrase)
  return [...before, ...after].some(isStray) || isHalfBanned(phrase)
}

const isHalfBanned = (phrase: Phrase): boolean => isHalfBan(ownLine(phrase).before.at(-1), phrase)

/** "N planchar", "on stirare": what stands right before may be the rest of a "not". */
function isHalfBan(item: Item | undefined, { languages }: Phrase): boolean {
  if (!item || isDegreeWord(item) || item.text.length > longestHalf) return false
  if (item.kind === 'word') return /^\p{L}$/u.test(item.raw)
  const spoken = item.term?.roles.flatMap((role) => role.languages)
  return !isLevelWord(item) && spoken?.some((code) => languages.includes(code)) === false
}

/** Letters; "not", "ne pas", "nie" are no longer. */
const longestHalf = 3

const isStray = (item: Item): boolean =>
  item.kind === 'word' &&
  /\p{L}{2}/u.test(item.raw) &&
  !isLabelWord(item.text) &&
  !isNumberWord(item.text) &&
  !isDegreeWord(item)

/** "Do no7 iron", "do hot iron": what stands between "do" and "iron" is a "not". */
function startsDoNot(items: readonly Item[], at: number): boolean {
  const [first, second] = [items[at - 2], items[at - 1]]
  if (first?.text !== 'do' || !second) return false
  return second.text === 'hot' || (second.kind === 'word' && second.text.length <= 4)
}
