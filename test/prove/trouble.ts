import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { parse } from 'node-html-parser'
import { failures } from '../../src/base/failures.ts'
import { openStore } from '../../src/store/open.ts'
import { language, readPageWords } from '../../src/words/words.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import {
  type Acknowledged,
  answering,
  type Doors,
  deciding,
  type Heard,
  moving,
  photographing,
  sender,
  type What,
  writing,
} from './crowd.ts'
import { differences, emptyOf, type PictureThere, type Told } from './held.ts'
import { custodyPile, firstToDecide, photoOf, playedPile, prepared } from './prepared.ts'
import { type StartSaid, startMeanwhile } from './start-meanwhile.ts'

/** Something that goes wrong around servers that are at work, and goes right again. */
export interface Trouble {
  readonly name: string
  /** How it is brought about. */
  readonly how: string
  /** At least. */
  readonly lastsMs: number
  readonly processes?: number
  readonly env?: Readonly<Record<string, string>>
  readonly dataDir?: string
  readonly databaseUrl?: string
  /** Where photos are kept; left out: a folder that is spared. */
  readonly photos?: { readonly url: string; readonly isThere: PictureThere }
  /** Who is at work. */
  readonly tasks: readonly What[]
  /** Who must get on while it lasts. */
  readonly goesOn: readonly What[]
  /** Statuses that put off what is asked while it lasts; one of them at least must be seen. Empty: nobody feels it. */
  readonly putsOff: readonly number[]
  readonly begin: () => unknown
  readonly end: () => unknown
  /** Resolves once what was told to be kept has gone where it goes later. Throws where it does not. */
  readonly afterwards?: (told: Told) => Promise<void>
}

/** How a trouble was borne. */
export interface Borne {
  readonly name: string
  readonly how: string
  readonly lastedMs: number
  /** What was asked while it lasted, by the answer's status; 0: the connection broke. */
  readonly answered: Readonly<Record<string, number>>
  readonly longestMs: number
  /** How many things were told to be kept while it lasted, and in all. */
  readonly keptMeanwhile: number
  readonly kept: number
  /** Until everybody got on again, from when it was over, with nobody's help; null: they did not. */
  readonly recoveredMs: number | null
  readonly lost: number
  readonly doubled: number
  /** What a server said that was started in its midst. */
  readonly start: StartSaid
  readonly faults: readonly string[]
}

/** Everybody rests so long between two requests, ms: the load is light. */
const restMs = 150
const patienceMs = 150_000
const piles = 300

/** What people are told where something is to be had later. */
const sentences = (): string[] => {
  const english = language('en', readPageWords().get('en')!)
  return Object.entries(failures).flatMap(([code, { status }]) =>
    status === 503 ? [english.say(`failures.${code}`)] : [],
  )
}

/** What is wrong with how a request was put off; null: nothing. */
function unclear(
  { path, status, text, retryAfter }: Heard,
  told: readonly string[],
): string | null {
  if (status < 500) return null
  if (status !== 503) return `${path}: ${status}`
  if (!retryAfter) return `${path}: 503 without Retry-After`
  const words = parse(text).text.replaceAll(/\s+/g, ' ')
  return told.some((one) => words.includes(one))
    ? null
    : `${path}: 503 without a sentence that says why`
}

/** What the log of a server tells of faults that nobody foresaw, each once. */
const unforeseen = (server: RunningServer): string[] => [
  ...new Set(
    server
      .stdout()
      .split('\n')
      .filter((line) => line.includes('"code":"internal"'))
      .map((line) => (JSON.parse(line) as { err?: { stack?: string } }).err?.stack ?? line),
  ),
]

type Phase = 'before' | 'during' | 'after'

