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
const spareC = 10

/** What the tables say of a garment's pressing, before it is put together. */
export interface Findings {
  readonly ceilingC: number | null
  readonly setBy: Setter
  /** The most that may be done, heat apart. */
  readonly most: Method
  /** The cloth wants something behind it. */
  readonly holds: boolean
  readonly wantsTest: boolean
}

type Decides = Pick<Knowledge, 'decide'>

/** The lowest limit of all that apply. No iron at all is lower than any figure. */
export function ceilingOf(facts: Facts, { decide }: Decides): Pick<Findings, 'ceilingC' | 'setBy'> {
  const limits = decide('limits', facts).map(({ give }) => ({
    ceilingC: give.limitC as number | null,
    setBy: give.setBy as Setter,
  }))
  return limits.reduce((lowest, limit) =>
    (limit.ceilingC ?? 0) < (lowest.ceilingC ?? 0) ? limit : lowest,
  )
}

export const mostOf = (facts: Facts, { decide }: Decides): Method =>
  decide('permit', facts)[0]!.give.most as Method

export const wantsHold = (facts: Facts, { decide }: Decides): boolean =>
  decide('backing', facts)[0]!.give.holds === true

export const wantsTest = (facts: Facts, { decide }: Decides): boolean =>
  decide('testing', facts)[0]!.give.testFirst === true

const rank = (method: Method): number => methods.indexOf(method)

/** The gentlest class of interfacing that bonds under the ceiling; a firm bond before a cool one. */
function interfacingFor(
  { most, ceilingC }: Findings,
  weight: Facts['weight'],
  classes: readonly Interfacing[],
): Interfacing | undefined {
  const suits = (it: Interfacing): number => (it.weights.includes(weight) ? 0 : 1)
  return classes
    .filter((it) => rank(it.method) <= rank(most) && it.soleC + spareC <= (ceilingC ?? 0))
    .toSorted(
      (a, b) => rank(b.method) - rank(a.method) || suits(a) - suits(b) || a.soleC - b.soleC,
    )[0]
}

/** The plan that follows from the tables' findings. Never hotter than any limit. */
export function planFrom(
  found: Findings,
  weight: Facts['weight'],
  classes: readonly Interfacing[],
): Omit<PressPlan, 'cautions'> {
  const interfacing = found.holds ? interfacingFor(found, weight, classes) : undefined
  const method = found.ceilingC === null ? 'do-not-press' : (interfacing?.method ?? 'press')
  return {
    method,
    backing: !found.holds ? 'none' : interfacing ? 'fused' : 'sewn-in',
    interfacing: interfacing?.class ?? null,
    ceilingC: found.ceilingC,
    setBy: found.setBy,
    testFirst: method === 'fuse-cool' || found.wantsTest,
  }
}

/** Whether and how the garment may be pressed, what holds its cloth, and what to mind. */
export function pressPlan(facts: Facts, recipient: Recipient, knowledge: Knowledge): PressPlan {
  const found: Findings = {
    ...ceilingOf(facts, knowledge),
    most: mostOf(facts, knowledge),
    holds: wantsHold(facts, knowledge),
    wantsTest: wantsTest(facts, knowledge),
  }
  const ceiling = found.ceilingC ?? 0
  const cautions = knowledge.decide('cautions', { ...facts, recipient, ceiling })
  return {
    ...planFrom(found, facts.weight, knowledge.interfacings),
    cautions: [...new Set(cautions.map(({ give }) => give.code as string))],
  }
}
