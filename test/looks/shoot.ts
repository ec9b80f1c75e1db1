import { type Point, scaleAt, type View } from './camera.ts'
import type { Cloth } from './cloth.ts'
import { type Folds, foldsAt } from './folds.ts'
import type { Sewn } from './garment.ts'
import type { Ground } from './ground.ts'
import { lightOfHex } from './light.ts'
import { asSeen, sampleTile } from './noise.ts'
import type { Outline } from './outline.ts'
import type { Print } from './print.ts'
import { sample1, sample4 } from './raster.ts'
import { coverWith, type Sheet } from './reference.ts'

/** A garment ready to be laid down. */
export interface Piece {
  readonly outline: Outline
  readonly cloth: Cloth
  readonly print: Print
  readonly sewn: Sewn
  readonly folds: Folds
  /** Its middle in its own frame, mm, which lies on the plane's origin, and how far it is turned there. */
  readonly middle: Point
  readonly turn: number
}

/** Light on the plane: from a lamp or a window over it, and from all around; the rest in one colour. */
export interface Lamp {
  readonly at: Point
  readonly high: number
  readonly around: number
  /** What red, green and blue are multiplied by beneath it and far from it. */
  readonly near: readonly number[]
  readonly far: readonly number[]
  /** The shadow of whoever holds the camera: its middle, its radius, how deep; mm. */
  readonly shade: { readonly at: Point; readonly radius: number; readonly deep: number } | null
}

export interface Scene {
  readonly view: View
  readonly ground: Ground
  readonly piece: Piece | null
  readonly sheet: Sheet | null
  readonly lamp: Lamp
}

/** What each pixel shows. */
export const nothing = 0
/** Cloth that is part print, seam, trim or edge. */
export const mixed = 255

export interface Shot {
  readonly width: number
  readonly height: number
  /** Red, green and blue of each pixel as light. */
  readonly light: Float32Array
  /** How much of each pixel is garment, 0 to 255. */
  readonly mask: Uint8Array
  /** `nothing`, `mixed`, or a pattern's zone and one more: 1 is bare cloth. */
  readonly zones: Uint8Array
  /** Where the graphic is seen, px. */
  readonly graphic: { left: number; top: number; right: number; bottom: number } | null
}

/** The opacity from which a graphic counts as seen. */
export const seenFrom = 0.4

/** The picture of a scene in light, before the camera makes codes of it. */
export function shoot({ view, ground, piece, sheet, lamp }: Scene): Shot {
  const { width, height, back } = view
  const light = new Float32Array(width * height * 3)
  const mask = new Uint8Array(width * height)
  const zones = new Uint8Array(width * height)
  const box = { left: width, top: height, right: -1, bottom: -1 }
  const scale = scaleAt(view, [0, 0])
  const rgb = new Float32Array(3)
  const onCloth = piece ? clothPainter(piece, scale) : null
  const cos = Math.cos(piece?.turn ?? 0)
  const sin = Math.sin(piece?.turn ?? 0)
  const [middleX, middleY] = piece?.middle ?? [0, 0]
  const high2 = lamp.high ** 2
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const px = x + 0.5
      const py = y + 0.5
      const w = 1 / (back[6]! * px + back[7]! * py + back[8]!)
      const X = (back[0]! * px + back[1]! * py + back[2]!) * w
      const Y = (back[3]! * px + back[4]! * py + back[5]!) * w
      ground(X, Y, rgb)
      if (sheet) coverWith(sheet, X, Y, scale, rgb)
      const n = y * width + x
      if (onCloth) {
        const u = X * cos + Y * sin + middleX
        const v = -X * sin + Y * cos + middleY
        onCloth(u, v, rgb)
        if (onCloth.cover > 0) {
          mask[n] = Math.round(255 * onCloth.cover)
          zones[n] = onCloth.cover > 0.98 ? onCloth.zone : nothing
          if (onCloth.graphic > seenFrom) {
            if (x < box.left) box.left = x
            if (x > box.right) box.right = x
            if (y < box.top) box.top = y
            box.bottom = y
          }
        }
      }
      const dx = X - lamp.at[0]
      const dy = Y - lamp.at[1]
      const q = high2 / (high2 + dx * dx + dy * dy)
      const beam = q * Math.sqrt(q)
      let gain = lamp.around + (1 - lamp.around) * beam
      if (lamp.shade) {
        const away = Math.hypot(X - lamp.shade.at[0], Y - lamp.shade.at[1]) / lamp.shade.radius
        gain *= 1 - lamp.shade.deep / (1 + away ** 6)
      }
      for (let c = 0; c < 3; c++)
        light[n * 3 + c] = rgb[c]! * gain * (lamp.far[c]! + (lamp.near[c]! - lamp.far[c]!) * beam)
    }
  }
  const graphic = box.right < 0 ? null : { ...box, right: box.right + 1, bottom: box.bottom + 1 }
  return { width, height, light, mask, zones, graphic }
}

