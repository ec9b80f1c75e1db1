import type { Act, Values } from './better-acts.ts'
import { compare, type Outcome, outcomeOf, ranks } from './better-outcome.ts'
import type { FactName, Facts } from './facts.ts'
import { grade, type PileFacts } from './grade.ts'
import type { Knowledge } from './knowledge.ts'

export interface Possible {
  /** What would be so: only what differs from now. */
  readonly facts: Partial<Facts>
  /** The layout that the quilt would have; null: as wished for now. */
  readonly layout: string | null
  readonly outcome: Outcome
}

/** A possibility, graded. */
export interface Trial extends Possible {
  /** How many reasons keep it home, want eyes, want care. */
  readonly reasons: readonly number[]
}

export interface Standing {
  readonly facts: Facts
  readonly pile: PileFacts
  readonly knowledge: Knowledge
}

const holdsAny = (facts: Facts, values: Values): boolean =>
  Object.entries(values).some(([fact, all]) =>
    (all as readonly string[]).includes(facts[fact as FactName]),
  )

export const openFacts = (facts: Facts, { open }: Act): FactName[] =>
  (Object.keys(open) as FactName[]).filter((fact) => holdsAny(facts, { [fact]: open[fact] }))

/** Whether the act may be advised at all. Water never, where the garment is not to be washed. */
export const isOpen = (facts: Facts, act: Act): boolean =>
  !(act.wets && facts.wash === 'never') &&
  !holdsAny(facts, act.unless) &&
  (act.where === null || holdsAny(facts, act.where)) &&
  (act.layout || openFacts(facts, act).length > 0)

/** Every combination of what the act may bring; the facts that are not open stand. */
export function broughtBy(facts: Facts, act: Act): Partial<Facts>[] {
  const open = openFacts(facts, act)
  return act.may.flatMap((line) => {
    const names = Object.keys(line) as FactName[]
    const fits = names.every(
      (fact) => open.includes(fact) || holdsAny(facts, { [fact]: line[fact] }),
    )
    if (!fits) return []
    return open.reduce<Partial<Facts>[]>(
      (made, fact) =>
        made.flatMap((one) => line[fact]!.map((value) => ({ ...one, [fact]: value }))),
      [{}],
    )
  })
}

const differing = (facts: Facts, brought: Partial<Facts>): Partial<Facts> =>
  Object.fromEntries(
    Object.entries(brought).filter(([fact, value]) => facts[fact as FactName] !== value),
  )

/** What becomes of it where the facts, or the quilt's layout, are otherwise. */
export function trial(
  { facts, pile, knowledge }: Standing,
  brought: Partial<Facts>,
  layout?: string,
): Trial {
  const wished = layout ?? pile.layout
  const graded = grade({ ...facts, ...brought }, { ...pile, layout: wished }, knowledge)
  const count = (severity: string) =>
    graded.flags.filter((flag) => flag.severity === severity).length
  return {
    facts: differing(facts, brought),
    layout: layout ?? null,
    outcome: outcomeOf(graded, wished),
    reasons: [count('home'), count('eyes'), count('care')],
  }
}

/** Everything that the act may bring, each possibility graded. */
export const trialsOf = (standing: Standing, act: Act): Trial[] =>
  act.layout
    ? standing.knowledge.layouts
        .filter(({ id }) => id !== standing.pile.layout)
        .map(({ id }) => trial(standing, {}, id))
    : broughtBy(standing.facts, act).map((brought) => trial(standing, brought))

const size = ({ facts }: Possible): number => Object.keys(facts).length

/** Best first; of equals the one that tells most: "it stays unknown" is nothing to hope for. */
export const byOutcome = (a: Possible, b: Possible): number =>
  compare(ranks(b.outcome), ranks(a.outcome)) || size(b) - size(a)

export const possible = ({ facts, layout, outcome }: Trial): Possible => ({
  facts,
  layout,
  outcome,
})
