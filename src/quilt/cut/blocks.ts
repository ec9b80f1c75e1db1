import { type Box, overlaps, type PanelToCut } from './panel.ts'
import { Sums, waysOf } from './sums.ts'

const between = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, n) => from + n)

interface Side {
  readonly panel: number
  readonly graphic: number
  readonly graphicAt: number
  readonly block: number
  readonly tol2: number
}

/** Whole places of one edge of the block: it holds the graphic, lies in the panel, is centred. */
function placesOn({ panel, graphic, graphicAt, block, tol2 }: Side): number[] {
  const least = Math.max(0, graphicAt + graphic - block)
  const most = Math.min(panel - block, graphicAt)
  return between(least, most).filter(
    (at) => Math.abs(2 * at + block - 2 * graphicAt - graphic) <= tol2,
  )
}

/** Ends of pieces that were pushed towards the near side: sums from it and from the defects' far edges. */
function endsOn(sums: Int32Array, defects: readonly (readonly [at: number, length: number])[]) {
  const origins = [0, ...defects.map(([at, length]) => at + length)]
  return new Set(origins.flatMap((origin) => [...sums].map((sum) => origin + sum)))
}

/**
 * The blocks of a feature that may make a difference: like a piece, a block can be pushed left and up
 * until it meets the end of a piece, a defect, or the edge of where it may lie.
 */
export function blocksOf({ W, H, pieces, defects, feature }: PanelToCut): Box[] {
  if (!feature) return []
  const { gx, gy, gw, gh, bw, bh, tol2 } = feature
  const ways = waysOf(pieces)
  const across = new Sums(
    ways.map(({ w, h }) => [w, h]),
    W,
  ).within(H).sums
  const down = new Sums(
    ways.map(({ w, h }) => [h, w]),
    H,
  ).within(W).sums
  const endsAcross = endsOn(
    across,
    defects.map(({ x, w }) => [x, w]),
  )
  const endsDown = endsOn(
    down,
    defects.map(({ y, h }) => [y, h]),
  )
  const xs = placesOn({ panel: W, graphic: gw, graphicAt: gx, block: bw, tol2 })
  const ys = placesOn({ panel: H, graphic: gh, graphicAt: gy, block: bh, tol2 })
  const telling = (places: readonly number[], ends: ReadonlySet<number>): number[] =>
    places.filter((at, n) => n === 0 || ends.has(at))
  return telling(ys, endsDown).flatMap((y) =>
    telling(xs, endsAcross)
      .map((x) => ({ x, y, w: bw, h: bh }))
      .filter((block) => !defects.some((defect) => overlaps(block, defect))),
  )
}
