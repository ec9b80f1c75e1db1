import type { Block, Card } from '../printed.ts'
import { type QrCode, qrOf, quietSquares, sideOf } from '../qr.ts'
import { type Element, mm, type Pen } from './pen.ts'
import { baseOf, lineHigh, type Strip, styles } from './strips.ts'
import { firstLines, linesOf, type Style } from './text.ts'

type Cards = Extract<Block, { block: 'cards' }>

const pad = mm(3)
const dash = 3

interface Box {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** The large word as large as its room lets it be. */
function bigStyle(pen: Pen, words: string, width: number, small: boolean): Style {
  const sizes = small ? [16, 13, 11] : [26, 22, 18, 15]
  const fits = sizes.find(
    (size) => linesOf(words, { face: 'bold', size }, width, pen.measure).length <= 1,
  )
  return { face: 'bold', size: fits ?? sizes.at(-1)! }
}

function wordsOf(pen: Pen, { big, lines }: Card, { x, y, w, h }: Box, small: boolean): void {
  const large = bigStyle(pen, big, w, small)
  let at = y
  for (const line of firstLines(big, large, w, { most: 1, measure: pen.measure })) {
    pen.line(line, x, at + baseOf(large), large)
    at += lineHigh(large)
  }
  for (const [n, words] of lines.entries()) {
    const style = n === 0 ? styles.strong : styles.small
    const room = Math.floor((y + h - at) / lineHigh(style))
    if (room < 1) return
    const most = Math.min(room, n > 0 ? 4 : small ? 1 : 2)
    for (const line of firstLines(words, style, w, { most, measure: pen.measure })) {
      pen.line(line, x, at + baseOf(style), style)
      at += lineHigh(style)
    }
  }
}

const coded = (pen: Pen, code: QrCode, side: number, { x, y, h }: Box): number => {
  const square = side / code.rows.length
  const whole = side + 2 * quietSquares * square
  pen.code(code, x, y + (h - whole) / 2, side)
  return whole
}

function drawCard(
  pen: Pen,
  card: Card,
  cell: Box,
  { codeSide, small }: { codeSide: number; small: boolean },
): void {
  const element: Element = { tag: 'P' }
  let [left, right] = [cell.x + pad, cell.x + cell.w - pad]
  const inner = { y: cell.y + pad, h: cell.h - 2 * pad }
  if (card.code !== undefined) {
    const code = qrOf(card.code)
    const figure: Element = { tag: 'Figure', told: card.code }
    const at = { x: cell.x, y: cell.y, w: 0, h: cell.h }
    pen.marked([figure], () => {
      left = cell.x + coded(pen, code, mm(sideOf(code, codeSide)), at)
    })
  }
  const { drawing } = card
  if (drawing) {
    const unit = { mm: mm(1), in: 72, pt: 1 }[drawing.unit]
    const scale = Math.min(unit, inner.h / drawing.height, cell.w / 3 / drawing.width)
    right -= drawing.width * scale
    pen.aside(() => pen.drawing(drawing, right, inner.y, scale))
    right -= pad
  }
  pen.marked([element], () => wordsOf(pen, card, { x: left, w: right - left, ...inner }, small))
}

/** Fields side by side with lines to cut along. */
export function cardStrips(
  pen: Pen,
  { columns, high, codeSide = 15, small = false, cards }: Cards,
  width: number,
): Strip[] {
  const [w, h] = [width / columns, mm(high)]
  const rows = Array.from({ length: Math.ceil(cards.length / columns) }, (_, n) =>
    cards.slice(n * columns, (n + 1) * columns),
  )
  return rows.map((row, n) => ({
    high: h,
    ...(n === 0 && { before: 8 }),
    draw: (x, y) => {
      pen.aside(() => {
        const right = x + row.length * w
        pen.rule(x, y, right, y, dash)
        pen.rule(x, y + h, right, y + h, dash)
        for (let n = 0; n <= row.length; n += 1) pen.rule(x + n * w, y, x + n * w, y + h, dash)
      })
      for (const [n, card] of row.entries()) {
        drawCard(pen, card, { x: x + n * w, y, w, h }, { codeSide, small })
      }
    },
  }))
}
