import { fold } from './clean.ts'
import { namesFibre } from './names-fibre.ts'
import { guessName, lettersApart } from './spelling.ts'
import { careWords, isLabelWord, meaningOf, once, shareWords } from './vocabulary.ts'

/** Letters taken for digits, in front of a percent sign or of what was read for one. */
const digitsInLetters =
  /(?<![\p{L}\d.,])(?:(?=[OoQDCSsBZzlI|]*\d)[\dOoQDCSsBZzlI|]{2,3}|[Ss])(?= ?%|[xX](?![\p{L}\d])| [xX](?= \p{L}{3}))/gu
const digitOf: Readonly<Record<string, string>> = {
  ...{ O: '0', o: '0', Q: '0', D: '0', C: '0', S: '5', s: '5', B: '8', Z: '2', z: '2' },
  ...{ l: '1', I: '1', '|': '1' },
}

/** Signs that a reader of pictures gives for "%" behind a number. Seen on drawn labels, see test/labels. */
const percentSlips: readonly (readonly [RegExp, string])[] = [
  [/(?<![\p{L}\d.,])1[0oO]{2} ?[xX%](?![\p{L}\d])/gu, '100%'],
  // "1e6%", "1o9%": no share of three digits is another.
  [/(?<![\p{L}\d.,])1[0oOeE][\doOeE] ?%(?![\p{L}\d])/gu, '100%'],
  [/(?<![\p{L}\d.,])(\d{1,3}) ?%6(?!\d)/gu, '$1%'],
  // Water is 30 to 95 degrees warm, and no share of carbon is told so.
  [/(?<![\p{L}\d.,])([3-9][05]) ?%[Cc](?![\p{L}\d])/gu, '$1°C'],
  [/(?<=\d ?%) [69](?= \p{L}{3})/gu, ''],
  [/(?<=\d)° ?℃/gu, '°C'],
  [/(?<=\d ?% ?)[CDQ0]FF(?![\p{L}\d])/gu, 'OFF'],
  [/(?<![\p{L}\d.,])(\d{1,3}) 9%6?(?!\d)/gu, '$1%'],
  [/(?<![\p{L}\d.,])(\d{1,3}) 96(?=$| \p{L})/gu, '$1%'],
  [/(?<![\p{L}\d.,])(\d{1,3}) ?[xX](?![\p{L}\d])/gu, '$1%'],
  // No share is more than a hundred.
  [/(?<![\p{L}\d.,/-])(\d{2})9%(?= ?\p{L}{3})/gu, '$1%'],
  [/(?<![\p{L}\d.,/-])(\d{1,2}|100)96(?= ?\p{L}{3})/gu, '$1%'],
  // "Elastane 796": behind a word, at the end of the line or before a dash.
  [/(?<=\p{Ll}{4}[.,]? |\p{Lu}{6}[.,]? )(\d{1,2})96(?=$|,| [-–])/gu, '$1%'],
]

/** "Lana 8596", "Cotton 10096": behind a fibre's name, at the end of the line or before a comma or a dash. */
const percentBehindName = /(\p{L}{3,})([.,]? )(\d{1,2}|100)96(?=$|,| [-–])/gu

const withPercent = (read: string, name: string, gap: string, share: string): string =>
  namesFibre(name) ? `${name}${gap}${share}%` : read

/** "ytter.", "Forro.", "Bcdy.": the name of a part, alone on its line, is followed by a colon. */
const wordAlone = /^(\p{L}{4,})[.,]$/u

const sections = once((): readonly string[] =>
  [...shareWords().all()].flatMap((term) =>
    term.words.length === 1 && meaningOf(term, 'section') ? term.words : [],
  ),
)

const isSection = (word: string): boolean =>
  meaningOf(shareWords().single(word), 'section') !== undefined ||
  (!isLabelWord(word) && sections().some((name) => lettersApart(word, name, 1) === 1))

const withColon = (line: string): string => {
  const word = wordAlone.exec(line)?.[1]
  return word && isSection(fold(word)) ? `${word}:` : line
}

