/** Whole quarter inches; x across and y down from the panel's upper left corner. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** A size to cut. `rot`: the cloth may be turned by 90° for it. */
export interface PieceSize {
  readonly w: number
  readonly h: number
  readonly rot: boolean
}

/**
 * A graphic that stays whole in one block of `bw` by `bh`, centred: |2bx + bw − 2gx − gw| ≤ `tol2`,
 * and the same down. `required`: a pattern without the block is of no use.
 */
export interface Feature {
  readonly gx: number
  readonly gy: number
  readonly gw: number
  readonly gh: number
  readonly bw: number
  readonly bh: number
  readonly tol2: number
  readonly required: boolean
}

/** A panel after teardown, what may not be cut from, and the sizes that are wanted of it. */
export interface PanelToCut {
  readonly W: number
  readonly H: number
  readonly pieces: readonly PieceSize[]
  readonly defects: readonly Box[]
  readonly feature?: Feature | undefined
  /** No more of a size than this is of use: counts are clamped here. */
  readonly bounds?: readonly number[] | undefined
}

/** Two boxes overlap where their open insides meet; touching is fine. */
export const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h
