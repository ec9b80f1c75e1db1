import { cutFor, quarteredNinePatch } from '../arithmetic.ts'
import { type Design, type DesignBlock, demand, frameStrips, sashCuts, square } from '../design.ts'
import type { Extent, Layout, QuiltSize, Role } from '../layout.ts'

/** Finished inches; x across and y down from the quilt's upper left corner. */
export interface Rect extends Extent {
  readonly x: number
  readonly y: number
}

/** One piece as cut, and where it lies when all is sewn: in parts where it was cut again. */
export interface QuiltPiece {
  readonly role: Role
  /** As the layout's demand tells it, inches; a strip's shorter side first, however it lies. */
  readonly cut: Extent
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

type Rows = readonly (readonly Role[])[]

const moved = ({ x, y, ...size }: Rect, dx: number, dy: number): Rect => ({
  x: x + dx,
  y: y + dy,
  ...size,
})

function patches(rows: Rows, side: number, seam: number): QuiltPiece[] {
  return rows.flatMap((row, r) =>
    row.map((role, c) => ({
      role,
      cut: square(cutFor(side, seam)),
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
function quartered(rows: Rows, cut: number, seam: number): QuiltPiece[] {
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
      return { role, cut: square(cut), parts, sash: false }
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

/** The piece in the middle; strips as long as it above and below, strips as long as the block beside them. */
function framed(block: Extract<DesignBlock, { make: 'framed' }>, seam: number): QuiltPiece[] {
  const { side_in: side, piece_in: inner } = block
  const { thin, cuts } = frameStrips(block, seam)
  const piece = (role: Role, cut: Extent, rect: Rect): QuiltPiece => ({
    role,
    cut,
    parts: [rect],
    sash: false,
  })
  const middle = piece(block.role, square(cutFor(inner, seam)), {
    x: thin,
    y: thin,
    w: inner,
    h: inner,
  })
  const [short, long] = cuts
  if (!short || !long) return [middle]
  const far = side - thin
  const strip = (cut: Extent, rect: Rect) => piece(block.frame_role, cut, rect)
  return [
    middle,
    strip(short, { x: thin, y: 0, w: inner, h: thin }),
    strip(short, { x: thin, y: far, w: inner, h: thin }),
    strip(long, { x: 0, y: 0, w: thin, h: side }),
    strip(long, { x: far, y: 0, w: thin, h: side }),
  ]
}

function inBlock(block: DesignBlock, seam: number): QuiltPiece[] {
  switch (block.make) {
    case 'grid':
      return patches(block.roles, block.patch_in, seam)
    case 'quartered':
      return quartered(block.roles, block.cut_in, seam)
    case 'framed':
      return framed(block, seam)
  }
}

function sashes(layout: Layout, size: QuiltSize): QuiltPiece[] {
  const { sash, blockIn, sizes } = layout
  if (!sash) return []
  const { strip, corner } = sashCuts(layout)
  const { columns, rows } = sizes[size]
  const [thin, step] = [sash.width_in, blockIn + sash.width_in]
  const pieces: QuiltPiece[] = []
  const put = (role: Role, cut: Extent, rect: Rect): void => {
    pieces.push({ role, cut, parts: [rect], sash: true })
  }
  for (let r = 0; r <= rows; r++) {
    for (let c = 0; c <= columns; c++) {
      const [x, y] = [c * step, r * step]
      put(sash.corner_role, corner, { x, y, w: thin, h: thin })
      if (c < columns) put(sash.role, strip, { x: x + thin, y, w: blockIn, h: thin })
      if (r < rows) put(sash.role, strip, { x, y: y + thin, w: thin, h: blockIn })
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
export function gridOf(design: Design): QuiltGrid {
  const { layout, size, blocks, set } = design
  const thin = layout.sash?.width_in ?? 0
  const step = layout.blockIn + thin
  const inBlocks = set.flatMap((row, r) =>
    row.flatMap((name, c) =>
      inBlock(blocks[name]!, layout.seamIn).map(({ parts, ...piece }) => ({
        ...piece,
        parts: parts.map((part) => moved(part, c * step + thin, r * step + thin)),
      })),
    ),
  )
  const pieces = [...inBlocks, ...sashes(layout, size)].sort(
    ({ parts: [a] }, { parts: [b] }) => a!.y - b!.y || a!.x - b!.x,
  )
  return { finished: demand(design).finished, pieces, grid: asGrid(pieces) }
}
