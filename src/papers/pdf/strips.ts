import type { Element, Pen } from './pen.ts'
import { linesOf, type Style, type TextLine } from './text.ts'

/** A part of a paper that stays on one page. Points. */
export interface Strip {
  readonly high: number
  /** Room above it, but for the top of a page. */
  readonly before?: number
  /** Never the last on its page. */
  readonly keep?: boolean
  /** What stands above it again where it begins a page. */
  readonly again?: Strip
  readonly draw: (x: number, y: number) => void
}

/** A page is begun. */
export const pageBreak: Strip = { high: Number.POSITIVE_INFINITY, draw: () => {} }

export const lineHigh = ({ size }: Style): number => size * 1.32

/** From a line's top to its base. */
export const baseOf = ({ size }: Style): number => size * 1.0

export const styles = {
  h1: { face: 'display', size: 19 },
  h2: { face: 'display', size: 13 },
  h3: { face: 'bold', size: 10.5 },
  text: { face: 'text', size: 10 },
  strong: { face: 'bold', size: 10 },
  large: { face: 'display', size: 15 },
  small: { face: 'text', size: 8.6, soft: true },
  smallStrong: { face: 'bold', size: 8.6 },
} as const satisfies Record<string, Style>

/** Text of one element, a strip for each line; few lines stay together. */
export function textStrips(
  pen: Pen,
  text: string,
  {
    style,
    width,
    path,
    left = 0,
  }: {
    readonly style: Style
    readonly width: number
    readonly path: readonly Element[]
    readonly left?: number
  },
): Strip[] {
  const lines = linesOf(text, style, width - left, pen.measure)
  return lines.map((line, n) => ({
    high: lineHigh(style),
    // The first two and the last two lines of a text are not torn apart.
    keep: n < lines.length - 1 && (n === 0 || n === lines.length - 2),
    draw: (x, y) => pen.marked(path, () => pen.line(line, x + left, y + baseOf(style), style)),
  }))
}

/** Lines of one cell that stand from `y` on. */
export function drawLines(
  pen: Pen,
  lines: readonly TextLine[],
  { x, y, style, right }: { x: number; y: number; style: Style; right?: number },
): void {
  for (const [n, line] of lines.entries()) {
    const left = right === undefined ? x : right - line.wide
    pen.line(line, left, y + n * lineHigh(style) + baseOf(style), style)
  }
}

/** All but the last are not parted from what follows. */
export const together = (strips: readonly Strip[]): Strip[] =>
  strips.map((strip, n) => (n < strips.length - 1 ? { ...strip, keep: true } : strip))

/** More room above the first. */
export const spaced = (strips: readonly Strip[], before: number): Strip[] =>
  strips.map((strip, n) => (n === 0 ? { ...strip, before } : strip))