/** Lets servers bear a trouble under light load: once at work, and once more with a start in its midst. */
export async function bear(trouble: Trouble): Promise<Borne> {
  const { tasks, goesOn, putsOff, databaseUrl } = trouble
  const spared = mkdtempSync(join(tmpdir(), 'pieceworth-spared-'))
  const photos = trouble.photos ?? {
    url: spared,
    isThere: (file: string) => existsSync(join(spared, file)),
  }
  const env = {
    LOG_LEVEL: 'error',
    PHOTOS_URL: photos.url,
    ...(databaseUrl && { DATABASE_URL: databaseUrl }),
    ...trouble.env,
  }
  const faults: string[] = []
  const fault = (why: string) => {
    if (!faults.includes(why)) faults.push(why)
  }
  const servers: RunningServer[] = []
  try {
    const { dataDir: given } = trouble
    for (let n = 0; n < (trouble.processes ?? 1); n += 1) {
      servers.push(await startServer({ env, ...(given !== undefined && { dataDir: given }) }))
    }
    const { dataDir } = servers[0]!
    const settings = { ...(databaseUrl && { databaseUrl }), dataDir }
    const there = await prepared(servers[0]!.url, settings, piles)
    const written = tasks.includes('messages') ? await playedPile(servers[0]!.url, settings) : 0
    const clear = sentences()

    let phase: Phase = 'before'
    let over = false
    let longestMs = 0
    const answered: Record<string, number> = {}
    const counts = {
      before: new Map<What, number>(),
      during: new Map<What, number>(),
      after: new Map<What, number>(),
    }
    const doors: Doors = {
      urls: servers.map(({ url }) => url),
      over: () => over,
      told: (what) => counts[phase].set(what, (counts[phase].get(what) ?? 0) + 1),
      broken: () => {},
      failed: fault,
      heard: (one) => {
        const wrong = unclear(one, clear)
        if (wrong) fault(wrong)
        if (phase !== 'during') return
        answered[one.status] = (answered[one.status] ?? 0) + 1
        longestMs = Math.max(longestMs, one.ms)
      },
      restMs,
      alsoLater: putsOff,
    }
    const patiently = async (holds: () => boolean) => {
      const until = performance.now() + patienceMs
      while (!holds() && !over && performance.now() < until) await pause(10)
      return holds()
    }
    const everybody = (many: number) =>
      patiently(() => tasks.every((what) => (counts[phase].get(what) ?? 0) >= many))
    const isFelt = () =>
      (putsOff.length === 0 || putsOff.some((status) => answered[status])) &&
      goesOn.every((what) => counts.during.get(what))
    const numbers = Array.from({ length: piles }, (_, n) => firstToDecide + n)
    const works: Readonly<Record<What, () => Promise<Acknowledged[]>>> = {
      answers: () => answering(sender(doors), doors, there.teller),
      photos: () => photographing(sender(doors), doors, there.photographer, photoOf),
      decisions: () => deciding(sender(doors), doors, there.cookie, numbers),
      moves: () => moving(sender(doors), doors, there.cookie, custodyPile),
      messages: () => writing(sender(doors), doors, there.cookie, written),
    }
    const crowd = Promise.all(tasks.map(async (what) => [what, await works[what]()] as const))
    // Whoever fails ends it; that is told when the crowd is waited for.
    crowd.catch(() => {
      over = true
    })
    if (!(await everybody(3))) fault('not everybody was at work before it began')
    phase = 'during'
    const began = performance.now()
    await trouble.begin()
    await pause(trouble.lastsMs)
    // On a machine that has much to do it may take longer until everybody has met it.
    await patiently(isFelt)
    await trouble.end()
    phase = 'after'
    const from = performance.now()
    const isWell = await everybody(1)
    let recoveredMs = isWell ? performance.now() - from : null
    await everybody(3)
    over = true
    const told: Told = Object.fromEntries(await crowd)
    if (!isWell) fault('not everybody got on again')
    for (const what of goesOn) if (!counts.during.get(what)) fault(`no ${what} were kept meanwhile`)
    if (putsOff.length > 0 && !putsOff.some((status) => answered[status])) fault('nobody felt it')
    if (trouble.afterwards) {
      await trouble.afterwards(told).catch((error: Error) => fault(error.message))
      recoveredMs = performance.now() - from
    }

    const log = servers.flatMap(unforeseen)
    const start = await startMeanwhile(servers, trouble)
    if (start.wrong) fault(start.wrong)
    const store = await openStore(settings)
    try {
      const different = await differences(store, told, photos.isThere)
      const many = (how: string) => different.filter((one) => one.includes(`: ${how} `)).length
      return {
        name: trouble.name,
        how: trouble.how,
        lastedMs: from - began,
        answered,
        longestMs,
        keptMeanwhile: [...counts.during.values()].reduce((sum, one) => sum + one, 0),
        kept: Object.values(told).reduce((sum, some) => sum + some.length, 0),
        recoveredMs,
        lost: many('lost'),
        doubled: many('doubled'),
        start,
        faults: [...faults, ...(faults.length > 0 ? log : []), ...emptyOf(told), ...different],
      }
    } finally {
      await store.close()
    }
  } finally {
    for (const server of servers) await server.remove()
    rmSync(spared, { recursive: true, force: true })
  }
}
