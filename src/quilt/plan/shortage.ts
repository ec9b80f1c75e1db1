import { capacityOf } from './capacity.ts'
import { type Called, calledOf, type Pile } from './instance.ts'
import { canBeBought, isShared, rolesByQuilt, rolesOf } from './limits.ts'
import type { Bought, Plan } from './plan.ts'

/** What garments do not give to a role, and the cloth that gives it. */
export interface RoleShort {
  /** As it is called in its quilt. */
  readonly role: string
  /** Which of several quilts, from 0; null: there is one. */
  readonly quilt: number | null
  readonly pieces: number
  /** Quarter inches of cloth, in whole steps; 0 where none is wide enough. */
  readonly length: number
  /** False: the role is meant to be bought. */
  readonly byGarments: boolean
}

/** Pieces too wide for the cloth that no garment gives. */
export interface Lacking {
  readonly role: string
  readonly quilt: number | null
  readonly pieces: number
  readonly w: number
  readonly h: number
}

/**
 * Why a must-use garment gives nothing: no role wants it, no piece fits, too few do, or the rules bar it; or
 * it gives something, and not to every quilt.
 */
export type Idle = 'no-role' | 'no-piece' | 'too-few' | 'no-room' | 'not-in-all'

/** What a plan leaves open. */
export interface Shortage {
  readonly wanted: number
  readonly garments: number
  readonly roles: readonly RoleShort[]
  readonly lacking: readonly Lacking[]
  readonly idle: readonly IdleGarment[]
}

export interface IdleGarment {
  readonly garment: Called
  readonly why: Idle
  /** Pieces that are asked of it. */
  readonly least: number
  /** Quilts that it is not in. */
  readonly missed: number
}

/** Where every used garment goes into every quilt, each of them asks for a piece. */
const leastOf = (pile: Pile, g: number): number =>
  Math.max(pile.garments[g]!.minIfUsed, pile.sharing === 'evenly' ? rolesByQuilt(pile).length : 1)

function whyIdle(pile: Pile, g: number): Idle {
  const garment = pile.garments[g]!
  const wantsAny = rolesOf(pile, garment).some((role) => pile.demand.some((row) => row[role]! > 0))
  if (!wantsAny) return 'no-role'
  const alone: Pile = { ...pile, sharing: 'as-it-falls' }
  if (capacityOf(alone, { ...garment, minIfUsed: 0 }).total === 0) return 'no-piece'
  return capacityOf(pile, garment).total === 0 ? 'too-few' : 'no-room'
}

/** Must-use garments that give nothing, or not to every quilt that ought to have them. */
function idleOf(pile: Pile, { supply }: Plan): IdleGarment[] {
  const quilts = rolesByQuilt(pile)
  return pile.garments.flatMap(({ id, must }, g) => {
    const own = supply.filter(({ garment, count }) => garment === g && count > 0)
    const missed = quilts.filter((roles) => !own.some(({ role }) => roles.includes(role))).length
    const isMissed = isShared(pile) ? missed > 0 : missed === quilts.length
    if (!must || !isMissed) return []
    const why = missed < quilts.length ? 'not-in-all' : whyIdle(pile, g)
    return [{ garment: id, why, least: leastOf(pile, g), missed }]
  })
}

const pieces = (all: readonly Bought[]): number => all.reduce((sum, { count }) => sum + count, 0)

/** What a plan leaves open: to be put into words. Panels need their patterns. */
export function shortageOf(pile: Pile, plan: Plan): Shortage {
  const isOne = rolesByQuilt(pile).length <= 1
  const told = (at: number) => {
    const role = pile.roles[at]!
    return { role: calledOf(role), quilt: isOne ? null : (role.quilt ?? 0) }
  }
  return {
    wanted: pile.demand.flat().reduce((sum, count) => sum + count, 0),
    garments: pile.garments.length,
    roles: pile.roles.flatMap(({ garments }, role): RoleShort[] => {
      const bought = plan.buy.filter((one) => one.role === role && canBeBought(pile, one.size))
      const steps = plan.cloth.find((one) => one.role === role)?.steps ?? 0
      const length = steps * pile.cloth.step
      return bought.length > 0
        ? [{ ...told(role), pieces: pieces(bought), length, byGarments: garments }]
        : []
    }),
    lacking: plan.buy.flatMap(({ role, size, count }): Lacking[] => {
      const { w, h } = pile.sizes[size]!
      return canBeBought(pile, size) ? [] : [{ ...told(role), pieces: count, w, h }]
    }),
    idle: idleOf(pile, plan),
  }
}
