import type { IronLevel, IronReading } from '../reading.ts'
import { forbiddenVerbs, verbsIn } from './care.ts'
import { colder, forbidsHeatOnly, levelOf, namesLevel } from './iron-level.ts'
import { has, type Item } from './items.ts'
import { keptOff } from './kept-off.ts'
import { type Phrase, phraseAt, phraseWords } from './phrase.ts'

export interface Ironing {
  readonly reading: IronReading
  /** The colder of two readings stands, or a word may be misread. */
  readonly doubtful: boolean
}

/** What the words say of ironing; of several levels the coldest. */
export function ironingOf(items: readonly Item[]): Ironing {
  const verbs = verbsIn(items)
  const forbidden = forbiddenVerbs(items, verbs)
  const mentions = verbs.flatMap(({ verb }, i) =>
    verb === 'iron' ? [mentionOf(phraseAt(items, verbs, forbidden, i), items, forbidden[i]!)] : [],
  )
  const levels = mentions.flatMap(({ level }) => (level ? [level] : []))
  const level = levels.length > 0 ? levels.reduce(colder) : null
  const telling = mentions.find((mention) => mention.level === level)
  return {
    reading: {
      level,
      noSteam: verbs.some(({ verb }, i) => verb === 'steam' && forbidden[i]),
      notOnPrint: mentions.some(({ notOnPrint }) => notOnPrint),
      wrongSide: mentions.some(({ wrongSide }) => wrongSide),
      words: telling?.words ?? null,
    },
    doubtful: new Set(levels).size > 1 || mentions.some(({ doubtful }) => doubtful),
  }
}

interface Mention {
  readonly level: IronLevel | null
  readonly notOnPrint: boolean
  readonly wrongSide: boolean
  readonly doubtful: boolean
  readonly words: string
}

function mentionOf(phrase: Phrase, items: readonly Item[], forbidden: boolean): Mention {
  const words = phraseWords(phrase)
  const wrongSide = [...phrase.before, ...phrase.after].some((item) => has(item, 'reverse'))
  const misread = !forbidden && startsDoNot(items, phrase.verb.at)
  if (!forbidden && !misread) return { ...levelOf(phrase), notOnPrint: false, wrongSide, words }

  const kept = keptOff(phrase)
  if (kept === 'print')
    return { level: null, notOnPrint: true, wrongSide, doubtful: misread, words }
  if (kept === 'face')
    return { level: null, notOnPrint: false, wrongSide: true, doubtful: misread, words }
  if (forbidsHeatOnly(phrase))
    return { level: 'cool', notOnPrint: false, wrongSide, doubtful: true, words }
  const doubtful = misread || namesLevel(phrase)
  return { level: 'none', notOnPrint: false, wrongSide: false, doubtful, words }
}

/** "Do no7 iron": an unread word between "do" and "iron" is a "not". */
function startsDoNot(items: readonly Item[], at: number): boolean {
  const [first, second] = [items[at - 2], items[at - 1]]
  return first?.text === 'do' && second?.kind === 'word' && second.text.length <= 4
}
