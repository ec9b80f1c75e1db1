import { times } from '../base/money.ts'
import type { Choices, GarmentChoices } from './choices.ts'
import { type Counted, type LineCode, onePrice, type Working } from './lines.ts'
import { boughtGrams, type Roll, rollGrams, rollOf } from './material-lines.ts'
import { yards } from './materials.ts'
import { addedGrams, backOf, garmentGrams } from './post-lines.ts'
import type { Rates } from './rates.ts'
import { rollLength, roughCut, roughCutIn } from './roll.ts'
import type { Settled } from './settled.ts'
import { atPrice, piecingOf, stabilisingOf, teardownOf } from './work-lines.ts'

type Likely = Pick<Choices, 'garments' | 'quilts' | 'alike'>

interface Packed extends Roll {
  readonly pieces: number
  readonly lengthIn: number
  readonly yards: number
}

/** The garments that a plan cuts. */
function usedBy({ pieces }: Settled, { garments }: Likely): GarmentChoices[] {
  const used = new Set(pieces.map(({ garment }) => garment))
  const known = new Set(garments.map(({ n }) => n))
  for (const n of used) {
    if (!known.has(n)) throw new RangeError(`the plan cuts garment ${n}, which is not in the pile`)
  }
  return garments.filter(({ n }) => used.has(n))
}

/** Interfacing for just the pieces that are backed, each class packed on its own roll. */
function packed({ pieces }: Settled, used: readonly GarmentChoices[], rates: Rates): Packed[] {
  const backed = used
    .filter(({ holds }) => holds[0]!.backing !== 'none')
    .map(({ n, holds }) => ({ n, roll: rollOf(holds[0]!, rates) }))
  return [...new Set(backed.map(({ roll }) => roll.class))].map((name) => {
    const behind = backed.filter(({ roll }) => roll.class === name)
    const { roll } = behind[0]!
    const numbers = new Set(behind.map(({ n }) => n))
    const own = pieces.filter(({ garment }) => numbers.has(garment))
    const cut = own.map(({ size, count }) => ({ size: roughCut(size), count }))
    const lengthIn = rollLength(cut, roll.width_in)
    const count = own.reduce((total, one) => total + one.count, 0)
    return { ...roll, pieces: count, lengthIn, yards: yards(lengthIn) }
  })
}

function interfacingOf(rolls: readonly Packed[]): Counted {
  return {
    likely: rolls.reduce((total, roll) => total + times(roll.price_per_yard, roll.yards), 0),
    quantity: rolls.reduce((total, roll) => total + roll.yards, 0),
    unitPriceMinor: onePrice(rolls.map(({ price_per_yard }) => price_per_yard)),
    workings: rolls.map((roll) => ({
      code: 'roll',
      values: {
        roll: roll.class ?? 'sewn-in',
        pieces: roll.pieces,
        over: roughCutIn,
        width: roll.width_in,
        length: roll.lengthIn,
        yards: roll.yards,
      },
    })),
  }
}

function clothOf({ cloth }: Settled, quilts: number, price: number): Counted {
  const quantity = cloth.reduce((total, one) => total + one.yards, 0)
  const workings = cloth.map(({ role, quilt, pieces, lengthIn, yards: bought }): Working => {
    const own = { quilts, quilt: quilt + 1, role }
    return { code: 'cloth', values: { ...own, pieces, length: lengthIn, yards: bought } }
  })
  return atPrice(price, quantity, workings)
}

const countOf = (all: readonly { count: number }[]): number =>
  all.reduce((total, { count }) => total + count, 0)

/** The lines that a plan settles, as it settles them. `likely` has one choice of everything. */
export function plannedLines(
  likely: Likely,
  settled: Settled,
  rates: Rates,
): ReadonlyMap<LineCode, Counted> {
  const used = usedBy(settled, likely)
  const given = countOf(settled.pieces)
  const bought = settled.cloth.reduce((total, { pieces }) => total + pieces, 0)
  const pieces = given + bought
  const rolls = packed(settled, used, rates)
  const cloth = clothOf(settled, likely.alike, rates.cloth.top_up_per_yard)
  const added =
    addedGrams(likely, rates).likely +
    boughtGrams(cloth.quantity, rates) +
    rolls.reduce((total, roll) => total + rollGrams(roll.yards, roll, rates), 0)
  return new Map<LineCode, Counted>([
    ['teardown', teardownOf(used, rates)],
    ['stabilising', stabilisingOf(used, rates)],
    [
      'cutting',
      atPrice(rates.labour.cut_per_piece, pieces, [
        { code: 'pieces-planned', values: { given, bought } },
      ]),
    ],
    ['piecing', piecingOf(likely.quilts[0]!, pieces, rates)],
    ['interfacing', interfacingOf(rolls)],
    ['top-up', cloth],
    ['post-back', backOf(garmentGrams(likely).likely, added, rates)],
  ])
}
