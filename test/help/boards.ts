import fc from 'fast-check'
import type { Instance } from '../../src/quilt/place/instance.ts'

/** The cost by its plain definition, every pair of cells looked at once. */
export function plainCost({ cols, types, repeat, adj }: Instance, at: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < at.length; i++) {
    for (let j = i + 1; j < at.length; j++) {
      const dx = (j % cols) - (i % cols)
      const dy = Math.floor(j / cols) - Math.floor(i / cols)
      const d2 = dx * dx + dy * dy
      const [t, u] = [at[i]!, at[j]!]
      if (types[t]!.garment === types[u]!.garment) sum += repeat[String(d2)] ?? 0
      if (d2 === 1) sum += adj[t]![u]!
    }
  }
  return sum
}

/** Whether every cell holds a type of its role, each type as often as it is there. */
export const isFair = ({ cells, types }: Instance, at: readonly number[]): boolean =>
  at.length === cells.length &&
  at.every((t, i) => types[t]!.role === cells[i]) &&
  types.every(({ count }, t) => at.filter((one) => one === t).length === count)

/** Every placement there is; for few cells. */
export function* everyPlacement({ cells, types }: Instance): Generator<number[]> {
  const left = types.map(({ count }) => count)
  const at: number[] = []
  function* from(i: number): Generator<number[]> {
    if (i === cells.length) {
      yield [...at]
      return
    }
    for (const [t, { role }] of types.entries()) {
      if (left[t] === 0 || role !== cells[i]) continue
      left[t]! -= 1
      at[i] = t
      yield* from(i + 1)
      left[t]! += 1
    }
  }
  yield* from(0)
}

export const leastOfAll = (instance: Instance): number => {
  let least = Number.POSITIVE_INFINITY
  for (const at of everyPlacement(instance)) least = Math.min(least, plainCost(instance, at))
  return least
}

interface Shape {
  readonly rows: number
  readonly cols: number
  readonly types: number
  readonly roles?: number
  /** Whether `adj` is the same both ways round. */
  readonly even?: boolean
}

/** Some instance of that shape: roles and garments anyhow, each type with as many pieces as it got cells. */
export const instanceOf = ({ rows, cols, types, roles = 1, even = false }: Shape) =>
  fc
    .record({
      picks: fc.array(fc.nat({ max: types - 1 }), {
        minLength: rows * cols,
        maxLength: rows * cols,
      }),
      garments: fc.array(fc.nat({ max: types }), { minLength: types, maxLength: types }),
      adj: fc.array(fc.array(fc.nat({ max: 40 }), { minLength: types, maxLength: types }), {
        minLength: types,
        maxLength: types,
      }),
      repeat: fc.constantFrom<Record<string, number>>(
        { '1': 100, '2': 30, '4': 12 },
        { '1': 7, '5': 3 },
        { '2': 1 },
        {},
      ),
      seed: fc.integer(),
    })
    .map(({ picks, garments, adj, repeat, seed }): { instance: Instance; at: number[] } => {
      const roleOf = (t: number): string => `role ${t % roles}`
      const table = adj.map((row, t) =>
        row.map((cost, u) => (even ? adj[Math.min(t, u)]![Math.max(t, u)]! : cost)),
      )
      const instance: Instance = {
        rows,
        cols,
        cells: picks.map(roleOf),
        types: Array.from({ length: types }, (_, t) => ({
          garment: `g${garments[t]}`,
          role: roleOf(t),
          count: picks.filter((one) => one === t).length,
        })),
        repeat,
        adj: table,
        seed,
      }
      return { instance, at: picks }
    })

/** Garments of those counts on one role, everything else free of cost. */
export const plainBoard = (rows: number, cols: number, counts: readonly number[]): Instance => ({
  rows,
  cols,
  cells: Array<string>(rows * cols).fill('any'),
  types: counts.map((count, n) => ({ garment: `g${n}`, role: 'any', count })),
  repeat: { '1': 100, '2': 30, '4': 12 },
  adj: counts.map(() => counts.map(() => 0)),
  seed: 1,
})
