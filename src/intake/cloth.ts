import type { Facts, Size } from '../garment/facts.ts'
import { type Panel, panelsOf } from '../garment/panels.ts'
import type { Spot } from '../garment/spots.ts'
import { yieldFact } from '../quilt/yield.ts'

export interface Cloth {
  readonly panels: readonly Panel[]
  readonly yield: Facts['yield']
}

// Every answer derives every garment again; what cloth one gives hangs on three small facts.
const known = new Map<string, Cloth>()

/** The panels a garment gives, less what is marked on it, and whether they are enough to be worth sending. */
export function clothOf(
  kind: Facts['kind'],
  size: Size,
  wear: Facts['wear'],
  spots: readonly Spot[] = [],
): Cloth {
  // What is marked is of one garment alone, and few are.
  if (spots.length > 0) return counted(kind, size, wear, spots)
  const key = `${kind} ${size} ${wear}`
  const before = known.get(key)
  if (before) return before
  const cloth = counted(kind, size, wear, [])
  known.set(key, cloth)
  return cloth
}

const counted = (
  kind: Facts['kind'],
  size: Size,
  wear: Facts['wear'],
  spots: readonly Spot[],
): Cloth => ({
  panels: panelsOf(kind, size, { wear }, spots),
  yield: yieldFact(kind, size, { wear }, spots),
})
