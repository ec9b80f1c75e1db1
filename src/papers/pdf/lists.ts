import type { Block, PrintedItem } from '../printed.ts'
import type { Element, Pen } from './pen.ts'
import { mm } from './pen.ts'
import { baseOf, lineHigh, type Strip, spaced, styles, textStrips, together } from './strips.ts'
import { linesOf } from './text.ts'

type List = Extract<Block, { block: 'list' }>

const boxSide = mm(3.4)

/** Longer items may be torn apart, points. */
const keptWhole = 260

const dash = 2.2
const inset = 5

/** Text in a dashed box. The box goes on where it is torn apart. */
export function cautionStrips(pen: Pen, words: string, width: number, left = 0): Strip[] {
  const style = styles.strong
  const path: Element[] = [{ tag: 'P' }]
  const lines = linesOf(words, style, width - left - 2 * inset, pen.measure)
  const pad = 3
  return together(
    lines.map((line, n) => {
      const [first, last] = [n === 0, n === lines.length - 1]
      const above = first ? pad : 0
      const high = lineHigh(style) + above + (last ? pad : 0)
      return {
        high,
        ...(first && { before: 3 }),
        draw: (x, y) => {
          const [from, to] = [x + left, x + width]
          pen.aside(() => {
            pen.rule(from, y, from, y + high, dash)
            pen.rule(to, y, to, y + high, dash)
            if (first) pen.rule(from, y, to, y, dash)
            if (last) pen.rule(from, y + high, to, y + high, dash)
          })
          pen.marked(path, () => pen.line(line, from + inset, y + above + baseOf(style), style))
        },
      }
    }),
  )
}

function itemStrips(
  pen: Pen,
  item: PrintedItem,
  { as, n, list, width }: { as: List['as']; n: number; list: Element; width: number },
): Strip[] {
  const entry: Element = { tag: 'LI' }
  const [label, body]: Element[] = [{ tag: 'Lbl' }, { tag: 'LBody' }]
  const boxed = as === 'tick' || as === 'step'
  const numbered = as === 'step' || as === 'number'
  const left = as === 'plain' ? 12 : (boxed ? boxSide + 7 : 0) + (numbered ? 20 : 0)
  const path = [list, entry, body!]
  const words = textStrips(pen, item.words, { style: styles.text, width, left, path })
  const [first, ...rest] = words
  const marked: Strip[] = first
    ? [
        {
          ...first,
          draw: (x, y) => {
            const foot = y + baseOf(styles.text)
            if (boxed) pen.aside(() => pen.box(x, foot - boxSide + 1.2, boxSide, boxSide))
            if (numbered) {
              const [line] = linesOf(String(n), styles.strong, 40, pen.measure)
              const at = x + (boxed ? boxSide + 7 : 0)
              pen.marked([list, entry, label!], () => pen.line(line!, at, foot, styles.strong))
            }
            if (as === 'plain') pen.aside(() => pen.rule(x + 2, foot - 3, x + 7, foot - 3))
            first.draw(x, y)
          },
        },
        ...rest,
      ]
    : []
  const notes = (item.notes ?? []).flatMap((note) =>
    textStrips(pen, note, { style: styles.small, width, left, path }),
  )
  const cautions = (item.cautions ?? []).flatMap((one) => cautionStrips(pen, one, width, left))
  const all = spaced([...marked, ...notes, ...cautions], 4)
  const high = all.reduce((sum, strip) => sum + strip.high, 0)
  return high < keptWhole ? together(all) : all
}

export function listStrips(pen: Pen, { as, items }: List, width: number): Strip[] {
  const list: Element = { tag: 'L' }
  return items.flatMap((item, i) => itemStrips(pen, item, { as, n: i + 1, list, width }))
}
