import { converter, type Lab65, modeLab65, modeRgb, useMode } from 'culori/fn'

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

useMode(modeRgb)
useMode(modeLab65)
const toLab = converter('lab65')

/** A colour as `#rrggbb`. Throws on anything else. */
export function labOf(hex: string): Lab65 {
  const found = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex)
  if (!found) throw new Error(`Not a colour of the form #rrggbb: ${hex}`)
  const [r, g, b] = found.slice(1).map((part) => Number.parseInt(part, 16) / 255)
  return toLab({ mode: 'rgb', r: r!, g: g!, b: b! })
}

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
