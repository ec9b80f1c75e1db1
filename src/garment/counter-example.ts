import type { Facts, Recipient } from './facts.ts'
import { type Grade, gradeOf, type Severity } from './grade.ts'
import type { Decision, Knowledge } from './knowledge.ts'
import { type Claim, type Outcome, type Shown, shown } from './must-hold.ts'
import { departures } from './ordinary.ts'
import { lowest, type Method, pressPlan } from './press.ts'
import { partsBehind, partsOf, type Unwanted, weighedCautions } from './prove-press.ts'
import { isUnnamed, type Miss, type ScaleStep, type Worsened } from './prove-rows.ts'
import type { Point, TableSet } from './space.ts'
import { type Step, stepOf, type Weighed, weighed } from './why.ts'

/** A row that matched. `setsCeiling` marks the one whose limit is the lowest. */
export interface Link extends Pick<Step, 'row' | 'found' | 'give'> {
  readonly setsCeiling?: true
}

/** The rows of each table consulted that matched; an empty list where none did. */
export type Because = Readonly<Record<string, readonly Link[]>>

/** What led to an outcome. */
interface Chain {
  readonly because: Because
  /** Each class of interfacing held against the ceiling, where a statement turns on it. */
  readonly interfacings?: readonly Weighed[]
}

/**
 * The garment nearest to an ordinary one at which a statement fails. `facts` are those in which it
 * departs from `ordinary`; all others are as there. No garment that departs in fewer facts fails, so
 * each is needed: with any one of them back at its ordinary value the statement holds. The same
 * tables give the same example.
 */
export type CounterExample =
  | (Chain & {
      readonly facts: Point
      /** The demand that is not kept, and what came out in its stead. */
      readonly must: Outcome
      readonly cameOut: unknown
    })
  | (Chain & {
      readonly facts: Point
      readonly never: Unwanted | 'betters-grade'
      /** The fact that got worse by one step. It is not among `facts`. */
      readonly step: ScaleStep
      readonly cameOut: { readonly better: Came; readonly worse: Came }
      /** What led to the outcome before the step. `because` tells of the one after it. */
      readonly before: Chain
    })

interface Came {
  readonly ceilingC: number | null
  readonly method: Method
  readonly grade: Grade
}

const ceilingIn = ({ ceilingC }: Shown): number => ceilingC ?? 0

function planAt(point: Point, knowledge: Knowledge): Shown {
  const plan = pressPlan(point as unknown as Facts, point.recipient as Recipient, knowledge)
  return shown(plan, knowledge.interfacings)
}

const asked = (point: Point, plan: Shown): Point => ({ ...point, ceiling: ceilingIn(plan) })

const severitiesOf = (rows: readonly Decision[]) =>
  rows.map(({ give }) => give.severity as Severity)

function cameAt(point: Point, knowledge: Knowledge): Came {
  const { ceilingC, method } = planAt(point, knowledge)
  return { ceilingC, method, grade: gradeOf(severitiesOf(knowledge.decide('flags', point))) }
}

function chainOf(tables: readonly string[], point: Point, knowledge: Knowledge): Chain {
  const plan = planAt(point, knowledge)
  const facts = asked(point, plan)
  const links = (table: string): Link[] => {
    const rows = knowledge.decide(table, facts)
    const setter = table === 'limits' ? lowest(rows).id : null
    return rows.map((decision) => {
      const { row, found, give } = stepOf(decision, facts)
      return { row, found, give, ...(row === setter && { setsCeiling: true }) }
    })
  }
  const most = knowledge.decide('permit', facts)[0]!.give.most as Method
  return {
    because: Object.fromEntries(tables.map((table) => [table, links(table)])),
    ...(tables.includes('permit') && {
      interfacings: knowledge.interfacings.map((it) =>
        weighed(it, plan, most, point as unknown as Facts),
      ),
    }),
  }
}

/** The tables that a demand turns on. */
function tablesOf(claim: Claim, must: Outcome, set: TableSet): readonly string[] {
  if (must.unfit) return ['layout-fit']
  if (must.grade || must.flag || must.no_flag || must.reasons) return ['flags']
  const parts = partsOf({ while: claim.while, must })
  if (!must.caution) return parts
  return weighedCautions({ ...claim, must }, set).length > 0 ? [...parts, 'cautions'] : ['cautions']
}

/** What came out where a demand asked for something else, in the demand's own terms. */
function cameOutFor(must: Outcome, point: Point, knowledge: Knowledge): unknown {
  const plan = planAt(point, knowledge)
  const flags = knowledge.decide('flags', point)
  if (must.method) return plan.method
  if (must.backing) return plan.backing
  if (must.most_c !== undefined) return plan.ceilingC
  if (must.spare_c !== undefined) return plan.spareC
  if (must.tests_first) return plan.testFirst
  if (must.grade) return gradeOf(severitiesOf(flags))
  if (must.caution) {
    const rows = knowledge.decide('cautions', asked(point, plan))
    return [...new Set(rows.map(({ give }) => give.code))]
  }
  if (must.unfit) return knowledge.decide('layout-fit', point)[0]!.give
  const told = must.reasons ? flags.filter(isUnnamed) : flags
  return told.map(({ id }) => id)
}

/** The example against a claim, from where its demand was missed. */
export function exampleAgainst(
  claim: Claim,
  { point, demand }: Miss,
  set: TableSet,
  knowledge: Knowledge,
): CounterExample {
  return {
    facts: departures(point),
    must: demand.unfit ? { unfit: [point.setting as (typeof demand.unfit)[number]] } : demand,
    cameOut: cameOutFor(demand, point, knowledge),
    ...chainOf(tablesOf(claim, demand, set), point, knowledge),
  }
}

/** The example against a scale, from where a step down it did the unwanted thing. */
export function exampleOfWorse(
  never: Unwanted | 'betters-grade',
  { point, step }: Worsened,
  knowledge: Knowledge,
): CounterExample {
  const { [step.fact]: _, ...facts } = departures(point)
  const before = { ...point, [step.fact]: step.better }
  const tables = never === 'betters-grade' ? ['flags'] : partsBehind(never)
  return {
    facts,
    never,
    step,
    cameOut: { better: cameAt(before, knowledge), worse: cameAt(point, knowledge) },
    ...chainOf(tables, point, knowledge),
    before: chainOf(tables, before, knowledge),
  }
}
