import { buffer } from 'node:stream/consumers'
import { type PaperName, papers } from '../paper-size.ts'
import type { Printed } from '../printed.ts'
import { type Room, stripsOf } from './blocks.ts'
import { mm, openDocument, Pen } from './pen.ts'
import { baseOf, drawLines, lineHigh, pageBreak, type Strip, styles } from './strips.ts'
import { firstLines, linesOf, plainText } from './text.ts'

/** Around what is printed, mm: most printers reach so far. Below there is room for the line to measure. */
const margins = { side: 15, top: 19, bottom: 13, measured: 20, head: 10 } as const

interface Sheet {
  readonly w: number
  readonly h: number
  readonly room: Room
}

function sheetOf(paper: PaperName, { measure }: Printed): Sheet {
  const { w, h } = papers[paper]
  const below = measure ? margins.measured : margins.bottom
  return {
    w: mm(w),
    h: mm(h),
    room: { w: mm(w - 2 * margins.side), h: mm(h - margins.top - below) },
  }
}

/** Strips that must not be parted, one group after the other. */
function* groups(strips: readonly Strip[]): Generator<Strip[]> {
  let group: Strip[] = []
  for (const strip of strips) {
    group.push(strip)
    if (strip.keep) continue
    yield group
    group = []
  }
  if (group.length > 0) yield group
}

const highOf = (strips: readonly Strip[]): number =>
  strips.reduce((sum, { high, before = 0 }) => sum + high + before, 0)

function flow(pen: Pen, strips: readonly Strip[], { w, h, room }: Sheet): void {
  const left = mm(margins.side)
  const [top, bottom] = [mm(margins.top), mm(margins.top) + room.h]
  let y = top
  const newPage = () => {
    pen.doc.addPage({ size: [w, h], margin: 0 })
    y = top
  }
  const put = (strip: Strip) => {
    if (y > top) y += strip.before ?? 0
    else if (strip.again && y === top) {
      strip.again.draw(left, y)
      y += strip.again.high
    }
    strip.draw(left, y)
    y += strip.high
  }
  newPage()
  for (const group of groups(strips)) {
    if (group.includes(pageBreak)) {
      if (y > top) newPage()
      continue
    }
    if (y > top && y + highOf(group) > bottom) newPage()
    for (const strip of group) {
      if (y > top && y + strip.high > bottom + 0.01) newPage()
      put(strip)
    }
  }
}

/** What stands above and below every page. */
function frame(pen: Pen, { head, pages, measure }: Printed, sheet: Sheet): void {
  const { doc } = pen
  const style = styles.small
  const { start, count } = doc.bufferedPageRange()
  const [left, right] = [mm(margins.side), sheet.w - mm(margins.side)]
  for (let page = start; page < start + count; page += 1) {
    doc.switchToPage(page)
    pen.aside(() => {
      const y = mm(margins.head)
      const of = pages.replace('#n', String(page + 1)).replace('#m', String(count))
      const [number] = linesOf(of, style, sheet.room.w, pen.measure)
      const wide = number?.wide ?? 0
      const most = { most: 1, measure: pen.measure }
      const [name] = firstLines(head, style, sheet.room.w - wide - 12, most)
      if (name) pen.line(name, left, y + baseOf(style), style)
      if (number) pen.line(number, right - wide, y + baseOf(style), style)
      pen.rule(left, y + 13, right, y + 13)
      if (measure) ruler(pen, measure, left, sheet.h - mm(11))
    })
  }
}

/** A line with an end at each side, to be held against a ruler. */
function ruler(pen: Pen, measure: NonNullable<Printed['measure']>, x: number, y: number): void {
  const long = mm(measure.long)
  pen.rule(x, y, x + long, y)
  pen.rule(x, y - 4, x, y + 4)
  pen.rule(x + long, y - 4, x + long, y + 4)
  const style = styles.small
  const lines = linesOf(measure.words, style, mm(115), pen.measure)
  drawLines(pen, lines, { x: x + long + 8, y: y - (lines.length * lineHigh(style)) / 2, style })
}

/**
 * The paper as a PDF, tagged for who has it read aloud. The same paper gives the same bytes. Characters that the
 * typefaces lack are boxes with their code points.
 */
export async function pdfOf(printed: Printed, paper: PaperName): Promise<Buffer> {
  const doc = openDocument({
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    displayTitle: true,
    lang: printed.language,
    info: {
      Title: plainText(printed.title),
      Creator: 'Pieceworth',
      Producer: 'Pieceworth',
      CreationDate: new Date(printed.at),
    },
  })
  const bytes = buffer(doc)
  const pen = new Pen(doc)
  const sheet = sheetOf(paper, printed)
  const strips = printed.blocks.flatMap((block) => stripsOf(pen, block, sheet.room))
  flow(pen, strips, sheet)
  frame(pen, printed, sheet)
  pen.end()
  doc.end()
  return bytes
}
