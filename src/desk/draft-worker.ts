/** The thread that tries drafts: it examines files and derives piles both ways, and reads no store. */

import type { Finding } from '../flow/finding.ts'
import { drawings } from '../papers/drawings/index.ts'
import { answerJobs } from '../planning/answering.ts'
import { type PileToTry, type Said, type Trying, tryFlows } from './try-flows.ts'

/** Files by name, as they are handed over: a thread is sent no buffers of Node's own kind. */
type SentFiles = ReadonlyMap<string, Uint8Array>

export type DraftJob =
  | {
      readonly step: 'learn'
      readonly live: SentFiles
      readonly draft: SentFiles
      readonly pinned: Parameters<typeof tryFlows>[0]['pinned']
      /** YYYY-MM-DD. */
      readonly today: string
      /** Where proofs are kept. */
      readonly folders: readonly string[]
    }
  | { readonly step: 'compare'; readonly piles: readonly PileToTry[] }

export type DraftTold =
  | { readonly findings: readonly Finding[] }
  | { readonly day: string; readonly said: Said }
  | { readonly found: readonly ReturnType<Trying['of']>[] }

const files = (sent: SentFiles) =>
  new Map([...sent].map(([name, bytes]) => [name, Buffer.from(bytes)]))

let trying: Trying | null = null

answerJobs<DraftJob, DraftTold>(async (job, tell) => {
  if (job.step === 'compare') {
    tell({ found: job.piles.map((pile) => trying!.of(pile)) })
    return
  }
  const { today, folders, pinned } = job
  const tried = await tryFlows(
    { live: files(job.live), draft: files(job.draft), pinned },
    { drawings: async () => Object.keys(drawings), today, folders },
  )
  trying = tried.trying
  tell(
    tried.trying
      ? { day: tried.trying.day, said: tried.trying.said }
      : { findings: tried.findings },
  )
})
