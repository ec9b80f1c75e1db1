import type { Facts } from './facts.ts'
import { type Grading, grade, type PileFacts, type Severity } from './grade.ts'
import type { Decision, Interfacing, Knowledge } from './knowledge.ts'
import { type LayoutFit, wishOf } from './layout-fit.ts'
import {
  isCoolEnough,
  isPermitted,
  lowest,
  type Method,
  type PressPlan,
  spareC,
  suitsWeight,
} from './press.ts'

type Asked = Readonly<Record<string, string | number>>

/** A row that spoke: what it asked, what was found there, what it gave, where its rule comes from. */
export interface Step {
  readonly row: string
  readonly when: Decision['when']
  readonly found: Asked
  readonly give: Decision['give']
  readonly source: string
}

/** A class of interfacing held against the ceiling, °C. `needsC` is its sole and the spare together. */
export interface Weighed extends Pick<Interfacing, 'class' | 'method' | 'soleC'> {
  readonly needsC: number
  readonly coolEnough: boolean
  readonly permitted: boolean
  readonly suitsWeight: boolean
  readonly chosen: boolean
}

/** Everything that led to a grade. */
export interface Why {
  readonly facts: Asked
  readonly grade: Grading['grade']
  /** The reasons that are as grave as the grade. Empty for a sound garment. */
  readonly setBy: readonly string[]
  /** The gravest first, as in the grading. */
  readonly flags: readonly Step[]
  readonly ceiling: Pick<PressPlan, 'ceilingC' | 'setBy'> & {
    readonly row: string
    readonly limits: readonly Step[]
  }
  readonly permit: Step
  readonly backing: Step
  readonly testing: Step
  readonly interfacing: {
    readonly chosen: string | null
    /** Nothing is fused behind cloth that wants no hold. */
    readonly wanted: boolean
    readonly ceilingC: number | null
    readonly spareC: number
    readonly classes: readonly Weighed[]
  }
  readonly cautions: readonly Step[]
  readonly press: PressPlan
  readonly layouts: readonly (LayoutFit & { readonly step: Step })[]
}

/** A row that matched, as a step of the chain; `asked` are the facts it was asked with. */
export function stepOf({ id, when, give, source }: Decision, asked: Asked): Step {
  const found = Object.fromEntries(Object.keys(when).map((column) => [column, asked[column]!]))
  return { row: id, when, found, give, source }
}

/** An interfacing held against a plan; `most` is what may be done, heat apart. */
export const weighed = (
  it: Interfacing,
  plan: Pick<PressPlan, 'ceilingC' | 'interfacing'>,
  most: Method,
  facts: Facts,
): Weighed => ({
  class: it.class,
  method: it.method,
  soleC: it.soleC,
  needsC: it.soleC + spareC,
  coolEnough: isCoolEnough(it, plan.ceilingC),
  permitted: isPermitted(it, most),
  suitsWeight: suitsWeight(it, facts.weight),
  chosen: it.class === plan.interfacing,
})

/** The grading of a garment with every row and figure that led to it. */
export function why(facts: Facts, pile: PileFacts, knowledge: Knowledge): Why {
  const { grade: graded, flags, press, layouts } = grade(facts, pile, knowledge)
  const wish = wishOf(layouts, pile.layout)
  const asked = { ...facts, recipient: pile.recipient, wish, ceiling: press.ceilingC ?? 0 }
  const steps = (table: string, of: Asked = asked): Step[] =>
    knowledge.decide(table, of).map((row) => stepOf(row, of))
  const reasons = new Map(steps('flags').map((step) => [step.row, step]))
  const permit = steps('permit')[0]!
  const backing = steps('backing')[0]!
  const gravest: Severity | undefined = flags[0]?.severity
  return {
    facts: asked,
    grade: graded,
    setBy: flags
      .filter(({ severity }) => severity === gravest && severity !== 'note')
      .map(({ code }) => code),
    flags: flags.map(({ code }) => reasons.get(code)!),
    ceiling: {
      ceilingC: press.ceilingC,
      setBy: press.setBy,
      row: lowest(knowledge.decide('limits', facts)).id,
      limits: steps('limits'),
    },
    permit,
    backing,
    testing: steps('testing')[0]!,
    interfacing: {
      chosen: press.interfacing,
      wanted: backing.give.holds === true,
      ceilingC: press.ceilingC,
      spareC,
      classes: knowledge.interfacings.map((it) =>
        weighed(it, press, permit.give.most as Method, facts),
      ),
    },
    cautions: steps('cautions'),
    press,
    layouts: layouts.map((fit) => ({
      ...fit,
      step: steps('layout-fit', { ...facts, setting: fit.setting })[0]!,
    })),
  }
}
