import { createRequire } from 'node:module'
import { dirname } from 'node:path'
import { type Canvas, createCanvas, DOMMatrix, ImageData, Path2D } from '@napi-rs/canvas'

// Taken by the reader when it is loaded, so that it draws with the canvas of this file.
Object.assign(globalThis, { DOMMatrix, ImageData, Path2D })
const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs')

const home = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'))

/** Words of a page as they are read, each piece with its place in points from the lower left corner. */
export interface ReadPage {
  /** Lower left and upper right corner, points. */
  readonly box: readonly number[]
  readonly words: string
  readonly pieces: readonly {
    readonly text: string
    readonly x: number
    readonly y: number
    readonly w: number
    readonly h: number
  }[]
  /** Colours that it paints with, `#rrggbb`. */
  readonly colours: ReadonlySet<string>
}

interface StructNode {
  readonly role?: string
  readonly alt?: string
  readonly children?: readonly StructNode[]
}

const open = (pdf: Uint8Array) =>
  getDocument({
    data: new Uint8Array(pdf),
    verbosity: 0,
    standardFontDataUrl: `${home}/standard_fonts/`,
  })

/** Reads a PDF with a second program: what its pages say, where, and in which colours. */
export async function readPdf(pdf: Uint8Array) {
  const task = open(pdf)
  const doc = await task.promise
  const { info } = await doc.getMetadata()
  const pages: ReadPage[] = []
  const [roles, alts] = [new Set<string>(), new Set<string>()]
  const note = (node: StructNode): void => {
    if (node.role) roles.add(node.role)
    if (node.alt) alts.add(node.alt)
    for (const child of node.children ?? []) note(child)
  }
  for (let n = 1; n <= doc.numPages; n += 1) {
    const page = await doc.getPage(n)
    const { items } = await page.getTextContent()
    const { fnArray, argsArray } = await page.getOperatorList()
    const colours = new Set<string>()
    for (const [at, fn] of fnArray.entries()) {
      if (fn === OPS.setFillRGBColor || fn === OPS.setStrokeRGBColor) {
        colours.add(String(argsArray[at][0]))
      }
    }
    const pieces = items.flatMap((item) =>
      'str' in item
        ? {
            text: item.str,
            x: item.transform[4],
            y: item.transform[5],
            w: item.width,
            h: item.height,
          }
        : [],
    )
    const words = items
      .map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''))
      .join('')
      .replace(/\s+/g, ' ')
    note(((await page.getStructTree()) ?? {}) as StructNode)
    pages.push({ box: page.view, words, pieces, colours })
  }
  const all = pages.map(({ words }) => words).join(' ')
  const metadata = info as { Title?: string; Language?: string }
  await task.destroy()
  const { Title: title = '', Language: language = '' } = metadata
  return { pages, words: all, title, language, roles, alts }
}

/** Pieces of text that do not lie within their page, and within its printable middle: 5 mm from its edges. */
export const within = ({ box, pieces }: ReadPage): string[] => {
  const edge = (5 / 25.4) * 72
  const [left, bottom, right, top] = box
  return pieces
    .filter(
      ({ text, x, y, w, h }) =>
        text.trim() !== '' &&
        (x < left! + edge || y < bottom! + edge || x + w > right! - edge || y + h > top! - edge),
    )
    .map(({ text }) => text)
}

/** The longest run of dark dots in a row of a picture. */
export function darkRow(canvas: Canvas, row: number): number {
  const { data } = canvas.getContext('2d').getImageData(0, row, canvas.width, 1)
  let [longest, run] = [0, 0]
  for (let x = 0; x < canvas.width; x += 1) {
    run = data[4 * x]! < 160 ? run + 1 : 0
    longest = Math.max(longest, run)
  }
  return longest
}

/** A page as a picture, so many dots to the inch; from 1. */
export async function drawPdf(pdf: Uint8Array, number: number, dpi: number) {
  const task = open(pdf)
  const doc = await task.promise
  const page = await doc.getPage(number)
  const viewport = page.getViewport({ scale: dpi / 72 })
  const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height))
  const context = canvas.getContext('2d')
  await page.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise
  await task.destroy()
  return canvas
}
