import type { Frame } from './frame.ts'
import type { Mask } from './outline.ts'
import { hullFilled } from './sheet-shape.ts'

/** So many strips, square to the axis and along it. */
const strips = { along: 10, across: 8 } as const

/**
 * The shape of what was outlined, in numbers that stay the same upside down and mirrored: how full each strip of
 * its box is, with the strip as far from the other end, and how the two differ; how it fills its hull.
 */
export function shapeSigns(mask: Mask, frame: Frame | null): number[] {
  const full = frame
    ? fullness(mask, frame)
    : {
        along: new Array<number>(strips.along).fill(0),
        across: new Array<number>(strips.across).fill(0),
      }
  const { byPiece, byCorners } = hullFilled(Int32Array.from(mask.data), mask.width, 1)
  return [...paired(full.along), ...paired(full.across), byPiece, byCorners]
}

/** Of each strip of the garment's box the share that the garment covers. */
function fullness(
  { width, height, data }: Mask,
  { x: cx, y: cy, turn, across, along }: Frame,
): { readonly along: number[]; readonly across: number[] } {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const counts = {
    along: new Array<number>(strips.along).fill(0),
    across: new Array<number>(strips.across).fill(0),
  }
  const at = (place: number, length: number, count: number): number =>
    Math.min(count - 1, Math.max(0, Math.floor((place / length + 0.5) * count)))
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if (!data[y * width + x]) continue
      const u = (x - cx) * cos + (y - cy) * sin
      const v = (y - cy) * cos - (x - cx) * sin
      counts.along[at(v, along, strips.along)]! += 1
      counts.across[at(u, across, strips.across)]! += 1
    }
  }
  const box = across * along
  return {
    along: counts.along.map((count) => (count * strips.along) / box),
    across: counts.across.map((count) => (count * strips.across) / box),
  }
}

/** Of strips from both ends the means, then how far they differ. */
function paired(full: readonly number[]): number[] {
  const half = full.slice(0, full.length / 2)
  const other = (n: number): number => full[full.length - 1 - n]!
  return [
    ...half.map((one, n) => (one + other(n)) / 2),
    ...half.map((one, n) => Math.abs(one - other(n))),
  ]
}
