import { quarteredNinePatch } from '../arithmetic.ts'
import {
  blockGrid,
  demand,
  type Extent,
  type Layout,
  type QuiltSize,
  type Role,
} from '../layout.ts'

/** Finished inches; x across and y down from the quilt's upper left corner. */
export interface Rect extends Extent {
  readonly x: number
  readonly y: number
}

/** One piece as cut, and where it lies when all is sewn: in parts where it was cut again. */
export interface QuiltPiece {
  readonly role: Role
  readonly parts: readonly Rect[]
  readonly sash: boolean
}

/** Pieces that lie in rows and columns right across: what `place` takes. */
export interface RoleGrid {
  readonly rows: number
  readonly cols: number
  /** Row by row, as the pieces are. */
  readonly cells: readonly Role[]
}

export interface QuiltGrid {
  readonly finished: Extent
  /** From the upper left to the lower right, by their first part. */
  readonly pieces: readonly QuiltPiece[]
  /** Null where pieces are of several sizes or cut again: their board follows from which of them touch. */
  readonly grid: RoleGrid | null
}

type Block = Layout['blocks'][string]

const moved = ({ x, y, ...size }: Rect, dx: number, dy: number): Rect => ({
  x: x + dx,
  y: y + dy,
  ...size,
})

function patches({ roles: rows }: Block, side: number): QuiltPiece[] {
  return rows.flatMap((row, r) =>
    row.map((role, c) => ({
      role,
      parts: [{ x: c * side, y: r * side, w: side, h: side }],
      sash: false,
    })),
  )
}

/**
 * Nine squares, sewn three by three and cut into quarters through the middle. A corner square stays whole
 * in its quarter, a side square is in two quarters and the middle one in four. The upper right and the
 * lower left quarter are turned half round, the other two are not (common practice, no source), and no
 * quarter changes its block. With 5 in squares and 1/4 in seams a corner finishes at 4 1/2 in square, a
 * half at 2 × 4 1/2 in, a quarter of the middle at 2 in square: 6 1/2 in a quarter, 13 in the block.
 */
function quartered({ roles: rows }: Block, cut: number, seam: number): QuiltPiece[] {
  const whole = cut - 2 * seam
  const side = quarteredNinePatch(cut, seam).quarterFinished
  return rows.flatMap((row, r) =>
    row.map((role, c) => {
      const parts = spansOf(r, whole, side).flatMap((down) =>
        spansOf(c, whole, side).map((across): Rect => {
          const isTurned = down.quarter !== across.quarter
          const begin = ({ quarter, at, long }: Span): number =>
            quarter * side + (isTurned ? side - at - long : at)
          return { x: begin(across), y: begin(down), w: across.long, h: down.long }
        }),
      )
      return { role, parts, sash: false }
    }),
  )
}

interface Span {
  /** The first or the second quarter across, or down. */
  readonly quarter: 0 | 1
  readonly at: number
  readonly long: number
}

/** Where the nth of three squares lies in the two quarters, before any is turned. */
function spansOf(n: number, whole: number, side: number): Span[] {
  const half = side - whole
  if (n === 0) return [{ quarter: 0, at: 0, long: whole }]
  if (n === 2) return [{ quarter: 1, at: half, long: whole }]
  return [
    { quarter: 0, at: whole, long: half },
    { quarter: 1, at: 0, long: half },
  ]
}

function sashes({ sash, blockIn, sizes }: Layout, size: QuiltSize): QuiltPiece[] {
  if (!sash) return []
  const { columns, rows } = sizes[size]
  const [thin, step] = [sash.width_in, blockIn + sash.width_in]
  const pieces: QuiltPiece[] = []
  const put = (role: Role, x: number, y: number, w: number, h: number): void => {
    pieces.push({ role, parts: [{ x, y, w, h }], sash: true })
  }
  for (let r = 0; r <= rows; r++) {
    for (let c = 0; c <= columns; c++) {
      put(sash.corner_role, c * step, r * step, thin, thin)
      if (c < columns) put(sash.role, c * step + thin, r * step, blockIn, thin)
      if (r < rows) put(sash.role, c * step, r * step + thin, thin, blockIn)
    }
  }
  return pieces
}

/** The pieces as a grid, if each lies in one row and one column and none is missing. */
function asGrid(pieces: readonly QuiltPiece[]): RoleGrid | null {
  if (pieces.some(({ parts }) => parts.length > 1)) return null
  const rects = pieces.map(({ parts }) => parts[0]!)
  const cols = new Set(rects.map(({ x, w }) => `${x} ${w}`)).size
  const rows = new Set(rects.map(({ y, h }) => `${y} ${h}`)).size
  if (rows * cols !== pieces.length) return null
  return { rows, cols, cells: pieces.map(({ role }) => role) }
}

/** Where every piece of a quilt lies when it is finished, and its rows and columns where it has them. */
export function gridOf(layout: Layout, size: QuiltSize): QuiltGrid {
  const thin = layout.sash?.width_in ?? 0
  const step = layout.blockIn + thin
  const inBlocks = blockGrid(layout, size).flatMap((row, r) =>
    row.flatMap((name, c) => {
      const block = layout.blocks[name]!
      const own =
        block.make === 'quartered'
          ? quartered(block, block.cut_in, layout.seamIn)
          : patches(block, block.patch_in)
      return own.map(({ parts, ...piece }) => ({
        ...piece,
        parts: parts.map((part) => moved(part, c * step + thin, r * step + thin)),
      }))
    }),
  )
  const pieces = [...inBlocks, ...sashes(layout, size)].sort(
    ({ parts: [a] }, { parts: [b] }) => a!.y - b!.y || a!.x - b!.x,
  )
  return { finished: demand(layout, size).finished, pieces, grid: asGrid(pieces) }
}
