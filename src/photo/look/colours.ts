import { hexOfLab } from '../../base/colour.ts'
import type { Base } from './base.ts'
import { type Centre, clustersOf } from './clusters.ts'
import type { SeenColour } from './looked.ts'
import { type LabPlanes, quantile, steepness } from './planes.ts'

const most = 5
/** Colours nearer than this are one: folds and weave make lightness differ more than colour. */
const apart = 9
const lightness = 0.6
/** Less of the garment is no colour of its own. */
const least = 0.03
/** Steeper, a pixel is between two colours. */
const steep = 4
const seen = 4000

/** The colours of a straightened garment as they are photographed: medians, so that no shadow colours them. */
export function coloursOf(planes: LabPlanes, mask: Uint8Array, base: Base): SeenColour[] {
  const { width, height } = planes
  const [l, a, b] = [base.l, base.a, base.b].map(({ at }) => at(width / 2, height / 2))
  const even: LabPlanes = {
    width,
    height,
    l: shifted(base.offL, l!, 0, 100),
    a: shifted(base.offA, a!, -127, 127),
    b: shifted(base.offB, b!, -127, 127),
  }
  const edges = steepness(planes)
  const weight = new Float32Array(mask.length)
  for (let at = 0; at < mask.length; at += 1) {
    if (mask[at]) weight[at] = (base.inner[at] ? 1 : 0.3) * (edges[at]! > steep ? 0.1 : 1)
  }
  const { of, centres } = clustersOf(even, 12, { weight })
  const groups = joined(centres)
  const whole = groups.reduce((sum, { count }) => sum + count, 0)
  return groups
    .map((group) => ({ ...group, share: group.count / whole }))
    .filter(({ share }) => share >= least)
    .sort((one, other) => other.count - one.count)
    .slice(0, most)
    .map(({ share, members }) => seenColour(planes, { of, weight, members }, share))
}

function shifted(from: Float32Array, by: number, least: number, greatest: number): Float32Array {
  const to = new Float32Array(from.length)
  for (let at = 0; at < from.length; at += 1) {
    to[at] = Math.min(greatest, Math.max(least, from[at]! + by))
  }
  return to
}

interface Joined extends Centre {
  readonly members: readonly number[]
}

/** Joins the two nearest until all are far enough apart. */
function joined(centres: readonly Centre[]): Joined[] {
  let groups: Joined[] = centres.map((centre, n) => ({ ...centre, members: [n] }))
  for (;;) {
    let [near, one, other] = [apart, -1, -1]
    for (let i = 0; i < groups.length; i += 1) {
      for (let j = 0; j < i; j += 1) {
        const away = apartness(groups[i]!, groups[j]!)
        if (away < near) [near, one, other] = [away, i, j]
      }
    }
    if (one < 0) return groups
    const both = mixed(groups[one]!, groups[other]!)
    groups = [...groups.filter((_, n) => n !== one && n !== other), both]
  }
}

const apartness = (one: Centre, other: Centre): number =>
  Math.hypot(lightness * (one.l - other.l), one.a - other.a, one.b - other.b)

function mixed(one: Joined, other: Joined): Joined {
  const count = one.count + other.count
  const of = (name: 'l' | 'a' | 'b') => (one[name] * one.count + other[name] * other.count) / count
  return { count, l: of('l'), a: of('a'), b: of('b'), members: [...one.members, ...other.members] }
}

function seenColour(
  planes: LabPlanes,
  { of, weight, members }: { of: Uint8Array; weight: Float32Array; members: readonly number[] },
  share: number,
): SeenColour {
  const belongs = new Uint8Array(256)
  for (const member of members) belongs[member] = 1
  const flat: number[] = []
  const any: number[] = []
  for (let at = 0; at < of.length; at += 1) {
    if (!weight[at] || !belongs[of[at]!]) continue
    any.push(at)
    if (weight[at]! > 0.2) flat.push(at)
  }
  const taken = flat.length > any.length / 10 ? flat : any
  const step = Math.max(1, Math.floor(taken.length / seen))
  const some = taken.filter((_, n) => n % step === 0)
  const median = (from: Float32Array): number =>
    quantile(
      Float32Array.from(some, (at) => from[at]!),
      0.5,
    )
  const lab = [median(planes.l), median(planes.a), median(planes.b)] as const
  return { lab, share, hex: hexOfLab(...lab) }
}
