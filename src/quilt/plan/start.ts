import type { ClothColumns } from './cloth-columns.ts'
import type { Pile } from './instance.ts'
import type { GarmentColumns, Model } from './model.ts'
import type { Plan, Strip } from './plan.ts'

type Values = number[]

/** Which patterns the garment's panels are cut by; where one class stands for all, one that gives as much. */
function setCuts(values: Values, { classes, cuts }: GarmentColumns, plan: Plan, g: number): void {
  const own = plan.cuts.filter(({ garment }) => garment === g)
  for (const [c, { ways, patterns, members }] of classes.entries()) {
    const columns = cuts[c]
    if (!columns) continue
    if (ways) {
      const given = patterns[0]!.map((_, size) =>
        plan.supply
          .filter((one) => one.garment === g && one.size === size)
          .reduce((sum, { count }) => sum + count, 0),
      )
      const n = patterns.findIndex((counts) => given.every((count, size) => count <= counts[size]!))
      values[columns[n]!] = 1
      continue
    }
    for (const { panel, pattern, times } of own) {
      const member = members.find((one) => one.panel === panel)
      const n = member?.whole.findIndex((whole) => whole.join() === pattern.join())
      if (n !== undefined) values[columns[n]!]! += times
    }
  }
}

function setGarment(values: Values, columns: GarmentColumns, plan: Plan, g: number): number {
  const { gives, plays, used, inQuilt } = columns
  const own = plan.supply.filter((one) => one.garment === g)
  let total = 0
  for (const { role, size, count } of own) {
    values[gives.find((one) => one.role === role && one.size === size)!.at] = count
    const played = plays.get(role)
    if (played !== undefined) values[played] = 1
    total += count
  }
  if (used !== null) values[used] = Number(total > 0)
  for (const { roles, at } of inQuilt) {
    values[at] = Number(own.some(({ role, count }) => count > 0 && roles.includes(role)))
  }
  setCuts(values, columns, plan, g)
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
