import { domains, type Facts, pileDomains, scales } from './facts.ts'
import type { Knowledge } from './knowledge.ts'
import { type Claim, demandsOf, keepsPress, type Scaled, type Shown, shown } from './must-hold.ts'
import { departs, ordinary } from './ordinary.ts'
import { ceilingOf, type Method, methods, mostOf, planFrom, wantsHold, wantsTest } from './press.ts'
import type { Miss, Worsened } from './prove-rows.ts'
import { type Point, type Row, rowsOf, type TableSet } from './space.ts'

/** Proofs about pressing: every combination of the facts that its tables and the claim tell apart. */

/** Each finding with the table it comes from. */
const parts = {
  limits: ceilingOf,
  permit: mostOf,
  backing: wantsHold,
  testing: wantsTest,
} as const

type Part = keyof typeof parts

/** A column with one value of each class that no cell and no claim tells apart, an ordinary one first. */
interface Axis {
  readonly name: string
  readonly values: readonly string[]
}

const bonding: readonly Part[] = ['limits', 'permit', 'backing']

/** Whether methods part no iron from any iron, and nothing finer: the ceiling alone decides that. */
const hangsOnHeat = (some: readonly Method[]): boolean =>
  some.includes('do-not-press') === (new Set(some).size === 1) &&
  [1, methods.length - 1].includes(new Set(some).size)

/** The tables that decide what a claim says of pressing. */
export function partsOf({ while: premise, must }: Pick<Claim, 'while' | 'must'>): readonly Part[] {
  if (must.tests_first) return [...bonding, 'testing']
  const named = [premise?.method, must.method].filter((some) => some !== undefined)
  const bonds = must.backing ?? must.spare_c ?? named.find((some) => !hangsOnHeat(some))
  return bonds === undefined ? ['limits'] : bonding
}

const cautionRows = (code: string, set: TableSet): readonly Row[] =>
  rowsOf(set, 'cautions').filter(({ give }) => give.code === code)

/** The cautions of a claim that hang on the plan: some row reads the ceiling, or the claim a method. */
export const weighedCautions = ({ while: premise, must }: Claim, set: TableSet): string[] =>
  (must.caution ?? []).filter(
    (code) => premise || cautionRows(code, set).some(({ when }) => when.ceiling !== undefined),
  )

const known: Readonly<Record<string, readonly string[]>> = { ...domains, ...pileDomains }

/** What a walk reads beside the tables of its parts. */
interface Beside {
  readonly when: Claim['when']
  readonly rows: readonly Row[]
}

