import type { Drawing } from '../drawing.ts'
import type { Block } from '../printed.ts'
import { cardStrips } from './cards.ts'
import { cautionStrips, listStrips } from './lists.ts'
import { type Element, mm, type Pen } from './pen.ts'
import { drawQuilt, wholeOf } from './quilt.ts'
import { baseOf, pageBreak, type Strip, spaced, styles, textStrips, together } from './strips.ts'
import { rowsStrips, tableStrips } from './tables.ts'
import { firstLines } from './text.ts'

/** The room that a page has for blocks, points. */
export interface Room {
  readonly w: number
  readonly h: number
}

const unitOf = ({ unit }: Drawing): number => ({ mm: mm(1), in: 72, pt: 1 })[unit]

function drawingStrips(
  pen: Pen,
  { drawing, told }: Extract<Block, { block: 'drawing' }>,
  room: Room,
) {
  const scale = Math.min(unitOf(drawing), room.w / drawing.width, (room.h * 0.9) / drawing.height)
  const figure: Element = { tag: 'Figure', told }
  const left = (room.w - drawing.width * scale) / 2
  return [
    {
      high: drawing.height * scale,
      before: 6,
      draw: (x: number, y: number) =>
        pen.marked([figure], () => pen.drawing(drawing, x + left, y, scale)),
    },
  ]
}

function quiltStrips(
  pen: Pen,
  { quilt, told, most }: Extract<Block, { block: 'quilt' }>,
  room: Room,
): Strip[] {
  const whole = wholeOf(quilt)
  const scale = Math.min(room.w / whole.w, Math.min(mm(most), room.h * 0.9) / whole.h)
  const figure: Element = { tag: 'Figure', told }
  const left = (room.w - whole.w * scale) / 2
  return [
    {
      high: whole.h * scale,
      before: 6,
      draw: (x, y) => pen.marked([figure], () => drawQuilt(pen, quilt, x + left, y, scale)),
    },
  ]
}

function fieldStrips(pen: Pen, names: readonly string[], width: number): Strip[] {
  const [gap, high] = [mm(4), mm(13)]
  const w = (width - gap * (names.length - 1)) / names.length
  const style = styles.small
  return [
    {
      high,
      before: 6,
      keep: true,
      draw: (x, y) => {
        for (const [n, name] of names.entries()) {
          const left = x + n * (w + gap)
          pen.aside(() => pen.rule(left, y + high - 1, left + w, y + high - 1))
          const [line] = firstLines(name, style, w, { most: 1, measure: pen.measure })
          if (line) pen.marked([{ tag: 'P' }], () => pen.line(line, left, y + baseOf(style), style))
        }
      },
    },
  ]
}

const headings = { 1: styles.h1, 2: styles.h2, 3: styles.h3 } as const
const wordStyles = { small: styles.small, strong: styles.strong, large: styles.large } as const

/** A block as strips of the page's width. */
export function stripsOf(pen: Pen, block: Block, room: Room): Strip[] {
  const width = room.w
  switch (block.block) {
    case 'heading': {
      const path: Element[] = [{ tag: `H${block.level}` }]
      const style = headings[block.level]
      const strips = textStrips(pen, block.words, { style, width, path })
      return spaced(
        together(strips).map((strip) => ({ ...strip, keep: true })),
        block.level === 1 ? 0 : 9,
      )
    }
    case 'words': {
      const style = block.as ? wordStyles[block.as] : styles.text
      return spaced(textStrips(pen, block.words, { style, width, path: [{ tag: 'P' }] }), 3)
    }
    case 'caution':
      return spaced(cautionStrips(pen, block.words, width), 5)
    case 'list':
      return listStrips(pen, block, width)
    case 'rows':
      return rowsStrips(pen, block, width)
    case 'table':
      return tableStrips(pen, block, width)
    case 'drawing':
      return drawingStrips(pen, block, room)
    case 'quilt':
      return quiltStrips(pen, block, room)
    case 'cards':
      return cardStrips(pen, block, width)
    case 'fields':
      return fieldStrips(pen, block.names, width)
    case 'page':
      return [pageBreak]
  }
}
