import { columnsOf, isColumn, leans, left, type ReadSlab, right } from './order.ts'
import type { Slab } from './picture.ts'

/** So many lines lie on each side of the strip between two columns. */
const fewest = 3
/** Of all lines so many at most may run across it. */
const mostAcross = 0.2
/** A line runs across where it goes on for so many of its heights on both sides. */
const goesOn = 0.8
/** A slab reaches beyond its letters by this share of its height. */
const beyond = 0.25

/** Columns are set apart by so much of a line's height, and more. */
const gap = 0.4

/** Where two columns part: `at` is how far right at the top of the picture, and it leans so far for each pixel down. */
interface Strip {
  readonly at: number
  readonly lean: number
  readonly across: readonly ReadSlab[]
}

/** A slab that was found as one line and may be two, side by side. */
export interface Bridge {
  readonly whole: ReadSlab
  readonly parts: readonly [Slab, Slab]
}

/**
 * Lines that run across the strip between two columns, where all others keep to one of these: a line of the one
 * and a line of the other were found as one.
 */
export function bridgesIn(read: readonly ReadSlab[]): Bridge[] {
  if (columnsOf(read).length > 1) return []
  const strips = leans.flatMap((lean) => stripsAlong(read, lean))
  const best = strips.toSorted((a, b) => a.across.length - b.across.length)[0]
  return best ? best.across.map((whole) => ({ whole, parts: cutAt(whole.slab, best) })) : []
}

function stripsAlong(read: readonly ReadSlab[], lean: number): Strip[] {
  const from = (one: ReadSlab): number => left(one) - lean * one.slab.y
  const to = (one: ReadSlab): number => right(one) - lean * one.slab.y
  return read.flatMap((first): Strip[] => {
    const at = from(first)
    const near = read.filter((one) => to(one) - beyond * one.slab.h <= at)
    const far = read.filter((one) => from(one) + beyond * one.slab.h >= at)
    const across = read.filter((one) => !near.includes(one) && !far.includes(one))
    if (Math.min(near.length, far.length) < fewest || across.length === 0) return []
    if (across.length > mostAcross * read.length) return []
    const goOn = across.every(
      (one) => Math.min(at - from(one), to(one) - at) >= goesOn * one.slab.h,
    )
    return goOn && areBeside(near, far) && isColumn(near) && isColumn(far)
      ? [{ at, lean, across }]
      : []
  })
}

/** Several lines of the one lie level with lines of the other. */
function areBeside(near: readonly ReadSlab[], far: readonly ReadSlab[]): boolean {
  const beside = near.filter(({ slab }) =>
    far.some((other) => Math.abs(other.slab.y - slab.y) < slab.h),
  )
  return beside.length >= fewest
}

function cutAt(slab: Slab, { at, lean }: Strip): [Slab, Slab] {
  const [cos, sin] = [Math.cos(slab.turn), Math.sin(slab.turn)]
  const cut = (at + lean * slab.y - slab.x) / cos
  const between = (from: number, to: number): Slab => {
    const middle = (from + to) / 2
    return { ...slab, x: slab.x + middle * cos, y: slab.y + middle * sin, w: to - from }
  }
  return [between(-slab.w / 2, cut - gap * slab.h), between(cut, slab.w / 2)]
}
