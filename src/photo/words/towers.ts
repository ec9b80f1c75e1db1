import { median, type Slab } from './picture.ts'
import { runOf } from './upright.ts'

/** Short words one above another may be found as one slab: higher than a line by this factor at least, and this narrow. */
const tower = { higher: 1.7, widest: 5 }
/** Pieces whose middles lie apart by less than this share of their height are of one row. */
const sameRow = 0.5

export interface Towers {
  /** The slabs that are lines. */
  readonly lines: readonly Slab[]
  /** The towers, such as a column of shares, cut into the rows of the lines beside them. */
  readonly rows: readonly Slab[]
}

/** Slabs of a level picture, the lines apart from what stands tall beside several of them. */
export function towersIn(slabs: readonly Slab[]): Towers {
  const usual = median(slabs.map(({ h }) => h))
  const isTall = ({ w, h }: Slab): boolean => h > tower.higher * usual && w < tower.widest * usual
  const lines = slabs.filter((slab) => !isTall(slab))
  const turn = runOf(lines)
  const rows = slabs.filter(isTall).flatMap((tall) => {
    const beside: Slab[] = []
    for (const { x, y } of lines) {
      const row = { x: tall.x, y: y + (tall.x - x) * Math.tan(turn), w: tall.w, h: usual, turn }
      const isBeside = 2 * Math.abs(row.y - tall.y) < tall.h
      if (isBeside && !beside.some((other) => Math.abs(other.y - row.y) < sameRow * usual))
        beside.push(row)
    }
    return beside
  })
  return { lines, rows }
}
