import { type Capacity, capacityOf } from './capacity.ts'
import type { Pile } from './instance.ts'
import { canBeBought, isShared, rolesByQuilt, shareOf, tooNear } from './limits.ts'
import type { PanelCut, Plan, RoleCloth, Strip, Supplied } from './plan.ts'
import { gatheredCuts, missing, stepsFor } from './read-back.ts'

/** What is still wanted, and how light the roles' garments are so far. */
class Bench {
  readonly left: number[][]
  readonly #pile: Pile
  readonly #playing: Set<number>[]

  constructor(pile: Pile) {
    this.#pile = pile
    this.left = pile.demand.map((row) => [...row])
    this.#playing = pile.roles.map(() => new Set())
  }

  leftOf(role: number): number {
    return this.left.reduce((sum, row) => sum + row[role]!, 0)
  }

  /** Whether the contrast of the roles lets the garment play one, beside those already chosen for it. */
  mayPlay(garment: number, role: number, beside: readonly number[]): boolean {
    const { contrast, garments } = this.#pile
    const own = garments[garment]!.L
    const playing = (other: number) => [
      ...[...this.#playing[other]!].map((g) => garments[g]!.L),
      ...(beside.includes(other) || other === role ? [own] : []),
    ]
    return contrast.every(
      ({ light, dark, delta }) =>
        (role !== light || playing(dark).every((L) => !tooNear(own, L, delta))) &&
        (role !== dark || playing(light).every((L) => !tooNear(L, own, delta))),
    )
  }

  take(supplied: readonly Supplied[]): void {
    for (const { garment, role, size, count } of supplied) {
      this.left[size]![role]! -= count
      this.#playing[role]!.add(garment)
    }
  }
}

/** How a hand goes through the garments. */
export interface Manner {
  /** Places of the garments, the first one cut first. */
  readonly order: readonly number[]
  /** Which roles a garment is thought of for. */
  readonly casts: (garment: number, role: number) => boolean
  /** What a role may still get from garments that come later; where less is left than wanted, it goes first. */
  readonly supply: (role: number, after: number) => number
}

/** The roles that want most, as many as one garment may play; where quilts share it, one of each quilt first. */
function rolesFor(
  pile: Pile,
  bench: Bench,
  at: number,
  { roles }: Capacity,
  { order, casts, supply }: Manner,
): number[] {
  const garment = order[at]!
  const want = new Map(roles.map((role) => [role, bench.leftOf(role) / supply(role, at)]))
  const wanted = roles
    .filter((role) => bench.leftOf(role) > 0)
    .sort((a, b) => want.get(b)! - want.get(a)!)
  const inTurn = isShared(pile) ? quiltByQuilt(pile, wanted) : wanted
  const chosen: number[] = []
  for (const role of inTurn) {
    if (chosen.length === pile.maxRoles) break
    if (casts(garment, role) && bench.mayPlay(garment, role, chosen)) chosen.push(role)
  }
  return chosen
}

/** The first role of every quilt, then the second ones, and so on. */
function quiltByQuilt(pile: Pile, roles: readonly number[]): number[] {
  const own = rolesByQuilt(pile).map((all) => roles.filter((role) => all.includes(role)))
  const rounds = Math.max(0, ...own.map(({ length }) => length))
  return Array.from({ length: rounds }, (_, n) => own.flatMap((all) => all[n] ?? [])).flat()
}

/** What one garment gives, as far as it has been cut. */
class Giving {
  readonly supplied: Supplied[] = []
  readonly #pile: Pile
  readonly #garment: number
  readonly #roles: readonly number[]
  readonly #left: number[][]
  readonly #share: Map<number, number>
  readonly #sizes: readonly number[]
  /** Roles of each quilt that ought to have its part; none where it falls as it may. */
  readonly #quilts: readonly (readonly number[])[]
  /** Those that have got nothing yet. */
  #unreached: readonly (readonly number[])[]

  constructor(pile: Pile, garment: number, roles: readonly number[], left: readonly number[][]) {
    this.#pile = pile
    this.#garment = garment
    this.#roles = roles
    this.#left = left.map((row) => [...row])
    this.#share = new Map(roles.map((role) => [role, shareOf(pile, role)]))
    this.#sizes = bySize(pile)
    this.#quilts = isShared(pile) ? rolesByQuilt(pile) : []
    this.#unreached = this.#quilts
  }

  get reachesAll(): boolean {
    return this.#unreached.length === 0
  }

  /** The area of these pieces that is of use. */
  worth(counts: readonly number[]): number {
    const { sizes } = this.#pile
    return this.#deal(counts).reduce(
      (sum, { size, count }) => sum + count * sizes[size]!.w * sizes[size]!.h,
      0,
    )
  }

  give(counts: readonly number[]): void {
    for (const one of this.#deal(counts)) {
      const { role, size, count } = one
      this.#left[size]![role]! -= count
      this.#share.set(role, this.#share.get(role)! - count)
      this.#unreached = this.#unreached.filter((roles) => !roles.includes(role))
      this.supplied.push(one)
    }
  }

