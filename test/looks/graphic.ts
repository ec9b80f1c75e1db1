import type { Chance } from '../help/chance.ts'
import { type Art, resized } from './art.ts'
import { inkOn } from './ink.ts'
import { drawLettering } from './lettering.ts'
import { codesOf } from './light.ts'
import type { Outline } from './outline.ts'
import { boxOf, cropped, fromSvg, type Raster } from './raster.ts'

/** One picture on the cloth and where it lies, mm in the garment's frame. */
export interface Graphic {
  readonly raster: Raster
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** Only one ink is printed: where the art is dark, or all of it. */
export function inked({ data, width, height }: Raster, ink: string, whole: boolean): Raster {
  const [r, g, b] = codesOf(ink)
  const out = new Uint8Array(data.length)
  for (let at = 0; at < data.length; at += 4) {
    const light = (data[at]! * 0.3 + data[at + 1]! * 0.59 + data[at + 2]! * 0.11) / 255
    const dark = whole ? 1 : Math.min(1, Math.max(0, (0.72 - light) * 6))
    out[at] = r
    out[at + 1] = g
    out[at + 2] = b
    out[at + 3] = data[at + 3]! * dark
  }
  return { data: out, width, height }
}

/** Takes away what cannot be told from the cloth, and crops to what is left; how clear and how much that is. */
export function seenOn(
  { data, width, height }: Raster,
  cloth: string,
  least: number,
): { raster: Raster; clear: number; share: number } | null {
  const [r, g, b] = codesOf(cloth)
  const out = new Uint8Array(data)
  let sum = 0
  let count = 0
  for (let at = 0; at < out.length; at += 4) {
    const far = Math.max(
      Math.abs(out[at]! - r),
      Math.abs(out[at + 1]! - g),
      Math.abs(out[at + 2]! - b),
    )
    if (far < least) out[at + 3] = 0
    else if (out[at + 3]! > 90) {
      sum += far
      count++
    }
  }
  const raster = { data: out, width, height }
  const box = boxOf(raster, 90)
  if (!box || count === 0) return null
  const area = (box.right - box.left) * (box.bottom - box.top)
  return { raster: cropped(raster, box), clear: sum / count, share: count / area }
}

const grounds = ['none', 'none', 'none', 'disc', 'box', 'ring', 'burst'] as const

/** Art on a disc, a box or rays, as prints often have it. */
async function mounted(chance: Chance, art: Raster, cloth: string): Promise<Raster> {
  const kind = chance.one(grounds)
  if (kind === 'none') return art
  const side = 900
  const ink = inkOn(chance, cloth, false)
  const line = inkOn(chance, ink, false)
  const shapes = {
    disc: `<circle cx="450" cy="450" r="440" fill="${ink}"/><circle cx="450" cy="450" r="405" fill="none" stroke="${line}" stroke-width="14"/>`,
    box: `<rect x="60" y="10" width="780" height="880" rx="${chance.whole(0, 60)}" fill="${ink}"/>`,
    ring: `<circle cx="450" cy="450" r="415" fill="none" stroke="${ink}" stroke-width="46"/>`,
    burst: Array.from(
      { length: 18 },
      (_, n) =>
        `<path d="M450 450L${450 + 470 * Math.cos((n * Math.PI) / 9)} ${450 + 470 * Math.sin((n * Math.PI) / 9)}L${450 + 470 * Math.cos(((n + 0.5) * Math.PI) / 9)} ${450 + 470 * Math.sin(((n + 0.5) * Math.PI) / 9)}Z" fill="${ink}"/>`,
    ).join(''),
  }
  const back = await fromSvg(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}" viewBox="0 0 ${side} ${side}">${shapes[kind]}</svg>`,
    side,
    side,
  )
  const fit = Math.min(560 / art.width, 560 / art.height)
  const front = await resized(art, art.width * fit, art.height * fit)
  const out = new Uint8Array(back.data)
  const left = Math.round((side - front.width) / 2)
  const top = Math.round((side - front.height) / 2)
  for (let y = 0; y < front.height; y++)
    for (let x = 0; x < front.width; x++) {
      const from = (y * front.width + x) * 4
      const to = ((top + y) * side + left + x) * 4
      const alpha = front.data[from + 3]! / 255
      if (alpha === 0) continue
      const under = out[to + 3]! / 255
      const over = alpha + under * (1 - alpha)
      for (let c = 0; c < 3; c++)
        out[to + c] = (front.data[from + c]! * alpha + out[to + c]! * under * (1 - alpha)) / over
      out[to + 3] = 255 * over
    }
  return { data: out, width: side, height: side }
}

/** One above the other, both as wide as they come out best. */
async function stacked(above: Raster, below: Raster): Promise<Raster> {
  const wide = 800
  const high = (raster: Raster) => Math.round((wide * raster.height) / raster.width)
  const top = await resized(above, wide, high(above))
  const bottom = await resized(below, wide, high(below))
  const gap = 30
  const height = top.height + gap + bottom.height
  const data = new Uint8Array(wide * height * 4)
  data.set(top.data)
  data.set(bottom.data, (top.height + gap) * wide * 4)
  return { data, width: wide, height }
}

/** What is printed: art in its own colours or in one ink, words, or words below art. */
async function motif(chance: Chance, cloth: string, quiet: boolean, art: Art): Promise<Raster> {
  const ink = inkOn(chance, cloth, quiet)
  const kind = chance.weighed({ art: 6, words: 2.5, both: 2 })
  if (kind === 'words') return await drawLettering(chance, ink)
  const picked = await art.pick(chance)
  const picture =
    quiet || chance.happens(0.3)
      ? inked(picked, ink, chance.happens(0.4))
      : await mounted(chance, picked, cloth)
  return kind === 'art' ? picture : await stacked(picture, await drawLettering(chance, ink))
}

export async function drawGraphic(
  chance: Chance,
  cloth: string,
  outline: Outline,
  chest: boolean,
  scale: number,
  art: Art,
  faint: boolean,
): Promise<Graphic> {
  const { front } = outline
  for (;;) {
    const quiet = chance.happens(0.14) || faint
    const made = await motif(chance, cloth, quiet, art)
    const seen = seenOn(made, cloth, quiet ? 8 : 14)
    if (!seen || seen.share < 0.14 || seen.clear < (quiet ? 14 : 45)) continue
    const room = { width: front.width * 0.94, height: front.height * 0.94 }
    const fit = Math.min(room.width / seen.raster.width, room.height / seen.raster.height)
    const part = chest ? 0 : Math.sqrt(chance.real(0.16, 1))
    const long = Math.max(seen.raster.width, seen.raster.height)
    const size = chest ? Math.min(chance.real(45, 95) / long, fit * 0.4) : fit * part
    const width = seen.raster.width * size
    const height = seen.raster.height * size
    const off = (free: number) => chance.real(-0.12, 0.12) * Math.max(0, free)
    const [x, y] = chest
      ? [chance.one([-1, 1]) * outline.chest[0], outline.chest[1]]
      : [
          front.middle[0] + off(front.width - width) * 0.3,
          front.middle[1] + off(front.height - height),
        ]
    return {
      raster: await resized(seen.raster, width * scale, height * scale),
      left: x - width / 2,
      top: y - height / 2,
      width,
      height,
    }
  }
}
