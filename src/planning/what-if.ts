import {
  hasRule,
  type Rule,
  rules,
  withOneMore,
  withoutGarment,
  withoutRule,
} from '../quilt/plan/changes.ts'
import { type Called, calledOf, type Pile } from '../quilt/plan/instance.ts'
import type { Planned } from './plan-pile.ts'

/** A rule let go of, one more ordinary garment for a role, or a garment left out. */
export type Change =
  | { readonly change: 'rule'; readonly rule: Rule }
  | ({ readonly change: 'more' } & More)
  | { readonly change: 'without'; readonly garment: Called }

/** One more garment of a role: its id, and the id of the one it is like. */
export interface More {
  readonly role: string
  readonly garment: Called
  readonly like: Called
}

export interface Changed {
  readonly change: Change
  readonly pile: Pile
}

/** What a change of the pile saves: above zero where less is bought. */
export interface Saving {
  readonly steps: number
  readonly pieces: number
  /** Must-use garments that give nothing: how many fewer. */
  readonly garments: number
  /** Both plans are proven: no saving is larger or smaller. */
  readonly proven: boolean
}

/** The pile without each of its rules. */
export const ruleCosts = ({ pile }: Planned): Changed[] =>
  rules
    .filter((rule) => hasRule(pile, rule))
    .map((rule) => ({ change: { change: 'rule', rule }, pile: withoutRule(pile, rule) }))

/**
 * The pile with one more ordinary garment for a role of some quilt, called `garment`; null where the pile has
 * no such role, or no garment that may play it.
 */
export function withMore(
  pile: Pile,
  role: string,
  garment: Called,
): { readonly pile: Pile; readonly more: More } | null {
  const at = pile.roles.findIndex((one) => calledOf(one) === role)
  const grown = at < 0 ? null : withOneMore(pile, at)
  if (!grown) return null
  const garments = [...pile.garments, { ...grown.garments.at(-1)!, id: garment }]
  const like = pile.garments.find(({ panels }) => panels === garments.at(-1)!.panels)!.id
  return { pile: { ...pile, garments }, more: { role, garment, like } }
}

/** The pile with one more ordinary garment, for each role that lacks pieces and that a garment may play. */
export function oneMoreGarment({ pile, plan }: Planned, garment: Called): Changed[] {
  const short = new Set(plan.buy.map(({ role }) => calledOf(pile.roles[role]!)))
  return [...short].flatMap((role) => {
    const grown = withMore(pile, role, garment)
    return grown ? [{ change: { change: 'more' as const, ...grown.more }, pile: grown.pile }] : []
  })
}

/** So many garments that give little are tried without. */
const mostWithout = 2

/** A garment gives little where it gives no more than this share of what garments give on average: our own rule. */
const littleShare = 0.5

/** The pile without each of the garments that give little, least first, where nobody asked for them. */
export function oneFewer({ pile, plan }: Planned): Changed[] {
  const gives = pile.garments.map((_, g) =>
    plan.supply.reduce((sum, one) => sum + (one.garment === g ? one.count : 0), 0),
  )
  const used = [...gives.keys()].filter((g) => gives[g]! > 0)
  const average = used.reduce((sum, g) => sum + gives[g]!, 0) / used.length
  return used
    .filter((g) => !pile.garments[g]!.must && gives[g]! <= littleShare * average)
    .sort((a, b) => gives[a]! - gives[b]!)
    .slice(0, mostWithout)
    .map((g) => ({
      change: { change: 'without', garment: pile.garments[g]!.id },
      pile: withoutGarment(pile, g),
    }))
}

export const savingOf = (before: Planned, after: Planned): Saving => ({
  steps: before.worth.Q - after.worth.Q,
  pieces: before.worth.P - after.worth.P,
  garments: before.worth.V - after.worth.V,
  proven: before.proven && after.proven,
})

export interface Saved {
  readonly change: Change
  readonly saves: Saving
  readonly after: Planned
}

export interface Savings {
  /** In the order they were asked for. */
  readonly found: readonly Saved[]
  /** So many changes are not planned yet. */
  readonly left: number
}

/**
 * What changes of a planned pile save. They are planned one after another, so that whoever else wants a plan
 * waits for one of them at most. `ask` gives null for a plan that is not there yet: then the rest is left.
 */
export async function savingsOf(
  planned: Planned,
  changes: readonly Changed[],
  ask: (pile: Pile) => Promise<Planned | null>,
): Promise<Savings> {
  const found: Saved[] = []
  for (const { change, pile } of changes) {
    const after = await ask(pile)
    if (!after) break
    found.push({ change, saves: savingOf(planned, after), after })
  }
  return { found, left: changes.length - found.length }
}
