import type { Failure } from '../../base/failures.ts'
import { planReviewed } from '../../desk/planned.ts'
import { type FixedPiece, liesThere, pieceAt } from '../../intake/laid.ts'
import { asPlanned } from '../../intake/planned.ts'
import type { DrawnQuilt } from '../../papers/quilt-kept.ts'
import { quiltPicture } from '../../papers/quilt-picture.ts'
import { quiltTouched } from '../../papers/quilt-touch.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import type { DeskContext } from './context.ts'
import { deskPaths } from './paths.ts'
import { arrangePanel } from './present-arrange-panel.ts'
import {
  type ArrangeWish,
  type Board,
  boardOf,
  byRow,
  chosenOf,
  clothName,
  isPartner,
  movedOf,
  type NamedPiece,
  pressHref,
  rowWords,
} from './present-arrange-pieces.ts'
import type { PlanReader } from './present-plan-garments.ts'
import { reviewedQuilts } from './present-plan-quilt.ts'
import { quiltWords } from './present-queue.ts'
import type { ArrangeBoard, ArrangePage, ArrangeRow, PinLine, TouchButton } from './view-arrange.ts'
import { momentWords } from './when.ts'

function pictureOf(board: Board, drawn: DrawnQuilt, wish: ArrangeWish): string {
  const { pieces, number } = board
  const chosen = chosenOf(board, wish)
  const { first, second } = chosen
  const marked = first ? [first, second] : (movedOf(board, wish) ?? [])
  const places = (of: (one: NamedPiece) => boolean): Set<number> =>
    new Set(pieces.flatMap((one, n) => (of(one) ? [n] : [])))
  const over = quiltTouched(drawn.quilt.pieces, {
    linkOf: (n) => {
      const piece = pieces[n]!
      return piece.isListed ? { href: pressHref(board, chosen, piece), label: piece.label } : null
    },
    pinned: places(({ pin }) => pin !== null),
    chosen: marked.flatMap((one) => (one ? [one.n - 1] : [])),
    pale: places((one) => first !== null && one !== first && !isPartner(first, one)),
  })
  const look = {
    name: 'quilt',
    addressOf: (id: string) => deskPaths.photo(number, id, 'cloth'),
    numbers: true,
    over,
  }
  // The list of the pieces, row by row, tells who cannot see it.
  return quiltPicture(drawn.quilt, look, { title: null })
}

/** "3", or "3.2" for the second piece of a block; strips between blocks are numbered. */
const placeInRow = ({ where }: NamedPiece, at: number): string => {
  if (!where) return String(at + 1)
  return where.of > 1 ? `${where.column}.${where.nth}` : String(where.column)
}

const toldInRow = ({ where, place }: NamedPiece, { say }: Language): string =>
  where ? say('desk.arrange.in_row', { ...where }) : place

function rowsOf(board: Board, wish: ArrangeWish): ArrangeRow[] {
  const chosen = chosenOf(board, wish)
  return byRow(board.pieces).map(([row, all]) => ({
    heading: rowWords(row, board.language),
    pieces: all.map((piece, at) => ({
      n: piece.n,
      place: placeInRow(piece, at),
      told: toldInRow(piece, board.language),
      garment: piece.garment,
      name: piece.cloth,
      href: pressHref(board, chosen, piece),
      pinned: piece.pin !== null,
    })),
  }))
}

/** Pins that are used, and those that are not, with why. */
function pinLines(board: Board): readonly [used: PinLine[], lost: PinLine[]] {
  const { review, lying, pieces, language, quilt, shown } = board
  const { say, locale } = language
  const cloth = ({ garment }: FixedPiece, at: NamedPiece | undefined): string => {
    if (garment !== null) return clothName(garment, board)
    return at?.garment === null ? at.cloth : say('desk.arrange.new_cloth')
  }
  const lines = review.arranged.pins
    .filter((pin) => pin.quilt === quilt)
    .map((pin) => {
      const at = pieces[pieceAt(lying.grid, pin)]
      const isUsed = liesThere(lying, pin)
      const label =
        at === undefined
          ? cloth(pin, at)
          : say('desk.arrange.piece', { place: at.place, cloth: cloth(pin, at) })
      return {
        isUsed,
        line: {
          label,
          why: isUsed ? null : say(`desk.arrange.lost.${at ? 'piece' : 'place'}`),
          by: say('desk.by', { name: pin.by, at: momentWords(pin.at, locale) }),
          touch: {
            fields: { act: 'release', pin: pin.id, ...shown },
            label: say('desk.arrange.acts.release'),
            about: label,
            look: 'quiet',
          },
        } satisfies PinLine,
      }
    })
  const those = (used: boolean) => lines.filter(({ isUsed }) => isUsed === used)
  return [those(true).map(({ line }) => line), those(false).map(({ line }) => line)]
}

