import type { Block } from '../printed.ts'
import type { Element, Pen } from './pen.ts'
import { drawLines, lineHigh, type Strip, spaced, styles } from './strips.ts'
import { linesOf, type Style, type TextLine } from './text.ts'

type Table = Extract<Block, { block: 'table' }>
type Rows = Extract<Block, { block: 'rows' }>

interface Cell {
  readonly lines: readonly TextLine[]
  readonly style: Style
  /** Null: it is told before, and not told again. */
  readonly path: readonly Element[] | null
  readonly left: number
  /** Where it ends, where its words stand at their right. */
  readonly right?: number
}

/** Rows taller than this go on on the next page, points. */
const keptWhole = 400
const pad = 2.5

/** So many lines of every cell. */
function band(
  pen: Pen,
  cells: readonly Cell[],
  { from, count, width, least = 0 }: { from: number; count: number; width: number; least?: number },
): Strip {
  const shown = cells.map((cell) => ({ ...cell, lines: cell.lines.slice(from, from + count) }))
  const high = Math.max(least, ...shown.map(({ lines, style }) => lines.length * lineHigh(style)))
  return {
    high: high + 2 * pad,
    draw: (x, y) => {
      if (from === 0) pen.aside(() => pen.rule(x, y, x + width, y))
      for (const { lines, style, path, left, right } of shown) {
        if (lines.length === 0) continue
        const mark = path ? (draw: () => void) => pen.marked(path, draw) : pen.aside
        mark(() =>
          drawLines(pen, lines, {
            x: x + left,
            y: y + pad,
            style,
            ...(right !== undefined && { right: x + right }),
          }),
        )
      }
    },
  }
}

function rowStrips(pen: Pen, cells: readonly Cell[], width: number, least = 0): Strip[] {
  const most = Math.max(1, ...cells.map(({ lines }) => lines.length))
  if (most * lineHigh(styles.text) <= keptWhole)
    return [band(pen, cells, { from: 0, count: most, width, least })]
  return Array.from({ length: most }, (_, n) => band(pen, cells, { from: n, count: 1, width }))
}

const gap = 8

/** Room for a word by hand, points. */
const handHigh = 17

export function tableStrips(
  pen: Pen,
  { head, widths, right = [], strong = [], toFill = false, rows }: Table,
  width: number,
): Strip[] {
  const table: Element = { tag: 'Table' }
  const cellsOf = (row: readonly string[], tag: 'TH' | 'TD', style: Style): Cell[] => {
    const line: Element = { tag: 'TR' }
    let left = 0
    return row.map((words, n) => {
      const wide = widths[n]! * width
      const at = left
      left += wide
      return {
        lines: linesOf(words, style, wide - gap, pen.measure),
        style,
        path: [table, line, { tag }],
        left: at,
        ...(right.includes(n) && { right: at + wide - (n === row.length - 1 ? 0 : gap) }),
      }
    })
  }
  const [top] = rowStrips(pen, cellsOf(head, 'TH', styles.smallStrong), width)
  const titled = head.some((word) => word !== '')
  const told = cellsOf(head, 'TH', styles.smallStrong).map((cell) => ({ ...cell, path: null }))
  const again = titled ? rowStrips(pen, told, width)[0]! : undefined
  const styleOf = (n: number): Style => (strong.includes(n) ? styles.strong : styles.text)
  const body = rows.flatMap((row, n) =>
    rowStrips(pen, cellsOf(row, 'TD', styleOf(n)), width, toFill ? handHigh : 0).map((strip) => ({
      ...strip,
      ...(again && { again }),
    })),
  )
  return spaced([...(titled ? [{ ...top!, keep: true }] : []), ...body], 4)
}

const nameWide = 0.3

export function rowsStrips(pen: Pen, { rows }: Rows, width: number): Strip[] {
  const left = nameWide * width
  const strips = rows.flatMap(({ name, words }) => {
    const path: Element[] = [{ tag: 'P' }]
    const cell = (text: string, style: Style, at: number, wide: number): Cell => ({
      lines: linesOf(text, style, wide, pen.measure),
      style,
      path,
      left: at,
    })
    return rowStrips(
      pen,
      [cell(name, styles.strong, 0, left - gap), cell(words, styles.text, left, width - left)],
      width,
    )
  })
  return spaced(strips, 4)
}
