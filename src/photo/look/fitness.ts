import { type Fault, faults } from './looked.ts'
import { type Net, runner } from './net.ts'
import { softmax } from './read-print.ts'

/** A fault is told where the nets think it likelier than this: read off photos that it had not learnt from. */
const told: Readonly<Record<Fault, number>> = {
  blurred: 0.15,
  dark: 0.12,
  bright: 0.2,
  'cut-off': 0.1,
  'too-small': 0.12,
  'no-garment': 0.2,
}

/** What is seen of a photo beside its signs. */
export interface Plain {
  /** Most of it, or of what was outlined, has the sensor's last codes. */
  readonly burnt: boolean
  /** What was outlined reaches the picture's edge. */
  readonly atEdge: boolean
}

export interface Fitness {
  readonly problems: readonly Fault[]
  /** Whether there is so surely no garment that nothing is read. */
  readonly empty: boolean
}

/** No garment is told early and kindly; what is read is thrown away only where that is surer. */
const surelyEmpty = 0.85

/**
 * The faults of a photo by its signs; each net's first output says that it is sound, and their mean counts. None that
 * is not burnt out is too bright: the nets alone take white things on a dark ground for that. Where no garment is told
 * and something reaches the edge, it may be half of one: that is told too.
 */
export function fitnessBy(
  signs: readonly number[],
  { burnt, atEdge }: Plain,
  nets: readonly Net[],
): Fitness {
  const each = nets.map((net) => softmax(runner(net)(signs)).slice(1))
  const shares = faults.map((_, n) => each.reduce((sum, one) => sum + one[n]!, 0) / nets.length)
  const seen = (fault: Fault): boolean => shares[faults.indexOf(fault)]! > told[fault]
  return {
    problems: faults.filter((fault) => {
      if (fault === 'bright') return burnt && seen(fault)
      return seen(fault) || (fault === 'cut-off' && atEdge && seen('no-garment'))
    }),
    empty: shares[faults.indexOf('no-garment')]! > surelyEmpty,
  }
}
