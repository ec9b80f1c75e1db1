import { baseOf } from '../../src/photo/look/base.ts'
import { boxOf } from '../../src/photo/look/box.ts'
import { fitnessSigns } from '../../src/photo/look/fitness-signs.ts'
import { frameOf, straightened } from '../../src/photo/look/frame.ts'
import type { Group } from '../../src/photo/look/groups.ts'
import { sides } from '../../src/photo/look/look.ts'
import { type OutlineNets, outlineOf } from '../../src/photo/look/outline.ts'
import { labPlanes } from '../../src/photo/look/planes.ts'
import { clothSigns, printOf } from '../../src/photo/look/print-signs.ts'
import { waveSigns } from '../../src/photo/look/wave-signs.ts'
import type { Fault } from './look.ts'
import type { PrintClass } from './print.ts'
import { boxIou } from './score.ts'
import type { Lesson } from './train-outline.ts'

/** What one photo of a set gives to learn from. */
export interface Row {
  readonly fault: Fault | ''
  readonly cls: PrintClass | null
  readonly fitness: readonly number[]
  /** Of photos without a fault: what tells the class of print. */
  readonly signs?: readonly number[]
  readonly waves?: readonly number[]
  /** Pixels of the garment's inner part. */
  readonly area?: number
  /** Each with how well its box is the true picture's. */
  readonly groups?: readonly (Pick<Group, 'pass' | 'area' | 'mass' | 'signs'> & {
    readonly iou: number
  })[]
}

/** Reads a photo as the product does, up to what the nets for print and fitness are asked. */
export function rowOf({ truth, picture, small }: Lesson, nets: OutlineNets): Row {
  const planes = labPlanes(small)
  const outline = outlineOf(planes, nets)
  const frame = frameOf(outline.mask)
  const row = {
    fault: truth.fault ?? '',
    cls: truth.print,
    fitness: fitnessSigns(picture, planes, outline, frame),
  } as const
  if (truth.fault || !frame) return row
  const straight = straightened(picture, outline.mask, frame, sides.garment)
  const upright = labPlanes(straight.pixels)
  const base = baseOf(upright, straight.mask)
  const print = printOf(upright, base)
  return {
    ...row,
    signs: clothSigns(upright, base, print),
    waves: waveSigns(picture, outline.mask),
    area: base.inner.reduce((sum, one) => sum + one, 0),
    groups: print.groups.map((group) => ({
      pass: group.pass,
      area: group.area,
      mass: group.mass,
      signs: group.signs,
      iou: truth.graphic ? boxIou(truth.graphic, boxOf(group, straight)) : 0,
    })),
  }
}
