import type { Extent, Role } from '../layout.ts'
import type { Board } from './board.ts'
import { besideCosts, type Lab, neutral, usualRepeat } from './colours.ts'
import { swapChange, touchingPairs } from './cost.ts'
import type { QuiltPiece } from './grid.ts'
import { placeOn } from './index.ts'
import type { PieceType, Pin } from './instance.ts'
import { boardOfPieces } from './pieces.ts'

/** Pieces of one role and size, as cut, that a garment gives to the quilt. */
export interface PiecesGiven {
  readonly garment: number
  readonly role: string
  /** Inches. */
  readonly size: Extent
  readonly count: number
}

/** What a person has laid: a garment's piece, or bought cloth (null). */
export interface LaidPin {
  /** Place of the piece in the quilt's grid. */
  readonly cell: number
  readonly garment: number | null
}

/** A quilt to lay. Plain data: the same job gives the same quilt. */
export interface LayJob {
  /** In the grid's order. */
  readonly pieces: readonly QuiltPiece[]
  /** No more of a role and size than the quilt takes; the rest is bought cloth. */
  readonly given: readonly PiecesGiven[]
  /** Garments that are left out, and those whose colour is null, count as a middle grey. */
  readonly colours: readonly { readonly garment: number; readonly colour: Lab | null }[]
  /** Of bought cloth, by role; what is left out counts as a middle grey. */
  readonly cloth: Readonly<Partial<Record<Role, Lab>>>
  readonly seed: number
  readonly pins: readonly LaidPin[]
}

export interface LaidQuilt {
  /** The garment in each cell, in the grid's order; null: bought cloth. */
  readonly cells: readonly (number | null)[]
  readonly cost: number
  /** Pairs of pieces of one garment that share an edge; bought cloth may. */
  readonly touching: number
  /** No placement costs less. */
  readonly proven: boolean
  /** Pins that hold no longer: the quilt has no such cell, or the garment no such piece any more. */
  readonly dropped: readonly LaidPin[]
}

/** A piece may lie where one of its role and size is wanted, whichever side of it is called the width. */
export const kindOf = (role: string, { w, h }: Extent): string =>
  `${role} ${Math.min(w, h)} × ${Math.max(w, h)}`

/** A type of pieces with what it is of. */
interface LaidType extends PieceType {
  readonly garment: number | null
  readonly colour: Lab
}

/** One type for each garment and kind of piece, and one of bought cloth for each kind that is left over. */
function typesOf(job: LayJob): LaidType[] {
  const colours = new Map(job.colours.map(({ garment, colour }) => [garment, colour]))
  const left = new Map<string, { role: Role; count: number }>()
  for (const { role, cut } of job.pieces) {
    const kind = kindOf(role, cut)
    left.set(kind, { role, count: (left.get(kind)?.count ?? 0) + 1 })
  }
  const types = new Map<string, LaidType>()
  for (const { garment, role: name, size, count } of job.given) {
    const role = kindOf(name, size)
    const room = left.get(role)
    if (!room || count > room.count) {
      throw new Error(`garment ${garment} gives ${count} of ${role}, of ${room?.count ?? 0} left`)
    }
    room.count -= count
    const key = `${garment} ${role}`
    const colour = colours.get(garment) ?? neutral
    types.set(key, { garment, role, count: count + (types.get(key)?.count ?? 0), colour })
  }
  const bought = [...left].map(([kind, { role, count }]) => {
    return { garment: null, role: kind, count, colour: job.cloth[role] ?? neutral }
  })
  return [...types.values(), ...bought].filter(({ count }) => count > 0)
}

interface Table {
  readonly board: Board
  readonly types: readonly LaidType[]
  readonly dropped: readonly LaidPin[]
}

/** Pins that still hold, by the types of their pieces. */
function heldPins({ pieces, pins }: LayJob, types: readonly LaidType[]) {
  const left = types.map(({ count }) => count)
  const held = new Map<number, Pin>()
  const dropped: LaidPin[] = []
  for (const pin of pins) {
    const piece = pieces[pin.cell]
    const kind = piece && kindOf(piece.role, piece.cut)
    const type = types.findIndex(({ garment, role }) => garment === pin.garment && role === kind)
    if (type < 0 || left[type] === 0 || held.has(pin.cell)) {
      dropped.push(pin)
      continue
    }
    left[type]! -= 1
    held.set(pin.cell, { cell: pin.cell, type })
  }
  return { pinned: [...held.values()], dropped }
}

function tableOf(job: LayJob): Table {
  const types = typesOf(job)
  const { pinned, dropped } = heldPins(job, types)
  const board = boardOfPieces({
    pieces: job.pieces.map((piece) => ({ ...piece, role: kindOf(piece.role, piece.cut) })),
    types,
    repeat: usualRepeat,
    adj: besideCosts(types.map(({ colour }) => colour)),
    pinned,
  })
  return { board, types, dropped }
}

/**
 * Lays what garments give and bought cloth as a quilt. Pieces of one garment are kept apart; bought cloth
 * may lie beside itself, and is spread by its colour alone. Throws where garments give what the quilt does
 * not take.
 */
export function layQuilt(job: LayJob): LaidQuilt {
  if (job.pieces.length === 0) {
    return { cells: [], cost: 0, touching: 0, proven: true, dropped: job.pins }
  }
  const { board, types, dropped } = tableOf(job)
  const { cells, ...placed } = placeOn(board, job.seed)
  return { ...placed, cells: cells.map((type) => types[type]!.garment), dropped }
}

/** What comes of it when two cells change what they hold. */
export interface SwapEffect {
  /** By how much the quilt's cost changes. */
  readonly cost: number
  /** Pairs of pieces of one garment that share an edge, before and after. */
  readonly touching: { readonly before: number; readonly after: number }
}

/** Null where two cells of a laid quilt may not change, as they take pieces of another role or size. */
export function swapEffect(
  job: LayJob,
  { cells }: Pick<LaidQuilt, 'cells'>,
  a: number,
  b: number,
): SwapEffect | null {
  const kinds = job.pieces.map(({ role, cut }) => kindOf(role, cut))
  if (kinds[a] === undefined || kinds[a] !== kinds[b]) return null
  const { board, types } = tableOf({ ...job, pins: [] })
  const before = cells.map((garment, cell) =>
    types.findIndex((type) => type.garment === garment && type.role === kinds[cell]),
  )
  const after = before.with(a, before[b]!).with(b, before[a]!)
  return {
    cost: swapChange(board, before, a, b),
    touching: { before: touchingPairs(board, before), after: touchingPairs(board, after) },
  }
}
