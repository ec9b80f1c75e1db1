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
  'no-garment': 0.08,
}

/** The faults of a photo by its signs; the net's first output says that it is sound. */
export function faultsBy(signs: readonly number[], net: Net): Fault[] {
  const [, ...shares] = softmax(runner(net)(signs))
  return faults.filter((fault, n) => shares[n]! > told[fault])
}
