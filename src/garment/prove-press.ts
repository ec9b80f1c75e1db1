import { domains, type FactName, type Facts, scales, untold } from './facts.ts'
import type { Knowledge } from './knowledge.ts'
import { type Claim, keepsPress, type Scaled, type Shown, shown } from './must-hold.ts'
import { ceilingOf, methods, mostOf, planFrom, wantsHold, wantsTest } from './press.ts'
import { type Row, rowsOf, type TableSet } from './space.ts'

/** Proofs about pressing: every combination of the facts that its tables and the claim tell apart. */

/** Each finding with the table it comes from. */
const parts = {
  limits: ceilingOf,
  permit: mostOf,
  backing: wantsHold,
  testing: wantsTest,
} as const

type Part = keyof typeof parts

/** A column with one value of each class that no cell and no claim tells apart. */
interface Axis {
  readonly name: FactName
  readonly values: readonly string[]
}

const bonding: readonly Part[] = ['limits', 'permit', 'backing']

/** The tables that decide what a claim speaks of. */
function partsOf({ while: premise, must }: Claim): readonly Part[] {
  if (must.tests_first) return [...bonding, 'testing']
  const bonds = premise ?? must.method ?? must.backing ?? must.spare_c
  return bonds === undefined ? ['limits'] : bonding
}

function axesOf(
  asked: readonly Part[],
  claim: Claim | null,
  set: TableSet,
  { interfacings }: Knowledge,
): Axis[] {
  const cells = (name: string) =>
    asked.flatMap((part) =>
      rowsOf(set, part).flatMap(({ when }) => (when[name] === undefined ? [] : [when[name]])),
    )
  const signature = (name: FactName, value: string): string =>
    [
      ...cells(name).map((cell) => set.matches(cell, value)),
      ...(claim?.when ?? []).map((when) => when[name]?.includes(value) ?? true),
      ...(name === 'weight' && asked.includes('backing')
        ? interfacings.map(({ weights }) => weights.includes(value as Facts['weight']))
        : []),
    ].join()
  return (Object.keys(domains) as FactName[])
    .map((name) => {
      const classes = new Map<string, string>()
      for (const value of domains[name]) {
        const key = signature(name, value)
        if (!classes.has(key)) classes.set(key, value)
      }
      return { name, values: [...classes.values()] }
    })
    .filter(({ values }) => values.length > 1)
}

/**
 * A table decided once for each combination of the axes it reads. Answers are numbered, the equal
 * ones alike: a walk passes a million combinations, and comparing numbers made it thirty times faster.
 */
interface Remembered<T> {
  readonly numberOf: (facts: Facts, places: readonly number[]) => number
  readonly answers: readonly T[]
}

function remembered<T>(rules: readonly Row[], axes: readonly Axis[], ask: (facts: Facts) => T) {
  const read = axes.flatMap(({ name, values }, at) =>
    rules.some(({ when }) => when[name] !== undefined) ? [{ at, size: values.length }] : [],
  )
  const known: (number | undefined)[] = []
  const answers: T[] = []
  const numbers = new Map<string, number>()
  const numbered = (answer: T): number => {
    const text = JSON.stringify(answer)
    const number = numbers.get(text) ?? answers.push(answer) - 1
    numbers.set(text, number)
    return number
  }
  const numberOf = (facts: Facts, places: readonly number[]): number => {
    let key = 0
    for (const { at, size } of read) key = key * size + places[at]!
    const number = known[key] ?? numbered(ask(facts))
    known[key] = number
    return number
  }
  return { numberOf, answers } satisfies Remembered<T>
}

