import type { Fill, Ink, Mark, Pen as Pencil } from '../drawing.ts'
import type { Pen } from './pen.ts'
import { linesOf, type Style } from './text.ts'

/** On paper the roles are black, white and greys that a printer without colour keeps apart. */
const greys: Readonly<Record<Ink | Fill, string>> = {
  ink: '#000000',
  soft: '#5a5a5a',
  madder: '#000000',
  seam: '#8a8a8a',
  cloth: '#e6e6e6',
  paper: '#ffffff',
}

function trace(pen: Pen, mark: Exclude<Mark, { mark: 'text' }>): void {
  const { doc } = pen
  switch (mark.mark) {
    case 'line':
      doc.moveTo(...mark.from).lineTo(...mark.to)
      return
    case 'polyline': {
      const [first, ...rest] = mark.points
      doc.moveTo(...first!)
      for (const point of rest) doc.lineTo(...point)
      if (mark.closed) doc.closePath()
      return
    }
    case 'rect':
      if (mark.r) doc.roundedRect(...mark.at, mark.w, mark.h, mark.r)
      else doc.rect(...mark.at, mark.w, mark.h)
      return
    case 'circle':
      doc.circle(...mark.at, mark.r)
      return
    case 'path':
      doc.path(mark.d)
  }
}

function paint(pen: Pen, { stroke, width = 2, dash, fill }: Pencil): void {
  const { doc } = pen
  if (stroke) doc.lineWidth(width).lineCap('round').lineJoin('round').strokeColor(greys[stroke])
  if (dash) doc.addContent(`[${dash.join(' ')}] 0 d`)
  else doc.undash()
  if (fill && stroke) doc.fillAndStroke(greys[fill], greys[stroke])
  else if (fill) doc.fill(greys[fill])
  else if (stroke) doc.stroke()
  doc.undash()
}

function words(pen: Pen, mark: Extract<Mark, { mark: 'text' }>): void {
  const style: Style = { face: mark.bold ? 'bold' : 'text', size: mark.size }
  const [line] = linesOf(mark.words, style, Number.POSITIVE_INFINITY, pen.measure)
  if (!line) return
  const left = { start: 0, middle: line.wide / 2, end: line.wide }[mark.anchor]
  pen.line(line, mark.at[0] - left, mark.at[1], style)
}

/** Marks in the drawing's own unit, wherever the page has been moved to. */
export function drawMarks(pen: Pen, marks: readonly Mark[]): void {
  for (const mark of marks) {
    if (mark.mark === 'text') {
      words(pen, mark)
      continue
    }
    if (mark.mark === 'path' && mark.d === '') continue
    trace(pen, mark)
    paint(pen, mark)
  }
}