function axesOf(
  asked: readonly Part[],
  { when: premises, rows }: Beside,
  set: TableSet,
  { interfacings }: Knowledge,
): Axis[] {
  const read = [...asked.flatMap((part) => rowsOf(set, part)), ...rows]
  const cells = (name: string) =>
    read.flatMap(({ when }) => (when[name] === undefined ? [] : [when[name]]))
  const signature = (name: string, value: string): string =>
    [
      ...cells(name).map((cell) => set.matches(cell, value)),
      ...premises.map((when) => when[name]?.includes(value) ?? true),
      ...(name === 'weight' && asked.includes('backing')
        ? interfacings.map(({ weights }) => weights.includes(value as Facts['weight']))
        : []),
    ].join()
  const ordinaryFirst = (name: string) =>
    known[name]!.toSorted((a, b) => Number(departs(name, [a])) - Number(departs(name, [b])))
  return Object.keys(known)
    .map((name) => {
      const classes = new Map<string, string>()
      for (const value of ordinaryFirst(name)) {
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

/**
 * Walks every combination that departs from the ordinary garment in no more than `most` facts, those
 * of `free` not counted, until a visit says stop; gives the facts it stopped at, or null.
 */
function walk(
  axes: readonly Axis[],
  set: TableSet,
  knowledge: Knowledge,
  most: number,
  stops: (facts: Point, plan: Shown) => boolean,
  free?: string,
): Point | null {
  const planOf = planner(axes, set, knowledge)
  const places = axes.map(() => 0)
  const facts: Record<string, Point[string]> = { ...ordinary }
  const go = (depth: number, left: number): boolean => {
    const axis = axes[depth]
    if (!axis) return stops(facts, planOf(facts as unknown as Facts, places))
    return axis.values.some((value, at) => {
      const after = axis.name === free || value === ordinary[axis.name] ? left : left - 1
      if (after < 0) return false
      places[depth] = at
      facts[axis.name] = value
      return go(depth + 1, after)
    })
  }
  return go(0, most) ? { ...facts } : null
}

const speaksOfPress = ({ must }: Claim): boolean =>
  [must.method, must.backing, must.most_c, must.spare_c, must.tests_first].some(
    (part) => part !== undefined,
  )

/** Where facts break what a claim says of pressing, or of `weighed` cautions; else null. */
export function breaksPress(
  claim: Claim,
  set: TableSet,
  knowledge: Knowledge,
  weighed: readonly string[],
  most: number,
): Miss | null {
  if (!speaksOfPress(claim) && weighed.length === 0) return null
  const warning = new Map(weighed.map((code) => [code, cautionRows(code, set)]))
  const axes = axesOf(
    partsOf(claim),
    { when: claim.when, rows: [...warning.values()].flat() },
    set,
    knowledge,
  )
  const isMeant = ({ method }: Shown) => claim.while?.method.includes(method) ?? true
  const isSaid = (code: string, facts: Point, { ceilingC }: Shown): boolean =>
    warning
      .get(code)!
      .some(({ when }) =>
        Object.entries(when).every(([column, cell]) =>
          set.matches(cell, column === 'ceiling' ? (ceilingC ?? 0) : facts[column]!),
        ),
      )
  let missed: Miss['demand'] | undefined
  const stops = (facts: Point, plan: Shown): boolean => {
    const unsaid = isMeant(plan) && weighed.find((code) => !isSaid(code, facts, plan))
    if (unsaid) missed = { caution: [unsaid] }
    else if (!keepsPress(claim, plan)) {
      missed = demandsOf(claim.must).find((must) => !keepsPress({ ...claim, must }, plan))
    }
    return missed !== undefined
  }
  for (const when of claim.when) {
    const narrowed = axes.map(({ name, values }) => ({
      name,
      values: values.filter((value) => when[name]?.includes(value) ?? true),
    }))
    const point = walk(narrowed, set, knowledge, most, stops)
    if (point) return { point, demand: missed! }
  }
  return null
}

export type Unwanted = 'raises-ceiling' | 'nearer-fusing'

/** How hot, or how near to fusing, a plan is. */
const measure: Readonly<Record<Unwanted, (plan: Shown) => number>> = {
  'raises-ceiling': ({ ceilingC }) => ceilingC ?? 0,
  'nearer-fusing': ({ method }) => methods.indexOf(method),
}

/** The tables that decide what may not follow from a worse fact. */
export const partsBehind = (unwanted: Unwanted): readonly Part[] =>
  unwanted === 'raises-ceiling' ? ['limits'] : bonding

/** Where one more step down a fact's scale does the unwanted thing; else null. */
export function worsens(
  fact: Scaled,
  unwanted: Unwanted,
  set: TableSet,
  knowledge: Knowledge,
  most: number,
): Worsened | null {
  const axes = axesOf(partsBehind(unwanted), { when: [], rows: [] }, set, knowledge)
  const own = axes.find(({ name }) => name === fact)
  if (!own) return null
  const scale: readonly string[] = scales[fact]
  const others = axes.filter((axis) => axis !== own)
  // Innermost, so that the steps of one scale come one after another.
  const ordered = [...others, { name: fact, values: [...scale] }]
  let last = Number.POSITIVE_INFINITY
  const stops = (facts: Point, plan: Shown): boolean => {
    const now = measure[unwanted](plan)
    const isFirst = facts[fact] === scale[0]
    const isWorse = !isFirst && now > last
    last = now
    return isWorse
  }
  const point = walk(ordered, set, knowledge, most, stops, fact)
  if (!point) return null
  const worse = String(point[fact])
  return { point, step: { fact, better: scale[scale.indexOf(worse) - 1]!, worse } }
}
