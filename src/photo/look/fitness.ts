import { type Fault, faults } from './looked.ts'
import { type Net, runner } from './net.ts'
import { softmax } from './read-print.ts'

/** A fault is told where the net thinks it likelier than this: read off photos that it had not learnt from. */
const told: Readonly<Record<Fault, number>> = {
  blurred: 0.2,
  dark: 0.2,
  bright: 0.2,
  'cut-off': 0.1,
  'too-small': 0.1,
  'no-garment': 0.1,
}

export interface Fitness {
  readonly problems: readonly Fault[]
  /** Whether there is so surely no garment that nothing is read. */
  readonly empty: boolean
}

/** No garment is told early and kindly; what is read is thrown away only where that is surer. */
const surelyEmpty = 0.6

/** The faults of a photo by its signs; the net's first output says that it is sound. */
export function fitnessBy(signs: readonly number[], net: Net): Fitness {
  const [, ...shares] = softmax(runner(net)(signs))
  return {
    problems: faults.filter((fault, n) => shares[n]! > told[fault]),
    empty: shares[faults.indexOf('no-garment')]! > surelyEmpty,
  }
}
