import { inchWords } from '../base/units.ts'
import type { Facts } from '../garment/facts.ts'
import type { Extent } from '../quilt/layout.ts'
import type { Language, Say } from '../words/words.ts'
import { upArrow } from './cloth-marks.ts'
import type { Drawing, Mark } from './drawing.ts'
import { addressWords, type PlacedPiece } from './piece-places.ts'
import type { Card, Printed } from './printed.ts'
import { pageWords } from './printed-packing.ts'
import { measureOf } from './printed-tags.ts'

/** A garment whose pieces get tickets. */
export interface TicketGarment {
  readonly n: number
  readonly code: string
  readonly name: string
  readonly facts: Facts
}

export interface TicketSheet {
  readonly pile: string
  readonly at: number
  readonly pieces: readonly PlacedPiece[]
  readonly quilts: number
  readonly garments: readonly TicketGarment[]
  readonly units: 'inches' | 'centimetres'
}

/** Cloth with a right way up: pile and nap, and prints that run one way. What is not told counts as such. */
export const runsOneWay = ({ surface, oneWay }: Facts): boolean =>
  surface === 'pile' || oneWay !== 'no'

const side = 12

/** Which way the cloth's own up points in the quilt; with a bar across where it may not be turned. */
export function ticketArrow(turned: boolean, oneWay: boolean): Drawing {
  const up = upArrow(side / 2, side - 1, side - 2)
  const turn = ([x, y]: readonly [number, number]): [number, number] => [side - y, x]
  const laid = up.map((mark): Mark => {
    if (!turned) return mark
    if (mark.mark === 'line') return { ...mark, from: turn(mark.from), to: turn(mark.to) }
    if (mark.mark === 'polyline') return { ...mark, points: mark.points.map(turn) }
    return mark
  })
  const bar: Mark = turned
    ? { mark: 'line', from: [2, 2.5], to: [2, side - 2.5], stroke: 'ink', width: 0.8 }
    : { mark: 'line', from: [2.5, side - 2], to: [side - 2.5, side - 2], stroke: 'ink', width: 0.8 }
  return { width: side, height: side, unit: 'mm', marks: oneWay ? [...laid, bar] : laid }
}

const inches = ({ w, h }: Extent, say: Say): string =>
  say('cut.measure', { w: inchWords(w), h: inchWords(h) })

function ticket(
  piece: PlacedPiece,
  { code, name, facts }: TicketGarment,
  quilts: number,
  say: Say,
): Card {
  const oneWay = runsOneWay(facts)
  const sewn = [...new Set(piece.parts.map((part) => inches(part, say)))].join(', ')
  return {
    big: addressWords(piece, quilts, say),
    lines: [
      `${code} ${name}`,
      ...(oneWay ? [say('printed.tickets.one_way')] : []),
      say('printed.tickets.cut', { size: inches(piece.cut, say) }),
      `${say('printed.tickets.sewn', { size: sewn })} · ${say(`trade.roles.${piece.role}`)}`,
    ],
    drawing: ticketArrow(piece.turned, oneWay),
  }
}

/** Three by seven tickets a page, on Letter and on A4. */
const ticketHigh = 32

/** A ticket for every piece that a garment gives, to be pinned to it: its place, its tag, its size, its up. */
export function ticketSheet(sheet: TicketSheet, language: Language): Printed {
  const { say } = language
  const { pile, at, pieces, quilts, units } = sheet
  const garments = new Map(sheet.garments.map((garment) => [garment.n, garment]))
  const title = say('printed.tickets.title')
  const cards = pieces.flatMap((piece) => {
    const garment = piece.garment === null ? undefined : garments.get(piece.garment)
    return garment ? ticket(piece, garment, quilts, say) : []
  })
  return {
    title,
    language: language.code,
    at,
    head: say('printed.head', { title, pile }),
    pages: pageWords(say),
    measure: measureOf(units, say),
    blocks: [
      { block: 'words', words: say('printed.tickets.help'), as: 'small' },
      { block: 'cards', columns: 3, high: ticketHigh, small: true, cards },
    ],
  }
}
