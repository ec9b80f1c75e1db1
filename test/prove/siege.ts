import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { openStore } from '../../src/store/open.ts'
import { chanceOf } from '../help/chance.ts'
import type { Cluster } from '../help/cluster.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import {
  answering,
  type Doors,
  deciding,
  moving,
  photographing,
  sender,
  type What,
} from './crowd.ts'
import { differences, emptyOf } from './held.ts'
import { custodyPile, firstToDecide, photoOf, prepared } from './prepared.ts'

type Task = Exclude<What, 'messages'>

export interface Siege {
  readonly kills: number
  readonly seed: number
  /** How many processes serve; more than one want a database. */
  readonly processes: number
  readonly databaseUrl?: string
  /** What is killed instead of a process of ours. */
  readonly cluster?: Cluster
  /** Processes are asked to end, and no request may fail: a rolling restart. */
  readonly gently?: boolean
}

export interface Held {
  readonly kills: number
  /** How many of each were told to be kept. */
  readonly acknowledged: Readonly<Record<Task, number>>
  /** What was lost, doubled or put in another order; and what never came to be. */
  readonly faults: readonly string[]
}

/** What is at work again is killed within this time, ms. */
const longestMs = 400

/** So many things are kept between two kills at least. */
const busy = 4
/** Before every so-manieth kill somebody was told that a photo is kept. */
const photosEvery = 5

/** Kills while customers, desk and bench are at work, then holds what they were told against what is kept. */
export async function siege(asked: Siege): Promise<Held> {
  const { kills, seed, databaseUrl, cluster, gently = false } = asked
  const broken: string[] = []
  const chance = chanceOf(seed)
  const photos = mkdtempSync(join(tmpdir(), 'pieceworth-siege-'))
  const env = {
    LOG_LEVEL: 'fatal',
    PHOTOS_URL: photos,
    ...(gently && { LEAVE_SECONDS: '1' }),
    ...(databaseUrl && { DATABASE_URL: databaseUrl }),
  }
  const servers: RunningServer[] = []
  try {
    for (let n = 0; n < asked.processes; n += 1) servers.push(await startServer({ env }))
    const { dataDir } = servers[0]!
    const settings = { ...(databaseUrl && { databaseUrl }), dataDir }
    const toDecide = 20 + 4 * kills
    const there = await prepared(servers[0]!.url, settings, toDecide)

    let over = false
    const count = { answers: 0, photos: 0, decisions: 0, moves: 0, messages: 0 }
    const all = () => Object.values(count).reduce((sum, one) => sum + one, 0)
    /** Whatever was killed is at work again, and the crowd with it; a photo takes longest, and has its turn. */
    const busyAgain = async (nth: number) => {
      const [before, photosBefore] = [all(), count.photos]
      const waits = () =>
        all() < before + busy || (nth % photosEvery === 0 && count.photos === photosBefore)
      while (waits() && !over) await pause(5)
    }
    const doors: Doors = {
      urls: servers.map(({ url }) => url),
      over: () => over,
      told: (what) => {
        count[what] += 1
      },
      broken: (why) => {
        if (gently) broken.push(why)
      },
      failed: (why) => {
        throw new Error(why)
      },
    }
    const send = () => sender(doors)
    const numbers = Array.from({ length: toDecide }, (_, n) => firstToDecide + n)
    const crowd = Promise.all([
      answering(send(), doors, there.teller),
      photographing(send(), doors, there.photographer, photoOf),
      deciding(send(), doors, there.cookie, numbers),
      moving(send(), doors, there.cookie, custodyPile),
    ])
    // Whoever fails ends the siege; it is told when the crowd is waited for.
    crowd.catch(() => {
      over = true
    })
    let killed = 0
    for (; killed < kills && !over; killed += 1) {
      // A long run says where it is.
      if (killed > 0 && killed % 20 === 0) process.stderr.write(`${killed} of ${kills}\n`)
      await busyAgain(killed)
      await pause(chance.real(0, longestMs))
      if (cluster) {
        await cluster.kill()
        await cluster.start()
        continue
      }
      const at = killed % servers.length
      await (gently ? servers[at]!.stop() : servers[at]!.kill())
      servers[at] = await servers[at]!.restart()
    }
    await pause(longestMs)
    over = true
    const [answers, pictures, decisions, moves] = await crowd
    for (const server of servers) await server.stop()
    const told = { answers, photos: pictures, decisions, moves }
    const isThere = (file: string) => existsSync(join(photos, file))
    const store = await openStore(settings)
    try {
      return {
        kills: killed,
        acknowledged: {
          answers: answers.length,
          photos: pictures.length,
          decisions: decisions.length,
          moves: moves.length,
        },
        faults: [...broken, ...emptyOf(told), ...(await differences(store, told, isThere))],
      }
    } finally {
      await store.close()
    }
  } finally {
    for (const server of servers) await server.remove()
    rmSync(photos, { recursive: true, force: true })
  }
}
