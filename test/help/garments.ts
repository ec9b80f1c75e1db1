import { type Facts, untold } from '../../src/garment/facts.ts'

/** A flannel shirt: clean, washed, modern, whole, with every question answered. */
export const plainShirt: Facts = {
  ...untold,
  kind: 'button-shirt',
  heat: 'hot',
  iron: 'warm',
  surface: 'woven',
  stretch: 'none',
  weight: 'medium',
  wear: 'sound',
  age: 'modern',
  pattern: 'stripe-check',
  oneWay: 'no',
  printMake: 'in-cloth',
  graphic: 'none',
  trims: 'removable',
  soil: 'clean',
  wash: 'washed',
  consent: 'yes',
  yield: 'enough',
}
