import type { Lab } from './light.ts'
import type { Fault } from './look.ts'
import type { PrintClass } from './print.ts'
import type { SheetKind } from './reference.ts'
import type { Box, Value } from './truth.ts'

/** White, 255, is garment; row by row, in whatever size it was made. */
export interface Mask {
  readonly data: Uint8Array
  readonly width: number
  readonly height: number
}

/** What was read off a photo of a garment, as the command `look` prints it, and what it does not print. */
export interface Reading {
  readonly fitness: { readonly ok: boolean; readonly problems: readonly Fault[] }
  readonly print: { readonly class: PrintClass; readonly confidence: number } | null
  readonly graphic: Box | null
  readonly garment: Box | null
  /** Largest first. */
  readonly colours: readonly { readonly lab: Lab; readonly share: number }[]
  readonly value: Value | null
  readonly scale: {
    readonly by: SheetKind
    readonly mmPerPx: number
    readonly errorPct: number
    /** In px of the upright picture, in whatever order. */
    readonly corners?: readonly (readonly [x: number, y: number])[]
  } | null
  readonly size: {
    readonly garmentWidthIn: number
    readonly garmentLengthIn: number
    readonly graphicWidthIn: number | null
    readonly graphicHeightIn: number | null
  } | null
  readonly mask?: Mask
}
