import type { Facts, Size } from '../garment/facts.ts'
import { type Panel, panelsOf } from '../garment/panels.ts'
import { yieldFact } from '../quilt/yield.ts'

export interface Cloth {
  readonly panels: readonly Panel[]
  readonly yield: Facts['yield']
}

// Every answer derives every garment again; what cloth one gives hangs on three small facts.
const known = new Map<string, Cloth>()

/** The panels a garment gives, and whether they are enough to be worth sending. */
export function clothOf(kind: Facts['kind'], size: Size, wear: Facts['wear']): Cloth {
  const key = `${kind} ${size} ${wear}`
  const before = known.get(key)
  if (before) return before
  const cloth = {
    panels: panelsOf(kind, size, { wear }),
    yield: yieldFact(kind, size, { wear }),
  }
  known.set(key, cloth)
  return cloth
}
