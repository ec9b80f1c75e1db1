import type { Raster } from '../raster.ts'

/** A picture's, px. */
export type Size = Pick<Raster, 'width' | 'height'>

/** A drawing of a picture's size in which one unit is a pixel. */
export const drawing = ({ width, height }: Size, inner: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${inner}</svg>`

/** A part of a drawing, moved, turned or scaled. */
export const placed = (transform: string, inner: string): string =>
  `<g transform="${transform}">${inner}</g>`

/** What is drawn again and again: at `from` and then each `step` further, short of `end`. */
export function repeated(
  from: number,
  end: number,
  step: number,
  draw: (at: number, time: number) => string,
): string {
  let drawn = ''
  let time = 0
  for (let at = from; at < end; at += step) {
    drawn += draw(at, time)
    time++
  }
  return drawn
}
