import { parted, ways } from './cut.ts'
import { type Ground, groundOf } from './ground.ts'
import { type Net, runner } from './net.ts'
import { piecesOf } from './pieces.ts'
import { halved, type LabPlanes, marked, stretched } from './planes.ts'
import { fourSided } from './sheet-shape.ts'
import { firstSigns, laterSigns, type Signs } from './signs.ts'

/** Which pixels of a small picture show the garment: 1. */
export interface Mask {
  readonly width: number
  readonly height: number
  readonly data: Uint8Array
}

/** The later judges with what the first guessed. */
export interface OutlineNets {
  readonly first: Net
  readonly later: Net
}

export interface Outline {
  readonly mask: Mask
  /** How likely each pixel lies in the garment, 0 to 1. */
  readonly inside: Float32Array
  readonly ground: Ground
}

/** What parting two neighbours costs: always, and more where they are alike. */
const bond = { least: 0.3, most: 3 }
/** Leans beyond this are certain: no cheaper line runs there. */
const certain = 4

/**
 * The garment in a picture: how likely each pixel is of it, told at half the size, then the cheapest line
 * around it at the whole. `sheet`: pixels that are known to show no garment, 1.
 */
export function outlineOf(planes: LabPlanes, nets: OutlineNets, sheet?: Uint8Array): Outline {
  const small = halved(planes)
  const ground = groundOf(small)
  const first = firstSigns(planes, small, ground)
  const guess = likelihood(first, nets.first)
  const half = likelihood(laterSigns(small, ground, first, guess), nets.later)
  const { width, height } = planes
  const inside = stretched(
    { width: small.width, height: small.height, data: half },
    width,
    height,
  ).data
  const lean = new Float32Array(inside.length)
  for (let at = 0; at < lean.length; at += 1) {
    if (sheet?.[at]) inside[at] = 0
    lean[at] = Math.log((inside[at]! + 1e-4) / (1.0001 - inside[at]!))
  }
  const fixed = settled(lean, width, height)
  const data = parted({ width, height, lean, bond: bonds(planes), fixed })
  return { mask: { width, height, data: whole(data, width, height) }, inside, ground }
}

export function likelihood({ count, data }: Signs, net: Net): Float32Array {
  const run = runner(net)
  const out = new Float32Array(data.length / count)
  for (let at = 0; at < out.length; at += 1)
    out[at] = 1 / (1 + Math.exp(-run(data, at * count)[0]!))
  return out
}

/** Pixels that lean surely to one side, with all around them, need not be weighed. */
function settled(lean: Float32Array, width: number, height: number): Uint8Array {
  const fixed = new Uint8Array(lean.length)
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x
      const side = Math.sign(lean[at]!)
      let sure = Math.abs(lean[at]!) > certain
      for (let way = 0; sure && way < 8; way += 1) {
        const [dx, dy] = ways[way]!
        sure = side * lean[at + dy * width + dx]! > certain / 2
      }
      fixed[at] = sure ? 1 : 0
    }
  }
  return fixed
}

function bonds({ width, height, l, a, b }: LabPlanes): Float32Array {
  const made = new Float32Array(width * height * 8)
  const scale = -1 / (4 * usualStep(l, width))
  for (let way = 4; way < 8; way += 1) {
    const [dx, dy] = ways[way]!
    const step = dy * width + dx
    const length = Math.hypot(dx, dy)
    const [least, most] = [bond.least / length, bond.most / length]
    for (let y = 0; y < height - dy; y += 1) {
      const end = width - Math.max(0, dx)
      for (let x = Math.max(0, -dx); x < end; x += 1) {
        const at = y * width + x
        const to = at + step
        const [pl, pa, pb] = [l[at]! - l[to]!, a[at]! - a[to]!, b[at]! - b[to]!]
        const cost = least + most * Math.exp(scale * (pl * pl + pa * pa + pb * pb))
        made[at * 8 + way] = cost
        made[to * 8 + 7 - way] = cost
      }
    }
  }
  return made
}

/** The mean square of the steps from each pixel to the next, never nothing. */
function usualStep(l: Float32Array, width: number): number {
  let sum = 0
  for (let at = width; at < l.length; at += 1) {
    sum += ((l[at]! - l[at - 1]!) ** 2 + (l[at]! - l[at - width]!) ** 2) / 2
  }
  return sum / l.length + 2
}

/** How nearly a piece is four-sided where it is taken for a sheet, and least size of what may be garment beside it. */
const sheet = { filled: 0.93, beside: 0.06 }

/** The garment's piece alone, with its holes filled: the largest, or the next where that is a sheet of paper. */
function whole(data: Uint8Array, width: number, height: number): Uint8Array {
  const { of, sizes } = piecesOf(data, width, height, 1)
  const ranked = sizes.map((size, n) => ({ size, piece: n + 1 })).sort((a, b) => b.size - a.size)
  const [largest] = ranked
  if (!largest) return data
  const some = ranked.filter(({ size }) => size >= sheet.beside * largest.size)
  const garment =
    some.length === 1
      ? largest
      : (some.find(({ piece }) => fourSided(of, width, piece) < sheet.filled) ?? largest)
  const kept = marked(data.length, (at) => of[at] === garment.piece)
  const holes = piecesOf(kept, width, height, 0)
  return marked(data.length, (at) => kept[at] === 1 || !holes.atEdge[holes.of[at]! - 1])
}
