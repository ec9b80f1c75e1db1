import type { Highs } from 'highs'
import { checkPlan } from '../quilt/plan/check.ts'
import { firstPlan } from '../quilt/plan/first.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import { type Model, modelOf, type Objective } from '../quilt/plan/model.ts'
import { inAHurry, type LookedAt } from '../quilt/plan/panels.ts'
import { joinedPlan, joinedWorth, partsOf } from '../quilt/plan/parts.ts'
import { type Aim, aims, compareWorth, type Plan, type Worth } from '../quilt/plan/plan.ts'
import type { Programme } from '../quilt/plan/programme.ts'
import { planFrom } from '../quilt/plan/read-back.ts'
import { solutionOf } from '../quilt/plan/start.ts'
import { Stages } from './stages.ts'

/** A plan that keeps every rule, how good it is, and how good any plan could be. */
export interface PilePlan {
  /** The pile with the patterns of all its panels. */
  readonly pile: Pile
  readonly plan: Plan
  readonly worth: Worth
  /** No plan is better. */
  readonly proven: boolean
  /**
   * No plan does better than this, among those that are as good in what comes before; null where nothing
   * is known yet, so behind the first that is not settled.
   */
  readonly bounds: Readonly<Record<Aim, number | null>>
  /** Panels that were looked at in a hurry: they may give more than the plan knows. */
  readonly hurried: number
}

/** Plans are told no more often than this. */
const everyMs = 100

const unknown: PilePlan['bounds'] = { lacking: null, V: null, Q: null, P: null, M: null }

/** An objective cannot be smaller than with each of its columns at its best. */
const leastOf = ({ constant, terms }: Objective, { upper }: Programme): number =>
  Math.max(
    0,
    terms.reduce((sum, [column, factor]) => sum + Math.min(0, factor * upper[column]!), constant),
  )

/** One part of a pile on its way to a proof. */
class Part {
  readonly pile: Pile
  plan: Plan
  worth: Worth
  bounds = unknown
  /** Made when the first plans of all parts are told. */
  #model: Model | null = null
  #settled = 0
  #untold: Float64Array | null = null

  constructor(pile: Pile) {
    this.pile = pile
    this.plan = firstPlan(pile)
    const { worth, problems } = checkPlan(pile, this.plan)
    if (problems.length > 0) throw new Error(`the first plan is wrong: ${problems[0]}`)
    this.worth = worth
  }

  /** Every aim is settled at what the plan reaches, and no way of cutting bought cloth was left out. */
  get proven(): boolean {
    const { bounds, worth } = this
    return this.#model?.complete === true && aims.every((aim) => bounds[aim] === worth[aim])
  }

  run(highs: Highs, until: number, tell: () => void): void {
    const model = modelOf(this.pile)
    this.#model = model
    const stages = new Stages(highs, model.programme, solutionOf(this.pile, model, this.plan), {
      solution: (values) => {
        this.#untold = values
        tell()
      },
      reached: ({ stage, bound, settled }) => {
        // Behind what is not settled a bound would hold for some plans alone.
        if (this.#settled === stage) {
          this.bounds = { ...this.bounds, [aims[stage]!]: bound }
          if (settled) this.#settled += 1
        }
        tell()
      },
    })
    try {
      const objectives = aims.map((aim) => model.objectives[aim])
      const least = objectives.map((one) => leastOf(one, model.programme))
      stages.run(objectives, least, until)
    } finally {
      stages.end()
    }
  }

  /** Takes up the last solution, if it holds before the check. */
  read(): void {
    if (!this.#untold || !this.#model) return
    const plan = planFrom(this.pile, this.#model, [...this.#untold])
    this.#untold = null
    const { worth, problems } = checkPlan(this.pile, plan)
    if (problems.length > 0) throw new Error(`a solution breaks a rule: ${problems[0]}`)
    if (compareWorth(worth, this.worth) <= 0) {
      this.plan = plan
      this.worth = worth
    }
  }
}

function joined({ pile, hurried }: LookedAt, parts: readonly Part[]): PilePlan {
  for (const part of parts) part.read()
  const bound = (aim: Aim): number | null => {
    const all = parts.map(({ bounds }) => bounds[aim])
    // Panels that were looked at in a hurry may give more than the programme knew.
    if (hurried > 0 || all.includes(null)) return null
    return aim === 'M' ? all.at(-1)! : all.reduce((sum, one) => sum! + one!, 0)!
  }
  return {
    pile,
    plan: joinedPlan(parts.map(({ plan }) => plan)),
    worth: joinedWorth(parts.map(({ worth }) => worth)),
    proven: hurried === 0 && parts.every(({ proven }) => proven),
    bounds: {
      lacking: bound('lacking'),
      V: bound('V'),
      Q: bound('Q'),
      P: bound('P'),
      M: bound('M'),
    },
    hurried,
  }
}

/**
 * Plans a pile until it is proven or the time is up, and tells better and better plans; the last one is
 * told last. Panels without patterns are looked at in a hurry. Blocks its thread.
 */
export async function search(
  loading: Promise<Highs>,
  given: Pile,
  budgetMs: number,
  tell: (plan: PilePlan) => void,
): Promise<void> {
  const until = performance.now() + budgetMs
  const looked = inAHurry(given)
  const parts = partsOf(looked.pile).map((part) => new Part(part))
  tell(joined(looked, parts))
  const highs = await loading
  let told = performance.now()
  for (const part of parts) {
    part.run(highs, until, () => {
      if (performance.now() - told < everyMs) return
      tell(joined(looked, parts))
      told = performance.now()
    })
  }
  tell(joined(looked, parts))
}
