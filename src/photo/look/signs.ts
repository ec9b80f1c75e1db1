import { barriers, crossings, filled } from './barrier.ts'
import type { Clusters } from './clusters.ts'
import type { Ground } from './ground.ts'
import { blurred, halvedPlane, type LabPlanes, type Plane, steepness } from './planes.ts'

/** What tells garment from ground, pixel by pixel: so many numbers for each, one pixel's after another's. */
export interface Signs {
  readonly count: number
  readonly data: Float32Array
}

export const firstCount = 20

/** What the picture at half its size and its rim alone tell of each pixel of that; `whole` is the picture. */
export function firstSigns(whole: LabPlanes, planes: LabPlanes, ground: Ground): Signs {
  const { width, height } = planes
  const size = width * height
  const shorter = Math.min(width, height)
  const wide = Math.max(2, Math.round(shorter / 40))
  const smooth = {
    l: blurred({ width, height, data: planes.l }, 1),
    a: blurred({ width, height, data: planes.a }, 1),
    b: blurred({ width, height, data: planes.b }, 1),
  }
  const barrier = {
    l: barriers(smooth.l, ground.seeds),
    a: barriers(smooth.a, ground.seeds),
    b: barriers(smooth.b, ground.seeds),
  }
  const rough = roughness({ width, height, data: planes.l }, 2)
  const far = roughness(smooth.l, 2 * wide)
  const usual = usualOf(rough, ground.seeds)
  const weave = halvedPlane({
    width: whole.width,
    height: whole.height,
    data: roughness({ width: whole.width, height: whole.height, data: whole.l }, 1),
  })
  const weaves = blurred(weave, wide >> 1).data
  const usualWeave = usualOf(weave.data, ground.seeds)
  const steep = halvedPlane({ width: whole.width, height: whole.height, data: steepness(whole) })
  const flat = usualOf(steep.data, ground.seeds)
  const steps = steep.data.map((one) => Math.max(0, one / (flat + 0.3) - 1.5))
  const crossed = crossings({ width, height, data: steps }, ground.seeds)
  const inward = inwardOf(ground.clusters, ground.inward)
  const broad = blurred({ width, height, data: inward }, wide)
  const [sl, sab] = [1.5 + ground.spread.l, 1.5 + ground.spread.ab]
  const data = new Float32Array(size * firstCount)
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      const dl = smooth.l.data[at]! - ground.surface.l(x, y)
      const da = smooth.a.data[at]! - ground.surface.a(x, y)
      const db = smooth.b.data[at]! - ground.surface.b(x, y)
      const dab = Math.hypot(da, db)
      const bab = barrier.a[at]! + barrier.b[at]!
      let to = at * firstCount
      data[to++] = inward[at]!
      data[to++] = broad.data[at]!
      data[to++] = Math.log1p(Math.abs(dl) / sl)
      data[to++] = Math.log1p(dab / sab)
      data[to++] = Math.log1p(Math.abs(dl))
      data[to++] = Math.log1p(dab)
      data[to++] = dl / 30
      data[to++] = Math.log1p(barrier.l[at]! / sl)
      data[to++] = Math.log1p(bab / sab)
      data[to++] = Math.log1p(barrier.l[at]!)
      data[to++] = Math.log1p(bab)
      data[to++] = Math.log((rough[at]! + 0.5) / (usual + 0.5))
      data[to++] = Math.log(far[at]! + 0.5)
      data[to++] = Math.log((weave.data[at]! + 0.3) / (usualWeave + 0.3))
      data[to++] = Math.log((weaves[at]! + 0.3) / (usualWeave + 0.3))
      data[to++] = Math.log1p(crossed[at]!)
      data[to++] = Math.log1p(steps[at]!)
      data[to++] = ((x - width / 2) / width) ** 2
      data[to++] = ((y - height / 2) / height) ** 2
      data[to++] = Math.min(x, y, width - 1 - x, height - 1 - y) / shorter
    }
  }
  return { count: firstCount, data }
}

