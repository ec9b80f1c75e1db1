import { swapEffect } from '../../quilt/place/lay-quilt.ts'
import { deskPaths } from './paths.ts'
import {
  type ArrangeWish,
  type Board,
  byRow,
  chooseHref,
  chosenOf,
  isPartner,
  movedOf,
  type NamedPiece,
  rowWords,
} from './present-arrange-pieces.ts'
import type {
  ArrangePanel,
  ChosenPiece,
  PieceChoice,
  ShownSwap,
  TouchButton,
} from './view-arrange.ts'
import { momentWords } from './when.ts'

function chosenPiece(
  { language, shown }: Board,
  piece: NamedPiece,
  look: TouchButton['look'],
): ChosenPiece {
  const { say, locale } = language
  const { n, label, kindWords, pin } = piece
  const act = pin ? 'release' : 'keep'
  return {
    label,
    kind: kindWords,
    pinned:
      pin &&
      say('desk.arrange.pinned', {
        by: say('desk.by', { name: pin.by, at: momentWords(pin.at, locale) }),
      }),
    touch: {
      fields: { act, ...(pin ? { pin: pin.id } : { piece: String(n) }), ...shown },
      label: say(`desk.arrange.acts.${act}`),
      about: label,
      look,
    },
  }
}

const swapButton = (
  { language, shown }: Board,
  a: number,
  b: number,
  back: boolean,
): TouchButton => ({
  fields: { act: 'swap', a: String(a), b: String(b), ...shown },
  label: language.say(`desk.arrange.acts.${back ? 'back' : 'swap'}`),
  about: null,
  look: back ? 'second' : 'main',
})

/** What comes of it when two pieces change places, or why they do not. */
function shownSwap(board: Board, one: NamedPiece, other: NamedPiece): ShownSwap {
  const { lying, language } = board
  const { say } = language
  const not = (words: string): ShownSwap => ({ words: [words], mark: null, touch: null })
  const effect = swapEffect(lying.job, lying, one.n - 1, other.n - 1)
  if (!effect) {
    return not(say('desk.arrange.not.unlike', { one: one.kindWords, other: other.kindWords }))
  }
  if (one.garment === other.garment) return not(say('desk.arrange.not.alike', { cloth: one.cloth }))
  const { cost, touching } = effect
  const text = (side: string) => say(`desk.arrange.cost.${side}`)
  return {
    words: [say('desk.arrange.touching', touching), ...(cost === 0 ? [text('even')] : [])],
    mark:
      cost === 0
        ? null
        : cost < 0
          ? { side: 'better', text: text('better') }
          : { side: 'worse', text: text('worse') },
    touch: swapButton(board, one.n, other.n, false),
  }
}

/** Pieces to choose among, by rows; null: there are none. */
function choiceOf(board: Board, first: NamedPiece | null): PieceChoice | null {
  const { pieces, language, number, quilt } = board
  const { say } = language
  const among = first ? pieces.filter((one) => isPartner(first, one)) : pieces
  const rows = byRow(among)
  if (rows.length === 0) return null
  return {
    action: `${deskPaths.arrange(number, quilt + 1)}#chosen`,
    hidden: first ? { piece: String(first.n) } : {},
    name: first ? 'with' : 'piece',
    label: say(`desk.arrange.choose.${first ? 'second' : 'first'}`),
    groups: rows.map(([row, all]) => ({
      label: rowWords(row, language),
      options: all.map(({ n, label }) => ({ value: String(n), label })),
    })),
    send: say('desk.arrange.choose.send'),
  }
}

function doneOf(board: Board, wish: ArrangeWish): ArrangePanel['done'] {
  const moved = movedOf(board, wish)
  if (!moved) return null
  const [one, other] = moved
  return {
    words: board.language.say('desk.arrange.done', { one: one.label, other: other.label }),
    back: swapButton(board, one.n, other.n, true),
  }
}

function hintOf(board: Board, wish: ArrangeWish, choice: PieceChoice | null): string | null {
  const { say } = board.language
  const { first, second } = chosenOf(board, wish)
  if (!first) return wish.piece === undefined ? null : say('desk.arrange.no_piece')
  if (second) return null
  if (wish.with !== undefined && wish.with !== wish.piece) return say('desk.arrange.no_piece')
  return say(`desk.arrange.${choice ? 'pale' : 'lonely'}`, { kind: first.kindWords })
}

/** What is chosen on the page and what may be done with it. */
export function arrangePanel(board: Board, wish: ArrangeWish): ArrangePanel {
  const { say } = board.language
  const { first, second } = chosenOf(board, wish)
  const choice = second ? null : choiceOf(board, first)
  return {
    title: say(`desk.arrange.step.${second ? 'both' : first ? 'second' : 'first'}`),
    done: first ? null : doneOf(board, wish),
    pieces: [first, second].flatMap((one) =>
      one ? [chosenPiece(board, one, second ? 'quiet' : 'second')] : [],
    ),
    swap: first && second ? shownSwap(board, first, second) : null,
    hint: hintOf(board, wish, choice),
    choice,
    startOver: first
      ? { label: say('desk.arrange.start_over'), href: chooseHref(board, null) }
      : null,
  }
}
