import { labOf } from '../../base/colour.ts'
import { type ColourWord, colourWord, drawnAs, isColourWord } from '../../base/colour-words.ts'
import type { ClothColours } from '../../intake/cloth-colours.ts'
import type { Told } from '../../intake/told.ts'
import type { Language } from '../../words/words.ts'
import type { Swatch } from './view.ts'

/** Beside `many-colours`: some that are unlike, whichever they are. */
const many: readonly ColourWord[] = ['red', 'yellow', 'green', 'blue']

/** The colours that an option of the question for colours is shown with. */
export const coloursOfOption = (option: string): readonly string[] =>
  (isColourWord(option) ? [option] : many).map(drawnAs)

export const coloursOf = ({ colour, second }: ClothColours): string[] =>
  [colour, second].filter((one) => one !== null)

export const listWords = (words: readonly string[], { locale }: Language): string =>
  new Intl.ListFormat(locale, { type: 'conjunction' }).format(words)

const named = (words: readonly ColourWord[], { say }: Language): string[] =>
  words.map((word) => say(`colours.${word}`))

/** Each word once, the largest colour's first. */
export const wordsOfColours = (colours: readonly string[], language: Language): string[] =>
  named([...new Set(colours.map((colour) => colourWord(labOf(colour))))], language)

/** A cloth's colours with the words that were said of it, else those that its photo's colours bear. */
export function swatchOf(
  { colours: said }: Pick<Told, 'colours'>,
  cloth: ClothColours,
  language: Language,
): Swatch | null {
  const colours = coloursOf(cloth)
  if (colours.length === 0) return null
  const words = said.length > 0 ? named(said, language) : wordsOfColours(colours, language)
  return { colours, words: listWords(words, language) }
}