  /** Those that want most first, so that all fill up alike: a garment for all has no place where one is full. */
  #emptiestFirst(): (readonly number[])[] {
    const wants = (roles: readonly number[]) =>
      this.#left.reduce((sum, row) => sum + roles.reduce((all, role) => all + row[role]!, 0), 0)
    return this.#quilts.toSorted((a, b) => wants(b) - wants(a))
  }

  /** One piece for each quilt that has none yet, then to each its part, then to the first roles what is left. */
  #deal(counts: readonly number[]): Supplied[] {
    const pieces = [...counts]
    const given = new Map<number, number>()
    const dealt: Supplied[] = []
    const offer = (size: number, role: number, most: number): number => {
      const before = dealt
        .filter((one) => one.size === size && one.role === role)
        .reduce((sum, { count }) => sum + count, 0)
      const room = (this.#share.get(role) ?? 0) - (given.get(role) ?? 0)
      const count = Math.min(pieces[size]!, this.#left[size]![role]! - before, room, most)
      if (count <= 0) return 0
      pieces[size]! -= count
      given.set(role, (given.get(role) ?? 0) + count)
      dealt.push({ garment: this.#garment, role, size, count })
      return count
    }
    for (const roles of this.#unreached) {
      this.#sizes.some((size) => roles.some((role) => offer(size, role, 1) > 0))
    }
    for (const size of this.#sizes) {
      const parts = Math.floor(pieces[size]! / Math.max(1, this.#quilts.length))
      for (const part of [parts, 1]) {
        for (const roles of this.#emptiestFirst()) {
          let left = part
          for (const role of roles) left -= offer(size, role, left)
        }
      }
      for (const role of this.#roles) offer(size, role, Number.POSITIVE_INFINITY)
    }
    return dealt
  }
}

/** Panel after panel by the pattern that gives most of what is still wanted, counted in cloth. */
function cutGarment(pile: Pile, bench: Bench, at: number, capacity: Capacity, manner: Manner) {
  const garment = manner.order[at]!
  const giving = new Giving(pile, garment, rolesFor(pile, bench, at, capacity, manner), bench.left)
  const cuts: PanelCut[] = []
  for (const { members, patterns } of capacity.classes) {
    for (const { panel, mult, whole } of members) {
      for (let n = 0; n < mult; n += 1) {
        const areas = patterns.map((counts) => giving.worth(counts))
        const best = areas.indexOf(Math.max(...areas))
        if (areas[best]! === 0) break
        giving.give(patterns[best]!)
        cuts.push({ garment, panel, pattern: whole[best]!, times: 1 })
      }
    }
  }
  return { giving, cuts }
}

const bySize = ({ sizes }: Pile): number[] =>
  [...sizes.keys()].sort((a, b) => sizes[b]!.w * sizes[b]!.h - sizes[a]!.w * sizes[a]!.h)

/** One kind of piece in each strip, laid the way that takes less length. */
function clothFor(pile: Pile, plan: Pick<Plan, 'buy'>): RoleCloth[] {
  const { width } = pile.cloth
  const strips = new Map<number, Strip[]>()
  for (const { role, size, count } of plan.buy) {
    if (!canBeBought(pile, size)) continue
    const { w, h, rot } = pile.sizes[size]!
    const ways = [{ w, h }, ...(rot ? [{ w: h, h: w }] : [])]
      .filter((way) => way.w <= width)
      .map((way) => {
        const across = Math.floor(width / way.w)
        return { ...way, across, times: Math.ceil(count / across) }
      })
      .sort((a, b) => a.times * a.h - b.times * b.h)
    const { across, times, ...way } = ways[0]!
    const sections = Array.from({ length: across }, () => ({ size, ...way, count: 1 }))
    strips.set(role, [...(strips.get(role) ?? []), { height: way.h, times, sections }])
  }
  return [...strips].map(([role, own]) => ({ role, steps: stepsFor(pile, own), strips: own }))
}

/** Equal entries together. */
function gathered(plan: { supply: Supplied[]; cuts: PanelCut[] }) {
  const supply = new Map<string, Supplied>()
  for (const one of plan.supply) {
    const key = [one.garment, one.role, one.size].join()
    supply.set(key, { ...one, count: (supply.get(key)?.count ?? 0) + one.count })
  }
  return { supply: [...supply.values()], cuts: gatheredCuts(plan.cuts) }
}

/** Garment after garment, in a manner. Keeps every rule; panels need their patterns. */
export function planInManner(pile: Pile, capacities: readonly Capacity[], manner: Manner): Plan {
  const bench = new Bench(pile)
  const supply: Supplied[] = []
  const cuts: PanelCut[] = []
  for (const [at, g] of manner.order.entries()) {
    const { giving, cuts: own } = cutGarment(pile, bench, at, capacities[g]!, manner)
    const total = giving.supplied.reduce((sum, { count }) => sum + count, 0)
    if (total === 0 || total < pile.garments[g]!.minIfUsed) continue
    if (pile.sharing === 'evenly' && !giving.reachesAll) continue
    bench.take(giving.supplied)
    supply.push(...giving.supplied)
    cuts.push(...own)
  }
  const buy = missing(pile, supply)
  return { ...gathered({ supply, cuts }), buy, cloth: clothFor(pile, { buy }) }
}

/** Must-use garments first, the others as they come. */
export const mustFirst = ({ garments }: Pile): number[] =>
  [...garments.keys()].sort(
    (a, b) => Number(garments[b]!.must) - Number(garments[a]!.must) || a - b,
  )

/**
 * The plan of a hurried hand: garment after garment, must-use ones first, each cut the way that gives most
 * for what is still wanted. Keeps every rule; panels need their patterns.
 */
export const naivePlan = (pile: Pile): Plan =>
  planInManner(
    pile,
    pile.garments.map((garment) => capacityOf(pile, garment)),
    { order: mustFirst(pile), casts: () => true, supply: () => 1 },
  )
