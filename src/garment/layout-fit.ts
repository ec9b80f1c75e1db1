import type { Facts, Setting } from './facts.ts'
import type { Knowledge } from './knowledge.ts'

/** Whether a garment suits a layout; `why` is a code of the words under `layouts.why`. */
export interface LayoutFit {
  readonly layout: string
  readonly setting: Setting
  readonly fits: boolean
  readonly why: string
}

/** One answer for each layout of the shop, in the shop's order. */
export function layoutFits(facts: Facts, { decide, layouts }: Knowledge): LayoutFit[] {
  return layouts.map(({ id, setting }) => {
    const { fits, why } = decide('layout-fit', { ...facts, setting })[0]!.give
    return { layout: id, setting, fits: fits === true, why: why as string }
  })
}

/** What became of the customer's wish: a layout by its id, or any layout of that setting. */
export function wishOf(
  fits: readonly LayoutFit[],
  wish: string | undefined,
): 'undecided' | 'fits' | 'misfit' {
  const meant = fits.filter(({ layout, setting }) => layout === wish || setting === wish)
  if (meant.length === 0) return 'undecided'
  return meant.some(({ fits }) => fits) ? 'fits' : 'misfit'
}
