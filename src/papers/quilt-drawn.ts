import type { Extent } from '../quilt/layout.ts'
import type { QuiltPiece } from '../quilt/place/grid.ts'
import { isTurned } from './piece-places.ts'
import type { BoughtFor, DrawnCloth, DrawnPiece, QuiltToDraw, Round } from './quilt-picture.ts'

/** The colours bought cloth is drawn in until it is chosen, `#rrggbb`. */
export type BoughtColours = Readonly<Record<BoughtFor | 'binding', string>>

/** What is known of a garment's cloth. */
export interface GarmentCloth extends Pick<DrawnCloth, 'colour' | 'second' | 'print' | 'photo'> {
  readonly garment: number
  /** Longer side of its single graphic, inches; null: not told, or none. */
  readonly graphicIn: number | null
}

export interface QuiltInCells {
  readonly finished: Extent
  readonly pieces: readonly QuiltPiece[]
  /** The garment's number for each piece; null: bought cloth. */
  readonly cells: readonly (number | null)[]
}

/** How wide the binding shows on the front, inches. Common practice, no source. */
const bindingIn = 0.5

interface Place {
  readonly quilt: number
  readonly piece: number
}

/** The pieces, of all the quilts, that a garment's one graphic may be on: in the middle of a focal piece. */
function* graphicPlaces(quilts: readonly QuiltInCells[], garment: number) {
  for (const [quilt, { pieces, cells }] of quilts.entries()) {
    for (const [piece, { role, parts }] of pieces.entries()) {
      if (cells[piece] !== garment || role !== 'focal' || parts.length > 1) continue
      yield { at: { quilt, piece }, side: Math.min(parts[0]!.w, parts[0]!.h) }
    }
  }
}

/** There is one picture to a garment: it goes to the smallest piece that takes it, else to the largest. */
function graphicPlace(
  quilts: readonly QuiltInCells[],
  { garment, graphicIn }: GarmentCloth,
): Place | null {
  const places = [...graphicPlaces(quilts, garment)].sort((a, b) => a.side - b.side)
  const wide = graphicIn === null ? undefined : places.find(({ side }) => side >= graphicIn)
  return (wide ?? places.find(({ side }) => side === places.at(-1)!.side))?.at ?? null
}

const boughtCloth = (bought: BoughtFor, colour: string): DrawnCloth => ({
  garment: null,
  bought,
  colour,
  second: null,
  print: 'unknown',
  photo: null,
})

export interface ToDraw {
  /** The quilts of one pile. */
  readonly quilts: readonly QuiltInCells[]
  readonly cloths: readonly GarmentCloth[]
  readonly bought: BoughtColours
  readonly border?: Round
}

/**
 * The quilts of a pile, each piece in the cloth that lies there. A garment's graphic is on one piece of one
 * quilt. Throws on a garment that has no cloth, and on a quilt with more or fewer cells than pieces.
 */
export function quiltsDrawn({ quilts, cloths, bought, border }: ToDraw): QuiltToDraw[] {
  const byGarment = new Map(cloths.map((cloth) => [cloth.garment, cloth]))
  const graphics = cloths
    .filter(({ print }) => print === 'single')
    .flatMap((cloth) => graphicPlace(quilts, cloth) ?? [])
  return quilts.map(({ finished, pieces, cells }, quilt) => {
    if (cells.length !== pieces.length)
      throw new Error(`${cells.length} cells for ${pieces.length} pieces`)
    const used: DrawnCloth[] = []
    const places = new Map<string, number>()
    const placeOf = ({ role, sash }: QuiltPiece, garment: number | null): number => {
      const doing: BoughtFor = sash ? 'sashing' : role
      const key = garment === null ? doing : String(garment)
      const known = places.get(key)
      if (known !== undefined) return known
      places.set(key, used.length)
      used.push(garment === null ? boughtCloth(doing, bought[doing]) : drawn(garment))
      return used.length - 1
    }
    const drawn = (garment: number): DrawnCloth => {
      const cloth = byGarment.get(garment)
      if (!cloth) throw new Error(`garment ${garment} has no cloth`)
      const { colour, second, print, photo } = cloth
      return { garment, bought: null, colour, second, print, photo }
    }
    return {
      finished,
      pieces: pieces.map(
        (piece, n): DrawnPiece => ({
          parts: piece.parts,
          cloth: placeOf(piece, cells[n]!),
          graphic: graphics.some((at) => at.quilt === quilt && at.piece === n),
          turned: isTurned(piece),
        }),
      ),
      cloths: used,
      binding: { widthIn: bindingIn, colour: bought.binding },
      ...(border && { border }),
    }
  })
}
