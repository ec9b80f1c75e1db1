import type { Choices } from './choices.ts'
import { type Counted, type Line, mapped, type Range, range, sum } from './lines.ts'
import { binding, usual } from './materials.ts'
import { clothGrams, parcelsFor } from './parcels.ts'
import type { Rates } from './rates.ts'
import type { Wish } from './wish.ts'

/** What the garments weigh that are posted, grams. */
export const garmentGrams = ({ garments }: Choices): Range =>
  sum(
    garments.map(({ used, grams }) =>
      range(used.flatMap((isUsed) => grams.map((each) => (isUsed ? each : 0)))),
    ),
  )

/** What a quilt's back, batting and binding weigh, grams. */
function linedGrams({ finished }: Wish, { cloth, weights_g_per_m2 }: Rates): number {
  const { lengthIn } = binding(finished, { usableIn: cloth.usable_width_in })
  const area = finished.w * finished.h
  return (
    clothGrams(area + lengthIn * usual.bindingStripIn, weights_g_per_m2.cloth) +
    clothGrams(area, weights_g_per_m2.batting)
  )
}

/** The likely price of the way here. */
export function thereOf(grams: number, rates: Rates): Counted {
  const { count, priceMinor } = parcelsFor(grams, rates)
  return {
    likely: priceMinor,
    quantity: count,
    unitPriceMinor: count === 1 ? priceMinor : null,
    workings: [{ code: 'post-there', values: { grams: Math.round(grams) } }],
  }
}

/** The likely price of the way home: all that came, in the quilt or left over, and all that was added. */
export function backOf(came: number, added: number, rates: Rates): Counted {
  const values = { came: Math.round(came), added: Math.round(added) }
  return { ...thereOf(came + added, rates), workings: [{ code: 'post-back', values }] }
}

/** Grams of what is sewn to the garments' cloth, but for interfacing and bought cloth, in all quilts. */
export const addedGrams = ({ quilts, alike }: Choices, rates: Rates): Range =>
  range(quilts.map((quilt) => linedGrams(quilt, rates) * alike))

/** Postage both ways, over all that may be. `materials`: grams of interfacing and bought cloth. */
export function postLines(choices: Choices, materials: Range, rates: Rates): Line[] {
  const came = garmentGrams(choices)
  const added = sum([materials, addedGrams(choices, rates)])
  const priced = (grams: Range) => mapped(grams, (one) => parcelsFor(one, rates).priceMinor)
  return [
    {
      code: 'post-there',
      unit: 'parcel',
      ...thereOf(came.likely, rates),
      ...priced(came),
      because: ['kind', 'size'],
    },
    {
      code: 'post-back',
      unit: 'parcel',
      ...backOf(came.likely, added.likely, rates),
      ...priced(sum([came, added])),
      because: ['kind', 'size', 'layout'],
    },
  ]
}
