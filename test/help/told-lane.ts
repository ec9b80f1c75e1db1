import { type Lane, openLane } from '../../src/photo/lane.ts'
import type { Look } from '../../src/photo/look/looked.ts'

/** A lane that makes photos safe, and sees on them what a test tells it to. */
export interface ToldLane extends Lane {
  /** What the next photos show; null: nobody looks. */
  tells: Look | null
}

export function toldLane(): ToldLane {
  const lane = openLane()
  const told: ToldLane = {
    ...lane,
    tells: null,
    look: async (bytes) => ({ photo: await lane.makeSafe(bytes), look: told.tells }),
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
