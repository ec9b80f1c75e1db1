import type { Rect } from '../quilt/place/grid.ts'
import type { DrawnPiece, QuiltToDraw } from './quilt-picture.ts'
import type { QuiltTold } from './quilt-words.ts'

/** A quilt of a pile, ready to be drawn and told in words. */
export interface DrawnQuilt extends Omit<QuiltTold, 'quilt'> {
  readonly quilt: QuiltToDraw
}

/** A drawn quilt as it is kept: each piece in numbers. */
export interface KeptQuilt extends Omit<DrawnQuilt, 'quilt'> {
  readonly quilt: Omit<QuiltToDraw, 'pieces'> & {
    /** Cloth; 1 with the graphic, 2 turned, 3 both; x, y, w and h of each part, inches. */
    readonly pieces: readonly (readonly number[])[]
  }
}

const asNumbers = ({ cloth, graphic, turned, parts }: DrawnPiece): number[] => [
  cloth,
  Number(graphic) + 2 * Number(turned),
  ...parts.flatMap(({ x, y, w, h }) => [x, y, w, h]),
]

function asPiece([cloth, marks, ...sides]: readonly number[]): DrawnPiece {
  const parts = Array.from({ length: sides.length / 4 }, (_, n): Rect => {
    const [x, y, w, h] = sides.slice(4 * n, 4 * n + 4)
    return { x: x!, y: y!, w: w!, h: h! }
  })
  return { cloth: cloth!, graphic: marks! % 2 === 1, turned: marks! >= 2, parts }
}

/** About a quarter of the room that the pieces would take by their names. */
export const keepQuilt = ({ quilt, ...told }: DrawnQuilt): KeptQuilt => ({
  ...told,
  quilt: { ...quilt, pieces: quilt.pieces.map(asNumbers) },
})

export const keptQuilt = ({ quilt, ...told }: KeptQuilt): DrawnQuilt => ({
  ...told,
  quilt: { ...quilt, pieces: quilt.pieces.map(asPiece) },
})
