import { type Figure, practice } from '../base/figure.ts'
import type { Extent } from './layout.ts'

/** Lengths in inches. A quarter yard is the least that cloth is sold by. */
const quarterYardIn = 9

/** Inches of cloth as yards, rounded up to the quarter yard. */
export const yards = (inches: number): number =>
  Math.ceil(Math.max(0, inches / quarterYardIn - 1e-9)) / 4

/** As quilting pages count (secondary). `backingOverIn` is in total, both sides together. */
const usual = { bindingJoinIn: 20, bindingStripIn: 2.5, backingOverIn: 6 }

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

/** Cloth to buy for a backing: widths joined lose their seams; the way that takes less. */
export function backing(
  { w, h }: Extent,
  { usableIn, overIn = usual.backingOverIn }: BackingOptions,
): number {
  const across = widthsFor(w + overIn, usableIn) * (h + overIn)
  const along = widthsFor(h + overIn, usableIn) * (w + overIn)
  return Math.min(across, along)
}

/** The first package, in the order given, that reaches `overIn` over every edge, either way round. */
export function batting<T extends Extent>(
  { w, h }: Extent,
  packages: readonly T[],
  overIn: number,
): T | undefined {
  const [short, long] = [Math.min(w, h) + 2 * overIn, Math.max(w, h) + 2 * overIn]
  return packages.find((it) => Math.min(it.w, it.h) >= short && Math.max(it.w, it.h) >= long)
}

/** Cloth for so many equal pieces cut in strips across its width. */
export function clothFor(count: number, { w, h }: Extent, usableIn: number): number {
  const across = Math.floor(usableIn / w)
  if (across === 0) throw new RangeError(`a piece ${w} in wide does not fit into ${usableIn} in`)
  return Math.ceil(count / across) * h
}
