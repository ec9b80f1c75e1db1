import type { PanelClass, PanelWay } from './capacity.ts'
import type { ClothColumns } from './cloth-columns.ts'
import type { Pile } from './instance.ts'
import type { GarmentColumns, Model } from './model.ts'
import type { Bought, PanelCut, Plan, RoleCloth, Strip, Supplied } from './plan.ts'

/** Makes `times` as small as it can be while `enough` still holds; what is costliest goes first. */
function prune(
  times: readonly number[],
  cost: (n: number) => number,
  enough: (times: readonly number[]) => boolean,
): number[] {
  const left = [...times]
  const order = [...left.keys()].sort((a, b) => cost(b) - cost(a))
  for (const n of order) {
    while (left[n]! > 0) {
      left[n]! -= 1
      if (enough(left)) continue
      left[n]! += 1
      break
    }
  }
  return left
}

/** A panel's pattern that was chosen, and how many panels alike are cut by it. */
type Chosen = PanelWay & { readonly times: number }

/** Spreads the times of a class's patterns over its panels, each of which is cut once. */
function chosenIn(panels: PanelClass, times: readonly number[]): Chosen[] {
  const free = panels.members.map(({ mult }) => mult)
  return times.flatMap((all, n): Chosen[] => {
    if (all === 0) return []
    if (panels.ways) return panels.ways[n]!.map((way) => ({ ...way, times: 1 }))
    let left = all
    return panels.members.flatMap(({ panel, whole }, m): Chosen[] => {
      const now = Math.min(left, free[m]!)
      left -= now
      free[m]! -= now
      return now > 0 ? [{ panel, whole: whole[n]!, counts: panels.patterns[n]!, times: now }] : []
    })
  })
}

/** Only as many panels are cut as are needed for what is given: uncut cloth stays whole. */
function cutsOf(
  garment: number,
  { classes, cuts, gives }: GarmentColumns,
  values: readonly number[],
  area: (counts: readonly number[]) => number,
): PanelCut[] {
  const needed = new Map<number, number>()
  for (const { size, at } of gives) needed.set(size, (needed.get(size) ?? 0) + values[at]!)
  const chosen = classes.flatMap((panels, c) =>
    chosenIn(panels, cuts[c]?.map((column) => values[column]!) ?? [panels.mult]),
  )
  const enough = (times: readonly number[]) =>
    [...needed].every(
      ([size, count]) =>
        times.reduce((sum, t, n) => sum + t * chosen[n]!.counts[size]!, 0) >= count,
    )
  const times = prune(
    chosen.map((one) => one.times),
    (n) => area(chosen[n]!.counts),
    enough,
  )
  return gatheredCuts(
    chosen.flatMap(({ panel, whole }, n): PanelCut[] =>
      times[n]! > 0 ? [{ garment, panel, pattern: whole, times: times[n]! }] : [],
    ),
  )
}

/** Equal cuts of equal panels together. */
export function gatheredCuts(all: readonly PanelCut[]): PanelCut[] {
  const cuts = new Map<string, PanelCut>()
  for (const one of all) {
    const key = [one.garment, one.panel, ...one.pattern].join()
    cuts.set(key, { ...one, times: (cuts.get(key)?.times ?? 0) + one.times })
  }
  return [...cuts.values()]
}

function clothOf(
  pile: Pile,
  { role, strips, times }: ClothColumns,
  values: readonly number[],
  buy: readonly Bought[],
): RoleCloth[] {
  const own = buy.filter((one) => one.role === role)
  const { patterns } = strips
  const cut = prune(
    times.map((at) => values[at]!),
    (n) => patterns[n]!.height,
    (left) =>
      own.every(
        ({ size, count }) =>
          left.reduce((sum, t, n) => sum + t * patterns[n]!.counts[size]!, 0) >= count ||
          !patterns.some(({ counts }) => counts[size]! > 0),
      ),
  )
  const used = patterns.flatMap(({ height, sections }, n): Strip[] =>
    cut[n]! > 0 ? [{ height, times: cut[n]!, sections }] : [],
  )
  return used.length > 0 ? [{ role, steps: stepsFor(pile, used), strips: used }] : []
}

/** Steps of cloth that strips need, cut one below the other. */
export const stepsFor = (pile: Pile, strips: readonly Strip[]): number =>
  Math.ceil(strips.reduce((sum, { height, times }) => sum + height * times, 0) / pile.cloth.step)

/** What is wanted and not supplied. */
export function missing(pile: Pile, supply: readonly Supplied[]): Bought[] {
  const left = pile.demand.map((row) => [...row])
  for (const { size, role, count } of supply) left[size]![role]! -= count
  return left.flatMap((row, size) =>
    row.flatMap((count, role) => (count > 0 ? [{ role, size, count }] : [])),
  )
}

/** The plan behind a solution of the programme; its values are whole numbers. */
export function planFrom(pile: Pile, model: Model, values: readonly number[]): Plan {
  const supply = model.garments.flatMap(({ gives }, garment) =>
    gives.flatMap(({ size, role, at }): Supplied[] =>
      values[at]! > 0 ? [{ garment, role, size, count: values[at]! }] : [],
    ),
  )
  const buy = missing(pile, supply)
  const area = (counts: readonly number[]) =>
    counts.reduce((sum, count, size) => sum + count * pile.sizes[size]!.w * pile.sizes[size]!.h, 0)
  return {
    supply,
    buy,
    cuts: model.garments.flatMap((columns, g) => cutsOf(g, columns, values, area)),
    cloth: model.cloth.flatMap((columns) => clothOf(pile, columns, values, buy)),
  }
}
