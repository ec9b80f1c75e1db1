import type { Base } from './base.ts'
import { clustersOf } from './clusters.ts'
import { type Group, groupCount, groupsOf, mainPass } from './groups.ts'
import { blurred, type LabPlanes, marked } from './planes.ts'
import { type Window, windowsOf } from './stripes.ts'

/** Where a straightened garment differs from its base. */
export interface Print {
  readonly width: number
  readonly height: number
  /** How strongly, in steps of what folds and weave would make: print from 1 on. */
  readonly strength: Float32Array
  readonly map: Uint8Array
  readonly groups: readonly Group[]
}

/** Least differences that are taken for print: lightness, colour; and so many spreads of the cloth's own. */
const least = { l: 7, ab: 4.5 }
const spreads = 3

export function printOf(planes: LabPlanes, base: Base): Print {
  const { width, height } = planes
  const size = width * height
  const own = Math.hypot(base.a.spread, base.b.spread)
  const tell = {
    l: Math.max(least.l, Math.min(2 * least.l, spreads * base.l.spread)),
    ab: Math.max(least.ab, Math.min(2 * least.ab, spreads * own)),
  }
  const raw = new Float32Array(size)
  for (let at = 0; at < size; at += 1) {
    if (!base.inner[at]) continue
    const light = base.offL[at]! / tell.l
    const colour = (base.offA[at]! ** 2 + base.offB[at]! ** 2) / tell.ab ** 2
    raw[at] = Math.sqrt(colour + light * light)
  }
  const strength = blurred({ width, height, data: raw }, 1).data
  const map = marked(size, (at) => strength[at]! > 1 && base.inner[at] === 1)
  return { width, height, strength, map, groups: groupsOf({ planes, base, strength }) }
}

const cells = 10
/** Windows along the longer side: large ones see wide stripes, small ones fine checks that folds have bent. */
const windowsAcross = [5, 9] as const

/** What tells a print's class, but for its groups: numbers for the net, in a fixed order. */
export function clothSigns(planes: LabPlanes, base: Base, print: Print): number[] {
  const { width, height } = planes
  const area = Math.max(
    1,
    base.inner.reduce((sum, one) => sum + one, 0),
  )
  return [
    ...sharesOff(base, area),
    Math.log(base.l.spread + 0.3),
    Math.log(Math.hypot(base.a.spread, base.b.spread) + 0.3),
    ...spreadSigns(print, base, area),
    ...cellSigns(planes, base, print),
    ...colourSigns(planes, base),
    ...windowsAcross.flatMap((count) =>
      windowSigns(
        windowsOf(
          { width, height, planes: [base.offL, base.offA, base.offB] },
          base.inner,
          Math.round(Math.max(width, height) / count),
        ),
      ),
    ),
    Math.log(width / height),
  ]
}

const quantiles = (values: readonly number[], shares: readonly number[]): number[] => {
  const sorted = values.toSorted((a, b) => a - b)
  return shares.map((share) => sorted[Math.round(share * (sorted.length - 1))] ?? 0)
}

function sharesOff(base: Base, area: number): number[] {
  const counts = new Float64Array(8)
  for (let at = 0; at < base.inner.length; at += 1) {
    if (!base.inner[at]) continue
    const colour = Math.hypot(base.offA[at]!, base.offB[at]!)
    const light = Math.abs(base.offL[at]!)
    for (let n = 0; n < 4; n += 1) {
      if (colour > [5, 9, 15, 25][n]!) counts[n]! += 1
      if (light > [6, 10, 16, 26][n]!) counts[4 + n]! += 1
    }
  }
  return [...counts].map((count) => Math.sqrt(count / area))
}

/** Where the print's mass lies in the garment, how far it spreads, and how like its own mirror picture it is. */
function spreadSigns(
  { width, height, strength, map }: Print,
  { inner }: Base,
  area: number,
): number[] {
  let [mass, mx, my, sxx, syy, mirrored, count] = [1e-6, 0, 0, 0, 0, 0, 0]
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      if (!map[at]) continue
      const weight = Math.min(3, strength[at]!)
      const [u, v] = [x / width - 0.5, y / height - 0.5]
      mass += weight
      mx += weight * u
      my += weight * v
      sxx += weight * u * u
      syy += weight * v * v
      count += 1
      mirrored += map[y * width + width - 1 - x]!
    }
  }
  const [u, v] = [mx / mass, my / mass]
  let [ix, iy] = [0, 0]
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      if (!inner[at]) continue
      ix += (x / width - 0.5) ** 2
      iy += (y / height - 0.5) ** 2
    }
  }
  return [
    Math.abs(u),
    v,
    Math.sqrt(sxx / mass - u * u) / Math.sqrt(ix / area),
    Math.sqrt(syy / mass - v * v) / Math.sqrt(iy / area),
    mirrored / Math.max(1, count),
    Math.sqrt(count / area),
  ]
}

