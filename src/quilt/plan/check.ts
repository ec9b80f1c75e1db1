import type { Pile } from './instance.ts'
import type { Plan, RoleCloth, Worth } from './plan.ts'

/** What a plan is worth, counted anew, and every rule that it breaks, in words. */
export interface Checked {
  readonly worth: Worth
  readonly problems: readonly string[]
}

const add = (sums: Map<number, number>, key: number, count: number): void => {
  sums.set(key, (sums.get(key) ?? 0) + count)
}

const isCount = (count: number): boolean => Number.isSafeInteger(count) && count >= 0

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((count, size) => count === b[size])

/** Gathers what is wrong. */
class Findings {
  readonly problems: string[] = []

  must(holds: boolean, problem: string): void {
    if (!holds) this.problems.push(problem)
  }
}

function checkSupply(pile: Pile, { supply }: Plan, found: Findings): void {
  for (const { garment: g, role: r, size: s, count } of supply) {
    const garment = pile.garments[g]
    const role = pile.roles[r]
    const wanted = pile.demand[s]?.[r]
    const what = `garment ${g}, role ${r}, size ${s}`
    found.must(isCount(count), `${what}: ${count} is no count`)
    found.must(wanted !== undefined, `${what}: there is no such role or size`)
    found.must(garment !== undefined, `${what}: there is no such garment`)
    found.must(garment?.roles.includes(r) === true, `${what}: the garment may not play the role`)
    found.must(role?.garments === true, `${what}: garments may not play the role`)
  }
}

function checkGarments(pile: Pile, { supply }: Plan, found: Findings): void {
  for (const [g, { minIfUsed }] of pile.garments.entries()) {
    const own = supply.filter((one) => one.garment === g && one.count > 0)
    const total = own.reduce((sum, { count }) => sum + count, 0)
    const byRole = new Map<number, number>()
    for (const { role, count } of own) add(byRole, role, count)
    found.must(
      total === 0 || total >= minIfUsed,
      `garment ${g} gives ${total} and less than ${minIfUsed}`,
    )
    found.must(
      byRole.size <= pile.maxRoles,
      `garment ${g} plays ${byRole.size} roles and more than ${pile.maxRoles}`,
    )
    for (const [role, count] of byRole) {
      const wanted = pile.demand.reduce((sum, row) => sum + (row[role] ?? 0), 0)
      // A hair above: a share is a decimal fraction, and a product of these is not exact.
      const most = Math.floor(pile.shareMax * wanted + 1e-9)
      found.must(count <= most, `garment ${g} gives ${count} to role ${role} and more than ${most}`)
    }
  }
}

/** For each garment, how many pieces go into each of the quilts that share the pile. */
function givenToQuilts(pile: Pile, { supply }: Plan): number[][] {
  const quilts = [...new Set(pile.roles.map(({ quilt = 0 }) => quilt))]
  return pile.garments.map((_, g) =>
    quilts.map((quilt) =>
      supply
        .filter(({ garment, role }) => garment === g && (pile.roles[role]?.quilt ?? 0) === quilt)
        .reduce((sum, { count }) => sum + count, 0),
    ),
  )
}

function checkSharing(pile: Pile, plan: Plan, found: Findings): void {
  if (pile.sharing !== 'evenly') return
  for (const [g, given] of givenToQuilts(pile, plan).entries()) {
    const without = given.filter((count) => count === 0).length
    found.must(
      without === 0 || without === given.length,
      `garment ${g} is used, and not in ${without} of ${given.length} quilts`,
    )
  }
}

/** Must-use garments that give nothing; with an agreement on sharing, each counts in each quilt. */
function unused(pile: Pile, plan: Plan): number {
  const isAgreed = pile.sharing === 'must-in-all' || pile.sharing === 'evenly'
  const musts = givenToQuilts(pile, plan).filter((_, g) => pile.garments[g]!.must)
  if (isAgreed) return musts.flat().filter((count) => count === 0).length
  return musts.filter((given) => given.every((count) => count === 0)).length
}

function checkCuts(pile: Pile, { supply, cuts }: Plan, found: Findings): void {
  for (const [g, { panels }] of pile.garments.entries()) {
    const own = cuts.filter(({ garment }) => garment === g)
    const times = new Map<number, number>()
    const pieces = new Map<number, number>()
    for (const { panel: p, pattern, times: n } of own) {
      const what = `garment ${g}, panel ${p}`
      add(times, p, n)
      for (const [size, count] of pattern.entries()) add(pieces, size, count * n)
      found.must(isCount(n), `${what}: ${n} is no number of panels`)
      found.must(
        panels[p]?.patterns?.some((known) => isSame(known, pattern)) === true,
        `${what}: ${pattern.join()} is none of its patterns`,
      )
    }
    for (const [p, n] of times) {
      const mult = panels[p]?.mult ?? 0
      found.must(n <= mult, `garment ${g}, panel ${p}: cut ${n} times, and there are ${mult}`)
    }
    for (const size of pile.sizes.keys()) {
      const given = supply
        .filter((one) => one.garment === g && one.size === size)
        .reduce((sum, { count }) => sum + count, 0)
      const cut = pieces.get(size) ?? 0
      found.must(given <= cut, `garment ${g} gives ${given} of size ${size}, and ${cut} are cut`)
    }
  }
  for (const { garment } of cuts) {
    found.must(pile.garments[garment] !== undefined, `cuts: there is no garment ${garment}`)
  }
}

