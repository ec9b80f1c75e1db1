import { capacityOf } from './capacity.ts'
import type { Called, Pile } from './instance.ts'
import { canBeBought, rolesOf } from './limits.ts'
import type { Bought, Plan } from './plan.ts'

/** What garments do not give to a role, and the cloth that gives it. */
export interface RoleShort {
  readonly role: string
  readonly pieces: number
  /** Quarter inches of cloth, in whole steps; 0 where none is wide enough. */
  readonly length: number
  /** False: the role is meant to be bought. */
  readonly byGarments: boolean
}

/** Pieces too wide for the cloth that no garment gives. */
export interface Lacking {
  readonly role: string
  readonly pieces: number
  readonly w: number
  readonly h: number
}

/** Why a must-use garment gives nothing: no role wants it, no piece fits, too few do, or the rules bar it. */
export type Idle = 'no-role' | 'no-piece' | 'too-few' | 'no-room'

/** What a plan leaves open. */
export interface Shortage {
  readonly wanted: number
  readonly garments: number
  readonly roles: readonly RoleShort[]
  readonly lacking: readonly Lacking[]
  readonly idle: readonly { readonly garment: Called; readonly why: Idle; readonly least: number }[]
}

function whyIdle(pile: Pile, g: number): Idle {
  const garment = pile.garments[g]!
  const wantsAny = rolesOf(pile, garment).some((role) => pile.demand.some((row) => row[role]! > 0))
  if (!wantsAny) return 'no-role'
  if (capacityOf(pile, { ...garment, minIfUsed: 0 }).total === 0) return 'no-piece'
  return capacityOf(pile, garment).total === 0 ? 'too-few' : 'no-room'
}

const pieces = (all: readonly Bought[]): number => all.reduce((sum, { count }) => sum + count, 0)

/** What a plan leaves open: to be put into words. Panels need their patterns. */
export function shortageOf(pile: Pile, plan: Plan): Shortage {
  const gives = new Set(plan.supply.map(({ garment }) => garment))
  return {
    wanted: pile.demand.flat().reduce((sum, count) => sum + count, 0),
    garments: pile.garments.length,
    roles: pile.roles.flatMap(({ name, garments }, role) => {
      const bought = plan.buy.filter((one) => one.role === role && canBeBought(pile, one.size))
      const steps = plan.cloth.find((one) => one.role === role)?.steps ?? 0
      const length = steps * pile.cloth.step
      return bought.length > 0
        ? [{ role: name, pieces: pieces(bought), length, byGarments: garments }]
        : []
    }),
    lacking: plan.buy.flatMap(({ role, size, count }) => {
      const { w, h } = pile.sizes[size]!
      return canBeBought(pile, size) ? [] : [{ role: pile.roles[role]!.name, pieces: count, w, h }]
    }),
    idle: pile.garments.flatMap(({ id, must, minIfUsed }, g) =>
      must && !gives.has(g) ? [{ garment: id, why: whyIdle(pile, g), least: minIfUsed }] : [],
    ),
  }
}
