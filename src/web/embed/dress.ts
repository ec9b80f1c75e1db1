/** How what a page wrote about colours, letters and corners becomes tokens of the stylesheet. */

import type { Theme } from './spoken.ts'

const colour = /^#[\da-f]{6}$/i
/** Names of families, quotation marks in pairs: alone, one would swallow what follows it in a stylesheet. */
const families = /^(?=.{1,120}$)(?:[\w ,-]|"[\w ,-]+"|'[\w ,-]+')+$/
const mostRound = 24

/** The tokens `paper` and `soft` of the stylesheet: what words lie on, and the palest words. */
export const grounds = {
  light: { paper: '#fffdf8', soft: '#566079' },
  dark: { paper: '#1d2740', soft: '#b4bdcd' },
} as const

const white = '#ffffff'
const black = '#000000'

/** What WCAG 2.2 asks of words, and of marks that are not words. */
const enoughForWords = 4.5
const enoughForMarks = 3

/** WCAG 2.2's relative luminance of an `#rrggbb`, 0 to 1. */
function luminance(of: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(of.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** WCAG 2.2's contrast ratio of two `#rrggbb`, 1 to 21. */
export function contrast(one: string, other: string): number {
  const [first, second] = [luminance(one) + 0.05, luminance(other) + 0.05]
  return Math.max(first, second) / Math.min(first, second)
}

/** Whether white is easier to read on it than black. */
export const groundIsDark = (ground: string): boolean =>
  contrast(ground, white) > contrast(ground, black)

export interface Dressed {
  /** Custom properties of the root and their values. */
  readonly tokens: Readonly<Record<string, string>>
  /** The ground is light or dark whatever the reader's machine prefers; null: as it prefers. */
  readonly dark: boolean | null
  /** Parts that are not written as they must be. */
  readonly wrong: readonly (keyof Theme)[]
  /** A ground on which words are hard to read is not used; an accent that is pale on paper colours the button alone. */
  readonly pale: readonly (keyof Theme)[]
}

/** `prefersDark`: what the reader's machine prefers. */
export function dress({ accent, ground, font, corner }: Theme, prefersDark: boolean): Dressed {
  const tokens: Record<string, string> = {}
  const wrong: (keyof Theme)[] = []
  const pale: (keyof Theme)[] = []
  let dark: boolean | null = null

  if (ground && !colour.test(ground)) wrong.push('ground')
  else if (ground) {
    const { soft } = groundIsDark(ground) ? grounds.dark : grounds.light
    if (contrast(ground, soft) < enoughForWords) pale.push('ground')
    else {
      dark = groundIsDark(ground)
      tokens['--cloth'] = ground
    }
  }

  if (accent && !colour.test(accent)) wrong.push('accent')
  else if (accent) {
    const { paper } = (dark ?? prefersDark) ? grounds.dark : grounds.light
    const seen = contrast(accent, paper)
    tokens['--button'] = accent
    tokens['--on-button'] = groundIsDark(accent) ? white : black
    if (seen < enoughForMarks) tokens['--button-edge'] = 'var(--ink)'
    if (seen < enoughForWords) pale.push('accent')
    else if (dark === null || contrast(accent, tokens['--cloth']!) >= enoughForWords)
      tokens['--madder'] = accent
  }

  if (font && !families.test(font)) wrong.push('font')
  else if (font) {
    tokens['--word-face'] = `${font}, sans-serif`
    tokens['--head-face'] = `${font}, serif`
  }

  const round = Number(corner)
  if (corner && !(round >= 0 && round <= mostRound)) wrong.push('corner')
  else if (corner) tokens['--round'] = `${round}px`

  return { tokens, dark, wrong, pale }
}
