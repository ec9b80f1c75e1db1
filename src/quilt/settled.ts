import type { Extent } from './layout.ts'

/** Pieces of one size and role that one garment gives to one quilt, as cut, inches. */
export interface GivenPieces {
  /** The garment's number in the pile. */
  readonly garment: number
  readonly role: string
  readonly size: Extent
  readonly count: number
  /** Which of the quilts that share the pile, from 0. */
  readonly quilt: number
}

/** Cloth bought for one role of one quilt, a fabric of its own. */
export interface BoughtCloth {
  readonly role: string
  readonly quilt: number
  /** As it is sold. */
  readonly yards: number
  readonly pieces: number
  /** What its strips take of it, inches. */
  readonly lengthIn: number
}

/** What a plan settles for materials and price. */
export interface Settled {
  /** Pieces that garments give and the quilt uses. */
  readonly pieces: readonly GivenPieces[]
  readonly cloth: readonly BoughtCloth[]
  /** False: a better plan may still be found. */
  readonly proven: boolean
}
