import { type Face, type Run, runsOf } from './faces.ts'

/** How a text is set: its face, and its size in points. */
export interface Style {
  readonly face: Face
  readonly size: number
  /** Dark grey instead of black. */
  readonly soft?: boolean
  /** `#rrggbb`, on cloth that is drawn in its colour. */
  readonly ink?: string
}

/** Measures a run; points. */
export type Measure = (run: Run, style: Style) => number

/** What cannot be seen even where a font has it: controls become gaps, marks of direction and form go. */
export const plainText = (text: string): string =>
  text
    .toWellFormed()
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .replace(/\p{Cf}|\p{Variation_Selector}/gu, '')
    .trim()

/** A character that no font has is drawn as a box with its code point, as wide as so many of its letters' heights. */
export const boxWide = 0.78

/** The code point of a character in two rows of hexadecimal digits. */
export function codeRows(sign: string): [string, string] {
  const code = sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')
  const half = Math.ceil(code.length / 2)
  return [code.slice(0, half), code.slice(half)]
}

/** Words that stand on one line. */
export interface TextLine {
  readonly words: readonly (readonly Run[])[]
  readonly wide: number
}

const segments = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** Parts of a word that is wider than the line, each as long as fits. */
function* broken(word: string, style: Style, width: number, measure: Measure): Generator<string> {
  let [part, long] = ['', 0]
  for (const { segment } of segments.segment(word)) {
    const wide = wordWide(runsOf(segment, style.face), style, measure)
    if (part !== '' && long + wide > width) {
      yield part
      ;[part, long] = ['', 0]
    }
    part += segment
    long += wide
  }
  if (part !== '') yield part
}

export const wordWide = (runs: readonly Run[], style: Style, measure: Measure): number =>
  runs.reduce((sum, run) => sum + measure(run, style), 0)

/** A long link or code may break after these. */
const breaks = /(?<=[/\-–—])(?=\S)/u

/**
 * Text in lines no wider than `width`, points. An empty text has no line. Nothing is left out, unless so many
 * lines are `enough`.
 */
export function linesOf(
  text: string,
  style: Style,
  width: number,
  measure: Measure,
  enough = Number.POSITIVE_INFINITY,
): TextLine[] {
  const space = measure(runsOf(' ', style.face)[0]!, style)
  const lines: { words: (readonly Run[])[]; wide: number }[] = []
  const put = (word: string, glued: boolean): void => {
    const runs = runsOf(word, style.face)
    const wide = wordWide(runs, style, measure)
    const last = lines.at(-1)
    if (last && glued && last.wide + wide <= width) {
      last.words[last.words.length - 1] = [...last.words.at(-1)!, ...runs]
      last.wide += wide
    } else if (last && !glued && last.wide + space + wide <= width) {
      last.words.push(runs)
      last.wide += space + wide
    } else if (wide <= width) {
      lines.push({ words: [runs], wide })
    } else {
      for (const part of broken(word, style, width, measure)) {
        const own = runsOf(part, style.face)
        lines.push({ words: [own], wide: wordWide(own, style, measure) })
      }
    }
  }
  for (const word of plainText(text).split(' ').filter(Boolean)) {
    if (lines.length >= enough) break
    for (const [n, part] of word.split(breaks).entries()) put(part, n > 0)
  }
  return lines
}

/** At most so many lines; what is left out is shown by three dots. */
export function firstLines(
  text: string,
  style: Style,
  width: number,
  { most, measure }: { readonly most: number; readonly measure: Measure },
): TextLine[] {
  const lines = linesOf(text, style, width, measure, most + 1)
  if (lines.length <= most) return lines
  const dots = runsOf('…', style.face)
  const wide = wordWide(dots, style, measure)
  const last = lines[most - 1]!
  const words = last.words.map((runs) => [...runs])
  let rest = last.wide
  while (rest + wide > width && words.length > 1) {
    rest -= wordWide(words.pop()!, style, measure)
  }
  while (rest + wide > width && words[0]!.length > 0) {
    const run = words[0]!.pop()!
    const shorter = { ...run, text: [...run.text].slice(0, -1).join('') }
    rest -= measure(run, style)
    if (shorter.text === '') continue
    words[0]!.push(shorter)
    rest += measure(shorter, style)
  }
  words[words.length - 1]!.push(...dots)
  return [...lines.slice(0, most - 1), { words, wide: rest + wide }]
}
