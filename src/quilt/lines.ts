import { Failure } from '../base/failures.ts'
import { times } from '../base/money.ts'
import type { Choices, GarmentChoices, Hold, Wish } from './choices.ts'
import type { Extent } from './layout.ts'
import { backing, batting, binding, clothFor, yards } from './materials.ts'
import type { Rates } from './rates.ts'
import type { Supply } from './supply.ts'

/** Minor units of money. */
export interface Range {
  readonly low: number
  readonly likely: number
  readonly high: number
}

export const lineCodes = [
  'making',
  'teardown',
  'stabilising',
  'interfacing',
  'top-up',
  'backing',
  'batting',
  'binding',
  'thread',
] as const
export type LineCode = (typeof lineCodes)[number]

export interface Line extends Range {
  readonly code: LineCode
  /** Of the likely figure. */
  readonly quantity: number
  readonly unit: 'quilt' | 'garment' | 'yard' | 'package'
  /** Null where the things counted differ in price. */
  readonly unitPriceMinor: number | null
  /** What the line follows from. */
  readonly because: readonly string[]
}

/** The range over all that may be; the likely one stands first. */
const range = (options: readonly number[]): Range => ({
  low: Math.min(...options),
  likely: options[0]!,
  high: Math.max(...options),
})

const sum = (ranges: readonly Range[]): Range => ({
  low: ranges.reduce((total, { low }) => total + low, 0),
  likely: ranges.reduce((total, { likely }) => total + likely, 0),
  high: ranges.reduce((total, { high }) => total + high, 0),
})

/** One price for all, or null. */
const onePrice = (prices: readonly number[]): number | null =>
  new Set(prices).size === 1 ? prices[0]! : null

function makingOf({ layout, size }: Wish, { labour }: Rates): number {
  const price = labour[layout.id]
  if (!price)
    throw new Failure('flows_invalid', {
      file: 'rates',
      line: 1,
      why: `no price for labour of ${layout.id}`,
    })
  return price[size]
}

function quiltLine(
  { quilts, alike }: Choices,
  code: LineCode,
  unit: Line['unit'],
  of: (quilt: Wish) => { quantity: number; unitPriceMinor: number },
): Line {
  const priced = quilts.map((quilt) => {
    const { quantity, unitPriceMinor } = of(quilt)
    return { quantity: quantity * alike, unitPriceMinor }
  })
  const likely = priced[0]!
  return {
    code,
    ...likely,
    unit,
    ...range(priced.map(({ quantity, unitPriceMinor }) => times(unitPriceMinor, quantity))),
    because: ['layout', 'size'],
  }
}

const likelyUsed = ({ garments }: Choices): GarmentChoices[] =>
  garments.filter(({ used }) => used[0])

function teardownLine(choices: Choices, { teardown }: Rates): Line {
  const likely = likelyUsed(choices)
  return {
    code: 'teardown',
    quantity: likely.length,
    unit: 'garment',
    unitPriceMinor: onePrice(likely.map(({ kind }) => teardown[kind])),
    ...sum(
      choices.garments.map(({ kind, used }) =>
        range(used.map((isUsed) => (isUsed ? teardown[kind] : 0))),
      ),
    ),
    because: ['kind'],
  }
}

const holdPrice = ({ backing: kind }: Hold, { stabilising }: Rates): number =>
  kind === 'none' ? 0 : stabilising[kind]

function stabilisingLine(choices: Choices, rates: Rates): Line {
  const likely = likelyUsed(choices).filter(({ holds }) => holds[0]!.backing !== 'none')
  return {
    code: 'stabilising',
    quantity: likely.length,
    unit: 'garment',
    unitPriceMinor: onePrice(likely.map(({ holds }) => holdPrice(holds[0]!, rates))),
    ...sum(
      choices.garments.map(({ used, holds }) =>
        range(used.flatMap((isUsed) => holds.map((hold) => (isUsed ? holdPrice(hold, rates) : 0)))),
      ),
    ),
    because: ['stretch', 'wear', 'surface', 'weight', 'heat'],
  }
}

const rollOf = (hold: Hold, { interfacing, sew_in }: Rates) =>
  hold.class === null ? sew_in : (interfacing[hold.class] ?? sew_in)

