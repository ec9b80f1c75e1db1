import type { Pile } from './instance.ts'
import type { ClothColumns, GarmentColumns, Model } from './model.ts'
import type { Plan, Strip } from './plan.ts'

type Values = number[]

function setGarment(values: Values, columns: GarmentColumns, plan: Plan, g: number): number {
  const { gives, plays, used, cuts, capacity } = columns
  let total = 0
  for (const { role, size, count } of plan.supply.filter((one) => one.garment === g)) {
    values[gives.find((one) => one.role === role && one.size === size)!.at] = count
    const played = plays.get(role)
    if (played !== undefined) values[played] = 1
    total += count
  }
  if (used !== null) values[used] = Number(total > 0)
  for (const { panel, pattern, times } of plan.cuts.filter((one) => one.garment === g)) {
    const c = capacity.classes.findIndex(({ members }) =>
      members.some((one) => one.panel === panel),
    )
    const member = capacity.classes[c]!.members.find((one) => one.panel === panel)!
    const n = member.whole.findIndex((whole) => whole.join() === pattern.join())
    const column = cuts[c]?.[n]
    if (column !== undefined) values[column]! += times
  }
  return total
}

/** The strip among those of the programme that gives as much in no more height; null where there is none. */
function likeStrip(
  { strips }: ClothColumns,
  { height, sections }: Strip,
  wanted: readonly number[],
) {
  const counts = wanted.map(() => 0)
  for (const { size, count } of sections) counts[size]! += count
  const n = strips.patterns.findIndex(
    (one) =>
      one.height <= height &&
      counts.every((count, size) => one.counts[size]! >= Math.min(count, wanted[size]!)),
  )
  return n < 0 ? null : n
}

/** The solution of the programme that stands for a plan; null where its cloth is cut in ways left out. */
export function solutionOf(pile: Pile, model: Model, plan: Plan): number[] | null {
  const values: Values = new Array(model.programme.lower.length).fill(0)
  const totals = model.garments.map((columns, g) => setGarment(values, columns, plan, g))
  values[model.most] = Math.max(0, ...totals)
  for (const { dark, levels } of model.thresholds) {
    const darkest = plan.supply
      .filter(({ role }) => role === dark)
      .map(({ garment }) => pile.garments[garment]!.L)
    for (const { L, at } of levels) values[at] = Number(darkest.some((own) => own >= L))
  }
  for (const { size, role, at } of model.lacking) {
    values[at] = plan.buy.find((one) => one.size === size && one.role === role)?.count ?? 0
  }
  for (const columns of model.cloth) {
    const own = plan.cloth.find(({ role }) => role === columns.role)
    if (!own) continue
    const wanted = pile.demand.map((row) => row[columns.role]!)
    for (const strip of own.strips) {
      const n = likeStrip(columns, strip, wanted)
      if (n === null) return null
      values[columns.times[n]!]! += strip.times
    }
    values[columns.steps] = own.steps
  }
  return values
}
