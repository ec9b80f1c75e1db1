import type { Lab65 } from 'culori/fn'
import { labOf } from './colour.ts'

/** The colours that a reader is told of; each is a key of the words under `colours`. */
export const colourWords = [
  'black',
  'grey',
  'white',
  'cream',
  'brown',
  'red',
  'pink',
  'orange',
  'yellow',
  'green',
  'blue',
  'purple',
] as const
export type ColourWord = (typeof colourWords)[number]

export const isColourWord = (word: string): word is ColourWord =>
  (colourWords as readonly string[]).includes(word)

/** Colours that bear each word: the one it is drawn with, then a darker or lighter one. Our own choice. */
const examples: Readonly<Record<ColourWord, readonly [drawn: string, ...others: string[]]>> = {
  black: ['#1d1d20'],
  grey: ['#85878b', '#4a4c50', '#c3c5c8'],
  white: ['#f5f5f3'],
  cream: ['#efe3c8'],
  brown: ['#7a5233', '#4b3223', '#b89471'],
  red: ['#b3282d', '#7a1f26'],
  pink: ['#e397ad', '#cf4f82'],
  orange: ['#e0822f'],
  yellow: ['#ecc63f'],
  green: ['#3f7d4e', '#1f4a30', '#9cc49a'],
  blue: ['#35619f', '#1d2a52', '#9dbfe0'],
  purple: ['#6d4391', '#3d2456', '#b79bd2'],
}

/** The colour that a word is drawn with, `#rrggbb`. */
export const drawnAs = (word: ColourWord): string => examples[word][0]

/** Colours to hold another against, to see whether the word may be said of it. */
export const examplesOf = (word: ColourWord): readonly Lab65[] => examples[word].map(labOf)

/** The word for a colour, by lightness, chroma and hue in CIELAB D65. Where one ends is our own choice. */
export function colourWord({ l, a, b }: Lab65): ColourWord {
  const chroma = Math.hypot(a, b)
  const hue = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360
  if (l < 18 && chroma < 14) return 'black'
  if (l >= 80 && chroma >= 4 && chroma < 30 && hue > 55 && hue < 112) return 'cream'
  if (chroma < 12) return l >= 90 ? 'white' : 'grey'
  return wordOfHue(l, chroma, hue)
}

function wordOfHue(l: number, chroma: number, hue: number): ColourWord {
  if (hue < 50 || hue >= 345) return reds(l, chroma, hue)
  if (hue < 80) return l >= 60 && chroma >= 50 ? 'orange' : 'brown'
  if (hue < 112) return yellows(l, chroma)
  if (hue < 195) return 'green'
  // Lighter than a full blue, the same hue is seen as violet.
  if (hue < 298 || (hue < 310 && l < 50)) return 'blue'
  return 'purple'
}

function reds(l: number, chroma: number, hue: number): ColourWord {
  if (l >= 65 || (hue >= 345 && l >= 45))
    return hue > 40 && hue < 50 && chroma >= 60 ? 'orange' : 'pink'
  return chroma < 28 && hue < 345 ? 'brown' : 'red'
}

function yellows(l: number, chroma: number): ColourWord {
  if (l >= 65 && chroma >= 38) return 'yellow'
  return chroma < 30 || l < 30 ? 'brown' : 'green'
}
