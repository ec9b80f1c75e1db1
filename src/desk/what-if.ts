import { asPlanned, type PlanState } from '../intake/planned.ts'
import type { Otherwise } from '../intake/priced.ts'
import type { ToPlan } from '../intake/to-plan.ts'
import type { Planned } from '../planning/plan-pile.ts'
import type { Plans } from '../planning/plans.ts'
import { withMore } from '../planning/what-if.ts'
import type { Estimate } from '../quilt/estimate.ts'
import type { Layout, Role } from '../quilt/layout.ts'
import { calledOf, type Pile } from '../quilt/plan/instance.ts'
import { settledOf } from '../quilt/plan/settled.ts'
import { shortageOf } from '../quilt/plan/shortage.ts'
import type { Settled } from '../quilt/settled.ts'
import { declinedOf, verdictsOf } from './consequences.ts'
import { planReviewed } from './planned.ts'
import type { Review } from './review.ts'
import type { Change } from './tries.ts'

/** The part of a review that its quilt and price follow from. */
export type Reviewed = Pick<Review, 'pile' | 'garments' | 'roles'>

/** A pile changed, with its plan as far as it is known, and its price. */
export interface Way {
  readonly changes: readonly Change[]
  readonly asked: ToPlan
  /** `no-more`: no garment of the pile plays the role of one more, so none tells what an ordinary one is. */
  readonly state: PlanState | 'no-more'
  readonly best: Planned | null
  /** By the plan; null while there is none. */
  readonly estimate: Estimate | null
}

type Extra = NonNullable<Otherwise['more']>

const leftOut = (changes: readonly Change[]): number[] =>
  changes.flatMap((one) => (one.change === 'without' ? [one.garment] : []))

const takenIn = (changes: readonly Change[]): number[] =>
  changes.flatMap((one) => (one.change === 'take' ? [one.garment] : []))

const rolesOfMore = (changes: readonly Change[]): Role[] =>
  changes.flatMap((one) => (one.change === 'more' ? [one.role] : []))

/** What staff said of roles, and what is tried instead. */
function rolesWith({ roles }: Reviewed, changes: readonly Change[]): Map<number, readonly Role[]> {
  const tried = new Map([...roles].map(([n, given]) => [n, given.roles]))
  for (const change of changes) {
    if (change.change !== 'roles') continue
    if (change.roles.length > 0) tried.set(change.garment, change.roles)
    else tried.delete(change.garment)
  }
  return tried
}

/** The changed pile, but for garments more: what is ordinary is known once their pile is planned. */
function toPlanWith(
  reviewed: Reviewed,
  changes: readonly Change[],
  layouts: readonly Layout[],
): ToPlan {
  const { wish, rates, garments: all } = reviewed.pile
  const without = leftOut(changes)
  const garments = all.filter(({ n }) => !without.includes(n))
  const layout = changes.find((one) => one.change === 'layout')?.layout
  const size = changes.find((one) => one.change === 'size')?.size
  return planReviewed(
    { ...reviewed, pile: { garments, wish, rates }, taken: takenIn(changes) },
    {
      layout: layouts.find(({ id }) => id === layout) ?? wish.layout,
      size: size ?? wish.size,
      roles: rolesWith(reviewed, changes),
    },
  )
}

interface Grown {
  readonly pile: Pile
  readonly extra: Extra
}

/** A number that no garment of the pile has, for one more. */
export const nextNumber = ({ pile }: Reviewed): number =>
  Math.max(0, ...pile.garments.map(({ n }) => n)) + 1

/** The pile with a garment more for each of the roles; null: nobody can tell what an ordinary one is. */
function withAll(planned: Pile, more: readonly Role[], from: number): Grown | null {
  let pile = planned
  const extra: { n: number; like: number }[] = []
  for (const [i, role] of more.entries()) {
    const grown = withMore(pile, role, from + i)
    if (!grown) return null
    const { like } = grown.more
    const first = extra.find(({ n }) => n === like)
    extra.push({ n: from + i, like: first?.like ?? Number(like) })
    pile = grown.pile
  }
  return { pile, extra }
}

/** What a plan settles of materials and price. */
export const settled = ({ pile, plan, proven }: Planned): Settled => settledOf(pile, plan, proven)

/** What the changed pile comes to by its plan. */
function priceOf(
  { pile, garments }: Reviewed,
  changes: readonly Change[],
  asked: ToPlan,
  planned: Planned,
  extra: Extra,
): Estimate | null {
  const taken = takenIn(changes)
  const declined = declinedOf(verdictsOf(garments)).filter((n) => !taken.includes(n))
  const isOther = changes.some(({ change }) => change === 'layout' || change === 'size')
  return pile.priced(settled(planned), {
    without: [...declined, ...leftOut(changes)],
    more: extra,
    ...(isOther && { quilt: { layout: asked.layout, size: asked.size } }),
  })
}

export interface Trying {
  readonly plans: Plans
  readonly layouts: readonly Layout[]
  readonly patienceMs: number
}

/** The pile with changes made to it, planned and priced as far as that is known by `patienceMs`. */
export async function wayOf(
  reviewed: Reviewed,
  changes: readonly Change[],
  { plans, layouts, patienceMs }: Trying,
): Promise<Way> {
  const asked = toPlanWith(reviewed, changes, layouts)
  const more = rolesOfMore(changes)
  const until = performance.now() + patienceMs
  const before = await asPlanned(asked, plans, { patienceMs })
  const grown =
    before.best && more.length > 0 ? withAll(before.best.pile, more, nextNumber(reviewed)) : null
  if (before.best && more.length > 0 && !grown) {
    return { changes, asked, state: 'no-more', best: null, estimate: null }
  }
  const { state, best } = grown
    ? await asPlanned({ ...asked, pile: grown.pile }, plans, {
        patienceMs: Math.max(0, until - performance.now()),
      })
    : before
  const estimate = best && priceOf(reviewed, changes, asked, best, grown?.extra ?? [])
  return { changes, asked, state, best, estimate }
}

const sum = (all: readonly { readonly count: number }[]): number =>
  all.reduce((total, { count }) => total + count, 0)

/** What a plan comes to, as ways are compared. */
export interface Figures {
  /** Pieces of the roles that garments play. */
  readonly wanted: number
  readonly given: number
  /** Quarter inches of bought cloth, by role. */
  readonly cloth: readonly { readonly role: string; readonly length: number }[]
  readonly length: number
  /** Numbers of garments that must be used and give nothing, or not to every quilt that they ought to. */
  readonly idle: readonly number[]
}

export function figuresOf({ pile, plan }: Planned): Figures {
  const byGarments = ({ role }: { readonly role: number }) => pile.roles[role]!.garments
  const wanted = sum(
    pile.demand.flatMap((row) => row.map((count, role) => ({ role, count }))).filter(byGarments),
  )
  const called = [...new Set(pile.roles.map(calledOf))]
  const cloth = called.map((role) => ({
    role,
    length: plan.cloth
      .filter((one) => calledOf(pile.roles[one.role]!) === role)
      .reduce((total, { steps }) => total + steps * pile.cloth.step, 0),
  }))
  return {
    wanted,
    given: wanted - sum(plan.buy.filter(byGarments)),
    cloth: cloth.filter(({ length }) => length > 0),
    length: cloth.reduce((total, one) => total + one.length, 0),
    idle: shortageOf(pile, plan).idle.map(({ garment }) => Number(garment)),
  }
}
