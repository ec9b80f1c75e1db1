import { z } from 'zod'
import { Failure } from '../../base/failures.ts'

/** The most that is taken; a quilt of more would keep who waits for it waiting. */
export const mostCells = 10_000
export const mostTypes = 1_000
/** Pairs of cells near enough to tell, each counted both ways. */
export const mostNear = 4_000_000

const whole = z.number().int()
/** Whole sums of so many stay exact. */
const mostPrice = 1_000_000_000

const price = z.number().nonnegative().max(mostPrice)
const index = whole.nonnegative()

const instanceSchema = z.object({
  rows: whole.positive().max(mostCells),
  cols: whole.positive().max(mostCells),
  /** Each cell's role, row by row. */
  cells: z.array(z.string().max(100)).min(1).max(mostCells),
  types: z
    .array(
      z.object({ garment: z.union([z.string().max(200), whole]), role: z.string(), count: index }),
    )
    .min(1)
    .max(mostTypes),
  /** Squared distance of two cells → what it costs that they hold the same garment. */
  repeat: z.record(z.string().regex(/^[1-9]\d{0,8}$/), price),
  /** What two types cost side by side: the left or upper one first. */
  adj: z.array(z.array(price).max(mostTypes)).max(mostTypes),
  seed: whole.optional(),
  /** Cells whose type a person has fixed. */
  pinned: z
    .array(z.object({ cell: index, type: index }))
    .max(mostCells)
    .optional(),
})

/** Pieces alike: of one garment, or of cloth that is no garment's (null) and may lie beside itself. */
export interface PieceType {
  readonly garment: string | number | null
  readonly role: string
  readonly count: number
}
export type Pin = { readonly cell: number; readonly type: number }

/** Where pieces may go in a grid, which pieces there are, and what it costs that they meet. */
export type Instance = z.infer<typeof instanceSchema>

function refuse(field: string, why: string): never {
  throw new Failure('bad_input', { field, why })
}

function countBy(entries: readonly (readonly [key: string, count: number])[]): Map<string, number> {
  const sums = new Map<string, number>()
  for (const [key, count] of entries) sums.set(key, (sums.get(key) ?? 0) + count)
  return sums
}

const some = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`

/** Every role has as many pieces as cells. Throws `bad_input`. */
export function checkRoles(cells: readonly string[], types: readonly PieceType[]): void {
  const room = countBy(cells.map((role) => [role, 1]))
  const pieces = countBy(types.map(({ role, count }) => [role, count]))
  const strange = cells.findIndex((role) => !pieces.has(role))
  if (strange >= 0) {
    refuse('cells', `cell ${strange} has the role "${cells[strange]}", and no type has that role`)
  }
  for (const [role, count] of room) {
    const have = pieces.get(role)!
    if (have === count) continue
    const [wants, are] = [some(count, 'cell', 'cells'), some(have, 'piece', 'pieces')]
    refuse('types', `${wants} of the role "${role}", but ${are}; there must be as many`)
  }
  for (const [role, count] of pieces) {
    if (count > 0 && !room.has(role)) {
      refuse('types', `${some(count, 'piece', 'pieces')} of the role "${role}", but no cell has it`)
    }
  }
}

/** The pins name cells and types that are there, each cell once, of one role, within the counts. */
export function checkPins(
  pins: readonly Pin[],
  cells: readonly string[],
  types: readonly PieceType[],
): void {
  const left = types.map(({ count }) => count)
  const taken = new Set<number>()
  for (const { cell, type } of pins) {
    if (cell >= cells.length) refuse('pinned', `there is no cell ${cell}`)
    if (type >= types.length) refuse('pinned', `there is no type ${type}`)
    if (taken.has(cell)) refuse('pinned', `cell ${cell} is pinned twice`)
    if (cells[cell] !== types[type]!.role) {
      refuse('pinned', `type ${type} does not have the role of cell ${cell}`)
    }
    if (left[type] === 0) refuse('pinned', `type ${type} has too few pieces for its pins`)
    taken.add(cell)
    left[type]! -= 1
  }
}

function checkTable(adj: readonly (readonly number[])[], types: number): void {
  if (adj.length !== types) {
    refuse('adj', `${some(adj.length, 'row', 'rows')} for ${some(types, 'type', 'types')}`)
  }
  const short = adj.findIndex((row) => row.length !== types)
  if (short < 0) return
  const length = some(adj[short]!.length, 'number', 'numbers')
  refuse('adj', `row ${short} has ${length} for ${some(types, 'type', 'types')}`)
}

/** A file's value as an instance. Unknown keys are ignored. Throws `bad_input` that says what is wrong. */
export function readInstance(value: unknown): Instance {
  const parsed = instanceSchema.safeParse(value)
  if (!parsed.success) {
    const { path, message } = parsed.error.issues[0]!
    refuse(path.length > 0 ? path.join('.') : 'place', message)
  }
  const { rows, cols, cells, types, adj, pinned = [] } = parsed.data
  if (cells.length !== rows * cols) {
    refuse('cells', `${some(cells.length, 'cell', 'cells')} for ${rows} rows of ${cols}`)
  }
  checkTable(adj, types.length)
  checkRoles(cells, types)
  checkPins(pinned, cells, types)
  return parsed.data
}
