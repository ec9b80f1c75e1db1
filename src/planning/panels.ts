import { sha256 } from '../base/ids.ts'
import type { Log } from '../base/log.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import {
  type PanelAsked,
  type PanelCutList,
  type Patterns,
  panelAsked,
  panelsAsked,
  withPatterns,
} from '../quilt/plan/panels.ts'
import type { PanelCut } from '../quilt/plan/plan.ts'
import { Kept } from './kept.ts'
import type { PanelFound, PanelJob } from './panel-worker.ts'
import { openThread, threadFile } from './thread.ts'
import { within } from './within.ts'

/** Lists of cuts, in the order they were asked for. */
export interface CutLists {
  /** Null: not found yet, or, where nothing is at work any more, not to be found. */
  readonly lists: readonly (PanelCutList | null)[]
  readonly working: boolean
}

/**
 * What is known of panels, and a thread that finds out more, one panel at a time: those that somebody waits
 * for first, the others when nothing else is to be done. A panel that takes too long is given up for good.
 */
export interface Panels {
  /** Puts the pile's panels on the list of those to look at. */
  warm(pile: Pile): void
  /** Resolves when there is nothing left to look at in the pile, or the time is up; the rest stays on the list. */
  look(pile: Pile, ms: number): Promise<void>
  /** The pile with all patterns that are known. */
  withKnown(pile: Pile): Pile
  /** How many of its panels are not known. */
  missing(pile: Pile): number
  /** Whether any of its panels is still on the list. */
  waits(pile: Pile): boolean
  /** Lists of a plan's cuts that are found by then; the rest stays on the list. */
  cutLists(pile: Pile, cuts: readonly PanelCut[], ms: number): Promise<CutLists>
  /** Until it is called back, only panels are looked at that somebody waits for. */
  hold(): () => void
  close(): Promise<void>
}

export interface PanelsOptions {
  readonly log?: Log | undefined
  /** What the thread runs. */
  readonly file?: URL
  /** A panel that takes longer, or more memory, is given up. */
  readonly limitMs?: number
  readonly memoryMb?: number
  /** With more panels on the list than this those that nobody waits for are let go, the oldest first. */
  readonly mostWaiting?: number
}

/** Patterns that are kept: of so many panels, and no more memory than this. */
const mostPatterns = 4000
const mostBytes = 64 * 2 ** 20
const mostLists = 1000
const mostGivenUp = 10_000

/** About what an array costs beside its numbers, and a number. */
const arrayBytes = 48
const numberBytes = 8

const bytesOf = (patterns: Patterns): number =>
  patterns.length * (arrayBytes + numberBytes * (patterns[0]?.length ?? 0))

interface Waiting {
  readonly job: PanelJob
  /** How many wait for it. */
  askers: number
  readonly done: Promise<void>
  readonly end: () => void
}

const keyOf = (asked: PanelAsked, pattern: readonly number[] | null = null): string =>
  sha256(JSON.stringify([asked, pattern]))

/** For the log: sizes and counts, nothing of whose panel it is. */
const told = ({ asked: { panel, sizes }, pattern }: PanelJob) => ({
  W: panel.W,
  H: panel.H,
  defects: panel.defects.length,
  sizes: sizes.length,
  list: pattern !== null,
})

