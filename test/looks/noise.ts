import type { Chance } from '../help/chance.ts'

/** A square of numbers that joins at its edges; its side is a power of two. */
export interface Tile {
  readonly data: Float32Array
  readonly side: number
}

const smooth = (t: number): number => t * t * (3 - 2 * t)

/**
 * Noise of about -1 to 1: `across` and `down` are how many hills it has along its side in the first
 * octave (whole numbers); each further octave has twice as many, half as high.
 */
export function noiseTile(
  chance: Chance,
  side: number,
  across: number,
  down: number,
  octaves: number,
  fade = 0.5,
): Tile {
  const data = new Float32Array(side * side)
  let height = 1
  let whole = 0
  for (let octave = 0; octave < octaves; octave++) {
    const columns = Math.min(side, across << octave)
    const rows = Math.min(side, down << octave)
    const lattice = Float32Array.from({ length: columns * rows }, () => chance.real(-1, 1))
    for (let y = 0; y < side; y++) {
      const v = (y * rows) / side
      const row = Math.floor(v)
      const t = smooth(v - row)
      const above = (row % rows) * columns
      const below = ((row + 1) % rows) * columns
      for (let x = 0; x < side; x++) {
        const u = (x * columns) / side
        const column = Math.floor(u)
        const s = smooth(u - column)
        const next = (column + 1) % columns
        const a = lattice[above + column]! + (lattice[above + next]! - lattice[above + column]!) * s
        const b = lattice[below + column]! + (lattice[below + next]! - lattice[below + column]!) * s
        data[y * side + x]! += height * (a + (b - a) * t)
      }
    }
    whole += height
    height *= fade
  }
  // Hills of several octaves seldom meet: without this, noise of many would be flat.
  const scale = 1.6 / whole
  for (let at = 0; at < data.length; at++) data[at]! *= scale
  return { data, side }
}

/** Half as large, each number the mean of four: for what is seen from further away. */
function halved({ data, side }: Tile): Tile {
  const half = side >> 1
  const out = new Float32Array(half * half)
  for (let y = 0; y < half; y++)
    for (let x = 0; x < half; x++) {
      const at = 2 * y * side + 2 * x
      out[y * half + x] = (data[at]! + data[at + 1]! + data[at + side]! + data[at + side + 1]!) / 4
    }
  return { data: out, side: half }
}

/** As coarse as a picture shows it that has `pixels` for each of the tile's own. */
export function asSeen(tile: Tile, pixels: number): Tile {
  let seen = tile
  for (let finer = pixels; finer < 0.7 && seen.side > 2; finer *= 2) seen = halved(seen)
  return seen
}

/** At a point in sides: 0 to 1 is once across. */
export function sampleTile({ data, side }: Tile, u: number, v: number): number {
  const x = u * side
  const y = v * side
  const left = Math.floor(x)
  const top = Math.floor(y)
  const across = x - left
  const down = y - top
  const mask = side - 1
  const a = left & mask
  const b = (left + 1) & mask
  const above = (top & mask) * side
  const below = ((top + 1) & mask) * side
  const one = data[above + a]! + (data[above + b]! - data[above + a]!) * across
  const two = data[below + a]! + (data[below + b]! - data[below + a]!) * across
  return one + (two - one) * down
}
