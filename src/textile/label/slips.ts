import { fold } from './clean.ts'
import { guessName, lettersApart } from './spelling.ts'
import { careWords, isLabelWord, once } from './vocabulary.ts'

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
  [/(?<![\p{L}\d.,])(\d{1,3}) ?%6(?!\d)/gu, '$1%'],
  [/(?<![\p{L}\d.,])(\d{1,3}) 9%6?(?!\d)/gu, '$1%'],
  [/(?<![\p{L}\d.,])(\d{1,3}) 96(?=$| \p{L})/gu, '$1%'],
  [/(?<![\p{L}\d.,])(\d{1,3}) ?[xX](?![\p{L}\d])/gu, '$1%'],
  // No share is more than a hundred.
  [/(?<![\p{L}\d.,/-])(\d{2})9%(?= ?\p{L}{3})/gu, '$1%'],
  [/(?<![\p{L}\d.,/-])(\d{1,2}|100)96(?= ?\p{L}{3})/gu, '$1%'],
  // "Elastane 796": behind a word, at the end of the line or before a dash.
  [/(?<=\p{Ll}{4},? |\p{Lu}{6},? )(\d{1,2})96(?=$|,| [-–])/gu, '$1%'],
]

/** Signs taken for letters within words, and letters for others. */
const letterSlips: readonly (readonly [RegExp, string])[] = [
  [/(?<=\p{L})[!|]/gu, 'l'],
  [/(?<=\p{L}{3})1(?=\p{L}|$| )/gu, 'l'],
  [/(?<=\p{Ll})B(?=\p{Ll}|(?![\p{L}\d]))/gu, 'ss'],
  [/(?<=\p{Script=Latin})β/gu, 'ss'],
]

/** Letters of one shape, made the same; `#` is what no letter was likely for. */
const shape = (word: string): string =>
  word
    .replaceAll(/[l1|!]/g, 'i')
    .replace(/^j/, 'i')
    .replaceAll('0', 'o')
    .replaceAll('rn', 'm')
    .replaceAll('vv', 'w')

/** No letter was likely: some letter all the same, else the word would fall in two. */
const unclear = /(?<=\p{L})#|#(?=\p{L})/gu

/** Words from here on may have one letter that is another, too many or missing. */
const oneOtherFrom = 6

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

/** What a word says alone, the same for two spellings of one word; a part of phrases says itself. */
const meaning = (word: string): string =>
  careWords()
    .single(word)
    ?.roles.map(({ role, languages }) => `${role} ${languages.join(' ')}`)
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

/** The one word of care that was most likely printed, or the word as it is. */
function careWord(read: string): string {
  const word = fold(read)
  if (!/[a-z#]{3}/.test(word) || isLabelWord(word) || words().includes(word)) return read
  const sameShape = byShape().get(shape(word))
  if (sameShape) return sameShape
  if (word.length < oneOtherFrom || guessName(word)) return read
  const near = words().filter(
    (other) => Math.abs(other.length - word.length) < 2 && lettersApart(word, other, 1) === 1,
  )
  return new Set(near.map(meaning)).size === 1 ? near[0]! : read
}

/** A dot within what is no two words is a speck: "co.cna" is no code of cotton before a word. */
const withoutSpeck = (read: string, before: string, after: string): string =>
  isLabelWord(fold(before)) && isLabelWord(fold(after)) ? read : before + after

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
  return mended
    .replaceAll(/(\p{L}+)\.(\p{L}+)/gu, withoutSpeck)
    .replaceAll(slashes, withSlash)
    .replaceAll(gluedBehindIron, unglued)
    .replaceAll(/[\p{L}\d#|!]{4,}/gu, careWord)
    .replaceAll(leadsToIron, ironWord)
    .replaceAll(unclear, 'm')
}
