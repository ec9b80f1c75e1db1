import { median, type Picture } from './picture.ts'
import type { FoundLine } from './slabs.ts'

/** Lines so many times as long as high tell how a label is bent, if there are so many. */
const telling = { longerThanHigh: 2.5, lines: 3 }
/** A label is bent where its lines leave level by this share of their height. */
const bentFrom = 0.3
/** So many places are looked at along a line. */
const places = 16
/** So often lines are weighed anew by how unlike the others they run. */
const rounds = 8
/** A line so many times as far off as half of all counts half; and this is no distance at all, pixels. */
const unlike = { times: 2, pixels: 0.5 }
/** Share of all places that counts for a label that is not bent: few lines tell little. */
const flatness = 0.00004
/** Places beyond the words are bent no further than these, in halves of the picture. */
const reach = { across: 1.2, down: 1.5 }
/** Heights of a line that are left above and below the words. */
const margin = 1.5

/** How a label that hangs curled, or is seen askew, is bent: its lines as they would lie were it flat. */
export interface Bend {
  /** Rows of the flat picture: the first, and how many; pixels. */
  readonly top: number
  readonly height: number
  /** How far below row `y` of the flat picture its line lies at column `x` of the bent one, pixels. */
  readonly drop: (x: number, y: number) => number
}

/** A line as places from −1 to 1 across the picture, and how far down it lies at each, pixels. */
interface Spine {
  readonly across: readonly number[]
  readonly down: readonly number[]
}

/** A line, where it would lie in the middle column, −1 to 1 from the picture's top to its bottom, and what it counts. */
interface Placed {
  readonly spine: Spine
  readonly row: number
  readonly weight: number
}

/**
 * How the label on a level picture is bent, from its lines together: as they leave level alike, a short one is
 * laid right where it tells nothing itself. Null where they run level, or are too few to tell.
 */
export function bendOf(lines: readonly FoundLine[], picture: Picture): Bend | null {
  const half = picture.height / 2
  const spines = lines
    .filter(({ w, h }) => w >= telling.longerThanHigh * h)
    .map((line) => spineOf(line, picture.width))
    .filter(({ across }) => across.length > 1)
  if (spines.length < telling.lines) return null
  const by = fitted(spines, half)
  const drop = (x: number, y: number): number =>
    dropped(by, (2 * x) / picture.width - 1, (y - half) / half)
  const usual = median(lines.map(({ h }) => h))
  const rows = lines.map(({ x, y }) => flatRow(x, y, drop))
  const top = Math.floor(Math.min(...rows) - margin * usual)
  const height = Math.ceil(Math.max(...rows) + margin * usual) - top
  const isBent = lines.some(({ x, w }, n) =>
    [x - w / 2, x, x + w / 2].some((at) => Math.abs(drop(at, rows[n]!)) >= bentFrom * usual),
  )
  return isBent ? { top, height, drop } : null
}

/** The picture with its lines laid level. What lies beyond it is its edge going on. */
export function flattened(from: Picture, { top, height, drop }: Bend): Picture {
  const { width, data: source } = from
  const data = new Uint8Array(width * height * 3)
  const last = from.height - 1
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const wanted = row + top + drop(column + 0.5, row + top + 0.5)
      const y = Math.min(last, Math.max(0, wanted))
      const upper = Math.floor(y)
      const lower = Math.min(last, upper + 1)
      const part = y - upper
      const [a, b] = [(upper * width + column) * 3, (lower * width + column) * 3]
      const to = (row * width + column) * 3
      for (let channel = 0; channel < 3; channel += 1) {
        data[to + channel] = source[a + channel]! * (1 - part) + source[b + channel]! * part + 0.5
      }
    }
  }
  return { width, height, data }
}

