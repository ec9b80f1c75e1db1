import type { GroundKind } from './ground.ts'
import type { Lab } from './light.ts'
import type { Fault, GarmentKind } from './look.ts'
import type { PrintClass } from './print.ts'
import type { SheetKind } from './reference.ts'

/** A box in parts of the upright picture's width and height, 0 to 1. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

export const values = ['light', 'medium', 'dark'] as const
export type Value = (typeof values)[number]

/** By the mean CIELAB lightness of a garment as it is photographed. */
export const valueFor = (lightness: number): Value =>
  lightness >= 68 ? 'light' : lightness < 38 ? 'dark' : 'medium'

export interface TrueSheet {
  readonly by: SheetKind
  /** In px of the upright picture, clockwise. */
  readonly corners: readonly (readonly [x: number, y: number])[]
  /** How far its upper side is turned against the garment's own axis across, degrees clockwise. */
  readonly turn: number
  /** Every side can be told from what it lies on. */
  readonly contrasts: boolean
  /** Neither covered in part nor cut off by the picture's edge. */
  readonly whole: boolean
}

/** What a photo of a garment shows. */
export interface Truth {
  readonly file: string
  readonly mask: string
  readonly seed: number
  readonly number: number
  /** Photos that may be looked at while a method is made, and photos that are only measured. */
  readonly split: 'tune' | 'held'
  /** Of the upright picture, px. */
  readonly width: number
  readonly height: number
  readonly fault: Fault | null
  /** The following four are null where there is no garment. */
  readonly kind: GarmentKind | null
  readonly print: PrintClass | null
  readonly garment: Box | null
  readonly value: Value | null
  readonly graphic: Box | null
  /** Mean CIELAB lightness of the garment. */
  readonly lightness: number | null
  /** The colours of the cloth as they are photographed, medians, with their share of the garment; largest first. */
  readonly colours: readonly { readonly lab: Lab; readonly share: number }[]
  readonly sheet: TrueSheet | null
  /** As laid down, inches; null where a part of the garment is out of the picture. */
  readonly size: {
    readonly garmentWidthIn: number
    readonly garmentLengthIn: number
    readonly graphicWidthIn: number | null
    readonly graphicHeightIn: number | null
  } | null
  /** What makes this photo easy or hard. */
  readonly traits: Readonly<Record<string, string | number | boolean | null>> & {
    readonly ground: GroundKind
  }
}
