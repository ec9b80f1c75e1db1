import type { Pile, PileGarment } from './instance.ts'
import { roleDemand, rolesByQuilt, rolesOf, shareOf } from './limits.ts'

/** One panel cut by one of its patterns, of which `counts` are of use. */
export interface PanelWay {
  readonly panel: number
  readonly whole: readonly number[]
  readonly counts: readonly number[]
}

/** Panels of a garment that give the same, as far as it is of use. */
export interface PanelClass {
  /** The panels; `whole[n]` is the panel's own pattern that gives the class's pattern `n`. */
  readonly members: readonly {
    readonly panel: number
    readonly mult: number
    readonly whole: readonly (readonly number[])[]
  }[]
  readonly mult: number
  /** Pieces of each size that may be used; none is covered by another. */
  readonly patterns: readonly (readonly number[])[]
  /** Where the class stands for all panels of the garment: how each is cut for pattern `n`. */
  readonly ways?: readonly (readonly PanelWay[])[]
}

/** What one garment can give at most, before anything else is known. */
export interface Capacity {
  readonly roles: readonly number[]
  readonly classes: readonly PanelClass[]
  /** Most pieces of each size, from all panels. */
  readonly ofSize: readonly number[]
  /** Most pieces for a role, by its place in the pile; 0 for those the garment does not play. */
  readonly forRole: readonly number[]
  readonly total: number
}

const nothing: Capacity = { roles: [], classes: [], ofSize: [], forRole: [], total: 0 }

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)

const covers = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((count, size) => count >= b[size]!)

interface Useful {
  readonly counts: readonly number[]
  readonly whole: readonly number[]
}

/** The most pieces first; of equals, lexicographically. */
function bySum(a: Useful, b: Useful): number {
  const at = a.counts.findIndex((count, size) => count !== b.counts[size])
  return sum(b.counts) - sum(a.counts) || (at < 0 ? 0 : b.counts[at]! - a.counts[at]!)
}

function usefulOf(patterns: readonly (readonly number[])[], most: readonly number[]): Useful[] {
  const kept: Useful[] = []
  const clamped = patterns.map((whole) => ({
    whole,
    counts: whole.map((count, size) => Math.min(count, most[size]!)),
  }))
  for (const one of clamped.sort(bySum)) {
    if (sum(one.counts) > 0 && !kept.some(({ counts }) => covers(counts, one.counts))) {
      kept.push(one)
    }
  }
  return kept
}

function classesOf({ panels }: PileGarment, most: readonly number[]): PanelClass[] {
  const classes = new Map<string, PanelClass>()
  for (const [panel, { mult, patterns: all }] of panels.entries()) {
    const useful = usefulOf(all ?? [], most)
    if (mult === 0 || useful.length === 0) continue
    const patterns = useful.map(({ counts }) => counts)
    const key = JSON.stringify(patterns)
    const alike = classes.get(key)
    const member = { panel, mult, whole: useful.map(({ whole }) => whole) }
    classes.set(key, {
      members: [...(alike?.members ?? []), member],
      mult: (alike?.mult ?? 0) + mult,
      patterns,
    })
  }
  return [...classes.values()]
}

/** Most pieces of some sizes together. */
const mostOf = (classes: readonly PanelClass[], sizes: readonly number[]): number =>
  sum(
    classes.map(
      ({ mult, patterns }) =>
        mult * Math.max(...patterns.map((counts) => sum(sizes.map((size) => counts[size]!)))),
    ),
  )

/** Asked for again and again of the same piles, and slow where there are many patterns. */
const known = new WeakMap<Pile, WeakMap<PileGarment, Capacity>>()

/** What a garment of a pile can give at most. Its panels need their patterns. */
export function capacityOf(pile: Pile, garment: PileGarment): Capacity {
  const own = known.get(pile) ?? new WeakMap<PileGarment, Capacity>()
  known.set(pile, own)
  const capacity = own.get(garment) ?? countCapacity(pile, garment)
  own.set(garment, capacity)
  return capacity
}

/** Whether a garment can give to every quilt, as far as these figures tell. */
function reachesAll(pile: Pile, forRole: readonly number[], total: number): boolean {
  const quilts = rolesByQuilt(pile)
  return total >= quilts.length && quilts.every((roles) => roles.some((role) => forRole[role]! > 0))
}

function countCapacity(pile: Pile, garment: PileGarment): Capacity {
  const roles = rolesOf(pile, garment)
  const most = pile.demand.map((row) =>
    sum(roles.map((role) => Math.min(row[role]!, shareOf(pile, role)))),
  )
  const classes = classesOf(garment, most)
  const forRole = pile.roles.map((_, role) => {
    if (!roles.includes(role)) return 0
    const sizes = [...pile.sizes.keys()].filter((size) => pile.demand[size]![role]! > 0)
    return Math.min(shareOf(pile, role), roleDemand(pile, role), mostOf(classes, sizes))
  })
  const shares = forRole.toSorted((a, b) => b - a).slice(0, pile.maxRoles)
  const total = Math.min(sum(shares), mostOf(classes, [...pile.sizes.keys()]))
  if (total === 0 || total < garment.minIfUsed) return nothing
  if (pile.sharing === 'evenly' && !reachesAll(pile, forRole, total)) return nothing
  return {
    roles: roles.filter((role) => forRole[role]! > 0),
    classes,
    ofSize: pile.sizes.map((_, size) => Math.min(most[size]!, mostOf(classes, [size]))),
    forRole,
    total,
  }
}