function checkBuying(pile: Pile, { supply, buy }: Plan, found: Findings): void {
  for (const [size, row] of pile.demand.entries()) {
    for (const [role, wanted] of row.entries()) {
      const of = (all: Plan['buy']) =>
        all
          .filter((one) => one.size === size && one.role === role)
          .reduce((sum, { count }) => sum + count, 0)
      const [given, bought] = [of(supply), of(buy)]
      found.must(
        given + bought === wanted,
        `size ${size}, role ${role}: ${given} given and ${bought} bought are not ${wanted}`,
      )
    }
  }
  for (const { count } of buy) found.must(isCount(count), `buy: ${count} is no count`)
}

function checkStrips(pile: Pile, { role, steps, strips }: RoleCloth, found: Findings): void {
  const { width, step } = pile.cloth
  const ways = (size: number) => {
    const { w, h, rot } = pile.sizes[size]!
    return [[w, h], ...(rot ? [[h, w]] : [])]
  }
  const inRole = [...pile.sizes.keys()].filter((size) => pile.demand[size]![role]! > 0)
  const heights = inRole.flatMap((size) => ways(size).map(([, h]) => h!))
  let length = 0
  for (const { height, times, sections } of strips) {
    length += height * times
    found.must(isCount(times), `role ${role}: ${times} is no number of strips`)
    found.must(heights.includes(height), `role ${role}: no piece is ${height} high`)
    const taken = sections.reduce((sum, { w }) => sum + w, 0)
    found.must(taken <= width, `role ${role}: sections take ${taken} of a width of ${width}`)
    for (const { size, w, h, count } of sections) {
      found.must(
        inRole.includes(size) && ways(size).some(([a, b]) => a === w && b === h),
        `role ${role}: size ${size} does not lie as ${w} by ${h}`,
      )
      found.must(
        isCount(count) && count <= Math.floor(height / h),
        `role ${role}: ${count} of ${h} are not in a strip of ${height}`,
      )
    }
  }
  found.must(isCount(steps), `role ${role}: ${steps} is no number of steps`)
  found.must(length <= steps * step, `role ${role}: strips of ${length} in ${steps} steps`)
}

/** Bought pieces that no strip holds: `lacking` counts those too wide for the cloth. */
function checkCloth(pile: Pile, { buy, cloth }: Plan, found: Findings): number {
  let lacking = 0
  for (const one of cloth) checkStrips(pile, one, found)
  for (const { role, size, count } of buy) {
    const cut = cloth
      .filter((one) => one.role === role)
      .flatMap(({ strips }) => strips)
      .reduce(
        (sum, { times, sections }) =>
          sum + times * sections.reduce((n, one) => n + (one.size === size ? one.count : 0), 0),
        0,
      )
    const { w, h, rot } = pile.sizes[size]!
    const fits = Math.min(w, rot ? h : w) <= pile.cloth.width
    if (!fits) lacking += count
    else found.must(cut >= count, `size ${size}, role ${role}: ${cut} of ${count} are in strips`)
  }
  const twice = cloth.length - new Set(cloth.map(({ role }) => role)).size
  found.must(twice === 0, 'a role has cloth in two places')
  return lacking
}

function checkContrast(pile: Pile, { supply }: Plan, found: Findings): void {
  const lightness = (role: number) =>
    supply
      .filter((one) => one.role === role && one.count > 0)
      .map(({ garment }) => pile.garments[garment]?.L ?? Number.NaN)
  for (const { light, dark, delta } of pile.contrast) {
    const [lights, darks] = [lightness(light), lightness(dark)]
    if (lights.length === 0 || darks.length === 0) continue
    const [lowest, highest] = [Math.min(...lights), Math.max(...darks)]
    found.must(
      lowest - highest >= delta - 1e-9,
      `roles ${light} and ${dark}: ${lowest} and ${highest} are nearer than ${delta}`,
    )
  }
}

/**
 * Looks at a plan from the pile alone, with nothing of what made it: rules, sums, and its worth.
 * Panels need their patterns.
 */
export function checkPlan(pile: Pile, plan: Plan): Checked {
  const found = new Findings()
  checkSupply(pile, plan, found)
  checkGarments(pile, plan, found)
  checkCuts(pile, plan, found)
  checkBuying(pile, plan, found)
  checkContrast(pile, plan, found)
  checkSharing(pile, plan, found)
  const lacking = checkCloth(pile, plan, found)
  const given = pile.garments.map((_, g) =>
    plan.supply.filter(({ garment }) => garment === g).reduce((sum, { count }) => sum + count, 0),
  )
  return {
    problems: found.problems,
    worth: {
      lacking,
      V: unused(pile, plan),
      Q: plan.cloth.reduce((sum, { steps }) => sum + steps, 0),
      P: plan.buy.reduce((sum, { count }) => sum + count, 0),
      M: Math.max(0, ...given),
    },
  }
}
