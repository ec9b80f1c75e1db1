/** Pieces of a size that a garment gives to a role; all are places in the pile. */
export interface Supplied {
  readonly garment: number
  readonly role: number
  readonly size: number
  readonly count: number
}

/** `times` of a garment's panels alike, cut by one pattern. */
export interface PanelCut {
  readonly garment: number
  readonly panel: number
  readonly pattern: readonly number[]
  readonly times: number
}

export interface Bought {
  readonly role: number
  readonly size: number
  readonly count: number
}

/** Pieces of one size, one above the other: `w` of the strip's length, each `h` high. */
export interface Section {
  readonly size: number
  readonly w: number
  readonly h: number
  readonly count: number
}

/** Strips across the cloth, `times` alike; their sections lie side by side. */
export interface Strip {
  readonly height: number
  readonly times: number
  readonly sections: readonly Section[]
}

/** Cloth bought for one role. */
export interface RoleCloth {
  readonly role: number
  readonly steps: number
  readonly strips: readonly Strip[]
}

/** What the pile gives and what is bought. */
export interface Plan {
  readonly supply: readonly Supplied[]
  readonly cuts: readonly PanelCut[]
  readonly buy: readonly Bought[]
  readonly cloth: readonly RoleCloth[]
}

/**
 * How good a plan is, what counts most first: pieces that can be had nowhere, must-use garments that give
 * nothing, steps of cloth bought, pieces bought, and the most that one garment gives.
 */
export const aims = ['lacking', 'V', 'Q', 'P', 'M'] as const
export type Aim = (typeof aims)[number]
export type Worth = Readonly<Record<Aim, number>>

/** Below zero where `a` is better. */
export function compareWorth(a: Worth, b: Worth): number {
  const differs = aims.find((aim) => a[aim] !== b[aim])
  return differs ? a[differs] - b[differs] : 0
}
