import type { Chance } from '../help/chance.ts'
import type { Sewn } from './garment.ts'
import { noiseTile, sampleTile } from './noise.ts'
import type { Part } from './outline.ts'
import { sample1 } from './raster.ts'

/** How cloth lies, on a grid in the garment's frame. */
export interface Folds {
  /** Millimetres between two points of the grid, where it begins, and how many points it has. */
  readonly step: number
  readonly left: number
  readonly top: number
  readonly columns: number
  readonly rows: number
  /** For each point `channels` numbers: moved across and down (mm), light, shadow beside it, fading. */
  readonly data: Float32Array
}

export const channels = 5

const step = 2.5
const beyond = 90

export interface Lie {
  /** Heights of soft waves and of creases, mm; how many creases, and lines from a cupboard's folding. */
  readonly soft: number
  readonly crumple: number
  readonly creases: number
  /** How much it is drawn together where sleeves begin, 0 to about 1. */
  readonly pulls: number
  readonly lines: number
  /** Where the light comes from in the garment's frame (radians), how steeply, and how much is from all around. */
  readonly from: number
  readonly steep: number
  readonly around: number
  /** How deep and how far the shadow beside the garment is. */
  readonly shadow: number
  readonly reach: number
  readonly wobble: number
}

export function lay(chance: Chance, sewn: Sewn, parts: readonly Part[], lie: Lie): Folds {
  const left = sewn.left - beyond
  const top = sewn.top - beyond
  const columns = Math.ceil((sewn.cover.width / sewn.scale + 2 * beyond) / step) + 1
  const rows = Math.ceil((sewn.cover.height / sewn.scale + 2 * beyond) / step) + 1
  const data = new Float32Array(columns * rows * channels)
  const height = heights(chance, lie, columns, rows)
  // Where a sleeve or a leg begins or bends, the cloth is drawn together.
  for (const { from, turn } of parts.filter((part) => part.turn !== 0))
    for (let n = 0; n < Math.round(lie.pulls * chance.real(1, 6)); n++)
      crease(height, columns, rows, {
        x: (from[0] + chance.real(-50, 50) - left) / step,
        y: (from[1] + chance.real(-30, 60) - top) / step,
        way: turn + Math.PI / 2 + chance.one([0, Math.PI]) + chance.real(-0.9, 0.9),
        curve: chance.real(-0.012, 0.012),
        length: chance.real(50, 190) / step,
        wide: chance.real(4, 11) / step,
        tall: lie.pulls * chance.real(1, 3.6),
      })
  const inside = covered(sewn, left, top, columns, rows)
  const edge = blurred(inside, columns, rows, 2)
  const far = blurred(inside, columns, rows, Math.max(2, Math.round(lie.reach / step)))
  const near = blurred(inside, columns, rows, 2)

  const lean = [Math.cos(lie.from), Math.sin(lie.from)] as const
  const moveX = noiseTile(chance, 256, 4, 4, 5, 0.55)
  const moveY = noiseTile(chance, 256, 4, 4, 5, 0.55)
  const faded = noiseTile(chance, 256, 5, 3, 4)
  const lit = Math.cos(lie.steep)
  const up = Math.sin(lie.steep)
  const shadowX = Math.round((-lean[0] * lie.reach * 0.6) / step)
  const shadowY = Math.round((-lean[1] * lie.reach * 0.6) / step)
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const n = y * columns + x
      const east = n + (x < columns - 1 ? 1 : 0)
      const west = n - (x > 0 ? 1 : 0)
      const south = n + (y < rows - 1 ? columns : 0)
      const north = n - (y > 0 ? columns : 0)
      // The edge of the cloth is a few millimetres high and rounded.
      const rise = (at: number) => height[at]! + 3 * edge[at]!
      const slopeX = (rise(east) - rise(west)) / (2 * step)
      const slopeY = (rise(south) - rise(north)) / (2 * step)
      const hollow =
        (height[east]! + height[west]! + height[south]! + height[north]!) / 4 - height[n]!
      const facing =
        Math.max(0, (slopeX * -lean[0] + slopeY * -lean[1]) * lit + up) /
        Math.hypot(slopeX, slopeY, 1)
      const at = n * channels
      const u = x / 200
      const v = y / 200
      data[at] = lie.wobble * sampleTile(moveX, u, v) + slopeX * 2.5
      data[at + 1] = lie.wobble * sampleTile(moveY, u, v) + slopeY * 2.5
      data[at + 2] =
        lie.around * (1 - Math.min(0.35, Math.max(-0.1, hollow * 0.35))) +
        (1 - lie.around) * (facing / up)
      const castX = Math.min(columns - 1, Math.max(0, x - shadowX))
      const castY = Math.min(rows - 1, Math.max(0, y - shadowY))
      data[at + 3] = Math.min(
        0.92,
        lie.shadow * (0.75 * far[castY * columns + castX]! + 0.55 * near[n]!),
      )
      data[at + 4] = sampleTile(faded, u * 0.8, v * 0.8)
    }
  return { step, left, top, columns, rows, data }
}

