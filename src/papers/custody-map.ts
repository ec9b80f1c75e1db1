import type { Move, MoveName } from '../custody/move.ts'
import { moves } from '../custody/moves.ts'
import { type Kind, type State, statesOf } from '../custody/states.ts'
import type { Drawing, Mark } from './drawing.ts'

export interface MapWords {
  readonly state: (state: State) => string
  readonly move: (move: MoveName) => string
  /** What stands for the state that a move comes back to. */
  readonly before: string
  /** What stands for nothing, before a birth. */
  readonly birth: string
}

/** A move of the map in words. */
export interface MapLine {
  readonly move: string
  readonly from: string
  readonly to: string
}

const box = { x: 8, w: 236, h: 34, apart: 20, top: 34 }
const lane = { first: box.x + box.w + 26, apart: 24 }
const tip = 6

const yOf = (at: number): number => box.top + at * (box.h + box.apart)

/** States that a move may come back to: those that its own state is entered from. */
const backTo = (move: Move): readonly State[] =>
  moves
    .filter((one) => one.kind === move.kind && one.to === move.from[0] && one.from.length > 0)
    .flatMap(({ from }) => from)

function arrow(x: number, y: number): Mark {
  return {
    mark: 'polyline',
    points: [
      [x + tip, y - tip],
      [x, y],
      [x + tip, y + tip],
    ],
    stroke: 'madder',
    width: 2,
  }
}

/** A move's own lane: it leaves each state that it begins in, and points to where it ends. */
function laneOf(move: Move, at: number, states: readonly State[]): Mark[] {
  const x = lane.first + at * lane.apart
  const edge = box.x + box.w
  // What leaves stands below the middle of a box, what comes above it.
  const leaves = move.from.map((state) => yOf(states.indexOf(state)) + box.h * 0.7)
  const goals = move.to === 'before' ? [...new Set(backTo(move))] : [move.to]
  const comes = goals.map((state) => yOf(states.indexOf(state)) + box.h * 0.3)
  const all = [...leaves, ...comes, ...(leaves.length === 0 ? [box.top - 8] : [])]
  const ways: Mark[] = [
    ...leaves.map(
      (y): Mark => ({ mark: 'line', from: [edge, y], to: [x, y], stroke: 'soft', width: 1 }),
    ),
    ...comes.flatMap((y): Mark[] => [
      { mark: 'line', from: [edge, y], to: [x, y], stroke: 'madder', width: 1 },
      arrow(edge, y),
    ]),
  ]
  return [
    {
      mark: 'line',
      from: [x, Math.min(...all)],
      to: [x, Math.max(...all)],
      stroke: 'ink',
      width: 1.5,
    },
    ...ways,
    { mark: 'text', at: [x, 20], size: 13, anchor: 'middle', words: String(at + 1), bold: true },
  ]
}

/** Every state of a kind and every move between them, made from the tables that the code itself goes by. */
export function custodyMap(
  kind: Kind,
  words: MapWords,
): {
  readonly drawing: Drawing
  readonly legend: readonly MapLine[]
  readonly lanes: readonly Move[]
} {
  const states = Object.keys(statesOf[kind]) as State[]
  const lanes = moves.filter((one) => one.kind === kind)
  const marks = states.flatMap((state, at): Mark[] => [
    {
      mark: 'rect',
      at: [box.x, yOf(at)],
      w: box.w,
      h: box.h,
      r: 8,
      stroke: 'ink',
      width: 1.5,
      fill: 'paper',
    },
    {
      mark: 'text',
      at: [box.x + 10, yOf(at) + box.h / 2 + 5],
      size: 13,
      anchor: 'start',
      words: words.state(state),
    },
  ])
  return {
    drawing: {
      width: lane.first + lanes.length * lane.apart,
      height: yOf(states.length) + 4,
      unit: 'pt',
      marks: [...lanes.flatMap((move, at) => laneOf(move, at, states)), ...marks],
    },
    legend: lanes.map((move) => ({
      move: words.move(move.move),
      from: move.from.length === 0 ? words.birth : move.from.map(words.state).join(', '),
      to: move.to === 'before' ? words.before : words.state(move.to),
    })),
    lanes,
  }
}