interface Painter {
  (u: number, v: number, rgb: Float32Array): void
  /** Of the point that was painted last. */
  cover: number
  zone: number
  graphic: number
}

/** Paints the garment and its shadow over the light of the ground, at points of its own frame. */
function clothPainter({ outline, cloth, print, sewn, folds }: Piece, pixels: number): Painter {
  const base = lightOfHex(cloth.colour)
  const threads = asSeen(cloth.threads, (pixels * cloth.period) / cloth.threads.side)
  const frames = outline.parts.map(({ from, turn, shade = 0 }) => {
    const whole = turn + (print.pattern?.turn ?? 0)
    return { from, cos: Math.cos(whole), sin: Math.sin(whole), gain: 1 + shade, inner: shade !== 0 }
  })
  const { pattern, graphic } = print
  const over = new Float32Array(4)
  const { scale, left, top, cover, parts, marks } = sewn
  const paint: Painter = Object.assign(
    (u: number, v: number, rgb: Float32Array) => {
      paint.cover = 0
      paint.graphic = 0
      const here = foldsAt(folds, u, v)
      if (!here) return
      const dim = 1 - here[3]!
      const moveU = u + here[0]!
      const moveV = v + here[1]!
      const x = (moveU - left) * scale
      const y = (moveV - top) * scale
      const covered = sample1(cover, x, y)
      if (covered < 0.004) {
        for (let c = 0; c < 3; c++) rgb[c]! *= dim
        return
      }
      const column = Math.min(cover.width - 1, Math.max(0, Math.floor(x)))
      const row = Math.min(cover.height - 1, Math.max(0, Math.floor(y)))
      const frame = frames[Math.max(0, parts[row * cover.width + column]! - 1)]!
      let zone = 1
      let r = base[0]
      let g = base[1]
      let b = base[2]
      const lightness = here[2]!
      const fade = 1 + cloth.fade * here[4]!
      if (pattern) {
        const du = moveU - frame.from[0]
        const dv = moveV - frame.from[1]
        const s = ((du * frame.cos + dv * frame.sin) / pattern.wide) * pattern.tile.width
        const t = ((-du * frame.sin + dv * frame.cos) / pattern.tall) * pattern.tile.height
        sample4(pattern.tile, s, t, true, over)
        const clear = 1 - over[3]!
        r = r * clear + over[0]!
        g = g * clear + over[1]!
        b = b * clear + over[2]!
        const { width, height } = pattern.tile
        const column = ((Math.floor(s) % width) + width) % width
        const row = ((Math.floor(t) % height) + height) % height
        const its = pattern.zones[row * width + column]!
        zone = its === mixed ? mixed : its + 1
      }
      if (graphic && frame === frames[0]) {
        sample4(
          graphic.raster,
          (moveU - graphic.left) * (graphic.raster.width / graphic.width),
          (moveV - graphic.top) * (graphic.raster.height / graphic.height),
          false,
          over,
        )
        if (over[3]! > 0.01) {
          const clear = 1 - over[3]!
          r = r * clear + over[0]!
          g = g * clear + over[1]!
          b = b * clear + over[2]!
          paint.graphic = over[3]! * covered
          zone = mixed
        }
      }
      const thread =
        1 + cloth.strength * sampleTile(threads, moveU / cloth.period, moveV / cloth.period)
      const gain = thread * frame.gain * fade
      r *= gain
      g *= gain
      b *= gain
      sample4(marks, x, y, false, over)
      if (over[3]! > 0.01) {
        const clear = 1 - over[3]!
        r = r * clear + over[0]!
        g = g * clear + over[1]!
        b = b * clear + over[2]!
        if (over[3]! > 0.04) zone = mixed
      }
      if (frame.inner) zone = mixed
      const bare = 1 - covered
      rgb[0] = rgb[0]! * dim * bare + r * lightness * covered
      rgb[1] = rgb[1]! * dim * bare + g * lightness * covered
      rgb[2] = rgb[2]! * dim * bare + b * lightness * covered
      paint.cover = covered
      paint.zone = zone
    },
    { cover: 0, zone: 0, graphic: 0 },
  )
  return paint
}
