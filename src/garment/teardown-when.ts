import type { Facts, Recipient } from './facts.ts'
import type { PressPlan } from './press.ts'

/** What the bench needs of a garment's press plan. */
export type BenchPlan = Pick<PressPlan, 'method' | 'backing' | 'ceilingC' | 'testFirst'>

/** Whether a step belongs to a garment that is taken apart for somebody and pressed by a plan. */
export type When = (facts: Facts, recipient: Recipient, press: BenchPlan) => boolean

/** One of these values of one fact. */
export const has =
  <K extends keyof Facts>(fact: K, ...values: readonly Facts[K][]): When =>
  (facts) =>
    values.includes(facts[fact])

export const either =
  (...some: readonly When[]): When =>
  (...about) =>
    some.some((when) => when(...about))

export const both =
  (...all: readonly When[]): When =>
  (...about) =>
    all.every((when) => when(...about))

export const not =
  (when: When): When =>
  (...about) =>
    !when(...about)

/** An untold recipient may be a small child. */
export const forSmallChild: When = (_, recipient) => !['adult', 'child'].includes(recipient)

export const forGrownUp: When = (_, recipient) => recipient === 'adult'

export const hasGraphic = either(not(has('graphic', 'none')), has('pattern', 'single'))
export const mayBeFilled = has('weight', 'padded', 'unknown')

/** Ties are cut on the bias and often acetate without a label. Common practice, no source. */
export const mayGetWet = both(
  not(has('kind', 'tie')),
  not(has('wash', 'never')),
  has('age', 'modern'),
)

export const isFused: When = (_facts, _recipient, { backing }) => backing === 'fused'
const sewnIn: When = (_facts, _recipient, { backing }) => backing === 'sewn-in'

/** Ties and jumpers are held even where the plan asks for nothing. Common practice, no source. */
const alwaysHeld = has('kind', 'tie', 'jumper')

/** What runs or gives way under the blade is held while it is still whole. */
const holdsFirst = either(has('kind', 'jumper'), has('surface', 'loose-knit', 'unknown'))

/** Thin spots and holes tear on while seams are opened, so each is held by a patch before. */
export const isWorn = not(has('wear', 'sound'))

const sews: When = either(sewnIn, both(alwaysHeld, not(isFused)))

export const fusesFirst = both(isFused, holdsFirst)
export const fusesLater = both(isFused, not(holdsFirst))
export const sewsFirst = both(sews, holdsFirst)
export const sewsLater = both(sews, not(holdsFirst))

/** A test comes first, none has been made, and an iron may touch the cloth at all. */
export const wantsTest: When = ({ test }, _recipient, { testFirst, ceilingC }) =>
  testFirst && test === 'none' && ceilingC !== null
