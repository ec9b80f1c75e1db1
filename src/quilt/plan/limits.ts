import type { Pile, PileGarment } from './instance.ts'

/** What a role wants in all sizes. */
export const roleDemand = ({ demand }: Pile, role: number): number =>
  demand.reduce((sum, row) => sum + row[role]!, 0)

/** 0.35 × 180 is 63, and not the 62.99… that binary fractions make of it. */
const grain = 1e-9

/** The most one garment may give of a role. */
export const shareOf = (pile: Pile, role: number): number =>
  Math.floor(pile.shareMax * roleDemand(pile, role) + grain)

/** The roles a garment may give anything to. */
export const rolesOf = (pile: Pile, { roles }: PileGarment): number[] =>
  pile.maxRoles === 0
    ? []
    : roles.filter((role) => pile.roles[role]!.garments && shareOf(pile, role) > 0)

/** A light garment and a dark one that lie too near each other. */
export const tooNear = (light: number, dark: number, delta: number): boolean =>
  light - dark < delta - grain

/** The quilts that share the pile, and the places of each one's roles. */
export function rolesByQuilt({ roles }: Pile): number[][] {
  const quilts = new Map<number, number[]>()
  for (const [role, { quilt = 0 }] of roles.entries()) {
    quilts.set(quilt, [...(quilts.get(quilt) ?? []), role])
  }
  return [...quilts.values()]
}

/** Whether each must-use garment, or each one that is used at all, goes into every quilt. */
export const isShared = ({ sharing = 'as-it-falls' }: Pile): boolean => sharing !== 'as-it-falls'

/** Whether bought cloth is wide enough for a piece, laid one way or the other. */
export function canBeBought({ sizes, cloth }: Pile, size: number): boolean {
  const { w, h, rot } = sizes[size]!
  return w <= cloth.width || (rot && h <= cloth.width)
}
