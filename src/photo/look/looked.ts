export const printClasses = ['solid', 'single', 'allover', 'stripe-check'] as const
export type PrintClass = (typeof printClasses)[number]

export const faults = ['blurred', 'dark', 'bright', 'cut-off', 'too-small', 'no-garment'] as const
export type Fault = (typeof faults)[number]

/** A box in shares of the upright picture's width and height, 0 to 1. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** A colour as it is photographed: CIELAB for the light D65, and the nearest of sRGB. */
export interface SeenColour {
  readonly lab: readonly [l: number, a: number, b: number]
  /** Of the garment, 0 to 1. */
  readonly share: number
  readonly hex: string
}

/** Sheets by which things beside them are measured: two sizes of paper, and cards of the size ID-1. */
export const sheetKinds = ['letter', 'a4', 'id1'] as const
export type SheetKind = (typeof sheetKinds)[number]

/** The scale that a sheet beside the garment tells. */
export interface Scale {
  readonly by: SheetKind
  /** About the middle of the garment, for a pixel of the upright picture. */
  readonly mmPerPx: number
  /** Nine in ten lengths on the plane there are off by less, percent. */
  readonly errorPct: number
  /** Of the sheet, clockwise, pixels of the upright picture. */
  readonly corners: readonly (readonly [x: number, y: number])[]
}

/** How far things reach on the plane that they lie on, inches. */
export interface Size {
  /** Across and along the garment's own axis, with sleeves and hood. */
  readonly garmentWidthIn: number
  readonly garmentLengthIn: number
  /** Of the one picture that it carries, along the same axes. */
  readonly graphicWidthIn: number | null
  readonly graphicHeightIn: number | null
}

/** What a photo shows of a garment. */
export interface Look {
  /** Pixels of the upright picture. */
  readonly width: number
  readonly height: number
  readonly fitness: { readonly ok: boolean; readonly problems: readonly Fault[] }
  readonly print: {
    readonly class: PrintClass
    /** How likely that is right, 0 to 1. */
    readonly confidence: number
    readonly scores: Readonly<Record<PrintClass, number>>
  }
  /** The box of the one picture that the garment carries. */
  readonly graphic: Box | null
  readonly garment: Box | null
  /** Of the garment alone, the largest first, five at most; none where there is no garment. */
  readonly colours: readonly SeenColour[]
  /** By the garment's mean lightness: light from 68 on, dark below 38. */
  readonly value: 'light' | 'medium' | 'dark'
  /** Null where no sheet of a known size lies beside the garment for sure. */
  readonly scale: Scale | null
  /** Null also where the garment's own axis is in doubt. */
  readonly size: Size | null
}
