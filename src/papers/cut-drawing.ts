import { inchWords, quartersPerInch } from '../base/units.ts'
import { type Extent, two, upArrow } from './cloth-marks.ts'
import { clothMarks, cutMarks, extentOf, lineOf, numberMarks, type Place } from './cut-marks.ts'
import { type PlacedNumber, placeNumbers } from './cut-numbers.ts'
import type { PanelCut } from './cut-order.ts'
import {
  keyWords,
  type Label,
  labelled,
  labelMarks,
  letters,
  type SizedPiece,
} from './cut-sizes.ts'
import type { Drawing, Mark } from './drawing.ts'
import { Taken } from './taken.ts'

/** Words that stand in a drawing. */
export interface CutWords {
  /** "18 × 27 1/2 in" of "18" and "27 1/2". */
  readonly measure: (w: string, h: string) => string
  /** "block" */
  readonly block: string
  /** Where to look for a size or a number that found no room. */
  readonly unmarked: string
}

export interface CutDrawing {
  readonly drawing: Drawing
  /** Whether the list has room beside it, or it takes the width of the page. */
  readonly room: 'beside' | 'page'
}

interface Room {
  readonly room: CutDrawing['room']
  readonly w: number
  /** The drawing is no higher. */
  readonly h: number
}

/** A panel that stays whole is only shown, mm. */
const glance: Room = { room: 'beside', w: 92, h: 55 }
/** Half of the width, and all of it, that both A4 and Letter leave within their margins, mm. */
const beside: Room = { room: 'beside', w: 92, h: 125 }
const wholePage: Room = { room: 'page', w: 180, h: 200 }
/** These leave room for the list on the same page. */
const partPages: readonly Room[] = [130, 165].map((h) => ({ room: 'page', w: 180, h }))

/** More cuts than these have no list beside them; more than those want a page. */
const most = { beside: 20, part: 100 }

/** So many numbers that stand off their lines are no reason to draw larger. */
const ledMost = 2

/** A small panel is not blown up further: mm to the inch. */
const mostScale = 7
const margin = { side: 8, top: 6 }
const lineHigh = letters * 1.35
const arrowLong = 8

/** Heights of the numbers, mm: 8 points; less only where a page has no room for all. */
const numberSizes = { usual: 2.8, small: [2.1, 1.5] }

interface Laid {
  readonly place: Place
  readonly room: Room
  readonly pieces: readonly SizedPiece[]
  readonly labels: readonly Label[]
  readonly numbers: readonly PlacedNumber[]
  readonly numberSize: number
  /** Pieces without their size in words, and cuts without a number right beside them but for a few. */
  readonly lacking: number
  /** Cuts whose number found no place. */
  readonly unnumbered: number
}

function placeOf({ panel: { W, H }, pattern }: PanelCut, { w, h }: Room): Place {
  // Room is kept for a line of the key for each size, the panel's own, and one for what bears none.
  const sizes = new Set(pattern.items.map((piece) => `${piece.w},${piece.h}`)).size
  const scale = Math.min(
    (w - 2 * margin.side) / W,
    (h - 2 * margin.top - (sizes + 2) * lineHigh) / H,
    mostScale / quartersPerInch,
  )
  const left = (w - W * scale) / 2
  return { panel: { left, top: margin.top, w: W * scale, h: H * scale }, scale }
}

const bottomOf = ({ panel }: Place): number => panel.top + panel.h + margin.top

const arrowAt = ({ panel }: Place) => ({
  x: panel.left + panel.w + margin.side - 2,
  foot: margin.top + arrowLong,
})

function arrowBox(place: Place): Extent {
  const { x, foot } = arrowAt(place)
  return { left: x - 1.7, top: foot - arrowLong - 0.3, w: 3.4, h: arrowLong + 0.6 }
}

