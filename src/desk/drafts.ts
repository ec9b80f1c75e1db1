import { extname } from 'node:path'
import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { Log } from '../base/log.ts'
import type { FlowFiles } from '../intake/flow-files.ts'
import { openThread } from '../planning/thread.ts'
import type { Store } from '../store/open.ts'
import type { Db, DraftState } from '../store/schema.ts'
import { type DraftFile, over } from './draft-files.ts'
import type { DraftJob, DraftTold } from './draft-worker.ts'
import { type Compares, impactReport, type TriedReport } from './impact-report.ts'
import { pinnedFlows } from './piles-to-try.ts'

/** So many drafts are kept, the newest; and what one may take at most, milliseconds. */
export const draftsKept = 20
export const draftTakes = 3 * 60 * 1000

/** A draft as the list names it. */
export interface DraftNamed {
  readonly id: string
  readonly who: string
  readonly at: number
  readonly state: DraftState
  readonly files: readonly DraftFile[]
}

export interface Draft extends DraftNamed {
  /** Null while it is being compared, or where that failed. */
  readonly tried: TriedReport | null
}

interface Kept {
  readonly id: string
  readonly name: string
  readonly at: number
  readonly state: DraftState
  readonly files: string
}

// A server that stopped while it compared comes back to no draft.
const given = (state: DraftState, at: number, now: number): DraftState =>
  state === 'working' && now - at > draftTakes * 5 ? 'failed' : state

const named = ({ id, name, at, state, files }: Kept, now: number): DraftNamed => ({
  id,
  who: name,
  at,
  state: given(state, at, now),
  files: JSON.parse(files),
})

const kept = (db: Db) =>
  db
    .selectFrom('flow_draft')
    .innerJoin('account', 'account.id', 'flow_draft.who')
    .select([
      'flow_draft.id',
      'flow_draft.at',
      'flow_draft.state',
      'flow_draft.files',
      'account.name',
    ])

/** Of every owner, the newest first. */
export async function draftsOf(db: Db, clock: Clock): Promise<DraftNamed[]> {
  const rows = await kept(db)
    .orderBy('flow_draft.at', 'desc')
    .orderBy('flow_draft.id')
    .limit(draftsKept)
    .execute()
  return rows.map((row) => named(row, clock()))
}

/** Throws `not_found`. */
export async function draftOf(db: Db, clock: Clock, id: string): Promise<Draft> {
  const row = await kept(db)
    .select('flow_draft.report')
    .where('flow_draft.id', '=', id)
    .executeTakeFirst()
  if (!row) throw new Failure('not_found')
  return { ...named(row, clock()), tried: row.report === null ? null : JSON.parse(row.report) }
}

/** Tries drafts one after another, each on a thread beside the server's. */
export interface Drafts {
  /** Keeps a draft and begins to compare it. Returns its id. */
  begin(who: string, files: readonly DraftFile[]): Promise<string>
  /** Resolves when this draft is compared, or after so many milliseconds. */
  settled(id: string, patienceMs: number): Promise<void>
  close(): Promise<void>
}

export interface DraftsOptions {
  readonly store: Store
  readonly clock: Clock
  readonly log: Log
  readonly live: FlowFiles
  /** Where proofs are kept. */
  readonly folders: readonly string[]
  /** Milliseconds. */
  readonly takes?: number
}

const workerFile = new URL(`./draft-worker${extname(import.meta.url)}`, import.meta.url)

/** The oldest go; nothing else is lost with them. */
async function prune(db: Db): Promise<void> {
  const rows = await db
    .selectFrom('flow_draft')
    .select('id')
    .orderBy('at', 'desc')
    .orderBy('id')
    .offset(draftsKept)
    .limit(1_000)
    .execute()
  if (rows.length === 0) return
  await db
    .deleteFrom('flow_draft')
    .where(
      'id',
      'in',
      rows.map(({ id }) => id),
    )
    .execute()
}

export function openDrafts(options: DraftsOptions): Drafts {
  const { store, clock, log, live, folders, takes = draftTakes } = options
  const thread = openThread<DraftJob, DraftTold>(workerFile)
  const underWay = new Map<string, Promise<void>>()
  let turn: Promise<void> = Promise.resolve()
  let closed = false

  /** Asks the thread; null where its time was up or it died, which the log is told. */
  const ask = async (job: DraftJob, until: number): Promise<DraftTold | null> => {
    let told: DraftTold | null = null
    const left = until - performance.now()
    const wrong =
      left <= 0
        ? 'it took too long'
        : await thread.run(job, left, (one) => {
            told = one
          })
    if (wrong !== null && !closed) log.warn({ step: job.step, wrong }, 'a draft was cut off')
    return wrong === null ? told : null
  }

  const tried = async (files: readonly DraftFile[]): Promise<TriedReport | null> => {
    const until = performance.now() + takes
    const learnt = await ask(
      {
        step: 'learn',
        live,
        draft: over(live, files),
        pinned: await pinnedFlows(store.db),
        today: new Date(clock()).toISOString().slice(0, 10),
        folders,
      },
      until,
    )
    if (learnt && 'findings' in learnt) return { findings: learnt.findings, report: null }
    if (!learnt || !('day' in learnt)) return null
    const compares: Compares = {
      ...learnt,
      of: async (piles) => {
        const told = await ask({ step: 'compare', piles }, until)
        return told && 'found' in told ? told.found : null
      },
    }
    return { findings: [], report: await impactReport(store.db, compares) }
  }

  const stateOf = (one: TriedReport | null): DraftState => {
    if (!one) return 'failed'
    if (!one.report) return 'refused'
    return one.report.cutOff ? 'cut-off' : 'done'
  }

  const work = async (id: string, files: readonly DraftFile[]): Promise<void> => {
    const began = clock()
    const one = await tried(files).catch((error: unknown) => {
      log.error({ err: error, draft: id }, 'a draft could not be compared')
      return null
    })
    if (closed) return
    const state = stateOf(one)
    const report = one && JSON.stringify(one)
    await store.db
      .updateTable('flow_draft')
      .set({ state, report, ended_at: clock() })
      .where('id', '=', id)
      .execute()
    log.info({ draft: id, state, ms: clock() - began }, 'draft compared')
  }

  return {
    async begin(who, files) {
      const id = newId()
      await store.db
        .insertInto('flow_draft')
        .values({
          id,
          who,
          at: clock(),
          files: JSON.stringify(files),
          state: 'working',
          report: null,
          ended_at: null,
        })
        .execute()
      await prune(store.db)
      turn = turn
        .then(() => work(id, files))
        .catch((error: unknown) => log.error({ err: error, draft: id }, 'a draft was not kept'))
        .finally(() => underWay.delete(id))
      underWay.set(id, turn)
      return id
    },
    async settled(id, patienceMs) {
      const working = underWay.get(id)
      if (!working) return
      let timer: NodeJS.Timeout | undefined
      const enough = new Promise<void>((resolve) => {
        timer = setTimeout(resolve, patienceMs)
      })
      await Promise.race([working, enough])
      clearTimeout(timer)
    },
    async close() {
      closed = true
      await thread.close()
      await turn
    },
  }
}