function heights(chance: Chance, lie: Lie, columns: number, rows: number): Float32Array {
  const out = new Float32Array(columns * rows)
  const soft = noiseTile(chance, 256, 3, 3, 3, 0.45)
  const ridges = noiseTile(chance, 256, 5, 5, 3, 0.5)
  const ridges2 = noiseTile(chance, 256, 7, 4, 2, 0.5)
  const bendX = noiseTile(chance, 256, 4, 4, 2)
  const turn = chance.real(0, Math.PI)
  const stretch = chance.real(1, 2.2)
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const warp = 0.05 * sampleTile(bendX, x / 220, y / 220)
      const u = (x * cos + y * sin) / 240 + warp
      const v = ((-x * sin + y * cos) / 240) * stretch + warp
      const ridge = 1 - Math.abs(sampleTile(ridges, u, v))
      const ridge2 = 1 - Math.abs(sampleTile(ridges2, v * 0.8, u * 0.8))
      const wave = sampleTile(soft, x / 330, y / 330)
      // Creases run out instead of closing like the lines of a map.
      const here = Math.max(0, 0.3 + 1.4 * sampleTile(bendX, y / 130, x / 130))
      out[y * columns + x] = lie.soft * wave + lie.crumple * here * (ridge ** 5 + 0.7 * ridge2 ** 6)
    }
  for (let n = 0; n < lie.creases; n++) {
    const length = chance.real(60, 320) / step
    const way = chance.real(0, 2 * Math.PI)
    const curve = chance.real(-0.006, 0.006)
    const wide = chance.real(4, 13) / step
    const tall = chance.real(1.2, 4.5) * chance.one([-1, 1, 1])
    crease(out, columns, rows, {
      x: chance.real(0.1, 0.9) * columns,
      y: chance.real(0.1, 0.9) * rows,
      way,
      curve,
      length,
      wide,
      tall,
    })
  }
  for (let n = 0; n < lie.lines; n++) {
    const upright = chance.happens(0.5)
    const at = chance.real(0.3, 0.7) * (upright ? columns : rows)
    const lean = chance.real(-0.04, 0.04)
    const wide = chance.real(6, 14) / step
    const tall = chance.real(1.5, 3.5) * chance.one([-1, 1])
    for (let y = 0; y < rows; y++)
      for (let x = 0; x < columns; x++) {
        const away = Math.abs(upright ? x - at - lean * y : y - at - lean * x)
        if (away < wide * 5) out[y * columns + x]! += tall * Math.exp(-away / wide)
      }
  }
  return out
}

/** A ridge along a line that bends, lengths in steps of the grid, its height in mm. */
interface Crease {
  readonly x: number
  readonly y: number
  readonly way: number
  readonly curve: number
  readonly length: number
  readonly wide: number
  readonly tall: number
}

function crease(out: Float32Array, columns: number, rows: number, line: Crease): void {
  const { curve, length, wide, tall } = line
  const reach = Math.ceil(wide * 2.6)
  let { x, y, way } = line
  // Each point takes the highest of what the line gives it, not their sum.
  const highest = new Map<number, number>()
  for (let along = 0; along < length; along++) {
    x += Math.cos(way)
    y += Math.sin(way)
    way += curve
    const taper = Math.sin((Math.PI * (along + 1)) / (length + 1)) ** 0.7
    for (let dy = -reach; dy <= reach; dy++)
      for (let dx = -reach; dx <= reach; dx++) {
        const column = Math.round(x) + dx
        const row = Math.round(y) + dy
        if (column < 0 || row < 0 || column >= columns || row >= rows) continue
        const away = Math.hypot(column - x, row - y)
        const high = taper * Math.exp(-((away / wide) ** 2))
        const n = row * columns + column
        if (high > (highest.get(n) ?? 0.02)) highest.set(n, high)
      }
  }
  for (const [n, high] of highest) out[n]! += tall * high
}

function covered(
  sewn: Sewn,
  left: number,
  top: number,
  columns: number,
  rows: number,
): Float32Array {
  const out = new Float32Array(columns * rows)
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++)
      out[y * columns + x] = sample1(
        sewn.cover,
        (left + x * step - sewn.left) * sewn.scale,
        (top + y * step - sewn.top) * sewn.scale,
      )
  return out
}

/** Thrice the mean over a square: about a bell. */
function blurred(from: Float32Array, columns: number, rows: number, reach: number): Float32Array {
  let now = from
  for (let round = 0; round < 3; round++)
    now = boxed(boxed(now, columns, rows, 1, columns, reach), rows, columns, columns, 1, reach)
  return now
}

/** The mean of `reach` points to either side along lines of `length` points that lie `next` apart. */
function boxed(
  from: Float32Array,
  length: number,
  lines: number,
  next: number,
  line: number,
  reach: number,
): Float32Array {
  const out = new Float32Array(from.length)
  for (let n = 0; n < lines; n++) {
    const start = n * line
    const at = (i: number) => from[start + Math.min(length - 1, Math.max(0, i)) * next]!
    let sum = 0
    for (let i = -reach; i <= reach; i++) sum += at(i)
    for (let i = 0; i < length; i++) {
      out[start + i * next] = sum / (2 * reach + 1)
      sum += at(i + reach + 1) - at(i - reach)
    }
  }
  return out
}

const values = new Float32Array(channels)

/** What the grid holds at a point of the garment's frame, mm; null beyond it. The same array each time. */
export function foldsAt(folds: Folds, u: number, v: number): Float32Array | null {
  const x = (u - folds.left) / folds.step
  const y = (v - folds.top) / folds.step
  const left = Math.floor(x)
  const top = Math.floor(y)
  if (left < 0 || top < 0 || left >= folds.columns - 1 || top >= folds.rows - 1) return null
  const across = x - left
  const down = y - top
  const { data, columns } = folds
  const a = (top * columns + left) * channels
  const b = a + columns * channels
  for (let c = 0; c < channels; c++) {
    const above = data[a + c]! + (data[a + channels + c]! - data[a + c]!) * across
    const below = data[b + c]! + (data[b + channels + c]! - data[b + c]!) * across
    values[c] = above + (below - above) * down
  }
  return values
}
