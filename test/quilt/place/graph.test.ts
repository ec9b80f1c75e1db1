import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boardOfGrid } from '../../../src/quilt/place/board.ts'
import { Graph } from '../../../src/quilt/place/graph.ts'
import type { Instance } from '../../../src/quilt/place/instance.ts'
import { type Pairwise, pairwiseOf } from '../../../src/quilt/place/pairwise.ts'
import { countOf, orderOf, pairOf } from '../../../src/quilt/place/refinements.ts'
import { Strip, toldWithin } from '../../../src/quilt/place/strip-bound.ts'
import { instanceOf, leastOfAll, plainBoard } from '../../help/boards.ts'

const anything = Number.MAX_VALUE

/** The graph of every beginning, as a strip tells that keeps so few states that much is left untold. */
function roughGraph(problem: Pairwise, prices: Float64Array, limit = anything) {
  const told = toldWithin(problem, 40)
  const strip = new Strip(problem, told)
  const floor = strip.backward(prices)
  const graph = Graph.of(strip, prices, limit, anything)!
  return { graph, floor, untold: problem.pairs.filter((pair) => !told.includes(pair)) }
}

/** Everything told that there is to tell, one thing after another; each must only raise the floor. */
function refined(instance: Instance, limit = anything): number {
  const problem = pairwiseOf(boardOfGrid(instance))
  const prices = Float64Array.from({ length: problem.types }, (_, t) => 3 * t - 4)
  const paid = prices.reduce((sum, price, t) => sum + price * problem.counts[t]!, 0)
  const { graph, floor, untold } = roughGraph(problem, prices, limit + paid)
  let cost = graph.backward(prices)
  expect(cost).toBeGreaterThanOrEqual(floor - 0.01)
  const refinements = [
    ...untold.map((pair) => pairOf(problem, pair)),
    ...[...problem.counts.keys()].map((t) => countOf(problem, t)),
  ]
  for (const refinement of refinements) {
    expect(graph.refine(refinement, prices, limit + paid, anything)).toBe(true)
    const more = graph.backward(prices)
    expect(more).toBeGreaterThanOrEqual(cost - 1e-9)
    cost = more
  }
  return cost - paid
}

describe('a graph in which everything is told', () => {
  const shapes = [
    { rows: 3, cols: 3, types: 4 },
    { rows: 3, cols: 3, types: 4, roles: 2 },
    { rows: 2, cols: 4, types: 5, even: true },
  ]
  test.each(shapes)('%j: its cheapest way costs what the cheapest placement costs', (shape) => {
    fc.assert(
      fc.property(instanceOf(shape), ({ instance }) => {
        const least = leastOfAll(instance)
        expect(refined(instance)).toBeCloseTo(least, 6)
        // With a limit in the way it keeps what costs as much, and nothing is left below.
        expect(refined(instance, least + 0.5)).toBeCloseTo(least, 6)
        expect(refined(instance, least - 0.5)).toBe(Infinity)
      }),
      { numRuns: 15 },
    )
  })
})

test('types that could change names come in their order, and the least stays', () => {
  const instance = plainBoard(3, 3, [3, 3, 2, 1])
  const problem = pairwiseOf(boardOfGrid(instance))
  const prices = new Float64Array(4)
  const told = toldWithin(problem, 100_000)
  const strip = new Strip(problem, told)
  strip.backward(prices)
  const graph = Graph.of(strip, prices, anything, anything)!
  const refine = (refinement: ReturnType<typeof orderOf>): void => {
    expect(graph.refine(refinement, prices, anything, anything)).toBe(true)
    graph.backward(prices)
  }
  graph.backward(prices)
  for (const t of problem.counts.keys()) refine(countOf(problem, t))
  const ways = graph.ways
  refine(orderOf([0, 1], 4))
  expect(graph.ways).toBeLessThan(ways)
  expect(graph.backward(prices)).toBe(leastOfAll(instance))
  const filling = graph.filling(prices)
  expect(filling.indexOf(0)).toBeLessThan(filling.indexOf(1))
})

test('a graph that would grow beyond its bound says so and stays as it was', () => {
  const problem = pairwiseOf(boardOfGrid(plainBoard(3, 3, [3, 3, 3])))
  const prices = new Float64Array(3)
  const { graph, untold } = roughGraph(problem, prices)
  const [ways, cost] = [graph.ways, graph.backward(prices)]
  expect(graph.refine(pairOf(problem, untold[0]!), prices, anything, ways)).toBe(false)
  expect(graph.ways).toBe(ways)
  expect(graph.backward(prices)).toBe(cost)
  const strip = new Strip(problem, toldWithin(problem, 40))
  strip.backward(prices)
  expect(Graph.of(strip, prices, anything, ways - 1)).toBeNull()
})
