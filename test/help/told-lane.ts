import { Failure } from '../../src/base/failures.ts'
import { type Lane, openLane } from '../../src/photo/lane.ts'
import type { Look, SheetKind } from '../../src/photo/look/looked.ts'
import type { MarkedSheet } from '../../src/photo/look/marked-sheet.ts'
import type { Sizes } from '../../src/photo/look/measured.ts'

/** A lane that makes photos safe, and sees on them what a test tells it to. */
export interface ToldLane extends Lane {
  /** What the next photos show; null: nobody looks. */
  tells: Look | null
  /** What photos tell by a sheet that is marked on them, or why they tell nothing. */
  measures: Sizes | Failure
  /** What was marked, and by which focal length it was asked to measure. */
  readonly marked: { readonly marked: MarkedSheet; readonly focal35: number | null }[]
}

export function toldLane(): ToldLane {
  const lane = openLane()
  const told: ToldLane = {
    ...lane,
    tells: null,
    measures: { scale: null, size: null },
    marked: [],
    measure: async (_, marked, focal35) => {
      told.marked.push({ marked, focal35 })
      if (told.measures instanceof Failure) throw told.measures
      return told.measures
    },
    look: async (bytes) => ({ photo: await lane.makeSafe(bytes), look: told.tells, focal35: 26 }),
  }
  return told
}

/** A look at a dark blue garment with one picture in its middle. */
export const lookOf = (more: Partial<Look> = {}): Look => ({
  width: 700,
  height: 500,
  fitness: { ok: true, problems: [] },
  print: {
    class: 'single',
    confidence: 0.95,
    scores: { solid: 0.02, single: 0.95, allover: 0.02, 'stripe-check': 0.01 },
  },
  graphic: { x: 0.4, y: 0.3, w: 0.2, h: 0.25 },
  garment: { x: 0.1, y: 0.05, w: 0.8, h: 0.9 },
  colours: [
    { lab: [20, 4, -24], share: 0.8, hex: '#1d2a52' },
    { lab: [90, 0, 8], share: 0.2, hex: '#e7e2d3' },
  ],
  value: 'dark',
  scale: null,
  size: null,
  ...more,
})

/** What a photo tells by a sheet: its one picture is so large, inches. */
export const sizesOf = (across: number, along: number, by: SheetKind = 'letter'): Sizes => ({
  scale: {
    by,
    mmPerPx: 1,
    errorPct: 1.2,
    corners: [
      [70, 50],
      [140, 50],
      [140, 100],
      [70, 100],
    ],
  },
  size: {
    garmentWidthIn: 30.2,
    garmentLengthIn: 27.4,
    graphicWidthIn: across,
    graphicHeightIn: along,
  },
})