/** Signs taken for letters within words, and letters for others. */
const letterSlips: readonly (readonly [RegExp, string])[] = [
  [/(?<=\p{L})[!|]/gu, 'l'],
  [/(?<=\p{L}{3})1(?=\p{L}|$| )/gu, 'l'],
  [/(?<=\p{Ll})B(?=\p{Ll}|(?![\p{L}\d]))/gu, 'ss'],
  [/(?<=\p{Script=Latin})β/gu, 'ss'],
  // Swedish and Danish "på".
  [/(?<!\p{L})(p)&(?= \p{L})/giu, '$1å'],
  // German "heiß", "in" behind the end of a word.
  [/(?<!\p{L})(hei)s(?=e?(?!\p{L}))/giu, '$1ss'],
  [/(?<= )lI(?=n(?!\p{L}))/gu, 'I'],
  // "Passar a ferrc": no other word follows.
  [/(?<=\bpassar a )f[\p{L}#]{4}(?![\p{L}#])/giu, 'ferro'],
  // "Machine ash", "Zehlit Pi": no other word follows there.
  [/(?<=\bmachine )ash(?!\p{L})/giu, 'wash'],
  [/(?<=\bzehlit )p[il](?!\p{L})/giu, 'pri'],
  // "HOT T IRON": the last letter of a word once more, behind a gap that is none.
  [/(?<=\p{L}{2})([bcdfghjklmnpqrstvwxz]) \1(?= \p{L}{3})/giu, '$1'],
]

/** Letters of one shape, made the same; `#` is what no letter was likely for. */
const shape = (word: string): string =>
  word
    .replaceAll(/[l1|!]/g, 'i')
    .replace(/^j/, 'i')
    .replaceAll('0', 'o')
    .replaceAll(/rn|in/g, 'm')
    .replaceAll('vv', 'w')

/** No letter was likely: some letter all the same, else the word would fall in two. */
const unclear = /(?<=\p{L})#|#(?=\p{L})/gu

/** Words from here on may have one letter that is another, too many or missing; and from there on two. */
const oneOtherFrom = 6
const twoOthersFrom = 10

const words = once((): readonly string[] => [
  ...new Set([...careWords().all()].flatMap((term) => term.words.filter((w) => w.length >= 4))),
])

const byShape = once((): ReadonlyMap<string, string | null> => {
  const found = new Map<string, string | null>()
  for (const word of words()) found.set(shape(word), found.has(shape(word)) ? null : word)
  return found
})

/** Words beside which one of three to five letters is "iron" sooner than any other. */
const leadsToIron =
  /(?<=\b(?:never|not|cool|warm|medium|hot) )[\p{L}\d#|!]{3,5}(?![\p{L}\d#])|\b[\p{L}\d#|!]{3,5}(?= at (?:low|medium|high)\b)/giu

/** "IRONAT LOW", "planchara baja": the small word behind an ironing word, run into it. */
const gluedBehindIron =
  /\b(iron|planchar|repasser|passar|stirare|stryk|strijken|prasowac|zehlit)(at|if|a|ad|pa|op|w|pri)\b/giu

const unglued = (read: string, verb: string, small: string): string =>
  isLabelWord(fold(read)) ? read : `${verb} ${small}`

const ironWord = (read: string): string => {
  const word = fold(read)
  return !isLabelWord(word) && lettersApart(word, 'iron', 1) === 1 ? 'iron' : read
}

/**
 * What a word says alone, the same for two spellings of one word and in languages that spell it nearly alike,
 * "strykes" and "stryges"; a part of phrases says itself.
 */
const meaning = (word: string): string =>
  careWords()
    .single(word)
    ?.roles.map(({ role }) => role)
    .join() ?? word

/** "ACRYLICIACRILICA": a slash between two names was taken for a letter. */
const slashes = /\p{L}{7,}/gu

function withSlash(read: string): string {
  const word = fold(read)
  if (word.length !== read.length || isLabelWord(word)) return read
  for (const { index } of read.matchAll(/(?<=\p{L}{3})[Il](?=\p{L}{3})/gu)) {
    const isName = [word.slice(0, index), word.slice(index + 1)].every(isLabelWord)
    if (isName) return `${read.slice(0, index)}/${read.slice(index + 1)}`
  }
  return read
}

/** "Materiall", "Yttermateriall": a slash at the end of the line, behind a name, was taken for a letter. */
const slashAtEnd = /(\p{L}{7,})[lI|]$/u

const withSlashAtEnd = (read: string, name: string): string =>
  !isLabelWord(fold(read)) && isLabelWord(fold(name)) ? `${name}/` : read

/** "polyainide", "carnel": the name of a fibre, an "m" of which was taken for two letters. */
const brokenM = /(?<=\p{L})(?:in|rn)(?=\p{L})/giu

function fibreName(read: string): string {
  if (namesFibre(read) || isLabelWord(fold(read))) return read
  const whole = read.replaceAll(brokenM, 'm')
  return whole !== read && namesFibre(whole) ? whole : read
}

/** The one word of care that was most likely printed, or the word as it is. */
function careWord(read: string): string {
  const word = fold(read)
  if (!/[a-z#]{3}/.test(word) || isLabelWord(word) || words().includes(word)) return read
  const sameShape = byShape().get(shape(word))
  if (sameShape) return sameShape
  if (word.length < oneOtherFrom || guessName(word)) return read
  const near = within(word, 1)
  if (near.length > 0 || word.length < twoOthersFrom) return onlyOne(near) ?? read
  // Turkish "iron" and "do not iron" are two letters apart: no other may be nearly as near.
  return onlyOne(within(word, 3)) ? (within(word, 2)[0] ?? read) : read
}

const within = (word: string, most: number): string[] =>
  words().filter(
    (other) =>
      Math.abs(other.length - word.length) <= most && lettersApart(word, other, most) <= most,
  )

/** The nearest of words that all mean the same; undefined of none, or where they do not. */
const onlyOne = (near: readonly string[]): string | undefined =>
  new Set(near.map(meaning)).size === 1 ? near[0] : undefined

/** So long is a word at least whose parts are put together, and one whose first letter is. */
const partedFrom = 6
const letterPartedFrom = 9

/**
 * "MA CHINE WASH", "POL IAMIDA", "Y dermateriale": a gap within a word that labels print, where the parts are not
 * both such words.
 */
function withoutGaps(line: string): string {
  const words = line.split(' ')
  for (let at = 0; at + 1 < words.length; at += 1) {
    const [before, behind] = [words[at]!, words[at + 1]!]
    if (!/^\p{L}+$/u.test(before) || !/^\p{L}{2,}[.,:;]?$/u.test(behind)) continue
    const end = behind.replace(/\P{L}$/u, '')
    // "MA" and "CHINE" are the names of countries.
    // "A" is a word, and none that matters where what is behind it is none.
    const isLetter = before.length === 1
    const isBoth =
      (isLetter || (before.length > 2 && isLabelWord(fold(before)))) && isLabelWord(fold(end))
    const whole = fold(before + end)
    const from = isLetter ? letterPartedFrom : partedFrom
    if (!isBoth && whole.length >= from && isLabelWord(whole)) words.splice(at, 2, before + behind)
  }
  return words.join(' ')
}

/**
 * A dot within what is no two words is a speck: "co.cna" is no code of cotton before a word; and so it is within a
 * name, "L.INNEN", though "L." may stand for a lining and "innen" for its side.
 */
const withoutSpeck = (read: string, before: string, after: string): string => {
  const isName = after.length >= 4 && namesFibre(before + after) && !namesFibre(after)
  const isTwo = isLabelWord(fold(before)) && isLabelWord(fold(after))
  return isTwo && !isName ? read : before + after
}

/**
 * A line as a reader of pictures gives it, without the slips that are known of it: signs taken for other signs,
 * letters for letters of the same shape. Names of fibres are left as they are: their own reading weighs them.
 */
export function withoutSlips(line: string): string {
  let mended = line.replaceAll(digitsInLetters, (read) =>
    read.replaceAll(/\D/g, (letter) => digitOf[letter]!),
  )
  for (const [slip, meant] of [...percentSlips, ...letterSlips])
    mended = mended.replaceAll(slip, meant)
  return withColon(withoutGaps(mended))
    .replaceAll(percentBehindName, withPercent)
    .replaceAll(/(\p{L}+)\.(\p{L}+)/gu, withoutSpeck)
    .replaceAll(slashes, withSlash)
    .replace(slashAtEnd, withSlashAtEnd)
    .replaceAll(gluedBehindIron, unglued)
    .replaceAll(/\p{L}{5,}/gu, fibreName)
    .replaceAll(/[\p{L}\d#|!]{4,}/gu, careWord)
    .replaceAll(leadsToIron, ironWord)
    .replaceAll(unclear, 'm')
}

/** The lines of a label without slips, also in words that run over to the next line: "Semperat- ⏎ ure", "tempera. ⏎ ture". */
export function linesWithoutSlips(lines: readonly string[]): string[] {
  const mended = lines.map(withoutSlips)
  for (let at = 0; at + 1 < mended.length; at += 1) {
    const begun = /(\p{L}{2,})([-.])$/u.exec(mended[at]!)
    const ended = /^\p{L}{2,}/u.exec(mended[at + 1]!)
    if (!begun || !ended) continue
    const read = begun[1]! + ended[0]
    // A point there is a hyphen where both lines together are a word, and neither is one.
    const isHyphen = [begun[1]!, ended[0]].every((part) => !isLabelWord(fold(part)))
    if (begun[2] === '.' && !(isHyphen && isLabelWord(fold(read)))) continue
    const word = careWord(read)
    if (word === read && begun[2] !== '.') continue
    mended[at] = mended[at]!.slice(0, begun.index) + word
    mended[at + 1] = mended[at + 1]!.slice(ended[0].length).trimStart()
  }
  return mended
}
