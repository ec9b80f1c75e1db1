import type { Chance } from '../help/chance.ts'
import type { Art } from './art.ts'
import type { Cloth } from './cloth.ts'
import { drawGraphic, type Graphic } from './graphic.ts'
import { drawAllover } from './motifs.ts'
import type { Outline } from './outline.ts'
import type { Raster } from './raster.ts'
import { drawStripes, type StripeKind } from './stripes.ts'

/** What repeats all over the cloth: a tile of four channels, and what lies at each of its pixels. */
export interface Pattern {
  readonly tile: Raster
  /** 0 is the bare cloth, 255 is no one colour, others are colours of their own. */
  readonly zones: Uint8Array
  /** A tile's size, mm, and how far it is turned on the cloth, radians. */
  readonly wide: number
  readonly tall: number
  readonly turn: number
}

export const printClasses = ['solid', 'single', 'allover', 'stripe-check'] as const
export type PrintClass = (typeof printClasses)[number]

export interface Print {
  readonly graphic: Graphic | null
  readonly pattern: Pattern | null
}

/** What is printed on a cloth or woven into it; `scale` is pixels for a millimetre. */
export async function drawPrint(
  chance: Chance,
  print: {
    readonly class: PrintClass
    readonly chest: boolean
    readonly stripes: StripeKind
    readonly faint: boolean
  },
  cloth: Cloth,
  outline: Outline,
  scale: number,
  art: Art,
): Promise<Print> {
  switch (print.class) {
    case 'solid':
      return { graphic: null, pattern: null }
    case 'single':
      return {
        graphic: await drawGraphic(
          chance,
          cloth.colour,
          outline,
          print.chest,
          scale,
          art,
          print.faint,
        ),
        pattern: null,
      }
    case 'allover':
      return {
        graphic: null,
        pattern: await drawAllover(chance, cloth.colour, scale, art, print.faint),
      }
    case 'stripe-check':
      return { graphic: null, pattern: drawStripes(chance, cloth.colour, scale, print.stripes) }
  }
}
