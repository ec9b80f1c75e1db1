import type { Highs } from 'highs'
import { checkPlan } from '../quilt/plan/check.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import { type Model, modelOf } from '../quilt/plan/model.ts'
import { naivePlan } from '../quilt/plan/naive.ts'
import { withPatterns } from '../quilt/plan/panels.ts'
import { joinedPlan, joinedWorth, partsOf } from '../quilt/plan/parts.ts'
import { type Aim, aims, compareWorth, type Plan, type Worth } from '../quilt/plan/plan.ts'
import { planFrom } from '../quilt/plan/read-back.ts'
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
   * No plan does better than this. Each holds among plans that are as good in what comes before; null
   * where nothing is known yet.
   */
  readonly bounds: Readonly<Record<Aim, number | null>>
}

/** Plans are told no more often than this. */
const everyMs = 100

const unknown: PilePlan['bounds'] = { lacking: null, V: null, Q: null, P: null, M: null }

/** One part of a pile on its way to a proof. */
class Part {
  readonly pile: Pile
  readonly model: Model
  plan: Plan
  worth: Worth
  bounds = unknown
  #settled = 0
  #untold: Float64Array | null = null

  constructor(pile: Pile) {
    this.pile = pile
    this.plan = naivePlan(pile)
    const { worth, problems } = checkPlan(pile, this.plan)
    if (problems.length > 0) throw new Error(`the first plan is wrong: ${problems[0]}`)
    this.worth = worth
    this.model = modelOf(pile)
  }

  get proven(): boolean {
    return this.#settled === aims.length && this.model.complete
  }

  run(highs: Highs, budgetMs: number, tell: () => void): void {
    const stages = new Stages(highs, this.model.programme, {
      solution: (values) => {
        this.#untold = values
        tell()
      },
      reached: ({ stage, bound, settled }) => {
        this.bounds = { ...this.bounds, [aims[stage]!]: bound }
        if (settled && this.#settled === stage) this.#settled += 1
        tell()
      },
    })
    try {
      const objectives = aims.map((aim) => this.model.objectives[aim])
      stages.run(
        objectives,
        aims.map(() => 0),
        budgetMs,
      )
    } finally {
      stages.end()
    }
  }

  /** Takes up the last solution, if it holds before the check. */
  read(): void {
    if (!this.#untold) return
    const plan = planFrom(this.pile, this.model, [...this.#untold])
    this.#untold = null
    const { worth, problems } = checkPlan(this.pile, plan)
    if (problems.length > 0) throw new Error(`a solution breaks a rule: ${problems[0]}`)
    if (compareWorth(worth, this.worth) <= 0) {
      this.plan = plan
      this.worth = worth
    }
  }
}

function joined(pile: Pile, parts: readonly Part[]): PilePlan {
  for (const part of parts) part.read()
  const bound = (aim: Aim): number | null => {
    const all = parts.map(({ bounds }) => bounds[aim])
    if (all.includes(null)) return null
    return aim === 'M' ? all.at(-1)! : all.reduce((sum, one) => sum! + one!, 0)!
  }
  return {
    pile,
    plan: joinedPlan(parts.map(({ plan }) => plan)),
    worth: joinedWorth(parts.map(({ worth }) => worth)),
    proven: parts.every(({ proven }) => proven),
    bounds: {
      lacking: bound('lacking'),
      V: bound('V'),
      Q: bound('Q'),
      P: bound('P'),
      M: bound('M'),
    },
  }
}

/**
 * Plans a pile until it is proven or the time is up, and tells better and better plans; the last one is
 * told last. Blocks its thread.
 */
export function search(
  highs: Highs,
  given: Pile,
  budgetMs: number,
  tell: (plan: PilePlan) => void,
): void {
  const until = performance.now() + budgetMs
  const pile = withPatterns(given)
  const parts = partsOf(pile).map((part) => new Part(part))
  tell(joined(pile, parts))
  let told = performance.now()
  for (const part of parts) {
    part.run(highs, until - performance.now(), () => {
      if (performance.now() - told < everyMs) return
      tell(joined(pile, parts))
      told = performance.now()
    })
  }
  tell(joined(pile, parts))
}
