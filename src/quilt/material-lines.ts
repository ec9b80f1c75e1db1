import { times } from '../base/money.ts'
import { inchesPerYard } from '../base/units.ts'
import type { Choices, GarmentChoices, Hold } from './choices.ts'
import type { Extent } from './layout.ts'
import { type Line, mapped, onePrice, type Range, range, sum, type Working } from './lines.ts'
import { backing, batting, binding, clothFor, usual, yards } from './materials.ts'
import { clothGrams } from './parcels.ts'
import type { Rates } from './rates.ts'
import { rollLength } from './roll.ts'
import type { Supply } from './supply.ts'
import { thread } from './thread.ts'
import type { Wish } from './wish.ts'
import { atPrice, quiltLine } from './work-lines.ts'

/** Interfacing of a class, or what is sewn in. */
export interface Roll {
  /** A class of interfacing; null: sewn in. */
  readonly class: string | null
  readonly price_per_yard: number
  readonly width_in: number
}

export function rollOf(hold: Hold, { interfacing, sew_in }: Rates): Roll {
  const fused = hold.class === null ? undefined : interfacing[hold.class]
  return fused ? { class: hold.class, ...fused } : { class: null, ...sew_in }
}

/** What yards of a roll weigh, grams. */
export const rollGrams = (length: number, { width_in }: Roll, { weights_g_per_m2 }: Rates) =>
  clothGrams(length * inchesPerYard * width_in, weights_g_per_m2.interfacing)

/** Interfacing behind all panels of a garment, by each way it may turn out. */
function interfacingOf({ kind, used, sizes, holds }: GarmentChoices, rates: Rates, supply: Supply) {
  const rolls = holds.map((hold) => ({ isBacked: hold.backing !== 'none', ...rollOf(hold, rates) }))
  return used.flatMap((isUsed) =>
    rolls.flatMap((roll) =>
      sizes.map((size) => {
        const isBacked = isUsed && roll.isBacked
        const length = isBacked ? yards(supply.cloth(kind, size) / roll.width_in) : 0
        return {
          yards: length,
          minor: times(roll.price_per_yard, length),
          grams: rollGrams(length, roll, rates),
          roll,
        }
      }),
    ),
  )
}

/** A sentence for each class, where every garment's cloth is backed whole. */
function roughRolls(each: readonly { yards: number; roll: Roll }[]): Working[] {
  const names = [...new Set(each.map(({ roll }) => roll.class ?? 'sewn-in'))]
  return names.map((name) => {
    const own = each.filter(({ roll }) => (roll.class ?? 'sewn-in') === name)
    const values = {
      roll: name,
      garments: own.length,
      width: own[0]!.roll.width_in,
      yards: own.reduce((total, one) => total + one.yards, 0),
    }
    return { code: 'roll-rough', values }
  })
}

function interfacing({ garments }: Choices, rates: Rates, supply: Supply) {
  const each = garments.map((garment) => interfacingOf(garment, rates, supply))
  const likely = each.map((options) => options[0]!).filter((option) => option.yards > 0)
  const line: Line = {
    code: 'interfacing',
    quantity: likely.reduce((total, option) => total + option.yards, 0),
    unit: 'yard',
    unitPriceMinor: onePrice(likely.map(({ roll }) => roll.price_per_yard)),
    ...sum(each.map((options) => range(options.map(({ minor }) => minor)))),
    workings: roughRolls(likely),
    because: ['stretch', 'wear', 'surface', 'weight', 'heat', 'size'],
  }
  return { line, grams: sum(each.map((options) => range(options.map(({ grams }) => grams)))) }
}

/** Square inches of pieces that a garment may give to a layout: none where its cloth does not suit it. */
const givesTo = (layout: string, garment: GarmentChoices, piece: Extent, supply: Supply) =>
  (garment.suits[layout] ?? [false]).flatMap((suits) =>
    suits ? supply.pieces(garment, piece) : [0],
  )

/** Yards of the cloth that a layout always wants new, each role a fabric of its own. */
function alwaysBought({ bought }: Wish, alike: number, usableIn: number): number {
  const roles = [...new Set(bought.map(({ role }) => role))]
  const lengths = roles.map((role) => {
    const own = bought.filter((piece) => piece.role === role)
    const all = own.map(({ size, count }) => ({ size, count: count * alike }))
    return rollLength(all, usableIn)
  })
  return lengths.reduce((total, length) => total + yards(length), 0)
}

/**
 * Yards of bought cloth where the garments do not fill the quilt. What is short is counted in the piece
 * that takes most of the quilt, cut in strips across the cloth.
 */