export function openPanels({
  log,
  file = threadFile('panel-worker'),
  limitMs = 20_000,
  memoryMb = 512,
  mostWaiting = 3000,
}: PanelsOptions = {}): Panels {
  const thread = openThread<PanelJob, PanelFound>(file, memoryMb)
  const patterns = new Kept<Patterns>(mostPatterns, mostBytes, bytesOf)
  const lists = new Kept<PanelCutList | null>(mostLists)
  const givenUp = new Kept<true>(mostGivenUp)
  const waiting = new Map<string, Waiting>()
  let held = 0
  let atWork: string | null = null
  let closed = false

  function end(key: string): void {
    const one = waiting.get(key)
    waiting.delete(key)
    one?.end()
  }

  const isSettled = (key: string, { pattern }: PanelJob): boolean =>
    givenUp.look(key) !== undefined || (pattern ? lists : patterns).look(key) !== undefined

  /** The oldest that nobody waits for. */
  function letOneGo(): void {
    for (const [key, { askers }] of waiting) {
      if (askers > 0 || key === atWork) continue
      end(key)
      return
    }
  }

  /** Null: there is nothing to look at. */
  function put(job: PanelJob): Waiting | null {
    const key = keyOf(job.asked, job.pattern)
    if (closed || isSettled(key, job)) return null
    const known = waiting.get(key)
    if (known) return known
    if (waiting.size >= mostWaiting) letOneGo()
    let done = () => {}
    const one = {
      job,
      askers: 0,
      done: new Promise<void>((resolve) => {
        done = resolve
      }),
      end: () => done(),
    }
    waiting.set(key, one)
    return one
  }

  async function waitFor(jobs: readonly PanelJob[], ms: number): Promise<void> {
    const mine = [...new Set(jobs.map(put))].filter((one) => one !== null)
    for (const one of mine) one.askers += 1
    void work()
    await within(Promise.all(mine.map(({ done }) => done)), ms)
    for (const one of mine) one.askers -= 1
  }

  function next(): string | undefined {
    for (const [key, { askers }] of waiting) if (askers > 0) return key
    const [oldest] = waiting.keys()
    return held === 0 ? oldest : undefined
  }

  async function look(key: string): Promise<boolean> {
    const { job } = waiting.get(key)!
    const wrong = await thread.run(job, limitMs, (found) => {
      if ('patterns' in found) patterns.set(key, found.patterns)
      else lists.set(key, found.list)
    })
    if (wrong === null || closed) return true
    givenUp.set(key, true)
    log?.warn({ panel: told(job), planning: wrong }, 'panel given up')
    return false
  }

  /** Looks at one panel after another, until there is nothing left that may be looked at now. */
  async function work(): Promise<void> {
    if (atWork !== null) return
    const startedAt = performance.now()
    let [looked, lost] = [0, 0]
    for (let key = next(); key !== undefined && !closed; key = next()) {
      atWork = key
      if (await look(key)) looked += 1
      else lost += 1
      atWork = null
      end(key)
    }
    if (looked + lost === 0 || closed) return
    const ms = Math.round(performance.now() - startedAt)
    log?.info({ panels: { looked, givenUp: lost, left: waiting.size, ms } }, 'panels looked at')
  }

  const jobsOf = (pile: Pile): PanelJob[] =>
    panelsAsked(pile).map((asked) => ({ asked, pattern: null }))

  return {
    warm(pile) {
      for (const job of jobsOf(pile)) put(job)
      void work()
    },
    look: (pile, ms) => waitFor(jobsOf(pile), ms),
    withKnown: (pile) => withPatterns(pile, (asked) => patterns.get(keyOf(asked))),
    missing: (pile) =>
      panelsAsked(pile).filter((asked) => patterns.look(keyOf(asked)) === undefined).length,
    waits: (pile) => panelsAsked(pile).some((asked) => waiting.has(keyOf(asked))),
    async cutLists(pile, cuts, ms) {
      const jobs = cuts.map(({ garment, panel, pattern }): PanelJob => {
        return { asked: panelAsked(pile, pile.garments[garment]!, panel), pattern }
      })
      await waitFor(jobs, ms)
      const keys = jobs.map(({ asked, pattern }) => keyOf(asked, pattern))
      return {
        lists: keys.map((key) => lists.get(key) ?? null),
        working: keys.some((key) => waiting.has(key)),
      }
    },
    hold() {
      held += 1
      return () => {
        held -= 1
        if (!closed) void work()
      }
    },
    async close() {
      closed = true
      for (const key of [...waiting.keys()]) end(key)
      await thread.close()
    },
  }
}
