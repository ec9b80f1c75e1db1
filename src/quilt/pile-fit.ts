import type { LayoutFit } from '../garment/layout-fit.ts'
import type { Layout } from './layout.ts'

/** How a whole pile suits one layout. */
export interface PileFit {
  readonly layout: string
  readonly fits: number
  readonly of: number
  /** Why others do not, the commonest reason first; codes of the words under `layouts.why`. */
  readonly misfits: readonly { readonly why: string; readonly count: number }[]
}

type Graded = { readonly layouts: readonly LayoutFit[] }

function counted(reasons: readonly string[]): PileFit['misfits'] {
  const counts = new Map<string, number>()
  for (const why of reasons) counts.set(why, (counts.get(why) ?? 0) + 1)
  return [...counts]
    .map(([why, count]) => ({ why, count }))
    .sort((a, b) => b.count - a.count || (a.why < b.why ? -1 : 1))
}

/** The layouts with the one that most garments suit first; of equals, in the shop's order. */
export function pileFits(
  garments: readonly Graded[],
  layouts: readonly Pick<Layout, 'id'>[],
): PileFit[] {
  return layouts
    .map(({ id }) => {
      const all = garments.flatMap((one) => one.layouts.filter(({ layout }) => layout === id))
      const misfits = all.filter(({ fits }) => !fits)
      return {
        layout: id,
        fits: all.length - misfits.length,
        of: all.length,
        misfits: counted(misfits.map(({ why }) => why)),
      }
    })
    .sort((a, b) => b.fits - a.fits)
}