/** How much the values differ within `radius`: their standard deviation. */
function roughness(plane: Plane, radius: number): Float32Array {
  const { width, height, data } = plane
  const mean = blurred(plane, radius).data
  const squares = new Float32Array(data.length)
  for (let at = 0; at < data.length; at += 1) squares[at] = data[at]! * data[at]!
  const rough = blurred({ width, height, data: squares }, radius).data
  for (let at = 0; at < rough.length; at += 1) {
    rough[at] = Math.sqrt(Math.max(0, rough[at]! - mean[at]! * mean[at]!))
  }
  return rough
}

function usualOf(values: Float32Array, seeds: Uint8Array): number {
  const seen = values.filter((_, at) => seeds[at] === 1).sort()
  return seen[seen.length >> 1] ?? 0
}

function inwardOf({ of }: Clusters, inward: Float32Array): Float32Array {
  const out = new Float32Array(of.length)
  for (let at = 0; at < of.length; at += 1) out[at] = inward[of[at]!]!
  return out
}

export const laterCount = firstCount + 16

/** The same with what a first guess tells: `inside` is how likely each pixel lies in the garment, 0 to 1. */
export function laterSigns(
  planes: LabPlanes,
  ground: Ground,
  first: Signs,
  inside: Float32Array,
): Signs {
  const { width, height } = planes
  const shorter = Math.min(width, height)
  const guess: Plane = { width, height, data: inside }
  const near = blurred(guess, 2).data
  const wide = blurred(blurred(guess, Math.round(shorter / 24)), Math.round(shorter / 24)).data
  const likelier = inwardOf(
    ground.clusters,
    likelihoods(ground.clusters, inside, ground.clusters.centres.length),
  )
  const broad = blurred({ width, height, data: likelier }, 2).data
  const closed = filled({ width, height, data: near })
  const around = aroundOf(inside, width, height)
  const reach = Math.round(shorter / 7)
  const garment = nearby(planes, inside, reach)
  const open = inside.slice()
  for (let at = 0; at < open.length; at += 1) open[at] = 1 - inside[at]!
  const floor = nearby(planes, open, reach)
  const data = new Float32Array(width * height * laterCount)
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      const to = at * laterCount
      for (let n = 0; n < firstCount; n += 1) data[to + n] = first.data[at * firstCount + n]!
      const dx = (x - around.x) / around.sx
      const dy = (y - around.y) / around.sy
      const mirrored = Math.round(2 * around.x - x)
      data[to + firstCount] = inside[at]!
      data[to + firstCount + 1] = near[at]!
      data[to + firstCount + 2] = wide[at]!
      data[to + firstCount + 3] = likelier[at]!
      data[to + firstCount + 4] = broad[at]!
      data[to + firstCount + 5] = Math.sqrt(dx * dx + dy * dy)
      data[to + firstCount + 6] =
        mirrored < 0 || mirrored >= width ? near[at]! : near[y * width + mirrored]!
      const [gl, gab] = apartFrom(planes, garment, at)
      const [fl, fab] = apartFrom(planes, floor, at)
      data[to + firstCount + 7] = Math.log1p(gl)
      data[to + firstCount + 8] = Math.log1p(gab)
      data[to + firstCount + 9] = Math.log1p(fl)
      data[to + firstCount + 10] = Math.log1p(fab)
      data[to + firstCount + 11] = Math.log(
        (gl * gl + gab * gab + 0.2) / (fl * fl + fab * fab + 0.2),
      )
      data[to + firstCount + 12] = Math.log1p(Math.abs(planes.l[at]! - floor.l[at]!))
      data[to + firstCount + 13] = Math.log1p(
        Math.hypot(planes.a[at]! - floor.a[at]!, planes.b[at]! - floor.b[at]!),
      )
      data[to + firstCount + 15] = closed[at]!
      data[to + firstCount + 14] = Math.log(garment.weight[at]! + 0.02)
    }
  }
  return { count: laterCount, data }
}

