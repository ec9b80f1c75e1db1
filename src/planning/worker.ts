/** The thread that `lane.ts` starts: one pile at a time; plans are told as they are found. */
import { parentPort } from 'node:worker_threads'
import type { Pile } from '../quilt/plan/instance.ts'
import { loadHighs } from './highs.ts'
import { type PilePlan, search } from './search.ts'

export interface Job {
  readonly pile: Pile
  readonly budgetMs: number
}

export type Said =
  | { readonly plan: PilePlan }
  | { readonly done: true }
  | { readonly failed: string }

const highs = loadHighs()

const say = (said: Said): void => parentPort?.postMessage(said)

async function run({ pile, budgetMs }: Job): Promise<Said> {
  try {
    await search(highs, pile, budgetMs, (plan) => say({ plan }))
    return { done: true }
  } catch (error) {
    return { failed: error instanceof Error ? (error.stack ?? error.message) : String(error) }
  }
}

parentPort?.on('message', async (job: Job) => say(await run(job)))
