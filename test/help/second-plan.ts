import type { PileJson } from './piles.ts'

type Counts = readonly number[]
export type SecondWorth = readonly [V: number, Q: number, P: number, M: number]

/** One cell for each wanted size of each role. */
interface Cell {
  readonly size: number
  readonly role: string
  readonly count: number
}

const sumOf = (counts: Counts): number => counts.reduce((sum, count) => sum + count, 0)

/** Below zero where `a` is better. */
const compare = (a: Counts, b: Counts): number => {
  const at = a.findIndex((value, n) => value !== b[n])
  return at < 0 ? 0 : a[at]! - b[at]!
}

/** All count vectors that some choice of patterns gives, one for each panel. */
function cutVectors({ panels }: PileJson['garments'][number], sizes: number): Counts[] {
  let all = new Map<string, Counts>([['', new Array(sizes).fill(0)]])
  for (const { mult, patterns } of panels) {
    for (let n = 0; n < mult; n += 1) {
      const next = new Map<string, Counts>()
      for (const sum of all.values()) {
        for (const counts of [new Array(sizes).fill(0), ...patterns!]) {
          const one = sum.map((count, size) => count + counts[size]!)
          next.set(one.join(), one)
        }
      }
      all = next
    }
  }
  return [...all.values()]
}

/** For each quilt, the cells that are its own. */
const quiltsOf = ({ roles }: PileJson, cells: readonly Cell[]): number[][] =>
  [...new Set(roles.map(({ quilt }) => quilt ?? 0))].map((quilt) =>
    cells.flatMap(({ role }, c) =>
      (roles.find(({ name }) => name === role)!.quilt ?? 0) === quilt ? [c] : [],
    ),
  )

/** Quilts that get nothing. */
const missed = (quilts: readonly (readonly number[])[], gives: Counts): number =>
  quilts.filter((cells) => cells.every((c) => gives[c] === 0)).length

/** Everything one garment may give, cell by cell, by the rules that speak of it alone. */
function choicesOf(pile: PileJson, cells: readonly Cell[], g: number, may: ReadonlySet<string>) {
  const garment = pile.garments[g]!
  const cut = cutVectors(garment, pile.sizes.length)
  const share = new Map(
    pile.roles.map(({ name }) => {
      const wanted = sumOf(cells.map(({ role, count }) => (role === name ? count : 0)))
      // floor of a decimal fraction: the hair keeps 0.35 × 20 from being 6.99
      return [name, Math.floor(pile.shareMax * wanted + 1e-9)]
    }),
  )
  const quilts = quiltsOf(pile, cells)
  const found: Counts[] = []
  const isAllowed = (gives: Counts): boolean => {
    const total = sumOf(gives)
    const byRole = new Map<string, number>()
    for (const [c, count] of gives.entries()) {
      if (count > 0) byRole.set(cells[c]!.role, (byRole.get(cells[c]!.role) ?? 0) + count)
    }
    return (
      (total === 0 || total >= garment.minIfUsed) &&
      (pile.sharing !== 'evenly' || total === 0 || missed(quilts, gives) === 0) &&
      byRole.size <= pile.maxRolesPerGarment &&
      [...byRole].every(([role, count]) => may.has(role) && count <= share.get(role)!) &&
      cut.some((counts) =>
        counts.every(
          (count, size) =>
            sumOf(gives.map((given, c) => (cells[c]!.size === size ? given : 0))) <= count,
        ),
      )
    )
  }
  const go = (gives: number[]): void => {
    const cell = cells[gives.length]
    if (!cell) {
      if (isAllowed(gives)) found.push(gives)
      return
    }
    const most = may.has(cell.role) ? Math.max(...cut.map((counts) => counts[cell.size]!)) : 0
    for (let count = 0; count <= Math.min(cell.count, most); count += 1) go([...gives, count])
  }
  go([])
  return found
}

