import { inchWords, quartersPerInch } from '../base/units.ts'
import type { CutPiece } from '../quilt/cut/list.ts'
import { type Extent, two } from './cloth-marks.ts'
import type { Mark } from './drawing.ts'

/** Height of a size's letters, mm. */
export const letters = 3
const lineHigh = letters * 1.15
const air = 0.6

/** A piece's size as it lies, in inches: "5 × 6 1/2". */
export const sizeWords = ({ w, h }: { readonly w: number; readonly h: number }): string =>
  sizeParts({ w, h }).join(' × ')

export const sizeParts = ({
  w,
  h,
}: {
  readonly w: number
  readonly h: number
}): [string, string] => [inchWords(w / quartersPerInch), inchWords(h / quartersPerInch)]

export interface SizedPiece {
  readonly extent: Extent
  readonly piece: CutPiece
  /** What the block is called, where the piece is the block. */
  readonly block: string | null
}

/** What stands in a piece, and the room it takes; `letter`: it stands for a size in the key. */
export interface Label {
  readonly lines: readonly string[]
  readonly box: Extent
  readonly letter: string | null
  readonly piece: CutPiece
}

const wide = (lines: readonly string[]): number =>
  Math.max(...lines.map((line) => line.length)) * letters * 0.6

function inMiddle({ left, top, w, h }: Extent, lines: readonly string[]): Extent | null {
  const [width, height] = [wide(lines), lines.length * lineHigh]
  if (width + 2 * air > w || height + 2 * air > h) return null
  return { left: left + (w - width) / 2, top: top + (h - height) / 2, w: width, h: height }
}

/** The fullest words that a piece has room for. */
function spelled({ extent, piece, block }: SizedPiece) {
  const [w, h] = sizeParts(piece)
  const ways = [[`${w} × ${h}`], [`${w} ×`, h]]
  const full = block ? [...ways.map((way) => [block, ...way]), ...ways] : ways
  for (const lines of full) {
    const box = inMiddle(extent, lines)
    if (box) return { lines, box }
  }
  return null
}

/** A, B, … Z, AA, AB, …: letters, as numbers are the cuts'. */
const letterOf = (n: number): string =>
  n < 26
    ? String.fromCharCode(65 + n)
    : letterOf(Math.floor(n / 26) - 1) + String.fromCharCode(65 + (n % 26))

/** The sizes that stand in the pieces: in words, or by a letter where words have no room, or not at all. */
export function labelled(pieces: readonly SizedPiece[]): Label[] {
  const keys = new Map<string, string>()
  return pieces.flatMap((one): Label[] => {
    const { extent, piece } = one
    const words = spelled(one)
    if (words) return [{ ...words, letter: null, piece }]
    const size = sizeWords(piece)
    const letter = keys.get(size) ?? letterOf(keys.size)
    const box = inMiddle(extent, [letter])
    if (!box) return []
    keys.set(size, letter)
    return [{ lines: [letter], box, letter, piece }]
  })
}

export const labelMarks = ({ lines, box }: Label): Mark[] =>
  lines.map((words, n) => ({
    mark: 'text',
    at: [two(box.left + box.w / 2), two(box.top + n * lineHigh + letters * 0.9)],
    size: letters,
    anchor: 'middle',
    words,
  }))

/** "A: 2 1/2 × 2 1/2 in", a line for each letter. */
export function keyWords(
  labels: readonly Label[],
  measure: (w: string, h: string) => string,
): string[] {
  const lines = labels.flatMap(({ letter, piece }) =>
    letter ? [`${letter}: ${measure(...sizeParts(piece))}`] : [],
  )
  return [...new Set(lines)]
}
