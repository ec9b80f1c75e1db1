import type { Highs, Model } from 'highs'
import type { Objective } from '../quilt/plan/model.ts'
import type { Programme } from '../quilt/plan/programme.ts'

/** What became of a stage: the best value so far, and the bound below which there is none. */
export interface Reached {
  readonly stage: number
  readonly bound: number
  readonly settled: boolean
}

export interface Heard {
  /** A better solution in whole numbers; more often than need be. */
  solution(values: Float64Array): void
  reached(reached: Reached): void
}

/** Objectives are whole numbers: a gap below one is none. */
const gap = 0.999
/** Whole numbers from the solver are as far off as this. */
const grain = 1e-6
/** A stage leaves some of the time that is left to those after it. */
const patience = 0.6

const worthOf = ({ constant, terms }: Objective, values: Float64Array): number =>
  terms.reduce((sum, [column, factor]) => sum + factor * values[column]!, constant)

function build(highs: Highs, { lower, upper, rows }: Programme): Model {
  const starts = [0]
  for (const { columns } of rows) starts.push(starts.at(-1)! + columns.length)
  const model = highs.createModel({
    numCols: lower.length,
    numRows: rows.length,
    colCost: new Float64Array(lower.length),
    colLower: lower,
    colUpper: upper,
    rowLower: rows.map((row) => row.lower),
    rowUpper: rows.map((row) => row.upper),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols: lower.length,
      starts,
      indices: rows.flatMap((row) => row.columns),
      values: rows.flatMap((row) => row.values),
    },
    integrality: new Int32Array(lower.length).fill(highs.constants.variableType.integer),
  })
  model.options.set({
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: gap,
    // On the piles that were tried it found nothing and cost about a seventh of the time.
    mip_heuristic_run_feasibility_jump: false,
  })
  return model
}

/** One solver on one programme, stage after stage. */
export class Stages {
  readonly #highs: Highs
  readonly #model: Model
  readonly #columns: number
  readonly #heard: Heard
  #best: Float64Array | null = null

  /** `start`: a solution to set out from, if one is known. */
  constructor(highs: Highs, programme: Programme, start: readonly number[] | null, heard: Heard) {
    this.#highs = highs
    this.#best = start && Float64Array.from(start)
    this.#model = build(highs, programme)
    this.#columns = programme.lower.length
    this.#heard = heard
  }

  /** Makes the objectives small one after another; `least[n]`: the n-th cannot be smaller; `until` on the clock of `performance`. */
  run(objectives: readonly Objective[], least: readonly number[], until: number): void {
    for (const [stage, objective] of objectives.entries()) {
      const left = until - performance.now()
      if (left <= 0) return
      const limit = stage < objectives.length - 1 ? left * patience : left
      this.#settle(stage, objective, least[stage]!, limit)
      this.#hold(objective)
    }
  }

  #settle(stage: number, objective: Objective, least: number, limitMs: number): void {
    const known = this.#best && worthOf(objective, this.#best)
    if (objective.terms.length === 0 || (known !== null && known <= least)) {
      this.#heard.reached({ stage, bound: known ?? objective.constant, settled: true })
      return
    }
    const bound = Math.max(least, this.#solve(stage, objective, limitMs))
    const value = this.#best ? worthOf(objective, this.#best) : Number.POSITIVE_INFINITY
    const settled = bound > value - 1 + grain
    this.#heard.reached({ stage, bound: settled ? value : Math.ceil(bound - grain), settled })
  }

  /** From here on the objective gets no worse than it is. */
  #hold({ constant, terms }: Objective): void {
    if (!this.#best || terms.length === 0) return
    const value = worthOf({ constant, terms }, this.#best)
    this.#model.addRow(Number.NEGATIVE_INFINITY, value - constant, {
      indices: terms.map(([column]) => column),
      values: terms.map(([, factor]) => factor),
    })
  }

  #solve(stage: number, { constant, terms }: Objective, limitMs: number): number {
    const { mipImprovingSolution, mipInterrupt } = this.#highs.constants.callbackType
    const model = this.#model
    const cost = new Float64Array(this.#columns)
    for (const [column, factor] of terms) cost[column]! += factor
    model.changeColsCost({ kind: 'range', from: 0, to: this.#columns - 1 }, cost)
    if (this.#best) model.setSolution({ colValue: this.#best })
    model.zeroAllClocks()
    model.options.set('time_limit', Math.max(limitMs, 1) / 1000)
    let bound = Number.NEGATIVE_INFINITY
    const raise = (now: number | undefined): undefined => {
      if (now !== undefined && Number.isFinite(now)) bound = Math.max(bound, now)
    }
    const { modelStatus } = model.run({
      [mipImprovingSolution]: ({ data }): undefined => {
        if (data.mip_solution) this.#keep(data.mip_solution)
      },
      [mipInterrupt]: ({ data }) => raise(data.mip_dual_bound),
    })
    const { optimal, timeLimit } = this.#highs.constants.modelStatus
    if (modelStatus !== optimal && modelStatus !== timeLimit) {
      throw new Error(`the solver ended stage ${stage} with status ${modelStatus}`)
    }
    raise(Number(model.info.get('mip_dual_bound')))
    if (modelStatus === optimal) this.#keep(model.getSolution().colValue)
    return bound + constant
  }

  #keep(values: Float64Array): void {
    this.#best = Float64Array.from(values, Math.round)
    this.#heard.solution(this.#best)
  }

  end(): void {
    this.#model.dispose()
  }
}
