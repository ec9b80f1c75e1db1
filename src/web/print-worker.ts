/** The thread that makes papers into PDF. */
import type { PaperName } from '../papers/paper-size.ts'
import { pdfOf } from '../papers/pdf/make.ts'
import type { Printed } from '../papers/printed.ts'
import { answerJobs } from '../planning/answering.ts'

/** A paper to print. */
export interface PrintJob {
  readonly printed: Printed
  readonly paper: PaperName
}

answerJobs<PrintJob, Uint8Array>(async ({ printed, paper }, tell) =>
  tell(await pdfOf(printed, paper)),
)
