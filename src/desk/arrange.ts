import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { canonical, sha256 } from '../base/ids.ts'
import type { FixedPiece, LaidDesign } from '../intake/laid.ts'
import { kindOf } from '../quilt/place/lay-quilt.ts'
import type { Store } from '../store/open.ts'
import { type Arranged, arrangedOf, keptMark, pinMark, type QuiltOf } from './arranged.ts'
import { changeMarks, type MarkChange, type PlanMark } from './plan-marks.ts'

/** Somebody's hand on a quilt that they see. */
export interface Touch {
  /** From 0. */
  readonly quilt: number
  readonly lying: LaidDesign
  /** The account's id. */
  readonly who: string
  /** What the page showed: how the quilt lay, by `lyingAs`, and when it had last been touched; 0: never. */
  readonly shown: string
  readonly seen: number
}

export interface At {
  readonly store: Store
  readonly clock: Clock
}

type Cells = LaidDesign['cells']

const placeIn = ({ grid }: Pick<LaidDesign, 'grid'>, piece: number) => {
  const { x, y } = grid.pieces[piece]!.parts[0]!
  return { x, y }
}

const fixedPieces = (lying: LaidDesign, cells: Cells): Omit<FixedPiece, 'quilt'>[] =>
  cells.map((garment, piece) => ({ ...placeIn(lying, piece), garment }))

/** A short sign of how a quilt lies: another one lies otherwise. */
export function lyingAs(lying: LaidDesign, cells = lying.cells): string {
  const { layout, size } = lying.design
  const told = canonical([layout.id, size, fixedPieces(lying, cells)])
  return sha256(told).slice(0, 16)
}

const swapped = (cells: Cells, a: number, b: number): Cells =>
  cells.with(a, cells[b]!).with(b, cells[a]!)

const quiltOf = ({ quilt, lying: { design } }: Touch): QuiltOf => ({
  layout: design.layout.id,
  size: design.size,
  quilt,
})

/** Changes what is fixed of a quilt, as `change` says of what is fixed so far; null: nothing. */
function touch(
  at: At,
  pileId: string,
  hand: Touch,
  change: (arranged: Arranged, marks: readonly PlanMark[]) => MarkChange | null,
): Promise<void> {
  const { quilt, seen } = hand
  return changeMarks(at, pileId, hand.who, (marks) => {
    const arranged = arrangedOf(marks, quiltOf(hand))
    const wanted = change(arranged, marks)
    if (!wanted) return { undo: [], add: [] }
    if ((arranged.seen.get(quilt) ?? 0) !== seen) throw new Failure('decided_meanwhile')
    return wanted
  })
}

/** The quilt stays as it lies, with those pieces pinned and those pins let go. */
function keeping(
  hand: Touch,
  { pins, kept }: Arranged,
  { cells = hand.lying.cells, pin = [], release = [] }: Keeping,
): MarkChange {
  const { lying, quilt } = hand
  const of = quiltOf(hand)
  const pieces = fixedPieces(lying, cells)
  const standing = kept.get(quilt)
  const isKept =
    standing && canonical(standing.pieces) === canonical(pieces.map((one) => ({ quilt, ...one })))
  const places = pin.map((piece) => pieces[piece]!)
  const before = pins.filter(
    (one) => one.quilt === quilt && places.some(({ x, y }) => x === one.x && y === one.y),
  )
  return {
    undo: [
      ...(standing && !isKept ? [standing.id] : []),
      ...before.map(({ id }) => id),
      ...release,
    ],
    add: [...(isKept ? [] : [keptMark(of, pieces)]), ...places.map((one) => pinMark(of, one))],
  }
}

interface Keeping {
  readonly cells?: Cells
  /** Pieces by their place in the grid's order. */
  readonly pin?: readonly number[]
  /** Ids of pins. */
  readonly release?: readonly string[]
}

function seesIt({ lying, shown }: Touch): void {
  if (lyingAs(lying) !== shown) throw new Failure('quilt_changed')
}

function isThere({ lying }: Touch, piece: number): void {
  if (!lying.grid.pieces[piece]) throw new Failure('not_found')
}

/**
 * Two pieces change places and are pinned there; all others stay as they lie. The same form once more
 * changes nothing. Throws `not_found`, `pieces_unlike` where one does not fit the other's place,
 * `quilt_changed` where the quilt lies otherwise than was shown, and `decided_meanwhile` where somebody else
 * touched it.
 */
export async function swapPieces(
  at: At,
  pileId: string,
  hand: Touch,
  [a, b]: readonly [number, number],
): Promise<void> {
  const { lying } = hand
  isThere(hand, a)
  isThere(hand, b)
  const [one, other] = [lying.grid.pieces[a]!, lying.grid.pieces[b]!]
  if (kindOf(one.role, one.cut) !== kindOf(other.role, other.cut)) {
    throw new Failure('pieces_unlike')
  }
  const cells = swapped(lying.cells, a, b)
  if (lying.cells[a] === lying.cells[b] || lyingAs(lying, cells) === hand.shown) return
  seesIt(hand)
  await touch(at, pileId, hand, (arranged) => keeping(hand, arranged, { cells, pin: [a, b] }))
}

/** Pins a piece where it lies; one that is pinned there stays so. Throws as `swapPieces` does. */
export async function keepPiece(at: At, pileId: string, hand: Touch, piece: number): Promise<void> {
  isThere(hand, piece)
  seesIt(hand)
  const { x, y } = placeIn(hand.lying, piece)
  const garment = hand.lying.cells[piece]
  const isIt = (one: FixedPiece): boolean =>
    one.quilt === hand.quilt && one.x === x && one.y === y && one.garment === garment
  await touch(at, pileId, hand, (arranged) =>
    arranged.pins.some(isIt) ? null : keeping(hand, arranged, { pin: [piece] }),
  )
}

/**
 * Lets go of a pin, by its mark's id; the quilt stays as it lies. One that was let go of already stays so.
 * Throws as `swapPieces` does, `not_found` also where the quilt never had such a pin.
 */
export async function letGo(at: At, pileId: string, hand: Touch, id: string): Promise<void> {
  seesIt(hand)
  await touch(at, pileId, hand, (arranged, marks) => {
    const mark = marks.find((one) => one.id === id && one.kind === 'pin')
    if (mark?.undone) return null
    const pin = arranged.pins.find((one) => one.id === id)
    if (pin?.quilt !== hand.quilt) throw new Failure('not_found')
    return keeping(hand, arranged, { release: [id] })
  })
}

/**
 * Has the quilt laid anew around what is pinned or, with `all`, without any pins. Throws `not_found` and
 * `decided_meanwhile`.
 */
export const layAnew = (
  at: At,
  pileId: string,
  hand: Touch,
  { all }: { readonly all: boolean },
): Promise<void> =>
  touch(at, pileId, hand, ({ pins, kept }) => {
    const own = all ? pins.filter(({ quilt }) => quilt === hand.quilt) : []
    const standing = kept.get(hand.quilt)
    const undo = [...own.map(({ id }) => id), ...(standing ? [standing.id] : [])]
    return undo.length === 0 ? null : { undo, add: [] }
  })
