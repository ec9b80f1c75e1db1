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

/** Whether bought cloth is wide enough for a piece, laid one way or the other. */
export function canBeBought({ sizes, cloth }: Pile, size: number): boolean {
  const { w, h, rot } = sizes[size]!
  return w <= cloth.width || (rot && h <= cloth.width)
}
