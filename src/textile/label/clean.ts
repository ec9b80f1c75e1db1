/** A label holds far less; a longer text is read to here, so that the time stays bounded. */
const mostCharacters = 12_000

export interface CleanText {
  readonly text: string
  readonly lines: readonly string[]
  readonly cut: boolean
}

// Marks that steer the writing direction or the joining of letters, soft hyphens and control codes.
const unprinted = /[\p{Cf}\p{Co}\p{Cn}\p{Cs}]|[^\P{Cc}\n]/gu
// Signs of a trade mark; normalised they would be letters of the word.
const tradeSigns = /[®™℠]/gu
const percentSigns = /[％﹪٪℅]|(?<=\d ?)[°ºo]\/[o0]|(?<=\d )[0o]\/[0o]/giu
// "Cotton ..... 80 %", "棉……80%": dots, lines and dashes that lead the eye from a name to its share.
const leaders =
  /(?<![-.…·•_=‥–—])(?:(?:[.…·•_=‥]|(?<=[.…·•_=‥]) (?=[.…·•_=‥])){3,200}|\.{2,200}|…{1,200}|[-–—]{3,200}|_{2,200})(?= ?[%\d])/gu
// "다림질: X": the letter stands for a cross.
const crossBehindSigns = /(?<=\p{Script=Hangul}[ :]{0,2})[xX](?![\p{L}\d])/gu
const percentGluedToLetters = /(\p{L}{2})(\d{1,3}(?:[.,]\d{1,2})?[ \n]*%)/gu

export function cleanText(raw: string): CleanText {
  const text = raw
    .slice(0, mostCharacters)
    .replaceAll(/\r\n?|[\u2028\u2029\v\f]/g, '\n')
    .replaceAll('\t', ' ')
    .replaceAll(tradeSigns, ' ')
    .replaceAll(percentSigns, '%')
    // The ordinal sign stands for degrees on labels; its plain form would be the letter o.
    .replaceAll('º', '°')
    .replaceAll(leaders, ': ')
    .normalize('NFKC')
    .replaceAll(crossBehindSigns, '×')
    .replaceAll(unprinted, '')
  const lines = text.split('\n').map((line) => line.trim())
  return {
    text: text.replaceAll(percentGluedToLetters, '$1 $2'),
    lines: lines.filter((line) => line !== ''),
    cut: raw.length > mostCharacters,
  }
}

const plainLetters = new Map([
  ['ß', 'ss'],
  ['æ', 'ae'],
  ['œ', 'oe'],
  ['ø', 'o'],
  ['ł', 'l'],
  ['đ', 'd'],
  ['ı', 'i'],
])

function plain(letter: string): string {
  const known = plainLetters.get(letter)
  if (known !== undefined) return known
  const bare = letter
    .normalize('NFD')
    .replaceAll(/[\u0300-\u036f]/g, '')
    .normalize('NFC')
  if (plainLetters.size < mostLetters) plainLetters.set(letter, bare)
  return bare
}

const mostLetters = 2_000

/** Lower case without accents, the form in which words are compared. */
export function fold(word: string): string {
  const lower = word.toLowerCase()
  let folded = ''
  for (const letter of lower) folded += letter <= '~' ? letter : plain(letter)
  return folded
}
