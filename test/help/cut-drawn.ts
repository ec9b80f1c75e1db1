import { type Drawing, type Mark, type Point, reach } from '../../src/papers/drawing.ts'
import type { PanelToCut } from '../../src/quilt/cut/panel.ts'
import type { Pattern } from '../../src/quilt/cut/patterns.ts'

type Text = Extract<Mark, { mark: 'text' }>
type Rectangle = Extract<Mark, { mark: 'rect' }>

const rectsOf = ({ marks }: Drawing) => marks.filter((m): m is Rectangle => m.mark === 'rect')
const isNumber = (mark: Mark): boolean => mark.mark === 'rect' && mark.r === 1.2

export const textsOf = ({ marks }: Drawing): Text[] =>
  marks.filter((m): m is Text => m.mark === 'text')

interface Spread {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

const spreadOf = (points: readonly Point[]): Spread => ({
  x1: Math.min(...points.map(([x]) => x)),
  y1: Math.min(...points.map(([, y]) => y)),
  x2: Math.max(...points.map(([x]) => x)),
  y2: Math.max(...points.map(([, y]) => y)),
})

const spreadOfMark = (mark: Mark): Spread =>
  spreadOf(reach(mark.mark === 'text' ? mark : { ...mark, width: 0 }))

/** As high as its letters stand: no figure of a size goes below the line. */
const spreadOfText = ({ at: [x, y], size, words }: Text): Spread => {
  const half = (words.length * size * 0.6) / 2
  return { x1: x - half, y1: y - size * 0.75, x2: x + half, y2: y }
}

const meet = (a: Spread, b: Spread): boolean =>
  a.x1 < b.x2 && b.x1 < a.x2 && a.y1 < b.y2 && b.y1 < a.y2

/** Drawings are rounded to the hundredth. */
const inside = (a: Spread, b: Spread): boolean =>
  a.x1 >= b.x1 - 0.02 && a.y1 >= b.y1 - 0.02 && a.x2 <= b.x2 + 0.02 && a.y2 <= b.y2 + 0.02

function strayed(drawing: Drawing, outline: Spread): string[] {
  const page: Spread = { x1: 0, y1: 0, x2: drawing.width, y2: drawing.height }
  return drawing.marks.flatMap((mark) => {
    if (!inside(spreadOf(reach(mark)), page)) return [`a ${mark.mark} leaves the drawing`]
    const mayStray =
      mark.mark === 'text' ||
      mark.mark === 'polyline' ||
      isNumber(mark) ||
      (mark.mark === 'line' && mark.stroke === 'ink')
    if (mayStray || inside(spreadOfMark(mark), outline)) return []
    return [`a ${mark.mark} lies outside the panel`]
  })
}

function wrongNumbers(drawing: Drawing, cuts: number): string[] {
  const told = textsOf(drawing)
    .filter(({ bold }) => bold)
    .map(({ words }) => Number(words))
    .toSorted((a, b) => a - b)
  const all = Array.from({ length: cuts }, (_, n) => n + 1)
  const wrong = told.join() === all.join() ? [] : [`numbers ${told.join()} for ${cuts} cuts`]
  const boxes = rectsOf(drawing).filter(isNumber).map(spreadOfMark)
  const sizes = textsOf(drawing).filter(({ bold }) => !bold)
  for (const [n, box] of boxes.entries()) {
    if (boxes.some((other, m) => m > n && meet(box, other))) wrong.push('two numbers overlap')
    const under = sizes.find((text) => meet(box, spreadOfText(text)))
    if (under) wrong.push(`a number lies over ${under.words}`)
  }
  return wrong
}

function wrongPieces(drawing: Drawing, { W }: PanelToCut, { items }: Pattern, outline: Spread) {
  const scale = (outline.x2 - outline.x1) / W
  const seen = rectsOf(drawing).filter(({ fill, stroke }) => fill === 'paper' && !stroke)
  const wrong = seen.length === items.length ? [] : [`${seen.length} pieces of ${items.length}`]
  for (const { x, y, w, h } of items) {
    const where = [outline.x1 + x * scale, outline.y1 + y * scale, w * scale, h * scale]
    const there = seen.filter(({ at, w: wide, h: high }) =>
      [...at, wide, high].every((n, i) => Math.abs(n - where[i]!) < 0.05),
    )
    if (there.length !== 1) wrong.push(`the piece at ${x}, ${y} is drawn ${there.length} times`)
  }
  return wrong
}

/** What is wrong with the drawing of so many cuts; empty where nothing is. */
export function wrongIn(
  drawing: Drawing,
  panel: PanelToCut,
  pattern: Pattern,
  cuts: number,
): string[] {
  const outline = spreadOfMark(rectsOf(drawing).find(({ width }) => width === 0.6)!)
  return [
    ...strayed(drawing, outline),
    ...wrongNumbers(drawing, cuts),
    ...wrongPieces(drawing, panel, pattern, outline),
  ]
}
