import { readFileSync } from 'node:fs'
import { focalIn } from '../../src/photo/look/focal.ts'
import { see } from '../../src/photo/look/look.ts'
import type { Look } from '../../src/photo/look/looked.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import type { Kept } from './open-set.ts'
import type { Read } from './score.ts'
import type { Truth } from './truth.ts'

/** Reads a photo as it is kept; white is garment, as in the drawn mask. */
export async function readOf(kept: Kept): Promise<Read> {
  const file = readFileSync(kept.path)
  const { full } = await makeSafe(file)
  const { look, mask } = await see(full, { focal35: await focalIn(file) })
  const { width, height, data } = mask
  const read = { width, height, data: data.map((one) => 255 * one) }
  const reading = { ...look, scale: scaleTold(look, kept.truth), mask: read }
  return { truth: kept.truth, reading, mask: await kept.mask() }
}

/** The scale in pixels of the photo as it was drawn: it is kept smaller where it is large. */
function scaleTold({ scale, width }: Look, truth: Truth): Look['scale'] {
  if (!scale) return null
  const by = truth.width / width
  const corners = scale.corners.map(([x, y]) => [x * by, y * by] as const)
  return { ...scale, mmPerPx: scale.mmPerPx / by, corners }
}
