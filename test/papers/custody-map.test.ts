import { expect, test } from 'vitest'
import { moves } from '../../src/custody/moves.ts'
import { kinds, type State, statesOf } from '../../src/custody/states.ts'
import { custodyMap } from '../../src/papers/custody-map.ts'

const words = {
  state: (state: State) => state,
  move: (move: string) => move,
  before: 'before',
  birth: 'new',
}

/** Reads a drawing back: which state's box a height lies in. */
function readBack(kind: (typeof kinds)[number]) {
  const { drawing, lanes } = custodyMap(kind, words)
  const boxes = drawing.marks.flatMap((mark) => (mark.mark === 'rect' ? [mark] : []))
  const texts = drawing.marks.flatMap((mark) => (mark.mark === 'text' ? [mark] : []))
  const nameAt = (y: number) => {
    const box = boxes.find(({ at, h }) => y >= at[1] && y <= at[1] + h)
    return texts.find(
      ({ at }) =>
        box &&
        at[0] > box.at[0] &&
        at[0] < box.at[0] + box.w &&
        at[1] > box.at[1] &&
        at[1] < box.at[1] + box.h,
    )?.words
  }
  const lines = drawing.marks.flatMap((mark) => (mark.mark === 'line' ? [mark] : []))
  return lanes.map((move, at) => {
    const x = texts.find((text) => text.words === String(at + 1) && text.anchor === 'middle')!.at[0]
    const to = (stroke: string) =>
      lines
        .filter((one) => one.to[0] === x && one.from[0] !== x && one.stroke === stroke)
        .map((one) => nameAt(one.from[1]))
        .sort()
    return { move, leaves: to('soft'), comes: to('madder') }
  })
}

test.each(kinds)('the map of a %s, read back, is the table that the code goes by', (kind) => {
  const drawn = readBack(kind)
  expect(drawn).toHaveLength(moves.filter((one) => one.kind === kind).length)
  for (const { move, leaves, comes } of drawn) {
    expect(leaves).toEqual([...move.from].sort())
    if (move.to !== 'before') expect(comes).toEqual([move.to])
    else {
      // What comes back may come to each state that it can have left.
      const into = moves.filter(
        (one) => one.kind === kind && one.to === move.from[0] && one.from.length > 0,
      )
      expect(comes).toEqual([...new Set(into.flatMap(({ from }) => from))].sort())
      expect(comes.length).toBeGreaterThan(0)
    }
  }
})

test.each(kinds)('every state of a %s can be come to', (kind) => {
  const states = Object.keys(statesOf[kind])
  const reached = new Set<string>(
    moves.filter((one) => one.kind === kind && one.from.length === 0).map(({ to }) => to),
  )
  for (let round = 0; round < states.length; round += 1) {
    for (const { kind: of, from, to } of moves) {
      if (of === kind && from.some((state) => reached.has(state))) reached.add(to)
    }
  }
  expect(states.filter((state) => !reached.has(state))).toEqual([])
})
