import type { LabPlanes } from './planes.ts'

/** Colours of a picture gathered into few: `of` names for each pixel the nearest centre. */
export interface Clusters {
  readonly of: Uint8Array
  readonly centres: readonly Centre[]
}

export interface Centre {
  readonly l: number
  readonly a: number
  readonly b: number
  /** Weight of the pixels it stands for. */
  readonly count: number
}

/** Side of a bin in CIELAB, and bins along L, and along a and b, from −128 on. */
const side = 4
const [along, across] = [26, 64]

interface Bin extends Centre {
  readonly cell: number
}

/**
 * Gathers the colours of a picture into `most` at most, by k-means over bins of about one colour. `weight`
 * says how much each pixel counts; without it all count the same. No chance in it.
 */
export function clustersOf(
  planes: LabPlanes,
  most: number,
  { rounds = 8, weight }: { rounds?: number; weight?: Float32Array | Uint8Array } = {},
): Clusters {
  const size = planes.width * planes.height
  const cells = new Int32Array(size)
  const bins = binsOf(planes, cells, weight)
  let centres: Centre[] = firstCentres(bins, most)
  for (let round = 0; round < rounds; round += 1) {
    centres = gathered(bins, nearestOf(bins, centres), centres.length)
  }
  const ofCell = new Uint8Array(along * across * across)
  const nearest = nearestOf(bins, centres)
  for (const [n, { cell }] of bins.entries()) ofCell[cell] = nearest[n]!
  const of = new Uint8Array(size)
  for (let at = 0; at < size; at += 1) of[at] = ofCell[cells[at]!]!
  return { of, centres }
}

function binsOf(
  { l, a, b }: LabPlanes,
  cells: Int32Array,
  weight?: Float32Array | Uint8Array,
): Bin[] {
  const sums = new Float64Array(4 * along * across * across)
  const seen = new Uint8Array(along * across * across)
  const used: number[] = []
  for (let at = 0; at < cells.length; at += 1) {
    const cell =
      ((l[at]! / side) | 0) * across * across +
      (((a[at]! + 128) / side) | 0) * across +
      (((b[at]! + 128) / side) | 0)
    cells[at] = cell
    if (!seen[cell]) {
      seen[cell] = 1
      used.push(cell)
    }
    // A pixel that does not count still has a colour, so that it finds a centre.
    const counts = weight ? weight[at]! + 1e-6 : 1
    sums[4 * cell]! += counts
    sums[4 * cell + 1]! += counts * l[at]!
    sums[4 * cell + 2]! += counts * a[at]!
    sums[4 * cell + 3]! += counts * b[at]!
  }
  return used.map((cell) => {
    const count = sums[4 * cell]!
    return {
      cell,
      count,
      l: sums[4 * cell + 1]! / count,
      a: sums[4 * cell + 2]! / count,
      b: sums[4 * cell + 3]! / count,
    }
  })
}

const away = (one: Centre, other: Centre): number =>
  (one.l - other.l) ** 2 + (one.a - other.a) ** 2 + (one.b - other.b) ** 2

/** Begins with the heaviest bin, then with what is most and furthest from those before. */
function firstCentres(bins: readonly Bin[], most: number): Centre[] {
  const least = new Float64Array(bins.length).fill(1e9)
  const centres: Centre[] = []
  while (centres.length < Math.min(most, bins.length)) {
    let [best, heaviest] = [0, -1]
    for (const [n, bin] of bins.entries()) {
      const weight = bin.count * Math.min(least[n]!, 900)
      if (weight > heaviest) [best, heaviest] = [n, weight]
    }
    if (heaviest <= 0) break
    const next = bins[best]!
    centres.push(next)
    for (const [n, bin] of bins.entries()) least[n] = Math.min(least[n]!, away(bin, next))
  }
  return centres
}

function nearestOf(bins: readonly Bin[], centres: readonly Centre[]): Uint8Array {
  return Uint8Array.from(bins, (bin) => {
    let [best, least] = [0, Infinity]
    for (let n = 0; n < centres.length; n += 1) {
      const apart = away(bin, centres[n]!)
      if (apart < least) [best, least] = [n, apart]
    }
    return best
  })
}

function gathered(bins: readonly Bin[], nearest: Uint8Array, groups: number): Centre[] {
  const sums = Array.from({ length: groups }, () => ({ count: 0, l: 0, a: 0, b: 0 }))
  for (const [n, { count, l, a, b }] of bins.entries()) {
    const sum = sums[nearest[n]!]!
    sum.count += count
    sum.l += count * l
    sum.a += count * a
    sum.b += count * b
  }
  return sums
    .filter(({ count }) => count > 0)
    .map(({ count, l, a, b }) => ({ count, l: l / count, a: a / count, b: b / count }))
}
