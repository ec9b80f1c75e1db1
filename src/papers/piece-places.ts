import type { Extent, Role } from '../quilt/layout.ts'
import type { QuiltGrid, QuiltPiece, Rect } from '../quilt/place/grid.ts'
import type { Say } from '../words/words.ts'

/** Where a piece lies, as it is spoken of; counted from 1 at the upper left corner. */
export type Address =
  | { readonly in: 'grid'; readonly row: number; readonly column: number }
  | {
      readonly in: 'block'
      readonly row: number
      readonly column: number
      readonly place: number
    }
  | { readonly in: 'strips'; readonly place: number }

/** A piece of a laid quilt with its address and who gives it. */
export interface PlacedPiece {
  /** From 0. */
  readonly quilt: number
  /** The garment's number; null: bought cloth. */
  readonly garment: number | null
  readonly address: Address
  readonly role: Role
  readonly cut: Extent
  readonly parts: readonly Rect[]
  /** It lies a quarter turn from how its cloth hung. */
  readonly turned: boolean
}

export interface LaidQuilt {
  readonly grid: QuiltGrid
  readonly cells: readonly (number | null)[]
  /** Finished inches: a block's side, and the strips between blocks. */
  readonly blockIn: number
  readonly sashIn: number
}

/** Cut standing and lying across, or the other way round. */
export function isTurned({ cut, parts }: Pick<QuiltPiece, 'cut' | 'parts'>): boolean {
  const { w, h } = parts[0]!
  return parts.length === 1 && (cut.w - cut.h) * (w - h) < 0
}

/** In which block a piece begins, from 0. */
function blockOf({ parts: [first] }: QuiltPiece, { blockIn, sashIn }: LaidQuilt) {
  const at = (along: number): number => Math.floor((along - sashIn + 1e-6) / (blockIn + sashIn))
  return { row: at(first!.y), column: at(first!.x) }
}

function addresses(quilt: LaidQuilt): Address[] {
  const { pieces, grid } = quilt.grid
  // Where strips lie between blocks, rows and columns would count the strips too.
  if (grid && !pieces.some(({ sash }) => sash)) {
    return pieces.map((_, n) => ({
      in: 'grid',
      row: Math.floor(n / grid.cols) + 1,
      column: (n % grid.cols) + 1,
    }))
  }
  const counted = new Map<string, number>()
  const next = (key: string): number => {
    const place = (counted.get(key) ?? 0) + 1
    counted.set(key, place)
    return place
  }
  return pieces.map((piece): Address => {
    if (piece.sash) return { in: 'strips', place: next('strips') }
    const { row, column } = blockOf(piece, quilt)
    return { in: 'block', row: row + 1, column: column + 1, place: next(`${row} ${column}`) }
  })
}

/** Every piece of a pile's quilts with its address, as they are sewn: from the upper left to the lower right. */
export const placedPieces = (quilts: readonly LaidQuilt[]): PlacedPiece[] =>
  quilts.flatMap((laid, quilt) => {
    const where = addresses(laid)
    return laid.grid.pieces.map((piece, n) => ({
      quilt,
      garment: laid.cells[n] ?? null,
      address: where[n]!,
      role: piece.role,
      cut: piece.cut,
      parts: piece.parts,
      turned: isTurned(piece),
    }))
  })

/** "R2 C5", "B2-3 / 4", "S12"; of several quilts with its number before it. */
export function addressWords(
  { address, quilt }: Pick<PlacedPiece, 'address' | 'quilt'>,
  quilts: number,
  say: Say,
): string {
  const { in: kind, ...gaps } = address
  const words = say(`printed.at.${kind}`, gaps)
  return quilts > 1 ? say('printed.at.of_quilt', { quilt: quilt + 1, at: words }) : words
}