/** How firmly the quilt lies; null: nobody has touched it. */
function holdOf(board: Board, pins: number): ArrangeBoard['hold'] {
  const { review, lying, quilt, language, shown } = board
  const { say, locale } = language
  const kept = review.arranged.kept.get(quilt)
  if (!kept && pins === 0) return null
  const act = (name: 'rest' | 'anew', look: TouchButton['look']): TouchButton => ({
    fields: { act: name, ...shown },
    label: say(`desk.arrange.acts.${name}`),
    about: null,
    look,
  })
  const moved = kept?.pieces.filter((one) => !liesThere(lying, one)).length ?? 0
  const by = kept && say('desk.by', { name: kept.by, at: momentWords(kept.at, locale) })
  return {
    words: [
      by === undefined ? say('desk.arrange.hold.pins') : say('desk.arrange.hold.kept', { by }),
      ...(moved > 0 ? [say('desk.arrange.hold.moved', { count: moved })] : []),
    ],
    touches: [...(kept && pins > 0 ? [act('rest', 'second')] : []), act('anew', 'second')],
  }
}

function shownBoard(board: Board, drawn: DrawnQuilt, wish: ArrangeWish): ArrangeBoard {
  const { review, language, pieces } = board
  const { say } = language
  const [pins, lost] = pinLines(board)
  const { elsewhere } = review.arranged
  const isBought = pieces.some(({ isListed }) => !isListed)
  return {
    picture: pictureOf(board, drawn, wish),
    hints: [
      say('quilt.numbers'),
      ...(pins.length > 0 ? [say('desk.arrange.sign')] : []),
      ...(isBought ? [say('desk.arrange.unlisted')] : []),
      say('desk.arrange.agreed'),
    ],
    panel: arrangePanel(board, wish),
    hold: holdOf(board, pins.length + lost.length),
    pins,
    lost,
    elsewhere: elsewhere > 0 ? say('desk.arrange.elsewhere', { count: elsewhere }) : null,
    rows: rowsOf(board, wish),
  }
}

/** One quilt of a reviewed pile, `quilt` from 1, to move its pieces. `refused`: a form that was not taken. */
export async function arrangePage(
  { review, csrf, language }: PlanReader,
  context: Pick<DeskContext, 'knowledge' | 'plans'>,
  quilt: number,
  wish: ArrangeWish,
  refused: Failure | null = null,
): Promise<ArrangePage> {
  const { say } = language
  const { number } = review.row
  const { layout, size, quilts } = review.pile.wish
  const planned = await asPlanned(planReviewed(review), context.plans)
  const { state, laid, drawn, mayChange } = await reviewedQuilts(context, review, planned)
  const [lying, picture] = [laid[quilt - 1], drawn[quilt - 1]]
  const again = { label: say('quilt.again'), href: deskPaths.arrange(number, quilt) }
  return {
    page: 'arrange',
    title:
      quilts > 1
        ? say('desk.arrange.title_of', { number, n: quilt, count: quilts })
        : say('desk.arrange.title', { number }),
    quilt: quiltWords({ layout: layout.id, size }, language),
    back: { label: say('desk.plan.link'), href: deskPaths.plan(number) },
    others: Array.from({ length: quilts }, (_, n) => n + 1)
      .filter((n) => n !== quilt)
      .map((n) => ({
        label: say('quilt.nth', { n, count: quilts }),
        href: deskPaths.arrange(number, n),
      })),
    refused: refused && failureSentence(refused, language),
    state,
    words: lying ? (mayChange ? [say('desk.arrange.working')] : []) : [say(`quilt.${state}`)],
    again: mayChange || state === 'laying' || state === 'failed' ? again : null,
    postTo: deskPaths.arrange(number, quilt),
    csrf,
    board:
      lying && picture
        ? shownBoard(boardOf({ review, language }, lying, quilt - 1), picture, wish)
        : null,
  }
}
