import type { Pixels } from '../cloth.ts'
import { hull, isWithin, type Point } from '../hull.ts'
import { marked } from './planes.ts'

/** A picture with a sheet that lies in it painted over with what lies around it. */
export interface PaintedOver {
  readonly picture: Pixels
  /** Its pixels that show the sheet: 1. */
  readonly sheet: Uint8Array
}

/** So far beyond its sides, px, a sheet's shadow and its blurred rim are painted over too; what lies next is asked. */
const shade = 1.5
const around = 4

/** Paints a sheet over in the commonest colour around it. `corners`: in shares of the picture's sides. Pure. */
export function paintedOver(picture: Pixels, corners: readonly Point[]): PaintedOver {
  const { width, height, channels } = picture
  const shape = hull(corners.map(([x, y]): Point => [x * width, y * height]))
  const reaches = (off: number): Uint8Array =>
    marked(width * height, (at) =>
      isWithin([(at % width) + 0.5, Math.floor(at / width) + 0.5], shape, off),
    )
  const [sheet, far] = [reaches(shade), reaches(shade + around)]
  const next = [...far.keys()].filter((at) => far[at] === 1 && sheet[at] === 0)
  const data = new Uint8Array(picture.data)
  for (let channel = 0; channel < channels; channel += 1) {
    const codes = Uint8Array.from(next, (at) => data[at * channels + channel]!).sort()
    const middle = codes[codes.length >> 1] ?? 0
    for (let at = 0; at < sheet.length; at += 1)
      if (sheet[at]) data[at * channels + channel] = middle
  }
  return { picture: { ...picture, data }, sheet }
}
