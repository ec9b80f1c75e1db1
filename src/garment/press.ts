import type { Facts, Recipient } from './facts.ts'
import type { Interfacing, Knowledge } from './knowledge.ts'

export const methods = ['do-not-press', 'press', 'fuse-cool', 'fuse'] as const
export type Method = (typeof methods)[number]

export const setters = ['label', 'fibre', 'print', 'trims', 'surface', 'age', 'wear'] as const
export type Setter = (typeof setters)[number]

export interface PressPlan {
  readonly method: Method
  readonly backing: 'fused' | 'sewn-in' | 'none'
  /** The class of interfacing; null where nothing is fused. */
  readonly interfacing: string | null
  /** The hottest sole plate in °C; null where no iron may touch the cloth. */
  readonly ceilingC: number | null
  readonly setBy: Setter
  readonly cautions: readonly string[]
  readonly testFirst: boolean
}

/** The sole must stay this far under the ceiling while it fuses: a dial is not a thermometer. */
export const spareC = 10

interface Ceiling {
  readonly ceilingC: number | null
  readonly setBy: Setter
}

/** The lowest limit of all that apply. No iron at all is lower than any figure. */
export function ceilingOf(facts: Facts, { decide }: Pick<Knowledge, 'decide'>): Ceiling {
  const limits = decide('limits', facts).map(({ give }) => ({
    ceilingC: give.limitC as number | null,
    setBy: give.setBy as Setter,
  }))
  return limits.reduce((lowest, limit) =>
    (limit.ceilingC ?? 0) < (lowest.ceilingC ?? 0) ? limit : lowest,
  )
}

const rank = (method: Method): number => methods.indexOf(method)

/** The gentlest class of interfacing that bonds under the ceiling; a firm bond before a cool one. */
function interfacingFor(
  facts: Facts,
  most: Method,
  ceilingC: number,
  classes: readonly Interfacing[],
): Interfacing | undefined {
  const suits = (it: Interfacing): number => (it.weights.includes(facts.weight) ? 0 : 1)
  return classes
    .filter((it) => rank(it.method) <= rank(most) && it.soleC + spareC <= ceilingC)
    .toSorted(
      (a, b) => rank(b.method) - rank(a.method) || suits(a) - suits(b) || a.soleC - b.soleC,
    )[0]
}

function bondOf(facts: Facts, ceilingC: number, { decide, interfacings }: Knowledge) {
  const holds = decide('backing', facts)[0]!.give.holds === true
  const most = decide('permit', facts)[0]!.give.most as Method
  const interfacing = holds ? interfacingFor(facts, most, ceilingC, interfacings) : undefined
  return {
    interfacing,
    backing: !holds ? 'none' : interfacing ? 'fused' : 'sewn-in',
  } as const
}

/** Whether and how the garment may be pressed, and what holds its cloth. Never hotter than any limit. */
export function pressPlan(facts: Facts, recipient: Recipient, knowledge: Knowledge): PressPlan {
  const { ceilingC, setBy } = ceilingOf(facts, knowledge)
  const { interfacing, backing } = bondOf(facts, ceilingC ?? 0, knowledge)
  const method = ceilingC === null ? 'do-not-press' : (interfacing?.method ?? 'press')
  const found = knowledge.decide('cautions', { ...facts, recipient, ceiling: ceilingC ?? 0 })
  return {
    method,
    backing,
    interfacing: interfacing?.class ?? null,
    ceilingC,
    setBy,
    cautions: [...new Set(found.map(({ give }) => give.code as string))],
    testFirst:
      method === 'fuse-cool' || knowledge.decide('testing', facts)[0]!.give.testFirst === true,
  }
}