/** The least length of cloth for the pieces of one role, strip by strip. */
function lengthFinder({ sizes, cloth }: PileJson, own: readonly number[]) {
  const ways = own.flatMap((size, n) => {
    const { w, h, rot } = sizes[size]!
    return [{ n, w, h }, ...(rot ? [{ n, w: h, h: w }] : [])]
  })
  const strips = new Map<string, { height: number; counts: Counts }>()
  for (const height of new Set(ways.map(({ h }) => h))) {
    const go = (at: number, left: number, counts: Counts): void => {
      const way = ways[at]
      if (!way) {
        strips.set([height, ...counts].join(), { height, counts })
        return
      }
      const high = Math.floor(height / way.h)
      for (let times = 0; times * way.w <= left && (times === 0 || high > 0); times += 1) {
        const more = counts.map((count, n) => count + (n === way.n ? times * high : 0))
        go(at + 1, left - times * way.w, more)
      }
    }
    go(
      0,
      cloth.width,
      own.map(() => 0),
    )
  }
  const known = new Map<string, number>()
  const least = (bought: Counts): number => {
    if (sumOf(bought) === 0) return 0
    const key = bought.join()
    const found = known.get(key)
    if (found !== undefined) return found
    let best = Number.POSITIVE_INFINITY
    for (const { height, counts } of strips.values()) {
      const left = bought.map((count, n) => Math.max(0, count - counts[n]!))
      if (sumOf(left) < sumOf(bought)) best = Math.min(best, height + least(left))
    }
    known.set(key, best)
    return best
  }
  return least
}

/** For each threshold of lightness, the roles that each garment may play. */
function castings(pile: PileJson): Set<string>[][] {
  const open = pile.garments.map(
    ({ roles }) =>
      new Set(
        pile.roles.filter((one) => one.garments && roles.includes(one.name)).map((r) => r.name),
      ),
  )
  let all = [open]
  for (const { light, dark, delta } of pile.contrast) {
    const thresholds = [Number.NEGATIVE_INFINITY, ...new Set(pile.garments.map(({ L }) => L))]
    all = all.flatMap((casting) =>
      thresholds.map((T) =>
        casting.map(
          (roles, g) =>
            new Set(
              [...roles].filter(
                (role) =>
                  (role !== light || pile.garments[g]!.L >= T + delta) &&
                  (role !== dark || pile.garments[g]!.L <= T),
              ),
            ),
        ),
      ),
    )
  }
  return all
}

/**
 * The worth of the best plan by a second route: all that garments can give together, one garment after
 * another, for every threshold of lightness; no linear programme. For small piles whose pieces all fit the
 * cloth.
 */
export function secondPlan(pile: PileJson): SecondWorth {
  const cells: Cell[] = pile.demand.filter(({ count }) => count > 0)
  const roles = pile.roles.map(({ name }) => {
    const at = cells.flatMap(({ role }, c) => (role === name ? [c] : []))
    return {
      at,
      least: lengthFinder(
        pile,
        at.map((c) => cells[c]!.size),
      ),
    }
  })
  const steps = (bought: Counts): number =>
    sumOf(
      roles.map(({ at, least }) => Math.ceil(least(at.map((c) => bought[c]!)) / pile.cloth.step)),
    )
  const choices = new Map<string, Counts[]>()
  const choicesFor = (g: number, may: ReadonlySet<string>): Counts[] => {
    const key = [g, ...may].join()
    const found = choices.get(key) ?? choicesOf(pile, cells, g, may)
    choices.set(key, found)
    return found
  }

  const quilts = quiltsOf(pile, cells)
  const agreed = pile.sharing === 'must-in-all' || pile.sharing === 'evenly'
  let best: SecondWorth | null = null
  for (const casting of castings(pile)) {
    // What is given so far → the must-use garments left out and the most of one garment, none worse in both.
    let states = new Map<string, { given: Counts; marks: [V: number, M: number][] }>()
    states.set('', { given: cells.map(() => 0), marks: [[0, 0]] })
    for (const [g, may] of casting.entries()) {
      const next: typeof states = new Map()
      for (const { given, marks } of states.values()) {
        for (const gives of choicesFor(g, may)) {
          const sum = given.map((count, c) => count + gives[c]!)
          if (sum.some((count, c) => count > cells[c]!.count)) continue
          const total = sumOf(gives)
          const idle = !pile.garments[g]!.must
            ? 0
            : agreed
              ? missed(quilts, gives)
              : Number(total === 0)
          const key = sum.join()
          const state = next.get(key) ?? { given: sum, marks: [] }
          next.set(key, state)
          for (const [V, M] of marks) {
            const [v, m] = [V + idle, Math.max(M, total)]
            if (state.marks.some(([a, b]) => a <= v && b <= m)) continue
            state.marks = [...state.marks.filter(([a, b]) => a < v || b < m), [v, m]]
          }
        }
      }
      states = next
    }
    for (const { given, marks } of states.values()) {
      const bought = cells.map(({ count }, c) => count - given[c]!)
      for (const [V, M] of marks) {
        const worth: SecondWorth = [V, steps(bought), sumOf(bought), M]
        if (!best || compare(worth, best) < 0) best = worth
      }
    }
  }
  return best!
}