/** The middle of a line at some places, its ends left out: letters there reach up or down alone. */
function spineOf({ spine, h }: FoundLine, width: number): Spine {
  const sorted = spine.toSorted((a, b) => a.x - b.x)
  const [from, to] = [sorted[0]!.x + h / 2, sorted.at(-1)!.x - h / 2]
  const inner = sorted.filter(({ x }) => x >= from && x <= to)
  const step = Math.max(1, Math.ceil(inner.length / places))
  const parts = Array.from({ length: Math.floor(inner.length / step) }, (_, n) =>
    inner.slice(n * step, (n + 1) * step),
  )
  return {
    across: parts.map((part) => (2 * mean(part.map(({ x }) => x))) / width - 1),
    down: parts.map((part) => mean(part.map(({ y }) => y))),
  }
}

/** What a line's drop is made of, at a place across and a row down: slope, curl and swing, and how these change. */
const terms = (t: number, s: number): readonly number[] => [
  t,
  t * s,
  t * s ** 2,
  t ** 2,
  t ** 2 * s,
  t ** 3,
  t ** 3 * s,
]

const within = (most: number, value: number): number => Math.max(-most, Math.min(most, value))

function dropped(by: readonly number[], across: number, row: number): number {
  const [t, s] = [within(reach.across, across), within(reach.down, row)]
  return terms(t, s).reduce((sum, term, n) => sum + term * by[n]!, 0)
}

/** The row of the flat picture where a line lies that lies at `x` and `y` of the bent one. */
function flatRow(x: number, y: number, drop: Bend['drop']): number {
  let row = y
  for (let n = 0; n < 5; n += 1) row = y - drop(x, row)
  return row
}

/** Lines that run unlike the others count less (least squares weighed anew, with Cauchy's weights). */
function fitted(spines: readonly Spine[], half: number): readonly number[] {
  let placed = spines.map(
    (spine): Placed => ({ spine, row: mean(spine.down) / half - 1, weight: 1 }),
  )
  let by = leastSquares(placed)
  for (let round = 1; round < rounds; round += 1) {
    const rests = placed.map(({ spine, row }) =>
      spine.down.map((y, n) => y - dropped(by, spine.across[n]!, row)),
    )
    const off = rests.map(spreadOf)
    const usual = unlike.times * median(off) + unlike.pixels
    placed = placed.map(({ spine }, n) => ({
      spine,
      row: mean(rests[n]!) / half - 1,
      weight: 1 / (1 + (off[n]! / usual) ** 2),
    }))
    by = leastSquares(placed)
  }
  return by
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

function spreadOf(values: readonly number[]): number {
  const middle = mean(values)
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)))
}

/** The drops that are nearest to all lines, wherever each line itself lies (ordinary ridge regression). */
function leastSquares(placed: readonly Placed[]): readonly number[] {
  const count = terms(0, 0).length
  const sums = Array.from({ length: count }, () => new Array<number>(count + 1).fill(0))
  let total = 0
  for (const { spine, row, weight } of placed) {
    const rows = spine.across.map((t) => [...terms(t, row)])
    const middle = Array.from({ length: count }, (_, i) => mean(rows.map((one) => one[i]!)))
    const level = mean(spine.down)
    for (const [n, one] of rows.entries()) {
      const part = [...one.map((value, i) => value - middle[i]!), spine.down[n]! - level]
      for (let i = 0; i < count; i += 1)
        for (let j = 0; j <= count; j += 1) sums[i]![j]! += weight * part[i]! * part[j]!
    }
    total += weight * rows.length
  }
  for (let i = 0; i < count; i += 1) sums[i]![i]! += flatness * total
  return solved(sums)
}

/** Solves linear equations, each row the factors and the value, by Gauss and Jordan; none is singular here. */
function solved(equations: readonly (readonly number[])[]): readonly number[] {
  const rows = equations.map((row) => [...row])
  for (let i = 0; i < rows.length; i += 1) {
    for (let other = 0; other < rows.length; other += 1) {
      if (other === i) continue
      const times = rows[other]![i]! / rows[i]![i]!
      for (let j = i; j < rows[i]!.length; j += 1) rows[other]![j]! -= times * rows[i]![j]!
    }
  }
  return rows.map((row, i) => row.at(-1)! / row[i]!)
}
