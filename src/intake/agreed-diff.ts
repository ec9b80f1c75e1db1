import type { LineCode } from '../quilt/lines.ts'
import type { AgreedFigures, AgreedGarment } from './agreed-figures.ts'

/** What a newer version of a pile changes. Money in minor units, below zero where it is less now. */
export interface AgreedDiff {
  readonly added: readonly AgreedGarment[]
  readonly dropped: readonly AgreedGarment[]
  readonly regraded: readonly {
    readonly garment: AgreedGarment
    readonly from: string | null
    readonly to: string | null
  }[]
  readonly quilt: {
    readonly from: AgreedFigures['quilt']
    readonly to: AgreedFigures['quilt']
  } | null
  /** Null where one of them has no price, or they are in two currencies. */
  readonly price: {
    readonly currency: string
    readonly lines: readonly { readonly code: LineCode; readonly byMinor: number }[]
    readonly totalMinor: number
  } | null
  readonly needBy: { readonly from: number | null; readonly to: number | null } | null
}

function priceOf(
  before: AgreedFigures['price'],
  after: AgreedFigures['price'],
): AgreedDiff['price'] {
  if (!before || !after || before.currency !== after.currency) return null
  const was = new Map(before.lines.map(({ code, minor }) => [code, minor]))
  const is = new Map(after.lines.map(({ code, minor }) => [code, minor]))
  const codes = new Set([...is.keys(), ...was.keys()])
  return {
    currency: after.currency,
    lines: [...codes]
      .map((code) => ({ code, byMinor: (is.get(code) ?? 0) - (was.get(code) ?? 0) }))
      .filter(({ byMinor }) => byMinor !== 0),
    totalMinor: after.total.likely - before.total.likely,
  }
}

/** By garment number, line and day. The same twice gives a difference of nothing. */
export function diffOf(before: AgreedFigures, after: AgreedFigures): AgreedDiff {
  const was = new Map(before.garments.map((one) => [one.n, one]))
  const is = new Set(after.garments.map(({ n }) => n))
  const { quilt } = after
  const sameQuilt =
    quilt.layout === before.quilt.layout &&
    quilt.size === before.quilt.size &&
    quilt.quilts === before.quilt.quilts
  return {
    added: after.garments.filter(({ n }) => !was.has(n)),
    dropped: before.garments.filter(({ n }) => !is.has(n)),
    regraded: after.garments.flatMap((garment) => {
      const old = was.get(garment.n)
      return old && old.grade !== garment.grade
        ? [{ garment, from: old.grade, to: garment.grade }]
        : []
    }),
    quilt: sameQuilt ? null : { from: before.quilt, to: quilt },
    price: priceOf(before.price, after.price),
    needBy: before.needBy === after.needBy ? null : { from: before.needBy, to: after.needBy },
  }
}

/** True where nothing differs that a person would want to be told. */
export const isNothing = ({
  added,
  dropped,
  regraded,
  quilt,
  price,
  needBy,
}: AgreedDiff): boolean =>
  added.length + dropped.length + regraded.length + (price?.lines.length ?? 0) === 0 &&
  quilt === null &&
  needBy === null
