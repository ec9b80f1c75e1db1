import { type Figure, practice } from '../base/figure.ts'
import type { Facts, Recipient } from './facts.ts'
import type { Decision, Interfacing, Knowledge } from './knowledge.ts'

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

/**
 * The sole must stay this far under the ceiling while it fuses, °C: a dial is not a thermometer.
 * Common practice, no source.
 */
export const spareC = 10

export const pressFigures: readonly Figure[] = [
  { figure: 'press/spare under the ceiling', value: spareC, unit: '°C', source: practice },
]

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

const limitOf = ({ give }: Decision): number | null => give.limitC as number | null

/** The row that sets the ceiling: no iron at all is lower than any figure; of equals the upper one. */
export const lowest = (limits: readonly Decision[]): Decision =>
  limits.reduce((low, limit) => ((limitOf(limit) ?? 0) < (limitOf(low) ?? 0) ? limit : low))

/** The lowest limit of all that apply. */
export function ceilingOf(facts: Facts, { decide }: Decides): Pick<Findings, 'ceilingC' | 'setBy'> {
  const row = lowest(decide('limits', facts))
  return { ceilingC: limitOf(row), setBy: row.give.setBy as Setter }
}

export const mostOf = (facts: Facts, { decide }: Decides): Method =>
  decide('permit', facts)[0]!.give.most as Method

export const wantsHold = (facts: Facts, { decide }: Decides): boolean =>
  decide('backing', facts)[0]!.give.holds === true

export const wantsTest = (facts: Facts, { decide }: Decides): boolean =>
  decide('testing', facts)[0]!.give.testFirst === true

const rank = (method: Method): number => methods.indexOf(method)

/** Whether a class asks for no more than may be done, and whether its sole stays under the ceiling. */
export const isPermitted = (it: Interfacing, most: Method): boolean => rank(it.method) <= rank(most)
export const isCoolEnough = ({ soleC }: Interfacing, ceilingC: number | null): boolean =>
  soleC + spareC <= (ceilingC ?? 0)
export const suitsWeight = ({ weights }: Interfacing, weight: Facts['weight']): boolean =>
  weights.includes(weight)

/** The gentlest class of interfacing that bonds under the ceiling; a firm bond before a cool one. */
function interfacingFor(
  { most, ceilingC }: Findings,
  weight: Facts['weight'],
  classes: readonly Interfacing[],
): Interfacing | undefined {
  const suits = (it: Interfacing): number => (suitsWeight(it, weight) ? 0 : 1)
  return classes
    .filter((it) => isPermitted(it, most) && isCoolEnough(it, ceilingC))
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
