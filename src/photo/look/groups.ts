import type { Base } from './base.ts'
import { piecesOf } from './pieces.ts'
import { grown, type LabPlanes, marked, steepness } from './planes.ts'

/** Print that lies together on a straightened garment, in its pixels, and what tells whether it is a picture. */
export interface Group {
  readonly area: number
  /** How strongly it differs from the base, added up over its pixels. */
  readonly mass: number
  readonly left: number
  readonly top: number
  /** One beyond the last column and row. */
  readonly right: number
  readonly bottom: number
  /** Of the pass in which it was found: for each pixel of print the number of its group from 1, or 0. */
  readonly of: Int32Array
  /** Its own number there. */
  readonly piece: number
  readonly pass: number
  readonly signs: readonly number[]
}

interface Pass {
  /** Strength from which on pixels are print. */
  readonly from: number
  /** Pieces nearer to each other than twice this share of the longer side are one. */
  readonly apart: number
  /** What is thinner than twice this share of it is left out. */
  readonly thin: number
}

/** Lines of lettering stand further apart than parts of a drawing. */
const apart = { parts: 0.022, lines: 0.05 } as const

/**
 * How print is looked for: faint pictures show in the first pass alone, bold ones hang together with seams there;
 * a cord or a seam that touches a picture is left out in the last.
 */
const passes: readonly Pass[] = [
  { from: 1, apart: apart.parts, thin: 0 },
  { from: 0.5, apart: apart.parts, thin: 0 },
  { from: 2, apart: apart.parts, thin: 0 },
  { from: 1, apart: apart.lines, thin: 0 },
  { from: 2, apart: apart.lines, thin: 0 },
  { from: 1, apart: apart.parts, thin: 0.006 },
]

/** The pass whose groups tell how print is dealt out. */
export const mainPass = 0

/** Whether a pass leaves out what is thin: a picture may lose its own lines to it. */
export const leavesThin = (pass: number): boolean => passes[pass]!.thin > 0

/** What comes as near as so many pixels to where the inner part ends runs out at the garment's rim. */
const toRim = 2

/** A speck has less than this share of the garment. */
const speck = 1 / 4000
/** Groups of one pass. */
const most = 12

export interface Printed {
  readonly planes: LabPlanes
  readonly base: Base
  readonly strength: Float32Array
}

/** What hangs together where a garment differs from its base: pass by pass, the heaviest first. */
export function groupsOf(printed: Printed): Group[] {
  const steep = steepness(printed.planes)
  return passes.flatMap((_, pass) => groupsIn(printed, steep, pass, (marks) => marks))
}

/**
 * The same without what runs out at the garment's rim, as collars, cuffs and seams do and pictures hardly: one beside
 * a collar is a group of its own here.
 */
export function groupsOffRim(printed: Printed): Group[] {
  const { inner } = printed.base
  const { width, height } = printed.planes
  const steep = steepness(printed.planes)
  const atRim = grown(
    inner.map((one) => 1 - one),
    width,
    height,
    toRim,
  )
  return passes.flatMap((_, pass) =>
    groupsIn(printed, steep, pass, (marks) => {
      const { of, sizes } = piecesOf(marks, width, height, 1)
      const runsOut = new Uint8Array(sizes.length + 1)
      for (let at = 0; at < of.length; at += 1) if (atRim[at]) runsOut[of[at]!] = 1
      return marked(marks.length, (at) => of[at]! > 0 && runsOut[of[at]!] === 0)
    }),
  )
}

