import type { Facts, Recipient } from './facts.ts'
import type { Point, Value } from './space.ts'

/** A firm cotton shirt, whole, clean and washed, with nothing on it: nothing is said against it. */
const shirt: Facts = {
  kind: 'button-shirt',
  heat: 'hot',
  iron: 'hot',
  labelDoubt: 'no',
  surface: 'woven',
  stretch: 'none',
  weight: 'medium',
  wear: 'sound',
  age: 'modern',
  pattern: 'solid',
  oneWay: 'no',
  printMake: 'none',
  graphic: 'none',
  trims: 'none',
  soil: 'clean',
  wash: 'washed',
  bleed: 'fast',
  consent: 'yes',
  test: 'none',
  yield: 'enough',
}

const recipient: Recipient = 'adult'

/** The garment that counter-examples are told against: they name where theirs differs from it. */
export const ordinary: Point = { ...shirt, recipient, wish: 'undecided' }

/** Whether a column's values leave the ordinary one out. A column that is no fact never departs. */
export const departs = (column: string, values: readonly Value[]): boolean =>
  ordinary[column] !== undefined && !values.includes(ordinary[column])

/** What is not as in the ordinary garment, in the order of the facts. */
export const departures = (point: Point): Point =>
  Object.fromEntries(
    Object.keys(ordinary)
      .filter((column) => point[column] !== ordinary[column])
      .map((column) => [column, point[column]!]),
  )
