import type { Chance } from '../help/chance.ts'
import { hexOfLch, lightOfHex, moved } from './light.ts'
import { asSeen, noiseTile, sampleTile, type Tile } from './noise.ts'

export const groundKinds = ['wood', 'carpet', 'sheet', 'cover', 'table', 'tiles', 'dark'] as const
export type GroundKind = (typeof groundKinds)[number]

/** What lies below: writes the light that it throws back at a point of the plane, mm. */
export type Ground = (x: number, y: number, out: Float32Array) => void

/** The colour that a ground of a kind has. */
export function groundColour(chance: Chance, kind: GroundKind): string {
  const of = (l: [number, number], c: [number, number], h: [number, number]) =>
    hexOfLch(chance.real(...l), chance.real(...c), chance.real(...h))
  switch (kind) {
    case 'wood':
      return of([28, 76], [14, 36], [55, 80])
    case 'carpet':
      return chance.happens(0.6)
        ? of([35, 80], [2, 14], [60, 100])
        : of([25, 60], [8, 35], [0, 360])
    case 'sheet':
      return of([90, 96], [0, 4], [60, 270])
    case 'cover':
      return of([45, 92], [4, 28], [0, 360])
    case 'table':
      return chance.happens(0.5)
        ? of([82, 93], [0, 5], [60, 270])
        : of([30, 75], [10, 35], [45, 85])
    case 'tiles':
      return of([50, 88], [1, 12], [50, 260])
    case 'dark':
      return of([9, 26], [1, 12], [0, 360])
  }
}

/** `scale` is how many pixels a millimetre has: what is finer is not drawn. */
export function drawGround(
  chance: Chance,
  kind: GroundKind,
  colour: string,
  scale: number,
): Ground {
  const plain = lightOfHex(colour)
  const put = (out: Float32Array, gain: number, light: readonly number[] = plain) => {
    out[0] = light[0]! * gain
    out[1] = light[1]! * gain
    out[2] = light[2]! * gain
  }
  // As coarse as it is seen where one side of a tile is so many mm.
  const seen = (tile: Tile, period: number) => asSeen(tile, (scale * period) / tile.side)
  const turn = chance.real(0, 2 * Math.PI)
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  const waves = noiseTile(chance, 256, 4, 4, 3)
  const grain = seen(noiseTile(chance, 256, 96, 96, 2, 0.7), 180)

  switch (kind) {
    case 'wood':
      return planks(chance, plain, seen, cos, sin)
    case 'carpet': {
      const tufts = seen(noiseTile(chance, 256, 64, 64, 3, 0.8), chance.real(150, 420))
      const period = 260
      const deep = chance.real(0.12, 0.34)
      const loops = chance.happens(0.3) ? chance.real(5, 11) : 0
      return (x, y, out) => {
        const u = x * cos - y * sin
        const v = x * sin + y * cos
        const tuft = sampleTile(tufts, u / period, v / period)
        const loop =
          loops > 0 && scale > 0.8
            ? 0.1 * Math.sin((u * 6.283) / loops) * Math.sin((v * 6.283) / loops)
            : 0
        put(out, 1 + deep * tuft + loop + 0.07 * sampleTile(waves, u / 900, v / 900))
      }
    }
    case 'sheet':
      return rumpled(chance, seen, chance.real(0.12, 0.75), (x, y, out, gain) =>
        put(out, gain * (1 + 0.02 * sampleTile(grain, x / 90, y / 90))),
      )
    case 'cover': {
      const pattern = coverPattern(chance, colour, plain)
      return rumpled(chance, seen, chance.real(0.1, 0.7), (x, y, out, gain) => {
        const u = x * cos - y * sin
        const v = x * sin + y * cos
        put(out, gain * (1 + 0.05 * sampleTile(grain, u / 120, v / 120)), pattern(u, v))
      })
    }
    case 'table': {
      const streaks = seen(noiseTile(chance, 256, 3, 96, 4, 0.7), 700)
      const wooden = plain[0]! > plain[2]! * 1.25
      const deep = wooden ? chance.real(0.06, 0.2) : chance.real(0, 0.03)
      return (x, y, out) => {
        const u = x * cos - y * sin
        const v = x * sin + y * cos
        put(
          out,
          1 +
            deep * sampleTile(streaks, u / 1400, v / 700) +
            0.03 * sampleTile(waves, u / 800, v / 800),
        )
      }
    }
    case 'tiles': {
      const side = chance.real(150, 450)
      const line = chance.real(2, 5)
      const grout = lightOfHex(moved(colour, { l: chance.one([-24, -14, 12]), c: -5 }))
      const mottled = seen(noiseTile(chance, 256, 6, 6, 5, 0.6), side * 2)
      const deep = chance.real(0.03, 0.12)
      const half = chance.happens(0.3) ? side / 2 : 0
      return (x, y, out) => {
        const u = x * cos - y * sin
        const v = x * sin + y * cos
        const row = Math.floor(v / side)
        const along = u + (row & 1) * half
        const column = Math.floor(along / side)
        const inX = along - column * side
        const inY = v - row * side
        const away = Math.min(inX, side - inX, inY, side - inY)
        const own = ((column * 73 + row * 151) & 31) / 31 - 0.5
        if (away < line / 2) put(out, 1 + 0.06 * sampleTile(grain, u / 60, v / 60), grout)
        else
          put(
            out,
            (1 +
              deep * sampleTile(mottled, u / (2 * side) + own * 7, v / (2 * side)) +
              0.05 * own) *
              (away < line ? 0.93 : 1),
          )
      }
    }
    case 'dark': {
      const threads = seen(noiseTile(chance, 256, 80, 80, 3, 0.8), 200)
      const deep = chance.real(0.05, 0.3)
      return (x, y, out) =>
        put(
          out,
          1 +
            deep * sampleTile(threads, x / 200, y / 200) +
            0.1 * sampleTile(waves, x / 700, y / 700),
        )
    }
  }
}

