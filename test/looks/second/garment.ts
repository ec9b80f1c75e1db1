import type { Chance } from './chance.ts'
import { anyColour } from './colours.ts'
import type { Plan } from './plan.ts'
import { printOf } from './prints.ts'
import { seamsOf } from './seams.ts'
import { outlineOf } from './shapes.ts'

/** What a garment is drawn from, all in parts of the garment about its middle. */
export interface Garment {
  /** Data of an SVG path. */
  readonly outline: string
  /** SVG; what is beyond the outline is cut away. */
  readonly print: string
  readonly seams: string
}

export function garmentOf(chance: Chance, { kind, print }: Pick<Plan, 'kind' | 'print'>): Garment {
  const outline = outlineOf(chance, kind)
  const inks = Array.from({ length: chance.whole(1, 4) }, () => anyColour(chance))
  return { outline, print: printOf(chance, print, kind, inks), seams: seamsOf(chance, kind) }
}
