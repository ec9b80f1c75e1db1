import type { Board } from './board.ts'
import { type Chance, chanceFrom } from './chance.ts'
import { swapChange, totalCost } from './cost.ts'
import { Field } from './field.ts'
import { chequered, freeGroups, shuffled } from './start.ts'

export interface Found {
  readonly at: Int32Array
  readonly cost: number
}

/**
 * The search ends after so much work, as no clock is at hand: one for each change that is tried, and more
 * for each that is kept. It grows with the cells that may change, up to a bound.
 */
const mostWork = 14_000_000
const workACell = 50_000
/** Boards of so few cells may be proven, which begins with what is found here: worth more work. */
const fewCells = 36
const workAFewCells = 480

/** One annealing: where it begins, the share of all tries, and its heats as shares of the mean change. */
interface Run {
  readonly chess: boolean
  readonly share: number
  readonly hot: number
  readonly cold: number
}

/**
 * Tried on boards of 20 by 20: one long run is worth more than several short ones, and a garment with half
 * of the cells wants a cool run from a chessboard. Small boards are soon at rest, and begin more often; on
 * boards of 5 by 5, held to the proven least, hotter beginnings find it about twice as often.
 */
function runsFor(cells: number): readonly Run[] {
  if (cells <= fewCells) {
    const few = Array.from({ length: 6 }, () => ({
      chess: false,
      hot: 0.2,
      cold: 0.03,
      share: 0.15,
    }))
    return [...few, { chess: true, hot: 0.05, cold: 0.005, share: 0.1 }]
  }
  const hot = { chess: false, hot: 0.06, cold: 0.03 }
  const cool = { chess: true, hot: 0.05, cold: 0.005, share: 0.3 }
  const times = cells <= 120 ? 6 : 1
  return [...Array.from({ length: times }, () => ({ ...hot, share: 0.7 / times })), cool]
}

/** Cells to change with, each group as often as it has cells. */
interface Moves {
  readonly groups: readonly Int32Array[]
  readonly cells: Int32Array
  readonly groupOf: Int32Array
}

function movesOf(board: Board): Moves {
  const groups = freeGroups(board).filter((group) => group.length > 1)
  const groupOf = new Int32Array(board.cells)
  groups.forEach((group, g) => {
    for (const cell of group) groupOf[cell] = g
  })
  return { groups, cells: Int32Array.from(groups.flatMap((group) => [...group])), groupOf }
}

/** How much a change costs, up or down, where the pieces lie anyhow; 0 where none does. */
function meanChange(board: Board, { cells, groups, groupOf }: Moves, chance: Chance): number {
  const at = shuffled(board, chance)
  let [sum, changes] = [0, 0]
  for (let n = 0; n < 400; n++) {
    const a = cells[chance.below(cells.length)]!
    const group = groups[groupOf[a]!]!
    const change = Math.abs(swapChange(board, at, a, group[chance.below(group.length)]!))
    if (change === 0) continue
    sum += change
    changes++
  }
  return changes > 0 ? sum / changes : 0
}

interface Cooling {
  readonly hot: number
  readonly cold: number
  readonly work: number
}

/** Between two looks at the heat. */
const round = 500

/**
 * Simulated annealing (Kirkpatrick, Gelatt, Vecchi, Science 220(4598), 1983, 671–680): two cells of one
 * role change; a dearer placement is kept with the chance e^(−change ÷ heat), and the heat sinks evenly
 * by the same share.
 */
function anneal(
  board: Board,
  start: Int32Array,
  { cells, groups, groupOf }: Moves,
  { hot, cold, work }: Cooling,
  chance: Chance,
): Int32Array {
  const field = new Field(board, start.slice())
  const { at, keeping } = field
  let cost = totalCost(board, at)
  let best = cost
  const kept = at.slice()
  let done = 0
  while (done < work && best > 0) {
    const heat = hot * (cold / hot) ** (done / work)
    done += round
    for (let n = 0; n < round; n++) {
      const a = cells[chance.below(cells.length)]!
      const group = groups[groupOf[a]!]!
      const b = group[chance.below(group.length)]!
      if (at[a] === at[b]) continue
      const change = field.change(a, b)
      if (change > 0 && (change > 30 * heat || chance.share() >= Math.exp(-change / heat))) continue
      field.swap(a, b)
      done += keeping
      cost += change
      if (cost >= best - 1e-9) continue
      best = cost
      kept.set(at)
    }
  }
  return kept
}

/** Changes two cells as long as it pays, every pair looked at, for so much work at most. */
function descend(board: Board, start: Int32Array, { groups }: Moves, work: number): Found {
  const field = new Field(board, start)
  let left = work
  let moved = true
  while (moved && left > 0) {
    moved = false
    for (const group of groups) {
      for (let n = 0; n < group.length && left > 0; n++) {
        for (let m = n + 1; m < group.length; m++) {
          left--
          if (field.change(group[n]!, group[m]!) >= -1e-9) continue
          field.swap(group[n]!, group[m]!)
          moved = true
        }
      }
    }
  }
  return { at: field.at, cost: totalCost(board, field.at) }
}

/**
 * A good placement: annealed from several starts, one of them laid like a chessboard, and bettered as long
 * as a change of two pays. The same board and seed give the same. How long it takes grows with the cells
 * up to a bound, and with the effort: 1 is the usual.
 */
export function search(board: Board, seed: number, effort = 1): Found {
  const moves = movesOf(board)
  const chess = chequered(board)
  const mean = moves.cells.length > 0 ? meanChange(board, moves, chanceFrom(seed)) : 0
  if (mean === 0) return { at: chess, cost: totalCost(board, chess) }
  const free = moves.cells.length
  const wanted = board.cells <= fewCells ? workAFewCells * free ** 3 : workACell * free
  const work = effort * Math.min(wanted, mostWork)
  let best: Found | null = null
  for (const [n, run] of runsFor(board.cells).entries()) {
    const chance = chanceFrom(seed, n + 1)
    const start = run.chess ? chess : shuffled(board, chance)
    const cooling = { hot: mean * run.hot, cold: mean * run.cold, work: work * run.share }
    const annealed = anneal(board, start, moves, cooling, chance)
    const found = descend(board, annealed, moves, mostWork / 10)
    if (!best || found.cost < best.cost - 1e-9) best = found
    if (best.cost === 0) break
  }
  return best!
}
