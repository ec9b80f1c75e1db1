/** Lengths in inches. `seam` is the seam allowance on each side that is sewn. */

/** Cut side of a square or rectangle side that finishes at `finished`. */
export const cutFor = (finished: number, seam: number): number => finished + 2 * seam

/** Nine squares cut at `cut`, sewn three by three, quartered, and the quarters sewn together again. */
export function quarteredNinePatch(cut: number, seam: number) {
  const ninePatch = 3 * cut - 4 * seam
  const quarter = ninePatch / 2
  return {
    ninePatch,
    /** Each quarter as cut, and as it finishes. */
    quarter,
    quarterFinished: quarter - 2 * seam,
    unfinished: 3 * cut - 6 * seam,
    finished: 3 * cut - 8 * seam,
  }
}

export interface Grid {
  readonly columns: number
  readonly rows: number
}

/** Strips between the blocks and around them, `width` finished. */
export interface Sashed extends Grid {
  readonly block: number
  readonly sash: number
}

/** Finished size of blocks set edge to edge (`sash` 0), or with sashing between and around. */
export const setSize = ({ columns, rows, block, sash }: Sashed) => ({
  w: columns * block + (sash > 0 ? (columns + 1) * sash : 0),
  h: rows * block + (sash > 0 ? (rows + 1) * sash : 0),
})

/** Sashing strips one block long, between and around. */
export const sashStrips = ({ columns, rows }: Grid): number =>
  (columns + 1) * rows + columns * (rows + 1)

/** Small squares where the strips meet. */
export const cornerstones = ({ columns, rows }: Grid): number => (columns + 1) * (rows + 1)
