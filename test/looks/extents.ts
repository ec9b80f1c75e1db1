import { foldsAt } from './folds.ts'
import { sample1, sample4 } from './raster.ts'
import { type Piece, seenFrom } from './shoot.ts'

interface Area {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** How far what is seen reaches across and down within an area, both mm; null where nothing is. */
function reach(
  { left, top, right, bottom }: Area,
  step: number,
  seen: (u: number, v: number) => boolean,
): { readonly width: number; readonly length: number } | null {
  const box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity }
  for (let v = top; v <= bottom; v += step)
    for (let u = left; u <= right; u += step) {
      if (!seen(u, v)) continue
      if (u < box.left) box.left = u
      if (u > box.right) box.right = u
      if (v < box.top) box.top = v
      box.bottom = v
    }
  if (box.right < box.left) return null
  return { width: box.right - box.left + step, length: box.bottom - box.top + step }
}

/** Folds move nothing further than this, mm. */
const beyond = 20

/** How far garment and graphic reach along the garment's own axes as it lies, mm. */
export function extents({ sewn, folds, print: { graphic } }: Piece): {
  readonly garment: { readonly width: number; readonly length: number }
  readonly graphic: { readonly width: number; readonly length: number } | null
} {
  const { cover, scale, left, top } = sewn
  const covered = (u: number, v: number) =>
    sample1(cover, (u - left) * scale, (v - top) * scale) >= 0.5
  const around = ({ left, top, right, bottom }: Area): Area => ({
    left: left - beyond,
    top: top - beyond,
    right: right + beyond,
    bottom: bottom + beyond,
  })
  const whole = around({
    left,
    top,
    right: left + cover.width / scale,
    bottom: top + cover.height / scale,
  })
  const garment = reach(whole, 1, (u, v) => {
    const here = foldsAt(folds, u, v)
    return here !== null && covered(u + here[0]!, v + here[1]!)
  })
  if (!garment) throw new Error('A garment covers nothing.')
  if (!graphic) return { garment, graphic: null }

  const { raster, width, height } = graphic
  const over = new Float32Array(4)
  const printed = around({
    left: graphic.left,
    top: graphic.top,
    right: graphic.left + width,
    bottom: graphic.top + height,
  })
  const seen = reach(printed, 0.5, (u, v) => {
    const here = foldsAt(folds, u, v)
    if (!here) return false
    const atU = u + here[0]!
    const atV = v + here[1]!
    const x = (atU - graphic.left) * (raster.width / width)
    const y = (atV - graphic.top) * (raster.height / height)
    sample4(raster, x, y, false, over)
    return over[3]! > seenFrom && covered(atU, atV)
  })
  return { garment, graphic: seen }
}