/** How print and edges are dealt out over the cells of a grid. */
function cellSigns({ width, height, l, a, b }: LabPlanes, base: Base, print: Print): number[] {
  const inside = new Float64Array(cells * cells)
  const printed = new Float64Array(cells * cells)
  const edges = new Float64Array(cells * cells)
  const fine = new Float64Array(cells * cells)
  const smooth = [l, a, b].map((data) => blurred({ width, height, data }, 1).data)
  for (let y = 1; y < height - 1; y += 1) {
    const row = Math.floor((y * cells) / height) * cells
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x
      if (!base.inner[at]) continue
      const cell = row + Math.floor((x * cells) / width)
      inside[cell]! += 1
      printed[cell]! += print.map[at]!
      let steep = 0
      for (const plane of smooth) {
        steep +=
          (plane[at + 1]! - plane[at - 1]!) ** 2 + (plane[at + width]! - plane[at - width]!) ** 2
      }
      if (steep > 36) edges[cell]! += 1
      if (steep > 200) fine[cell]! += 1
    }
  }
  const whole = (width * height) / cells ** 2
  const counted = [...inside.keys()].filter((cell) => inside[cell]! > whole * 0.4)
  const of = (sums: Float64Array) => counted.map((cell) => Math.sqrt(sums[cell]! / inside[cell]!))
  const shares = of(printed)
  const [steep, steeper] = [of(edges), of(fine)]
  const some = (values: readonly number[], more: number): number =>
    values.filter((one) => one > more).length / Math.max(1, values.length)
  return [
    ...quantiles(shares, [0.1, 0.25, 0.5, 0.75, 0.9, 1]),
    some(shares, 0.14),
    some(shares, 0.32),
    some(shares, 0.55),
    ...quantiles(steep, [0.1, 0.25, 0.5, 0.75, 0.9, 1]),
    ...quantiles(steeper, [0.1, 0.25, 0.5, 0.75, 0.9, 1]),
    some(steep, 0.2),
    some(steeper, 0.2),
  ]
}

/** What its groups tell. `pictures`: how likely each is one picture, 0 to 1; `area`: the garment's inner pixels. */
export function groupSigns(
  all: readonly Pick<Group, 'area' | 'mass' | 'pass' | 'signs'>[],
  area: number,
  pictures: ArrayLike<number>,
): number[] {
  const middle = all.filter(({ pass }) => pass === mainPass)
  const whole = middle.reduce((sum, { mass }) => sum + mass, 1e-6)
  const first = middle[0]
  const large = middle.filter(({ mass }) => first && mass > first.mass / 8)
  const ranks = all.map((_, n) => n).sort((a, b) => pictures[b]! - pictures[a]!)
  const best = all[ranks[0]!]
  const likely = (share: number | undefined): number =>
    Math.log(((share ?? 0) + 1e-3) / (1.001 - (share ?? 0)))
  return [
    Math.log1p(middle.length),
    Math.log1p(large.length),
    first ? first.mass / whole : 0,
    first ? Math.sqrt(first.area / area) : 0,
    Math.log(
      quantiles(
        middle.map((group) => group.area / area),
        [0.5],
      )[0]! + 1e-4,
    ),
    middle.slice(0, 5).reduce((sum, { mass }) => sum + mass, 0) / whole,
    likely(pictures[ranks[0]!]),
    likely(pictures[ranks[1]!]),
    ...(best?.signs ?? noSigns),
  ]
}

const noSigns = new Array<number>(groupCount).fill(0)

function colourSigns(planes: LabPlanes, { inner }: Base): number[] {
  const { centres } = clustersOf(planes, 8, { weight: inner })
  const whole = centres.reduce((sum, { count }) => sum + count, 0)
  const shares = centres.map(({ count }) => count / whole).sort((a, b) => b - a)
  const told = shares.reduce((sum, share) => sum - share * Math.log(share + 1e-9), 0)
  return [shares[0] ?? 0, shares[1] ?? 0, shares[2] ?? 0, shares[3] ?? 0, told]
}

function windowSigns(windows: readonly Window[]): number[] {
  const parts = [0.25, 0.5, 0.75]
  const weights = windows.map(({ busy }) => busy * busy + 0.1)
  const whole = weights.reduce((sum, one) => sum + one, 0)
  const mean = (of: (window: Window) => number): number =>
    windows.reduce((sum, window, n) => sum + weights[n]! * of(window), 0) / Math.max(1e-6, whole)
  const busy = windows.map((window) => Math.log(window.busy + 0.5))
  return [
    ...quantiles(busy, [0.1, ...parts, 0.9]),
    ...quantiles(
      windows.map(({ along }) => along),
      parts,
    ),
    ...quantiles(
      windows.map(({ across }) => across),
      parts,
    ),
    ...quantiles(
      windows.map(({ along, across }) => along + across),
      [0.1, ...parts],
    ),
    ...quantiles(
      windows.map(({ square }) => square),
      parts,
    ),
    ...quantiles(
      windows.map(({ repeats }) => repeats),
      parts,
    ),
    mean(({ along }) => along),
    mean(({ across }) => across),
    mean(({ square }) => square),
    mean(({ repeats }) => repeats),
    Math.hypot(
      mean(({ turn }) => Math.cos(4 * turn)),
      mean(({ turn }) => Math.sin(4 * turn)),
    ),
    Math.log1p(windows.length),
  ]
}
