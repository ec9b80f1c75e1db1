import { labOf } from '../../base/colour.ts'
import { type QuiltToDraw, untoldColour } from '../quilt-picture.ts'
import type { Pen } from './pen.ts'
import { linesOf, type Style } from './text.ts'

const seam = '#ffffff'

/** How high and wide a quilt is with what goes round it, inches. */
export function wholeOf({ finished, border, binding }: QuiltToDraw): { w: number; h: number } {
  const edge = 2 * (binding.widthIn + (border?.widthIn ?? 0))
  return { w: finished.w + edge, h: finished.h + edge }
}

/** The quilt in the colours of its cloths, from its upper left corner; `scale` points to the inch. */
export function drawQuilt(pen: Pen, quilt: QuiltToDraw, x: number, y: number, scale: number): void {
  const { doc } = pen
  const { border, binding, cloths, pieces } = quilt
  const whole = wholeOf(quilt)
  const edge = binding.widthIn + (border?.widthIn ?? 0)
  doc.save().translate(x, y).scale(scale)
  doc.rect(0, 0, whole.w, whole.h).fill(binding.colour)
  if (border) {
    const inner = binding.widthIn
    doc.rect(inner, inner, whole.w - 2 * inner, whole.h - 2 * inner).fill(border.colour)
  }
  doc.translate(edge, edge)
  for (const { cloth, parts } of pieces) {
    const { colour, garment } = cloths[cloth]!
    const shown = colour ?? untoldColour
    for (const part of parts) {
      doc.lineWidth(0.14).undash().lineJoin('miter').rect(part.x, part.y, part.w, part.h)
      doc.fillAndStroke(shown, seam)
    }
    // One number to a piece: in its largest part.
    const [largest] = parts.toSorted((a, b) => b.w * b.h - a.w * a.h)
    if (garment === null || !largest) continue
    number(pen, String(garment), largest, labOf(shown).l < 55)
  }
  doc.restore()
}

function number(
  pen: Pen,
  words: string,
  { x, y, w, h }: { x: number; y: number; w: number; h: number },
  isDark: boolean,
): void {
  const size = Math.min(2.4, h * 0.7, (w * 0.9) / (0.62 * words.length))
  const style: Style = { face: 'bold', size, ink: isDark ? '#ffffff' : '#000000' }
  const [line] = linesOf(words, style, Number.POSITIVE_INFINITY, pen.measure)
  pen.line(line!, x + (w - line!.wide) / 2, y + h / 2 + size * 0.34, style)
}
