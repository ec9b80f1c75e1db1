import type { Estimate } from './estimate.ts'
import type { LineCode } from './lines.ts'

/** What a change of the pile does to the likely price, minor units; below zero it costs less. */
export interface PriceChange {
  /** The lines that change, in their order. */
  readonly lines: readonly { readonly code: LineCode; readonly byMinor: number }[]
  readonly totalMinor: number
  readonly currency: string
}

/** By line and in all. Both estimates are by the same rates. */
export function priceChange(before: Estimate, after: Estimate): PriceChange {
  const was = new Map(before.lines.map(({ code, likely }) => [code, likely]))
  return {
    lines: after.lines
      .map(({ code, likely }) => ({ code, byMinor: likely - (was.get(code) ?? 0) }))
      .filter(({ byMinor }) => byMinor !== 0),
    totalMinor: after.total.likely - before.total.likely,
    currency: after.currency,
  }
}
