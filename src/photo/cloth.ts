import { hexOf, type Light, labOf, lightOfCode } from '../base/colour.ts'
import { type Figure, practice } from '../base/figure.ts'

/** An upright picture in sRGB, row by row, `channels` bytes for a pixel: one is grey, three are colour. */
export interface Pixels {
  readonly data: Uint8Array
  readonly width: number
  readonly height: number
  readonly channels: 1 | 2 | 3 | 4
}

export interface Square {
  readonly left: number
  readonly top: number
  readonly side: number
}

/** The colours of a garment's cloth, `#rrggbb`. */
export interface SeenCloth {
  /** What it comes to from afar: the mean of its light. */
  readonly mean: string
  /** One to three, the largest first; shares from 0 to 1, which may leave a little out. */
  readonly main: readonly { readonly colour: string; readonly share: number }[]
}

/** The square that is taken for cloth, of a picture's shorter side. */
const part = 0.36

/** Least share of a main colour, and how far apart two are in CIELAB. */
const least = { share: 0.08, apart: 15 }

export const clothFigures: readonly Figure[] = [
  { figure: "cloth/square, of a photo's shorter side", value: part, source: practice },
  { figure: 'cloth/least share of a main colour', value: least.share, source: practice },
  { figure: 'cloth/main colours apart in CIELAB', value: least.apart, source: practice },
]

const most = 3
const rounds = 12

/**
 * Where a photo of a garment shows its cloth, and in which colours: the middle, as a garment that is
 * laid out fills its photo. Pure: the same pixels give the same colours.
 */
export function clothIn(pixels: Pixels): { readonly square: Square; readonly seen: SeenCloth } {
  const { width, height } = pixels
  const side = Math.max(1, Math.round(part * Math.min(width, height)))
  const square = {
    left: Math.floor((width - side) / 2),
    top: Math.floor((height - side) / 2),
    side,
  }
  const heaps = heapsOf(pixels, square)
  return { square, seen: { mean: hexOf(mean(heaps)), main: mainOf(heaps) } }
}

/** Pixels of about one colour: their light added up, and the colour it comes to. */
interface Heap {
  readonly count: number
  readonly r: number
  readonly g: number
  readonly b: number
}

/** Every pixel of the square counts, so that no stripe falls between those that are looked at. */
function heapsOf({ data, width, channels }: Pixels, { left, top, side }: Square): Heap[] {
  // Four numbers for each of 16 steps of red, of green and of blue: a photo has a million pixels.
  const sums = new Float64Array(4 * 16 ** 3)
  const [green, blue] = channels < 3 ? [0, 0] : [1, 2]
  for (let y = top; y < top + side; y += 1) {
    const row = y * width
    for (let x = left; x < left + side; x += 1) {
      const at = (row + x) * channels
      const r = data[at]!
      const g = data[at + green]!
      const b = data[at + blue]!
      const heap = 4 * (((r >> 4) << 8) | ((g >> 4) << 4) | (b >> 4))
      sums[heap]! += 1
      sums[heap + 1]! += lightOfCode[r]!
      sums[heap + 2]! += lightOfCode[g]!
      sums[heap + 3]! += lightOfCode[b]!
    }
  }
  const heaps = Array.from({ length: sums.length / 4 }, (_, n): Heap => {
    const [count, r, g, b] = sums.subarray(4 * n, 4 * n + 4)
    return { count: count!, r: r!, g: g!, b: b! }
  })
  return heaps.filter(({ count }) => count > 0)
}

const countOf = (heaps: readonly Heap[]): number => heaps.reduce((sum, { count }) => sum + count, 0)

function mean(heaps: readonly Heap[]): Light {
  const count = countOf(heaps)
  const of = (name: 'r' | 'g' | 'b') => heaps.reduce((sum, heap) => sum + heap[name], 0) / count
  return [of('r'), of('g'), of('b')]
}

type Point = readonly [l: number, a: number, b: number]

function pointOf(heaps: readonly Heap[]): Point {
  const { l, a, b } = labOf(hexOf(mean(heaps)))
  return [l, a, b]
}

const apart = (one: Point, other: Point): number =>
  Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2])

interface Placed {
  readonly heap: Heap
  readonly at: Point
}

/** The heaps by their nearest centre; a centre that is nearest to none is left out. */
function gather(placed: readonly Placed[], centres: readonly Point[]): Heap[][] {
  const groups = centres.map((): Heap[] => [])
  for (const { heap, at } of placed) {
    const away = centres.map((centre) => apart(centre, at))
    groups[away.indexOf(Math.min(...away))]!.push(heap)
  }
  return groups.filter((group) => group.length > 0)
}

/** Begins with the largest heap, then with what is most and furthest from those before: no chance in it. */
function firstCentres(placed: readonly Placed[]): Point[] {
  const centres: Point[] = []
  while (centres.length < Math.min(most, placed.length)) {
    const weight = ({ heap, at }: Placed) =>
      heap.count * Math.min(1e9, ...centres.map((centre) => apart(centre, at) ** 2))
    centres.push(placed.reduce((best, one) => (weight(one) > weight(best) ? one : best)).at)
  }
  return centres
}

/** Joins the two nearest groups until all are far enough apart. */
function joined(groups: readonly Heap[][]): readonly Heap[][] {
  const points = groups.map(pointOf)
  const pairs = groups.flatMap((_, j) =>
    groups.slice(0, j).map((__, i) => ({ i, j, away: apart(points[i]!, points[j]!) })),
  )
  const [near] = pairs.sort((a, b) => a.away - b.away)
  if (!near || near.away >= least.apart) return groups
  const rest = groups.filter((_, at) => at !== near.i && at !== near.j)
  return joined([...rest, [...groups[near.i]!, ...groups[near.j]!]])
}

function mainOf(heaps: readonly Heap[]): SeenCloth['main'] {
  const placed = heaps.map((heap) => ({ heap, at: pointOf([heap]) }))
  let groups = gather(placed, firstCentres(placed))
  for (let round = 0; round < rounds; round += 1) groups = gather(placed, groups.map(pointOf))
  const whole = countOf(heaps)
  return joined(groups)
    .map((group) => ({
      colour: hexOf(mean(group)),
      share: Math.round((countOf(group) / whole) * 1000) / 1000,
    }))
    .filter(({ share }) => share >= least.share)
    .sort((a, b) => b.share - a.share)
}