/** The plan of each combination, made once for each that differs in a finding or in weight. */
function planner(axes: readonly Axis[], set: TableSet, knowledge: Knowledge) {
  const of = <T>(part: Part, ask: (facts: Facts, k: Knowledge) => T): Remembered<T> =>
    remembered(rowsOf(set, part), axes, (facts) => ask(facts, knowledge))
  const limits = of('limits', parts.limits)
  const permit = of('permit', parts.permit)
  const backing = of('backing', parts.backing)
  const testing = of('testing', parts.testing)
  const weightAt = axes.findIndex(({ name }) => name === 'weight')
  const plans: (Shown | undefined)[] = []
  return (facts: Facts, places: readonly number[]): Shown => {
    const limit = limits.numberOf(facts, places)
    const most = permit.numberOf(facts, places)
    const holds = backing.numberOf(facts, places)
    const test = testing.numberOf(facts, places)
    const weight = weightAt < 0 ? 0 : places[weightAt]!
    const key = (((limit * methods.length + most) * 2 + holds) * 2 + test) * 8 + weight
    plans[key] ??= shown(
      planFrom(
        {
          ...limits.answers[limit]!,
          most: permit.answers[most]!,
          holds: backing.answers[holds]!,
          wantsTest: testing.answers[test]!,
        },
        facts.weight,
        knowledge.interfacings,
      ),
      knowledge.interfacings,
    )
    return plans[key]
  }
}

/** Walks every combination until a visit says stop; gives the facts it stopped at, or null. */
function walk(
  axes: readonly Axis[],
  set: TableSet,
  knowledge: Knowledge,
  stops: (facts: Facts, plan: Shown) => boolean,
): Facts | null {
  const planOf = planner(axes, set, knowledge)
  const places = axes.map(() => 0)
  const facts: Record<string, string> = { ...untold }
  const go = (depth: number): boolean => {
    const axis = axes[depth]
    if (!axis) return stops(facts as Facts, planOf(facts as Facts, places))
    return axis.values.some((value, at) => {
      places[depth] = at
      facts[axis.name] = value
      return go(depth + 1)
    })
  }
  return go(0) ? ({ ...facts } as Facts) : null
}

const speaksOfPress = ({ must }: Claim): boolean =>
  [must.method, must.backing, must.most_c, must.spare_c, must.tests_first].some(
    (part) => part !== undefined,
  )

/** Facts that break what a claim says of pressing; else null. */
export function breaksPress(claim: Claim, set: TableSet, knowledge: Knowledge): Facts | null {
  if (!speaksOfPress(claim)) return null
  const axes = axesOf(partsOf(claim), claim, set, knowledge)
  for (const when of claim.when) {
    const narrowed = axes.map(({ name, values }) => ({
      name,
      values: values.filter((value) => when[name]?.includes(value) ?? true),
    }))
    const found = walk(narrowed, set, knowledge, (_facts, plan) => !keepsPress(claim, plan))
    if (found) return found
  }
  return null
}

export type Unwanted = 'raises-ceiling' | 'nearer-fusing'

/** How hot, or how near to fusing, a plan is. */
const measure: Readonly<Record<Unwanted, (plan: Shown) => number>> = {
  'raises-ceiling': ({ ceilingC }) => ceilingC ?? 0,
  'nearer-fusing': ({ method }) => methods.indexOf(method),
}

/** Facts at which one more step down a fact's scale does the unwanted thing; else null. */
export function worsens(
  fact: Scaled,
  unwanted: Unwanted,
  set: TableSet,
  knowledge: Knowledge,
): Facts | null {
  const asked: readonly Part[] = unwanted === 'raises-ceiling' ? ['limits'] : bonding
  const axes = axesOf(asked, null, set, knowledge)
  const own = axes.find(({ name }) => name === fact)
  if (!own) return null
  const scale: readonly string[] = scales[fact]
  const others = axes.filter((axis) => axis !== own)
  // Innermost, so that the steps of one scale come one after another.
  const ordered = [...others, { name: fact, values: [...scale] }]
  let last = Number.POSITIVE_INFINITY
  return walk(ordered, set, knowledge, (facts, plan) => {
    const now = measure[unwanted](plan)
    const isFirst = facts[fact] === scale[0]
    const isWorse = !isFirst && now > last
    last = now
    return isWorse
  })
}
