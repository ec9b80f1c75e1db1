import { type Board, boardOf, type Pair } from './board.ts'
import type { QuiltPiece, Rect } from './grid.ts'
import { checkPins, checkRoles, type PieceType, type Pin } from './instance.ts'

type Side = 'right' | 'below'

/** How far two stretches of one line lie over one another; 0: end to end; under 0: apart. */
const over = (a: number, long: number, b: number, other: number): number =>
  Math.min(a + long, b + other) - Math.max(a, b)

/** Where `b` lies along `a`'s edge; null where it does not. */
function sideOf(a: Rect, b: Rect): Side | null {
  if (a.x + a.w === b.x && over(a.y, a.h, b.y, b.h) > 0) return 'right'
  if (a.y + a.h === b.y && over(a.x, a.w, b.x, b.w) > 0) return 'below'
  return null
}

const meetAtCorner = (a: Rect, b: Rect): boolean =>
  over(a.x, a.w, b.x, b.w) === 0 && over(a.y, a.h, b.y, b.h) === 0

interface Part {
  readonly piece: number
  readonly rect: Rect
}

/** For each part the parts along its right or its lower edge. */
function neighbours(parts: readonly Part[], side: Side): Part[][] {
  return parts.map((one) =>
    parts.filter((two) => two.piece !== one.piece && sideOf(one.rect, two.rect) === side),
  )
}

/** Parts with one part between them, all three in line. */
function* acrossOne(parts: readonly Part[], side: Side): Generator<readonly [number, number]> {
  const next = neighbours(parts, side)
  const index = new Map(parts.map((part, n) => [part, n]))
  const shared = (rects: readonly Rect[]): boolean => {
    const spans = rects.map(({ x, y, w, h }) => (side === 'right' ? [y, y + h] : [x, x + w]))
    return Math.min(...spans.map(([, end]) => end!)) > Math.max(...spans.map(([at]) => at!))
  }
  for (const [n, one] of parts.entries()) {
    for (const middle of next[n]!) {
      for (const last of next[index.get(middle)!]!) {
        if (shared([one.rect, middle.rect, last.rect])) yield [one.piece, last.piece]
      }
    }
  }
}

/**
 * Which pieces tell of one another: those that share an edge pay repeat 1, those that meet at a corner
 * repeat 2, those with one piece between them in a line repeat 4, each pair the first that holds: in a grid
 * of equal squares the squared distances.
 */
export function pairsOf(
  pieces: readonly Pick<QuiltPiece, 'parts'>[],
  repeat: Readonly<Record<string, number>>,
): Pair[] {
  const parts = pieces.flatMap(({ parts: own }, piece) => own.map((rect) => ({ piece, rect })))
  const pairs = new Map<string, Pair>()
  const put = (a: number, b: number, distance: string, touch: boolean): void => {
    const [one, other] = a < b ? [a, b] : [b, a]
    const key = `${one} ${other}`
    if (one === other || pairs.has(key)) return
    pairs.set(key, { first: a, second: b, cost: repeat[distance] ?? 0, touch })
  }
  for (const side of ['right', 'below'] as const) {
    neighbours(parts, side).forEach((list, n) => {
      for (const { piece } of list) put(parts[n]!.piece, piece, '1', true)
    })
  }
  for (const [n, one] of parts.entries()) {
    for (const two of parts.slice(n + 1)) {
      if (meetAtCorner(one.rect, two.rect)) put(one.piece, two.piece, '2', false)
    }
  }
  for (const side of ['right', 'below'] as const) {
    for (const [one, other] of acrossOne(parts, side)) put(one, other, '4', false)
  }
  return [...pairs.values()]
}

/** A piece with the name of its role: a role may be narrower than the layout's. */
export type PieceToPlace = Pick<QuiltPiece, 'parts'> & { readonly role: string }

export interface PiecesToPlace {
  readonly pieces: readonly PieceToPlace[]
  readonly types: readonly PieceType[]
  readonly repeat: Readonly<Record<string, number>>
  readonly adj: readonly (readonly number[])[]
  readonly pinned?: readonly Pin[]
}

/** The board of pieces of any size. Throws `bad_input` where roles and counts do not fit them. */
export function boardOfPieces({ pieces, types, repeat, adj, pinned = [] }: PiecesToPlace): Board {
  const cellRoles = pieces.map(({ role }) => role)
  checkRoles(cellRoles, types)
  checkPins(pinned, cellRoles, types)
  return boardOf({ cellRoles, types, pairs: pairsOf(pieces, repeat), adj, pinned })
}
