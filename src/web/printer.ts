import { extname } from 'node:path'
import { Failure } from '../base/failures.ts'
import type { Log } from '../base/log.ts'
import type { PaperName } from '../papers/paper-size.ts'
import type { Printed } from '../papers/printed.ts'
import { openThread } from '../planning/thread.ts'
import { takingTurns } from '../planning/turns.ts'
import type { PrintJob } from './print-worker.ts'

/** Makes papers into PDF, one at a time. */
export interface Printer {
  /** Throws `busy` where too many wait, `paper_failed` where it cannot be made. */
  print(printed: Printed, paper: PaperName): Promise<Uint8Array>
  close(): Promise<void>
}

/** More that wait are turned away. */
const mostWaiting = 30

/** So long one paper may take, ms; two hundred garments take a few seconds. */
const limitMs = 30_000

const file = new URL(`./print-worker${extname(import.meta.url)}`, import.meta.url)

/** A printer on a thread of its own: setting type takes longer than other visitors should wait. */
export function openPrinter({ log }: { readonly log: Log }): Printer {
  const thread = openThread<PrintJob, Uint8Array>(file)
  const inTurn = takingTurns(mostWaiting)
  return {
    print: (printed, paper) =>
      inTurn.take((turn) =>
        turn(async () => {
          let made: Uint8Array | null = null
          const wrong = await thread.run({ printed, paper }, limitMs, (pdf) => {
            made = pdf
          })
          if (wrong === null && made) return made
          log.error({ paper: printed.title, why: wrong }, 'a paper could not be printed')
          throw new Failure('paper_failed')
        }),
      ),
    close: () => thread.close(),
  }
}
