import { findLines } from './find.ts'
import type { Models } from './models.ts'
import type { Picture, Slab } from './picture.ts'
import { levelled } from './upright.ts'

/** What was missed is looked for on the picture seen smaller by this factor. */
const smaller = 0.5
/** Slabs whose middles lie apart by less than this share of their heights are of one row. */
const sameRow = 0.3

/** The lines on a level picture that lie on none of those that are known: short bold words, such as shares. */
export async function missedLines(
  level: Picture,
  known: readonly Slab[],
  models: Models,
): Promise<Slab[]> {
  const found = await findLines(level, models, smaller)
  return found.map(levelled).filter((slab) => known.every((other) => !overlap(slab, other)))
}

/** Whether two slabs that lie nearly level share a stretch of one row. */
export const overlap = (a: Slab, b: Slab): boolean =>
  2 * Math.abs(a.x - b.x) < a.w + b.w && Math.abs(a.y - b.y) < sameRow * (a.h + b.h)
