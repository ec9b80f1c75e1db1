import type { Design } from '../design.ts'
import type { QuiltGrid } from './grid.ts'

/** Where a piece is looked for; everything counts from 1. */
export interface Where {
  /** Of its block. */
  readonly row: number
  readonly column: number
  /** Which of its block's pieces it is, as the grid has them. */
  readonly nth: number
  /** How many pieces the block has. */
  readonly of: number
}

/** The place of each piece of a design's grid; null: it is a strip between blocks. */
export function wheresOf({ layout }: Design, { pieces }: QuiltGrid): (Where | null)[] {
  const thin = layout.sash?.width_in ?? 0
  const step = layout.blockIn + thin
  const counts = new Map<string, number>()
  const found = pieces.map(({ parts: [first], sash }) => {
    if (sash) return null
    const row = Math.floor((first!.y - thin) / step) + 1
    const column = Math.floor((first!.x - thin) / step) + 1
    const block = `${row} ${column}`
    const nth = (counts.get(block) ?? 0) + 1
    counts.set(block, nth)
    return { row, column, nth, block }
  })
  return found.map((one) => {
    if (!one) return null
    const { block, ...where } = one
    return { ...where, of: counts.get(block)! }
  })
}
