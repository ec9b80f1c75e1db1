import type { Straight } from './frame.ts'
import type { Group } from './groups.ts'
import type { Box } from './looked.ts'

/** The box, in the picture, of a group of print on the straightened garment. */
export function boxOf({ of, piece }: Group, straight: Straight): Box {
  const { width } = straight.pixels
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let at = 0; at < of.length; at += 1) {
    if (of[at] !== piece) continue
    const u = at % width
    const v = Math.floor(at / width)
    if (
      of[at - 1] === piece &&
      of[at + 1] === piece &&
      of[at - width] === piece &&
      of[at + width] === piece
    )
      continue
    const [x, y] = straight.back(u + 0.5, v + 0.5)
    x1 = Math.min(x1, x)
    x2 = Math.max(x2, x)
    y1 = Math.min(y1, y)
    y2 = Math.max(y2, y)
  }
  return { x: x1, y: y1, w: x2 - x1, h: y2 - y1 }
}