/** The colours of the pixels near each that count, with how they stray: what light and pattern make there. */
interface Nearby {
  readonly l: Float32Array
  readonly a: Float32Array
  readonly b: Float32Array
  readonly strayL: Float32Array
  readonly strayAb: Float32Array
  readonly weight: Float32Array
}

function nearby(
  { width, height, l, a, b }: LabPlanes,
  counts: Float32Array,
  reach: number,
): Nearby {
  const wide = (data: Float32Array): Float32Array =>
    blurred(blurred({ width, height, data }, reach), reach >> 1).data
  const size = width * height
  const weight = wide(counts)
  // Where none is near, those of the whole picture stand in.
  const whole = counts.reduce((sum, one) => sum + one, 1e-6)
  const sums = [l, a, b].map((plane) => {
    const product = new Float32Array(size)
    let [sum, squares] = [0, 0]
    for (let at = 0; at < size; at += 1) {
      product[at] = plane[at]! * counts[at]!
      sum += product[at]!
      squares += product[at]! * plane[at]!
    }
    const mean = wide(product)
    for (let at = 0; at < size; at += 1) product[at] = plane[at]! * plane[at]! * counts[at]!
    const square = wide(product)
    const few = 0.01
    for (let at = 0; at < size; at += 1) {
      const count = weight[at]! + few
      mean[at] = (mean[at]! + (few * sum) / whole) / count
      square[at] = Math.max(0, (square[at]! + (few * squares) / whole) / count - mean[at]! ** 2)
    }
    return { mean, square }
  })
  const [sl, sa, sb] = sums as [Spread, Spread, Spread]
  const strayL = sl.square
  const strayAb = sa.square
  for (let at = 0; at < size; at += 1) {
    strayL[at] = Math.sqrt(sl.square[at]!)
    strayAb[at] = Math.sqrt(sa.square[at]! + sb.square[at]!)
  }
  return { l: sl.mean, a: sa.mean, b: sb.mean, strayL, strayAb, weight }
}

interface Spread {
  readonly mean: Float32Array
  readonly square: Float32Array
}

/** How far a pixel is from what is near it, in how that strays: in lightness, and in colour. */
function apartFrom(
  { l, a, b }: LabPlanes,
  near: Nearby,
  at: number,
): [light: number, colour: number] {
  return [
    Math.abs(l[at]! - near.l[at]!) / (near.strayL[at]! + 1.5),
    Math.hypot(a[at]! - near.a[at]!, b[at]! - near.b[at]!) / (near.strayAb[at]! + 1.5),
  ]
}

/** For each cluster how much likelier it is inside than outside (logarithm). */
function likelihoods({ of }: Clusters, inside: Float32Array, count: number): Float32Array {
  const within = new Float64Array(count)
  const without = new Float64Array(count)
  for (let at = 0; at < of.length; at += 1) {
    within[of[at]!]! += inside[at]!
    without[of[at]!]! += 1 - inside[at]!
  }
  const [ins, outs] = [within, without].map((all) => all.reduce((sum, one) => sum + one, 0))
  return Float32Array.from(within, (one, n) =>
    Math.log((one / (ins! + 1) + 0.002) / (without[n]! / (outs! + 1) + 0.002)),
  )
}

/** Where the guessed garment lies: its middle and how far it spreads. */
function aroundOf(inside: Float32Array, width: number, height: number) {
  let [sum, mx, my, sxx, syy] = [1e-6, 0, 0, 0, 0]
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      const weight = inside[at]! ** 2
      sum += weight
      mx += weight * x
      my += weight * y
      sxx += weight * x * x
      syy += weight * y * y
    }
  }
  const [x, y] = [mx / sum, my / sum]
  return {
    x,
    y,
    sx: Math.sqrt(Math.max(sxx / sum - x * x, 1)),
    sy: Math.sqrt(Math.max(syy / sum - y * y, 1)),
  }
}
