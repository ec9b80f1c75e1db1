import { inchWords } from '../../base/units.ts'
import { lyingAs } from '../../desk/arrange.ts'
import type { PiecePin } from '../../desk/arranged.ts'
import type { Review } from '../../desk/review.ts'
import { type LaidDesign, liesThere, pieceAt } from '../../intake/laid.ts'
import { kindOf } from '../../quilt/place/lay-quilt.ts'
import { type Where, wheresOf } from '../../quilt/place/where.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'

/** A piece of a laid quilt as the page names it. */
export interface NamedPiece {
  /** From 1, as in addresses. */
  readonly n: number
  /** Null: a strip between blocks. */
  readonly where: Where | null
  /** "Row 2, column 3". */
  readonly place: string
  readonly garment: number | null
  /** What its cloth is called. */
  readonly cloth: string
  /** Pieces that may change places have the same. */
  readonly kind: string
  readonly kindWords: string
  /** "Row 2, column 3: Blue flannel". */
  readonly label: string
  /** Garments may play its part: strips and frames that are always new cloth are of no interest. */
  readonly isListed: boolean
  readonly pin: PiecePin | null
}

/** One quilt of a pile with everything that is said of its pieces. */
export interface Board {
  readonly number: number
  /** From 0. */
  readonly quilt: number
  readonly lying: LaidDesign
  readonly pieces: readonly NamedPiece[]
  readonly review: Review
  readonly language: Language
  /** Fields that every form brings: what the page showed. */
  readonly shown: Readonly<Record<'shown' | 'seen', string>>
}

export interface Reading {
  readonly review: Review
  readonly language: Language
}

export function clothName(garment: number, { review: { pile }, language }: Reading): string {
  const found = pile.garments.find(({ n }) => n === garment)
  return found ? nameOf(found, readerAt(language)) : language.say('tag.unnamed', { n: garment })
}

function placeWords(where: Where | null, { say }: Language): string {
  return where ? say('desk.arrange.place', { ...where }) : say('desk.arrange.strip')
}

function namedPieces(reading: Reading, lying: LaidDesign, quilt: number): NamedPiece[] {
  const { language, review } = reading
  const { say } = language
  const { grid, cells, design } = lying
  const wheres = wheresOf(design, grid)
  const kinds = grid.pieces.map(({ role, cut }) => kindOf(role, cut))
  const pins = new Map(
    review.arranged.pins
      .filter((pin) => pin.quilt === quilt && liesThere(lying, pin))
      .map((pin) => [pieceAt(grid, pin), pin]),
  )
  return grid.pieces.map(({ role, cut }, n) => {
    const garment = cells[n]!
    const roleWords = say(`trade.roles.${role}`)
    const cloth =
      garment === null ? say('quilt.bought', { role: roleWords }) : clothName(garment, reading)
    const place = placeWords(wheres[n]!, language)
    const size = say('cut.measure', { w: inchWords(cut.w), h: inchWords(cut.h) })
    return {
      n: n + 1,
      where: wheres[n]!,
      place,
      garment,
      cloth,
      kind: kinds[n]!,
      kindWords: say('desk.arrange.kind', { role: roleWords, size }),
      label: say('desk.arrange.piece', { place, cloth }),
      isListed: !design.layout.bought.includes(role),
      pin: pins.get(n) ?? null,
    }
  })
}

export function boardOf(reading: Reading, lying: LaidDesign, quilt: number): Board {
  const { review } = reading
  return {
    ...reading,
    number: review.row.number,
    quilt,
    lying,
    pieces: namedPieces(reading, lying, quilt),
    shown: { shown: lyingAs(lying), seen: String(review.arranged.seen.get(quilt) ?? 0) },
  }
}

/** What an address asks for: pieces from 1, and two that have just changed places. */
export interface ArrangeWish {
  readonly piece?: number | undefined
  readonly with?: number | undefined
  readonly moved?: readonly [number, number] | undefined
}

/** What is chosen on the page. */
export interface Chosen {
  readonly first: NamedPiece | null
  readonly second: NamedPiece | null
}

const listed = ({ pieces }: Board, n: number | undefined): NamedPiece | null => {
  const found = n === undefined ? undefined : pieces[n - 1]
  return found?.isListed ? found : null
}

export function chosenOf(board: Board, wish: ArrangeWish): Chosen {
  const first = listed(board, wish.piece)
  const second = first && wish.with !== wish.piece ? listed(board, wish.with) : null
  return { first, second }
}

/** The two that have just changed places; null: none have, or nothing would change between them any more. */
export function movedOf(
  board: Board,
  { moved }: ArrangeWish,
): readonly [NamedPiece, NamedPiece] | null {
  const [one = null, other = null] = (moved ?? []).map((n) => listed(board, n))
  return one?.pin && other?.pin && isPartner(one, other) ? [one, other] : null
}

/** May change places with it, and something changes if they do. */
export const isPartner = (one: NamedPiece, other: NamedPiece): boolean =>
  one.kind === other.kind && one.garment !== other.garment

/** The page with such pieces chosen, at what may be done with them. */
export const chooseHref = (
  { number, quilt }: Board,
  first: NamedPiece | null,
  second: NamedPiece | null = null,
): string => {
  const query = [...(first ? [`piece=${first.n}`] : []), ...(second ? [`with=${second.n}`] : [])]
  const path = deskPaths.arrange(number, quilt + 1)
  return `${path}${query.length > 0 ? `?${query.join('&')}` : ''}#chosen`
}

/** Where pressing a piece leads: to choosing it, or to letting go of it. */
export function pressHref(board: Board, { first, second }: Chosen, pressed: NamedPiece): string {
  if (!first) return chooseHref(board, pressed)
  if (pressed === second) return chooseHref(board, first)
  if (pressed === first) return chooseHref(board, second)
  return chooseHref(board, first, pressed)
}

/**
 * Those that are listed, by the rows of their blocks and in each row block after block; strips between
 * blocks are row 0.
 */
export function byRow(pieces: readonly NamedPiece[]): [row: number, pieces: NamedPiece[]][] {
  const rows = new Map<number, NamedPiece[]>()
  for (const piece of pieces) {
    if (!piece.isListed) continue
    const row = piece.where?.row ?? 0
    rows.set(row, [...(rows.get(row) ?? []), piece])
  }
  const columnOf = ({ where }: NamedPiece): number => where?.column ?? 0
  return [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, all]) => [row, all.sort((a, b) => columnOf(a) - columnOf(b) || a.n - b.n)])
}

export const rowWords = (row: number, { say }: Language): string =>
  row === 0 ? say('desk.arrange.strips') : say('desk.arrange.row', { row })
