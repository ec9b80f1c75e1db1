import { Failure } from '../base/failures.ts'
import { times } from '../base/money.ts'
import { inchesPerFoot, inchesPerYard } from '../base/units.ts'
import type { Choices, GarmentChoices, Hold } from './choices.ts'
import { type Counted, type Line, onePrice, range, sum, type Working } from './lines.ts'
import type { Rates } from './rates.ts'
import type { Wish } from './wish.ts'

/** A line that every quilt has, counted for all that are alike. */
export function quiltLine(
  { quilts, alike }: Choices,
  line: Pick<Line, 'code' | 'unit'>,
  of: (quilt: Wish, alike: number) => Counted,
): Line {
  const counted = quilts.map((quilt) => of(quilt, alike))
  return {
    ...line,
    ...counted[0]!,
    ...range(counted.map(({ likely }) => likely)),
    because: ['layout', 'size'],
  }
}

/** So much at a price each. */
export const atPrice = (
  price: number,
  quantity: number,
  workings: readonly Working[],
): Counted => ({ likely: times(price, quantity), quantity, unitPriceMinor: price, workings })

const likelyUsed = ({ garments }: Choices): GarmentChoices[] =>
  garments.filter(({ used }) => used[0])

/** What taking these garments apart comes to. */
export function teardownOf(
  garments: readonly Pick<GarmentChoices, 'kind'>[],
  { teardown }: Rates,
): Counted {
  const prices = garments.map(({ kind }) => teardown[kind])
  return {
    likely: prices.reduce((total, price) => total + price, 0),
    quantity: garments.length,
    unitPriceMinor: onePrice(prices),
    workings: [],
  }
}

const teardownLine = (choices: Choices, rates: Rates): Line => ({
  code: 'teardown',
  unit: 'garment',
  ...teardownOf(likelyUsed(choices), rates),
  ...sum(
    choices.garments.map(({ kind, used }) =>
      range(used.map((isUsed) => (isUsed ? rates.teardown[kind] : 0))),
    ),
  ),
  because: ['kind'],
})

const holdPrice = ({ backing: kind }: Hold, { stabilising }: Rates): number =>
  kind === 'none' ? 0 : stabilising[kind]

/** What backing these garments' cloth comes to, the backing itself apart. */
export function stabilisingOf(
  garments: readonly Pick<GarmentChoices, 'holds'>[],
  rates: Rates,
): Counted {
  const prices = garments
    .map(({ holds }) => holds[0]!)
    .filter(({ backing }) => backing !== 'none')
    .map((hold) => holdPrice(hold, rates))
  return {
    likely: prices.reduce((total, price) => total + price, 0),
    quantity: prices.length,
    unitPriceMinor: onePrice(prices),
    workings: [],
  }
}

const stabilisingLine = (choices: Choices, rates: Rates): Line => ({
  code: 'stabilising',
  unit: 'garment',
  ...stabilisingOf(likelyUsed(choices), rates),
  ...sum(
    choices.garments.map(({ used, holds }) =>
      range(used.flatMap((isUsed) => holds.map((hold) => (isUsed ? holdPrice(hold, rates) : 0)))),
    ),
  ),
  because: ['stretch', 'wear', 'surface', 'weight', 'heat'],
})

/** What sewing so many pieces of a layout comes to. */
export function piecingOf({ layout }: Wish, pieces: number, { piecing, labour }: Rates): Counted {
  const factor = piecing[layout.id]
  if (factor === undefined)
    throw new Failure('flows_invalid', {
      file: 'rates',
      line: 1,
      why: `no price for the piecing of ${layout.id}`,
    })
  const workings: Working[] = factor === 1 ? [] : [{ code: 'piecing', values: { factor } }]
  return atPrice(times(labour.sew_per_piece, factor), pieces, workings)
}

/** Every line of work, over all that may be. */
export function workLines(choices: Choices, rates: Rates): Line[] {
  const { labour } = rates
  return [
    teardownLine(choices, rates),
    stabilisingLine(choices, rates),
    quiltLine(choices, { code: 'cutting', unit: 'piece' }, ({ pieces }, alike) =>
      atPrice(labour.cut_per_piece, pieces * alike, [
        { code: 'pieces', values: { pieces: pieces * alike } },
      ]),
    ),
    quiltLine(choices, { code: 'piecing', unit: 'piece' }, (quilt, alike) =>
      piecingOf(quilt, quilt.pieces * alike, rates),
    ),
    quiltLine(choices, { code: 'quilting', unit: 'square-foot' }, ({ finished }, alike) => {
      const { w, h } = finished
      const feet = Math.ceil((w * h) / inchesPerFoot ** 2) * alike
      const working: Working = { code: 'area', values: { quilts: alike, w, h, feet } }
      return atPrice(labour.quilt_per_square_foot, feet, [working])
    }),
    quiltLine(choices, { code: 'finishing', unit: 'yard' }, ({ finished }, alike) => {
      const { w, h } = finished
      const yards = Math.ceil((2 * (w + h)) / inchesPerYard) * alike
      const working: Working = { code: 'edge', values: { quilts: alike, w, h, yards } }
      return atPrice(labour.bind_per_yard, yards, [working])
    }),
  ]
}