function groupsIn(
  { planes, base, strength }: Printed,
  steep: Float32Array,
  pass: number,
  kept: (marks: Uint8Array) => Uint8Array,
): Group[] {
  const { width, height } = planes
  const { inner } = base
  const { from, apart, thin } = passes[pass]!
  const longer = Math.max(width, height)
  const area = Math.max(1, countOf(inner))
  const all = kept(marked(width * height, (at) => inner[at] === 1 && strength[at]! > from))
  const map = thin > 0 ? opened(all, width, height, Math.ceil(thin * longer)) : all
  const near = grown(map, width, height, Math.round(apart * longer))
  const { of, sizes } = piecesOf(near, width, height, 1)
  // What is a speck even with all around it is a speck; the others' sums stand side by side.
  const sums = sizes.map((size) => (size < area * speck ? null : new Float64Array(fields.length)))
  for (let y = 2, at = 2 * width; y < height - 2; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      if (!map[at]) {
        of[at] = 0
        continue
      }
      const sum = sums[of[at]! - 1]
      if (!sum) continue
      const light = base.offL[at]!
      if (sum[0] === 0) sum[12] = y + 1
      sum[0]! += 1
      sum[1]! += strength[at]!
      sum[2]! += Math.abs(light)
      if (light < 0) sum[3]! += 1
      sum[4]! += Math.sqrt(base.offA[at]! ** 2 + base.offB[at]! ** 2)
      if (strength[at]! > sum[5]!) sum[5] = strength[at]!
      sum[6]! += steep[at]!
      sum[7]! += map[y * width + width - 1 - x]!
      if (!map[at - 1] || !map[at + 1] || !map[at - width] || !map[at + width]) {
        sum[8]! += 1
        sum[9]! += steep[at]!
        if (!inner[at - 2] || !inner[at + 2] || !inner[at - 2 * width] || !inner[at + 2 * width]) {
          sum[10]! += 1
        }
      }
      // Kept one larger, so that nothing yet is 0.
      if (sum[11] === 0 || x + 1 < sum[11]!) sum[11] = x + 1
      if (x + 1 > sum[13]!) sum[13] = x + 1
      sum[14] = y + 1
    }
  }
  of.fill(0, 0, 2 * width)
  of.fill(0, (height - 2) * width)
  const found = sums
    .flatMap((sum, n) =>
      sum && sum[0]! >= Math.max(4, area * speck) ? [{ piece: n + 1, ...sumOf(sum) }] : [],
    )
    .sort((a, b) => b.mass - a.mass)
  const whole = found.reduce((total, { mass }) => total + mass, 1e-6)
  return found.slice(0, most).map((sum, rank): Group => {
    const signs = signsOf(sum, { width, height, area, whole, rank, pass })
    const { piece, mass, left, top, right, bottom } = sum
    return { of, piece, pass, area: sum.area, mass, left, top, right, bottom, signs }
  })
}

/** The marks but for what is thinner than twice the radius. */
function opened(marks: Uint8Array, width: number, height: number, radius: number): Uint8Array {
  const beyond = grown(
    marks.map((one) => 1 - one),
    width,
    height,
    radius,
  )
  return grown(
    beyond.map((one) => 1 - one),
    width,
    height,
    radius,
  )
}

const countOf = (marks: Uint8Array): number => marks.reduce((sum, one) => sum + one, 0)

const fields = [
  'area',
  'mass',
  'light',
  'darker',
  'colour',
  'strongest',
  'steep',
  'mirrored',
  'edge',
  'edgeSteep',
  'rim',
  'left',
  'top',
  'right',
  'bottom',
] as const

type Sum = Readonly<Record<(typeof fields)[number], number>>

function sumOf(sum: Float64Array): Sum {
  const named = Object.fromEntries(fields.map((field, n) => [field, sum[n]!])) as Sum
  return { ...named, left: named.left - 1, top: named.top - 1 }
}

export const groupCount = 20 + passes.length - 1

function signsOf(
  sum: Sum,
  {
    width,
    height,
    area,
    whole,
    rank,
    pass,
  }: {
    width: number
    height: number
    area: number
    whole: number
    rank: number
    pass: number
  },
): number[] {
  const [w, h] = [sum.right - sum.left, sum.bottom - sum.top]
  const [u, v] = [
    (sum.left + sum.right) / 2 / width - 0.5,
    (sum.top + sum.bottom) / 2 / height - 0.5,
  ]
  return [
    Math.log(sum.area / area),
    Math.log(w / width),
    Math.log(h / height),
    Math.log((w + 1) / (h + 1)),
    sum.area / (w * h),
    Math.log(sum.mass / sum.area),
    Math.log(sum.strongest),
    sum.light / sum.area / 20,
    sum.darker / sum.area,
    sum.colour / sum.area / 20,
    Math.log(sum.steep / sum.area + 1),
    Math.log(sum.edgeSteep / Math.max(1, sum.edge) + 1),
    sum.edge / sum.area,
    sum.rim / Math.max(1, sum.edge),
    Math.abs(u),
    Math.abs(v),
    v,
    sum.mirrored / sum.area,
    sum.mass / whole,
    rank,
    ...passes.slice(1).map((_, n) => Number(pass === n + 1)),
  ]
}
