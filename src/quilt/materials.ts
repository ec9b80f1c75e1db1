import { type Figure, practice } from '../base/figure.ts'
import type { Extent } from './layout.ts'

/** Lengths in inches. A quarter yard is the least that cloth is sold by. */
const quarterYardIn = 9

/** Inches of cloth as yards, rounded up to the quarter yard. */
export const yards = (inches: number): number =>
  Math.ceil(Math.max(0, inches / quarterYardIn - 1e-9)) / 4

/** As quilting pages count (secondary). `backingOverIn` is in total, both sides together. */
export const usual = { bindingJoinIn: 20, bindingStripIn: 2.5, backingOverIn: 6 }

interface BindingOptions {
  /** Added to the way round for corners and joins. */
  readonly joinIn?: number
  readonly usableIn: number
  readonly stripIn?: number
}

/** Straight binding: strips across the cloth, and the length of cloth they take. */
export function binding(
  { w, h }: Extent,
  { joinIn = usual.bindingJoinIn, usableIn, stripIn = usual.bindingStripIn }: BindingOptions,
) {
  const lengthIn = 2 * (w + h) + joinIn
  const strips = Math.ceil(lengthIn / usableIn)
  return { lengthIn, strips, clothIn: strips * stripIn }
}

/** Widths of cloth side by side, seams off, that reach over `spanIn`. */
const widthsFor = (spanIn: number, usableIn: number): number =>
  Math.ceil((spanIn - joinSeamIn) / (usableIn - joinSeamIn))

/** Taken up by each seam that joins two widths, inches. */
const joinSeamIn = 0.5

const inches = (name: string, value: number, source: string): Figure => ({
  figure: `materials/${name}`,
  value,
  unit: 'in',
  source,
})

export const materialFigures: readonly Figure[] = [
  ...Object.entries(usual).map(([name, value]) =>
    inches(name, value, 'rules of quilting pages (secondary)'),
  ),
  inches('joinSeamIn', joinSeamIn, practice),
  inches('quarterYardIn', quarterYardIn, practice),
]

interface BackingOptions {
  readonly usableIn: number
  /** In total, both sides together. */
  readonly overIn?: number
}

/** Widths of cloth joined to a backing, inches. */
export interface Backing {
  readonly widths: number
  /** Each width's length, and all of them. */
  readonly lengthIn: number
  readonly clothIn: number
  /** Which way the seams run over the quilt. */
  readonly seams: 'none' | 'down' | 'across'
}

/** Cloth to buy for a backing: widths joined lose their seams; laid the way that takes less. */
export function backing(
  { w, h }: Extent,
  { usableIn, overIn = usual.backingOverIn }: BackingOptions,
): Backing {
  const laid = (span: number, lengthIn: number, seams: 'down' | 'across'): Backing => {
    const widths = widthsFor(span, usableIn)
    return { widths, lengthIn, clothIn: widths * lengthIn, seams: widths === 1 ? 'none' : seams }
  }
  const down = laid(w + overIn, h + overIn, 'down')
  const across = laid(h + overIn, w + overIn, 'across')
  return across.clothIn < down.clothIn ? across : down
}

/** Packages of batting; more than one are laid side by side and joined edge to edge. */
export interface Batting<T> {
  readonly of: T
  readonly count: number
}

/**
 * The first package, in the order given, that reaches `overIn` over every edge, either way round. Where
 * none does: as few alike as reach together, of those that cost least.
 */
export function batting<T extends Extent & { readonly price: number }>(
  { w, h }: Extent,
  packages: readonly T[],
  overIn: number,
): Batting<T> {
  const [across, down] = [w + 2 * overIn, h + 2 * overIn]
  const joined = packages.map((of) => ({
    of,
    count: Math.min(
      Math.ceil(across / of.w) * Math.ceil(down / of.h),
      Math.ceil(across / of.h) * Math.ceil(down / of.w),
    ),
  }))
  const whole = joined.find(({ count }) => count === 1)
  return whole ?? joined.toSorted((a, b) => a.count * a.of.price - b.count * b.of.price)[0]!
}

/** Cloth for so many equal pieces cut in strips across its width. */
export function clothFor(count: number, { w, h }: Extent, usableIn: number): number {
  const across = Math.floor(usableIn / w)
  if (across === 0) throw new RangeError(`a piece ${w} in wide does not fit into ${usableIn} in`)
  return Math.ceil(count / across) * h
}