/** Yards of interfacing behind all panels of a garment, by each way it may turn out. */
function interfacingOf({ kind, used, sizes, holds }: GarmentChoices, rates: Rates, supply: Supply) {
  return used.flatMap((isUsed) =>
    holds.flatMap((hold) =>
      sizes.map((size) => {
        const roll = rollOf(hold, rates)
        const length =
          isUsed && hold.backing !== 'none' ? yards(supply.cloth(kind, size) / roll.width_in) : 0
        return { yards: length, minor: times(roll.price_per_yard, length), roll }
      }),
    ),
  )
}

function interfacingLine({ garments }: Choices, rates: Rates, supply: Supply): Line {
  const each = garments.map((garment) => interfacingOf(garment, rates, supply))
  const likely = each.map((options) => options[0]!).filter((option) => option.yards > 0)
  return {
    code: 'interfacing',
    quantity: likely.reduce((total, option) => total + option.yards, 0),
    unit: 'yard',
    unitPriceMinor: onePrice(likely.map(({ roll }) => roll.price_per_yard)),
    ...sum(each.map((options) => range(options.map(({ minor }) => minor)))),
    because: ['stretch', 'wear', 'surface', 'weight', 'heat', 'size'],
  }
}

/** Square inches of pieces that a garment may give to a layout: none where its cloth does not suit it. */
const givesTo = (layout: string, garment: GarmentChoices, piece: Extent, supply: Supply) =>
  (garment.suits[layout] ?? [false]).flatMap((suits) =>
    suits ? supply.pieces(garment, piece) : [0],
  )

/**
 * Yards of bought cloth where the garments do not fill the quilt, by least, likely and most. What is
 * short is counted in the piece that takes most of the quilt, cut in strips across the cloth.
 */
function topUpYards(
  { layout, wanted }: Wish,
  { alike, garments }: Choices,
  rates: Rates,
  supply: Supply,
) {
  const { area, main } = wanted
  const have = sum(garments.map((garment) => range(givesTo(layout.id, garment, main, supply))))
  const short = (supplied: number) => {
    const pieces = Math.ceil(Math.max(0, area * alike - supplied) / (main.w * main.h))
    return yards(clothFor(pieces, main, rates.cloth.usable_width_in))
  }
  return { low: short(have.high), likely: short(have.likely), high: short(have.low) }
}

function topUpLine(choices: Choices, rates: Rates, supply: Supply): Line {
  const price = rates.cloth.top_up_per_yard
  const each = choices.quilts.map((quilt) => topUpYards(quilt, choices, rates, supply))
  return {
    code: 'top-up',
    quantity: each[0]!.likely,
    unit: 'yard',
    unitPriceMinor: price,
    low: times(price, Math.min(...each.map(({ low }) => low))),
    likely: times(price, each[0]!.likely),
    high: times(price, Math.max(...each.map(({ high }) => high))),
    because: ['layout', 'size', 'yield'],
  }
}

function battingOf({ layout, size, finished }: Wish, rates: Rates) {
  const found = batting(finished, rates.batting, rates.batting_over_in)
  if (found) return { quantity: 1, unitPriceMinor: found.price }
  throw new Failure('flows_invalid', {
    file: 'rates',
    line: 1,
    why: `no batting for ${layout.id}, ${size}`,
  })
}

/** Every line of an estimate over all that may be. */
export function linesOf(choices: Choices, rates: Rates, supply: Supply): Line[] {
  const usableIn = rates.cloth.usable_width_in
  return [
    quiltLine(choices, 'making', 'quilt', (quilt) => ({
      quantity: 1,
      unitPriceMinor: makingOf(quilt, rates),
    })),
    teardownLine(choices, rates),
    stabilisingLine(choices, rates),
    interfacingLine(choices, rates, supply),
    topUpLine(choices, rates, supply),
    quiltLine(choices, 'backing', 'yard', ({ finished }) => ({
      quantity: yards(backing(finished, { usableIn })),
      unitPriceMinor: rates.cloth.backing_per_yard,
    })),
    quiltLine(choices, 'batting', 'package', (quilt) => battingOf(quilt, rates)),
    quiltLine(choices, 'binding', 'yard', ({ finished }) => ({
      quantity: yards(binding(finished, { usableIn }).clothIn),
      unitPriceMinor: rates.cloth.binding_per_yard,
    })),
    quiltLine(choices, 'thread', 'quilt', ({ size }) => ({
      quantity: 1,
      unitPriceMinor: rates.thread[size],
    })),
  ]
}
