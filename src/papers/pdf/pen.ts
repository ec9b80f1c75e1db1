import PDFDocument from 'pdfkit'
import type { Drawing } from '../drawing.ts'
import { type QrCode, quietSquares } from '../qr.ts'
import { type NamedCut, runsOf } from './faces.ts'
import { drawMarks } from './marks.ts'
import { boxWide, codeRows, type Measure, type Style, type TextLine } from './text.ts'

export const mm = (n: number): number => (n * 72) / 25.4

/** An element of the paper's structure, as readers of tagged PDF know them: "P", "H1", "L", "Figure". */
export interface Element {
  readonly tag: string
  /** What a figure shows. */
  readonly told?: string
}

export const inks = { black: '#000000', soft: '#505050', line: '#000000', pale: '#b0b0b0' } as const

/** Hairlines, points. */
export const hair = 0.4

type Structure = ReturnType<PDFKit.PDFDocument['struct']>

/** Draws on the pages of a PDF. All lengths are in points, y down. */
export class Pen {
  readonly doc: PDFKit.PDFDocument
  readonly #known = new Set<string>()
  readonly #structures = new Map<Element, Structure>()
  readonly #root: Structure

  constructor(doc: PDFKit.PDFDocument) {
    this.doc = doc
    this.#root = doc.struct('Document')
    doc.addStructure(this.#root)
  }

  readonly measure: Measure = ({ font, text }, { size }) => {
    if (!font) return size * boxWide
    this.#use(font)
    return this.doc.fontSize(size).widthOfString(text)
  }

  #use({ name, font }: NamedCut): void {
    if (!this.#known.has(name)) {
      // The package takes fonts that are read already; its types do not say so.
      this.doc.registerFont(name, font() as never)
      this.#known.add(name)
    }
    this.doc.font(name)
  }

  /** Draws what belongs to an element of the structure; the first of the path is the outermost. */
  marked(path: readonly Element[], draw: () => void): void {
    const own = this.#structureOf(path)
    const content = this.doc.markStructureContent(path.at(-1)!.tag)
    draw()
    this.doc.endMarkedContent()
    own.add(content)
  }

  #structureOf(path: readonly Element[]): Structure {
    let above = this.#root
    for (const element of path) {
      let own = this.#structures.get(element)
      if (!own) {
        own = this.doc.struct(element.tag, element.told ? { alt: element.told } : {})
        above.add(own)
        this.#structures.set(element, own)
      }
      above = own
    }
    return above
  }

  /** Draws what is no part of what is read: heads of pages, lines to cut along. */
  readonly aside = (draw: () => void): void => {
    this.doc.markContent('Artifact', { type: 'Layout' })
    draw()
    this.doc.endMarkedContent()
  }

  /** Ends the structure. Throws where a page is begun afterwards. */
  end(): void {
    this.#root.end()
  }

  /** A line of text; `y` is its base line. */
  line({ words }: TextLine, x: number, y: number, style: Style): void {
    let at = x
    const space = this.measure(runsOf(' ', style.face)[0]!, style)
    for (const [n, word] of words.entries()) {
      for (const [i, run] of word.entries()) {
        const wide = this.measure(run, style)
        // The gap belongs to the word before it, so that words are read apart.
        const gap = n < words.length - 1 && i === word.length - 1
        if (run.font) this.#text(gap ? `${run.text} ` : run.text, at, y, style)
        else this.#codeBox(run.text, at, y, style)
        at += wide
      }
      at += space
    }
  }

  #text(text: string, x: number, y: number, { size, soft, ink }: Style): void {
    this.doc
      .fillColor(ink ?? (soft ? inks.soft : inks.black))
      .fontSize(size)
      .text(text, x, y, { lineBreak: false, baseline: 'alphabetic' })
  }

  /** A character that no font has: its code point in a box, so that it is missed by nobody. */
  #codeBox(sign: string, x: number, y: number, style: Style): void {
    const { size } = style
    const [w, h] = [size * (boxWide - 0.12), size * 0.86]
    const small: Style = { face: 'text', size: size * 0.36 }
    this.doc.lineWidth(hair).undash().strokeColor(inks.black)
    this.doc.rect(x + size * 0.06, y - size * 0.74, w, h).stroke()
    for (const [n, row] of codeRows(sign).entries()) {
      const [run] = runsOf(row, 'text')
      const wide = this.measure(run!, small)
      const foot = y - size * 0.74 + h * (n === 0 ? 0.46 : 0.88)
      this.#text(row, x + size * 0.06 + (w - wide) / 2, foot, small)
    }
  }

  /** From one point to another; `dash` in points. */
  rule(x1: number, y1: number, x2: number, y2: number, dash: number | null = null): void {
    const { doc } = this
    doc.lineWidth(hair).strokeColor(inks.line)
    if (dash === null) doc.undash()
    else doc.dash(dash, { space: dash })
    doc.moveTo(x1, y1).lineTo(x2, y2).stroke().undash()
  }

  box(x: number, y: number, w: number, h: number): void {
    this.doc.lineWidth(0.8).undash().strokeColor(inks.black).rect(x, y, w, h).stroke()
  }

  /** A drawing from its upper left corner, `scale` points to its unit. */
  drawing(drawing: Drawing, x: number, y: number, scale: number): void {
    const { doc } = this
    doc.save().translate(x, y).scale(scale)
    drawMarks(this, drawing.marks)
    doc.restore()
  }

  /** The squares of a code, `side` wide without the quiet zone, whose corner is at x and y. */
  code({ rows }: QrCode, x: number, y: number, side: number): void {
    const square = side / rows.length
    const quiet = quietSquares * square
    for (const [row, squares] of rows.entries()) {
      // A row of dark squares is one shape: no seams between them on a screen or a printer.
      for (let from = 0; from < squares.length; from += 1) {
        let to = from
        while (squares[to]) to += 1
        if (to > from) {
          this.doc.rect(
            x + quiet + from * square,
            y + quiet + row * square,
            (to - from) * square,
            square,
          )
        }
        from = to
      }
    }
    this.doc.fill(inks.black)
  }
}

export const openDocument = (options: PDFKit.PDFDocumentOptions): PDFKit.PDFDocument =>
  new PDFDocument(options)
