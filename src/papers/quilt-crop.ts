import type { Extent } from '../quilt/layout.ts'

/** The side that a photo's square of cloth is drawn with before a part of it is chosen. */
export const imageSide = 100

/**
 * So many inches of cloth are taken to show in the square: a third of a shirt that was laid out and
 * photographed. Common practice, no source.
 */
const shownIn = 10

/** Two steps that never come back to where they were, and spread evenly over a square (Roberts, 2018: R2). */
const steps = { x: 0.7548776662, y: 0.569840291 }

const share = (n: number): number => n - Math.floor(n)
const one = (n: number): number => Math.round(n * 10) / 10

/**
 * The part of a photo's cloth that the nth part of that cloth shows, as a viewBox: as large as it is in
 * truth, each from another place, so that no neighbour is a copy. Where the graphic is, as much as can be
 * shown. The same n gives the same part.
 */
export function cropOf({ w, h }: Extent, n: number, { graphic }: { graphic: boolean }): string {
  const scale = imageSide / (graphic ? Math.max(w, h) : Math.max(shownIn, w, h))
  const [width, height] = [w * scale, h * scale]
  const place = (step: number, free: number) => one((graphic ? 0.5 : share((n + 1) * step)) * free)
  const x = place(steps.x, imageSide - width)
  const y = place(steps.y, imageSide - height)
  return `${x} ${y} ${one(width)} ${one(height)}`
}
