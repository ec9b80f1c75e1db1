import { cornerstones, cutFor, sashStrips, setSize } from './arithmetic.ts'
import {
  airIn,
  type Block,
  type Extent,
  type Layout,
  type QuiltSize,
  type Role,
  roles,
} from './layout.ts'

type Framed = Extract<Block, { make: 'framed' }>

/** A block as it is sewn: a framed one with the finished side of its one piece, inches. */
export type DesignBlock = Exclude<Block, Framed> | (Framed & { readonly piece_in: number })

/** A quilt of a layout for one pile. */
export interface Design {
  readonly layout: Layout
  readonly size: QuiltSize
  readonly blocks: Readonly<Record<string, DesignBlock>>
  /** The names of the blocks as they are set, row by row. */
  readonly set: readonly (readonly string[])[]
}

/** Pieces of one size and role, as cut. */
export interface Wanted {
  readonly size: Extent
  readonly role: Role
  readonly count: number
}

export interface Demand {
  readonly columns: number
  readonly rows: number
  readonly blocks: number
  readonly finished: Extent
  readonly pieces: readonly Wanted[]
}

/** `count` places of `among`, as far from one another as they can be: the same ones for the same numbers. */
const spread = (count: number, among: number): Set<number> =>
  new Set(Array.from({ length: count }, (_, n) => Math.floor(((2 * n + 1) * among) / (2 * count))))

/**
 * The finished side of a framed piece for a picture of that longer side, with its air, inches: in whole
 * steps, and so that its strips are none or thick enough; the whole block where the picture is larger.
 */
export function framedPiece(frame: Framed, graphicIn: number): number {
  const { side_in, step_in, least_in, strip_least_in } = frame
  const wanted = Math.max(least_in, graphicIn + 2 * airIn)
  const piece = Math.ceil(wanted / step_in) * step_in
  return (side_in - piece) / 2 < strip_least_in ? side_in : piece
}

/** The layout's own blocks, row by row, repeated until the quilt is full. */
function ownSet({ set, sizes }: Layout, size: QuiltSize): string[][] {
  const { columns, rows } = sizes[size]
  return Array.from({ length: rows }, (_, y) => {
    const row = set[y % set.length]!
    return Array.from({ length: columns }, (_, x) => row[x % row.length]!)
  })
}

/** As many blocks for pictures as there are pictures, within the layout's shares. */
function mixedSet(mix: NonNullable<Layout['mix']>, own: string[][], pictures: number): string[][] {
  const columns = own[0]!.length
  const all = own.flat().length
  const least = Math.ceil(mix.least * all)
  const count = Math.min(Math.max(pictures, least), Math.max(least, Math.floor(mix.most * all)))
  const places = spread(count, all)
  return own.map((row, y) =>
    row.map((_, x) => (places.has(y * columns + x) ? mix.picture : mix.other)),
  )
}

/**
 * A layout as a design for one pile. `graphics`: the longer sides of the single pictures that suit it,
 * inches, those that count most first; of more than the quilt has room for the last are left out. Without
 * any it is the layout's plain design.
 */
export function designOf(layout: Layout, size: QuiltSize, graphics: readonly number[]): Design {
  const own = ownSet(layout, size)
  const set = layout.mix && graphics.length > 0 ? mixedSet(layout.mix, own, graphics.length) : own
  const blocks: Record<string, DesignBlock> = {}
  for (const [name, block] of Object.entries(layout.blocks)) {
    blocks[name] = block.make === 'framed' ? { ...block, piece_in: block.side_in } : block
  }
  const framed = set.flatMap((row, y) =>
    row.flatMap((name, x) => {
      const block = layout.blocks[name]!
      return block.make === 'framed' ? [{ x, y, name, block }] : []
    }),
  )
  const pictures = graphics.slice(0, framed.length)
  const places = [...spread(pictures.length, framed.length)]
  const named = set.map((row) => [...row])
  for (const [n, graphic] of pictures.entries()) {
    const { x, y, name, block } = framed[places[n]!]!
    const piece = framedPiece(block, graphic)
    if (piece === block.side_in) continue
    const own = `${name} of ${piece}`
    blocks[own] = { ...block, piece_in: piece }
    named[y]![x] = own
  }
  return { layout, size, blocks, set: named }
}

export const square = (side: number): Extent => ({ w: side, h: side })

/** Strips of new cloth that make a framed piece up to its block: two as long as it, two as long as the block. */
export function frameStrips(
  { side_in, piece_in }: Extract<DesignBlock, { make: 'framed' }>,
  seam: number,
): { readonly thin: number; readonly cuts: readonly Extent[] } {
  const thin = (side_in - piece_in) / 2
  const cuts = [piece_in, side_in].map((long) => ({ w: cutFor(thin, seam), h: cutFor(long, seam) }))
  return { thin, cuts: thin > 0 ? cuts : [] }
}

function piecesOf(block: DesignBlock, seam: number): Wanted[] {
  if (block.make === 'framed') {
    const strips = frameStrips(block, seam).cuts
    return [
      { size: square(cutFor(block.piece_in, seam)), role: block.role, count: 1 },
      ...strips.map((size) => ({ size, role: block.frame_role, count: 2 })),
    ]
  }
  const side = block.make === 'quartered' ? block.cut_in : cutFor(block.patch_in, seam)
  return block.roles.flat().map((role) => ({ size: square(side), role, count: 1 }))
}

/** A sashing strip and the square where strips meet, as cut. */
export function sashCuts({ sash, seamIn, blockIn }: Layout): { strip: Extent; corner: Extent } {
  const across = cutFor(sash?.width_in ?? 0, seamIn)
  return { strip: { w: across, h: cutFor(blockIn, seamIn) }, corner: square(across) }
}

function sashPieces(layout: Layout, size: QuiltSize): Wanted[] {
  const { sash, sizes } = layout
  if (!sash) return []
  const { strip, corner } = sashCuts(layout)
  return [
    { size: strip, role: sash.role, count: sashStrips(sizes[size]) },
    { size: corner, role: sash.corner_role, count: cornerstones(sizes[size]) },
  ]
}

/** Like pieces counted together, the largest first, then by role. */
function counted(pieces: readonly Wanted[]): Wanted[] {
  const sums = new Map<string, Wanted>()
  for (const piece of pieces.filter(({ count }) => count > 0)) {
    const key = `${piece.size.w}x${piece.size.h} ${piece.role}`
    const sum = sums.get(key)
    sums.set(key, { ...piece, count: piece.count + (sum?.count ?? 0) })
  }
  const area = ({ size }: Wanted) => size.w * size.h
  return [...sums.values()].sort(
    (a, b) => area(b) - area(a) || roles.indexOf(a.role) - roles.indexOf(b.role),
  )
}

/** What a quilt takes: finished inches, blocks, and every piece to cut by size and role. */
export function demand({ layout, size, blocks, set }: Design): Demand {
  const { columns, rows } = layout.sizes[size]
  const named = set.flat()
  const inBlocks = Object.entries(blocks).flatMap(([name, block]) => {
    const times = named.filter((one) => one === name).length
    return piecesOf(block, layout.seamIn).map((piece) => ({ ...piece, count: piece.count * times }))
  })
  return {
    columns,
    rows,
    blocks: columns * rows,
    finished: setSize({ columns, rows, block: layout.blockIn, sash: layout.sash?.width_in ?? 0 }),
    pieces: counted([...inBlocks, ...sashPieces(layout, size)]),
  }
}
