import type { Facts, Recipient } from './facts.ts'

/** Whether a step belongs to a garment that is taken apart for somebody. */
export type When = (facts: Facts, recipient: Recipient) => boolean

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

export const hasGraphic = either(not(has('graphic', 'none')), has('pattern', 'single'))
export const mayBeFilled = has('weight', 'padded', 'unknown')

/** Ties are cut on the bias and often acetate without a label. Common practice, no source. */
export const mayGetWet = both(
  not(has('kind', 'tie')),
  not(has('wash', 'never')),
  has('age', 'modern'),
)

/** Cloth that stretches, is thin or frays wants something behind it. Common practice, no source. */
export const wantsHold = either(
  has('kind', 'tie', 'jumper'),
  has('stretch', 'much', 'two-way', 'bias', 'unknown'),
  not(has('wear', 'sound')),
  has('surface', 'knit', 'loose-knit', 'unknown'),
  has('weight', 'fine', 'unknown'),
  both(has('stretch', 'little'), not(has('weight', 'heavy'))),
)

/** What runs or gives way under the blade is held while it is still whole. */
export const holdsFirst = either(
  has('kind', 'jumper'),
  has('surface', 'loose-knit', 'unknown'),
  not(has('wear', 'sound')),
)

/** Nothing known forbids glue and a warm iron; how hot, and whether at all, the work sheet says. */
export const mayBeWarmed = both(
  has('heat', 'hot', 'warm', 'cool'),
  not(has('iron', 'none')),
  not(has('printMake', 'film', 'unknown')),
  has('trims', 'none', 'removable'),
  has('surface', 'woven', 'knit', 'loose-knit'),
  has('age', 'modern', 'old'),
  has('wear', 'sound', 'thin', 'holes'),
  not(has('test', 'failed')),
)
