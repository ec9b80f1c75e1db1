/** The thread that plans piles; better and better plans are told as they are found. */
import type { Pile } from '../quilt/plan/instance.ts'
import { answerJobs } from './answering.ts'
import { loadHighs } from './highs.ts'
import { type PilePlan, search } from './search.ts'

export interface PlanJob {
  /** Panels without patterns are looked at in a hurry. */
  readonly pile: Pile
  readonly budgetMs: number
}

const highs = loadHighs()

answerJobs<PlanJob, PilePlan>(({ pile, budgetMs }, tell) => search(highs, pile, budgetMs, tell))