function lay(cut: PanelCut, words: CutWords, room: Room, numberSize: number): Laid {
  const { panel, pattern, order } = cut
  const place = placeOf(cut, room)
  const pieces = pattern.items.map((piece) => ({
    extent: extentOf(place, piece),
    piece,
    block: piece.k === panel.pieces.length ? words.block : null,
  }))
  const all = labelled(pieces)
  const numbers = placeNumbers(
    order.cuts.map((one) => lineOf(place, one)),
    {
      sheet: { left: 0.2, top: 0.2, w: room.w - 0.4, h: bottomOf(place) - 0.4 },
      panel: place.panel,
      fixed: [arrowBox(place), ...all.filter(({ letter }) => !letter).map(({ box }) => box)],
      yielding: all.filter(({ letter }) => letter).map(({ box }) => box),
      letters: numberSize,
    },
  )
  const covered = new Taken(numbers.map(({ box }) => box))
  const labels = all.filter(({ box }) => !covered.meets(box, 0))
  const inWords = labels.filter(({ letter }) => !letter).length
  const led = numbers.filter(({ leader }) => leader).length
  const unnumbered = order.cuts.length - numbers.length
  return {
    place,
    room,
    pieces,
    labels,
    numbers,
    numberSize,
    lacking: pieces.length - inWords + unnumbered + Math.max(0, led - ledMost),
    unnumbered,
  }
}

const isBetter = (one: Laid, other: Laid): boolean =>
  one.unnumbered < other.unnumbered ||
  (one.unnumbered === other.unnumbered && one.lacking < other.lacking)

/** The least room in which all is told, or else where most is. */
function bestLaid(cut: PanelCut, words: CutWords): Laid {
  const cuts = cut.order.cuts.length
  const rooms = [
    ...(cuts === 0 ? [glance] : cuts <= most.beside ? [beside] : []),
    ...(cuts <= most.part ? partPages : []),
    wholePage,
  ]
  let best = lay(cut, words, rooms[0]!, numberSizes.usual)
  for (const room of rooms.slice(1)) {
    if (best.lacking === 0) return best
    const next = lay(cut, words, room, numberSizes.usual)
    if (isBetter(next, best)) best = next
  }
  for (const size of numberSizes.small) {
    if (best.unnumbered === 0) return best
    const next = lay(cut, words, wholePage, size)
    if (isBetter(next, best)) best = next
  }
  return best
}

function wordsBelow({ panel }: PanelCut, laid: Laid, words: CutWords): Mark[] {
  const { place, room, pieces, labels, unnumbered } = laid
  const lines = [
    words.measure(inchWords(panel.W / quartersPerInch), inchWords(panel.H / quartersPerInch)),
    ...keyWords(labels, words.measure),
    ...(labels.length < pieces.length || unnumbered > 0 ? [words.unmarked] : []),
  ]
  return lines.map((line, n) => ({
    mark: 'text',
    at: [room.w / 2, two(bottomOf(place) + n * lineHigh + letters)],
    size: letters,
    anchor: 'middle',
    words: line,
  }))
}

/**
 * A panel with one way to cut it, in mm and to scale: what is lost hatched, what is left over dotted, the
 * pieces with their sizes as they lie, the cuts with their numbers in the order of the bench.
 */
export function cutDrawing(cut: PanelCut, words: CutWords): CutDrawing {
  const laid = bestLaid(cut, words)
  const { place, room, labels, numbers, numberSize } = laid
  const below = wordsBelow(cut, laid, words)
  const { x, foot } = arrowAt(place)
  const marks: Mark[] = [
    ...clothMarks(cut, place),
    ...cutMarks(cut, place),
    ...labels.flatMap(labelMarks),
    ...numbers.flatMap((one) => numberMarks(one, numberSize)),
    ...upArrow(x, foot, arrowLong),
    ...below,
  ]
  const height = two(bottomOf(place) + below.length * lineHigh + 1)
  return { drawing: { width: room.w, height, unit: 'mm', marks }, room: room.room }
}