/** One ground that ends along a line, `far` from the origin in a direction, and throws a shadow on another. */
export function edged(one: Ground, other: Ground, cos: number, sin: number, far: number): Ground {
  return (x, y, out) => {
    const beyond = x * cos + y * sin - far
    if (beyond < 0) {
      one(x, y, out)
      return
    }
    other(x, y, out)
    const dim = 1 - 0.65 * Math.exp(-beyond / 28)
    out[0]! *= dim
    out[1]! *= dim
    out[2]! *= dim
  }
}

function planks(
  chance: Chance,
  plain: readonly number[],
  seen: (tile: Tile, period: number) => Tile,
  cos: number,
  sin: number,
): Ground {
  const wide = chance.real(65, 190)
  const long = chance.real(500, 1500)
  const grain = seen(noiseTile(chance, 512, 4, 128, 4, 0.75), 600)
  const flow = noiseTile(chance, 256, 3, 6, 3)
  const deep = chance.real(0.1, 0.34)
  const vary = chance.real(0.05, 0.3)
  const gap = chance.real(0.6, 2.2)
  const tone = Float32Array.from({ length: 64 }, () => chance.real(-1, 1))
  return (x, y, out) => {
    const u = x * cos - y * sin
    const v = x * sin + y * cos
    const row = Math.floor(v / wide)
    const shifted = u + (((row * 37) & 15) / 16) * long
    const piece = Math.floor(shifted / long)
    const own = tone[(row * 29 + piece * 13) & 63]!
    const inY = v - row * wide
    const inX = shifted - piece * long
    const away = Math.min(inY, wide - inY, inX, long - inX)
    const bent = v + 9 * sampleTile(flow, u / 700 + own, v / 300)
    const fibre = sampleTile(grain, u / 1900 + own * 3, bent / 600 + own * 5)
    const gain = (1 + deep * fibre + vary * own) * (away < gap ? 0.35 : away < gap * 2.5 ? 0.88 : 1)
    out[0] = plain[0]! * gain
    out[1] = plain[1]! * gain * (1 + 0.04 * fibre)
    out[2] = plain[2]! * gain * (1 + 0.09 * fibre - 0.05 * own)
  }
}

/** Cloth that is not quite flat: its waves and creases as light and shade. */
function rumpled(
  chance: Chance,
  seen: (tile: Tile, period: number) => Tile,
  strength: number,
  paint: (x: number, y: number, out: Float32Array, gain: number) => void,
): Ground {
  const soft = noiseTile(chance, 256, 4, 4, 3, 0.5)
  const sharp = noiseTile(chance, 256, 5, 5, 3, 0.5)
  const side = 256
  const height = new Float32Array(side * side)
  for (let at = 0; at < height.length; at++)
    height[at] = 9 * soft.data[at]! + 4 * (1 - Math.abs(sharp.data[at]!)) ** 3
  const from = chance.real(0, 2 * Math.PI)
  const data = new Float32Array(side * side)
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const at = (row: number, column: number) =>
        height[(row & (side - 1)) * side + (column & (side - 1))]!
      const slopeX = at(y, x + 1) - at(y, x - 1)
      const slopeY = at(y + 1, x) - at(y - 1, x)
      data[y * side + x] = 0.16 * strength * (slopeX * Math.cos(from) + slopeY * Math.sin(from))
    }
  const shade = seen({ data, side }, 1500)
  return (x, y, out) => {
    const lit = Math.min(0.16, Math.max(-0.4, sampleTile(shade, x / 1500, y / 1500)))
    paint(x, y, out, 1 + lit)
  }
}

/** A mild pattern of a bed cover: quilting, dots, wide stripes or a check of near tones. */
function coverPattern(
  chance: Chance,
  colour: string,
  plain: readonly number[],
): (u: number, v: number) => readonly number[] {
  const other = lightOfHex(
    moved(colour, { l: chance.one([-1, 1]) * chance.real(5, 13), h: chance.real(-25, 25) }),
  )
  const both = plain.map((part, n) => (part + other[n]!) / 2)
  const step = chance.real(30, 140)
  const kind = chance.one(['dots', 'stripes', 'check', 'quilted', 'plain'] as const)
  const inside = (at: number) => ((at % step) + step) % step
  switch (kind) {
    case 'dots':
      return (u, v) => {
        const row = Math.floor(v / step)
        return Math.hypot(inside(u + (row & 1) * step * 0.5) - step / 2, inside(v) - step / 2) <
          step * 0.2
          ? other
          : plain
      }
    case 'stripes':
      return (u) => (inside(u) < step * 0.4 ? other : plain)
    case 'check':
      return (u, v) => {
        const one = inside(u) < step / 2
        const two = inside(v) < step / 2
        return one && two ? other : one || two ? both : plain
      }
    case 'quilted':
      return (u, v) => (Math.min(inside(u + v), inside(u - v)) < 3 ? other : plain)
    case 'plain':
      return () => plain
  }
}
