/** The thread's side of `thread.ts`. */
import { parentPort } from 'node:worker_threads'

/** First of all that the thread is ready; then of each job what is told, and how it ended. */
export type Said<Told> =
  | { readonly ready: true }
  | { readonly told: Told }
  | { readonly done: true }
  | { readonly failed: string }

/** Does one job after another for whoever started this thread. */
export function answerJobs<Job, Told>(
  work: (job: Job, tell: (told: Told) => void) => void | Promise<void>,
): void {
  const say = (said: Said<Told>): void => parentPort?.postMessage(said)

  async function run(job: Job): Promise<Said<Told>> {
    try {
      await work(job, (told) => say({ told }))
      return { done: true }
    } catch (error) {
      return { failed: error instanceof Error ? (error.stack ?? error.message) : String(error) }
    }
  }

  parentPort?.on('message', async (job: Job) => say(await run(job)))
  say({ ready: true })
}