function topUpYards(
  quilt: Wish,
  { alike, garments }: Choices,
  rates: Rates,
  supply: Supply,
): Range {
  const { area, main } = quilt.wanted
  const usableIn = rates.cloth.usable_width_in
  const have = sum(
    garments.map((garment) => range(givesTo(quilt.layout.id, garment, main, supply))),
  )
  const always = alwaysBought(quilt, alike, usableIn)
  const short = (supplied: number) => {
    const pieces = Math.ceil(Math.max(0, area * alike - supplied) / (main.w * main.h))
    return always + yards(clothFor(pieces, main, usableIn))
  }
  return { low: short(have.high), likely: short(have.likely), high: short(have.low) }
}

function topUp(choices: Choices, rates: Rates, supply: Supply) {
  const price = rates.cloth.top_up_per_yard
  const each = choices.quilts.map((quilt) => topUpYards(quilt, choices, rates, supply))
  const all: Range = {
    low: Math.min(...each.map(({ low }) => low)),
    likely: each[0]!.likely,
    high: Math.max(...each.map(({ high }) => high)),
  }
  const line: Line = {
    code: 'top-up',
    quantity: all.likely,
    unit: 'yard',
    unitPriceMinor: price,
    ...mapped(all, (amount) => times(price, amount)),
    workings: all.likely > 0 ? [{ code: 'top-up-rough', values: { yards: all.likely } }] : [],
    because: ['layout', 'size', 'yield'],
  }
  return { line, grams: mapped(all, (amount) => boughtGrams(amount, rates)) }
}

/** What yards of bought cloth weigh, grams. */
export const boughtGrams = (length: number, { cloth, weights_g_per_m2 }: Rates): number =>
  clothGrams(length * inchesPerYard * cloth.usable_width_in, weights_g_per_m2.cloth)

function backingLine(choices: Choices, { cloth }: Rates): Line {
  const usableIn = cloth.usable_width_in
  return quiltLine(choices, { code: 'backing', unit: 'yard' }, ({ finished }, alike) => {
    const { widths, lengthIn, clothIn, seams } = backing(finished, { usableIn })
    const quantity = yards(clothIn) * alike
    const over = usual.backingOverIn
    const size = { w: finished.w + over, h: finished.h + over, over }
    const laid = { widths, width: usableIn, length: lengthIn, seams }
    const values = { quilts: alike, ...size, ...laid, yards: quantity }
    return atPrice(cloth.backing_per_yard, quantity, [{ code: 'backing', values }])
  })
}

const battingLine = (choices: Choices, rates: Rates): Line =>
  quiltLine(choices, { code: 'batting', unit: 'package' }, ({ finished }, alike) => {
    const over = rates.batting_over_in
    const { of, count } = batting(finished, rates.batting, over)
    const size = { w: finished.w + 2 * over, h: finished.h + 2 * over, over }
    const values = { quilts: alike, ...size, across: of.w, down: of.h, count }
    const code = count > 1 ? 'batting-joined' : 'batting'
    return atPrice(of.price, count * alike, [{ code, values }])
  })

const bindingLine = (choices: Choices, { cloth }: Rates): Line =>
  quiltLine(choices, { code: 'binding', unit: 'yard' }, ({ finished }, alike) => {
    const usableIn = cloth.usable_width_in
    const { lengthIn, strips, clothIn } = binding(finished, { usableIn })
    const quantity = yards(clothIn) * alike
    const strip = { strips, strip: usual.bindingStripIn, width: usableIn }
    const values = { quilts: alike, length: lengthIn, ...strip, yards: quantity }
    return atPrice(cloth.binding_per_yard, quantity, [{ code: 'binding', values }])
  })

const threadLine = (choices: Choices, rates: Rates): Line =>
  quiltLine(choices, { code: 'thread', unit: 'spool' }, ({ finished, seamsIn }, alike) => {
    const { piecingM, quiltingM, bindingM, threadM } = thread(finished, seamsIn)
    const { spool_m, price_per_spool } = rates.thread
    const inAll = (metres: number) => Math.round(metres * alike)
    const metres = Math.ceil(threadM * alike)
    const spools = Math.ceil(metres / spool_m)
    const values = {
      piecing: inAll(piecingM),
      quilting: inAll(quiltingM),
      binding: inAll(bindingM),
      metres,
      spools,
      spool: spool_m,
    }
    return atPrice(price_per_spool, spools, [{ code: 'thread', values }])
  })

/** Every line of materials over all that may be, and what interfacing and bought cloth weigh. */
export function materialLines(choices: Choices, rates: Rates, supply: Supply) {
  const behind = interfacing(choices, rates, supply)
  const bought = topUp(choices, rates, supply)
  const lines: Line[] = [
    behind.line,
    bought.line,
    backingLine(choices, rates),
    battingLine(choices, rates),
    bindingLine(choices, rates),
    threadLine(choices, rates),
  ]
  return { lines, grams: sum([behind.grams, bought.grams]) }
}
