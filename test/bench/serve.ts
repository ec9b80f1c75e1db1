import { readFileSync } from 'node:fs'
import autocannon, { type Request } from 'autocannon'
import { sql } from 'kysely'
import { z } from 'zod'
import { systemClock } from '../../src/base/clock.ts'
import { newId } from '../../src/base/ids.ts'
import { pinFlow } from '../../src/intake/flow-versions.ts'
import type { Knowledge } from '../../src/intake/knowledge.ts'
import { derivePile } from '../../src/intake/pile.ts'
import { mintLink, newPile } from '../../src/intake/rows.ts'
import { project } from '../../src/intake/standing.ts'
import type { Store, StoreSettings } from '../../src/store/open.ts'
import { learnAt } from '../help/app.ts'
import { startChild } from '../help/child.ts'
import { stepsOfPile } from '../help/large-pile.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { middle } from './readings.ts'
import { onBothStores } from './stores.ts'

const given = z.tuple([
  z.coerce.number().positive().default(4),
  z.coerce.number().int().positive().default(3),
])

const garments = 10
const clients = 32
const warmTurns = 4

/**
 * Answers to a server of its own process, as a customer's browser sends them, beside a bare route that does one
 * INSERT and one that does nothing, in turns on the same store: SQLite, then PostgreSQL. Seconds a turn, and turns.
 */
export async function benchServe(told: readonly string[]): Promise<void> {
  const [seconds, turns] = given.parse([told[0], told[1]])
  await onBothStores((name, store, settings) => measure(name, store, settings, { seconds, turns }))
}

interface Turns {
  readonly seconds: number
  readonly turns: number
}

/** Somebody who answers, and what of. */
interface Served {
  readonly url: string
  readonly pid: number
}

interface Reading {
  readonly perSecond: number
  /** ms */
  readonly p99: number
  /** Of the server's process, for each answer, ms. */
  readonly cpu: number
}

async function measure(
  name: string,
  store: Store,
  settings: StoreSettings,
  turns: Turns,
): Promise<void> {
  await sql`create table bare (id text primary key, body text not null, at bigint not null)`.execute(
    store.db,
  )
  const knowledge = learnAt(new Date(systemClock()).toISOString().slice(0, 10))
  const steps = stepsOf(knowledge)
  const env = {
    LOG_LEVEL: 'warn',
    ...(settings.databaseUrl && { DATABASE_URL: settings.databaseUrl }),
  }
  const bareProcess = startChild('test/bench/serve-bare.ts', [JSON.stringify(settings)])
  const servers: RunningServer[] = []
  try {
    const [, url] = await bareProcess.says(/listening (\S+)\n/)
    const bare = { url: url!, pid: bareProcess.process.pid! }
    servers.push(await startServer({ env, dataDir: settings.dataDir }))
    const [first] = servers
    const answers = async () => {
      const count = clients + warmTurns * turns.seconds * customersASecond
      return customersOf(await beginPiles(store, knowledge, count), steps)
    }
    // A server that has just begun is slow: its code is not yet compiled.
    await load([first!], answers, clients, warmTurns * turns.seconds)
    for (const connections of [1, clients]) {
      await compare(`${name}, ${connections} at once`, turns, {
        'one INSERT': () => load([bare], () => [insert], connections, turns.seconds),
        'an answer': () => load([first!], answers, connections, turns.seconds),
      })
    }
    await compare(`${name}, ${clients} at once, CPU`, turns, {
      hello: () => load([bare], () => [hello], clients, turns.seconds),
      'an answer': () => load([first!], answers, clients, turns.seconds),
    })
    if (!settings.databaseUrl) return
    servers.push(await startServer({ env }))
    await compare(`${name}, ${clients} at once`, turns, {
      'answers of one process': () => load([first!], answers, clients, turns.seconds),
      'answers of two processes': () => load(servers, answers, clients, turns.seconds),
    })
  } finally {
    for (const server of servers) await server.remove()
    bareProcess.process.kill()
    await bareProcess.ended()
  }
}

/** A request of a customer's, to be sent on with the key of the pile. */
interface Step {
  readonly path: string
  readonly body: string
}

/** What a customer sends from hello to the last garment, as a browser does. */
const stepsOf = (knowledge: Knowledge): Step[] =>
  stepsOfPile(knowledge, garments).map(({ act, fields }) => {
    if (act.act !== 'answer' || !fields) return { path: '/garments', body: 'act=add-garment' }
    const body = new URLSearchParams()
    for (const [field, values] of Object.entries(fields)) {
      for (const value of [values].flat()) body.append(field, value)
    }
    return { path: `/${act.item}/${act.question}`, body: body.toString() }
  })

/** A later act than any: the page knew of all that stood. */
const upToDate = 1_000_000

/** More customers than get through their piles in a second, whatever the machine. */
const customersASecond = 40

/** New piles, begun in one transaction: an intake that is opened is no answer. Gives the keys of their links. */
const beginPiles = (store: Store, knowledge: Knowledge, count: number): Promise<string[]> =>
  store.transaction(async (trx) => {
    const at = systemClock()
    await pinFlow(trx, knowledge.flowHash, knowledge.flow, at)
    const keys: string[] = []
    for (let n = 0; n < count; n += 1) {
      const row = await newPile(trx, { language: 'en', flowHash: knowledge.flowHash, at })
      await trx.insertInto('pile').values(row).execute()
      await project(trx, row, derivePile(knowledge, knowledge.flow, row, []))
      keys.push(await mintLink(trx, row.id, { at, lastsDays: 1 }))
    }
    return keys
  })

/** On each connection one customer after the other, each with an address of their own, as behind a balancer. */
function customersOf(keys: readonly string[], steps: readonly Step[]): Request[] {
  let begun = 0
  return steps.map(
    ({ path, body }, nth): Request => ({
      method: 'POST',
      setupRequest: (request, context) => {
        if (nth === 0) context.customer = begun++
        const key = keys[context.customer]
        if (key === undefined) throw new Error('more customers came than were begun')
        return {
          ...request,
          path: `/i/${key}${path}`,
          headers: {
            'content-type': 'application/x-www-form-urlencoded',
            'x-forwarded-for': `10.0.${context.customer >> 8}.${context.customer & 255}`,
          },
          body: `${body}&idem=${newId()}&seq=${upToDate}`,
        }
      },
    }),
  )
}

const insert: Request = {
  method: 'POST',
  path: '/insert',
  setupRequest: (request) => ({
    ...request,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ value: 'sound', idem: newId(), seq: 0 }),
  }),
}

const hello: Request = { method: 'GET', path: '/hello' }

/** CPU that a process has used, ms (Linux: proc(5), `utime` and `stime` of stat, in hundredths of a second). */
function cpuOf(pid: number): number {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
  const [user, system] = stat
    .slice(stat.lastIndexOf(')') + 2)
    .split(' ')
    .slice(11, 13)
  return (Number(user) + Number(system)) * 10
}

/** Sends one request after the other on so many connections, to each server its share. */
async function load(
  servers: readonly Served[],
  requests: () => Request[] | Promise<Request[]>,
  connections: number,
  seconds: number,
): Promise<Reading> {
  const took: number[] = []
  const refused = new Map<number, number>()
  const sent = await requests()
  const before = servers.map(({ pid }) => cpuOf(pid))
  const from = performance.now()
  const results = await Promise.all(
    servers.map(({ url }) => {
      const share = connections / servers.length
      const sending = autocannon({ url, connections: share, duration: seconds, requests: sent })
      sending.on('response', (_: unknown, status: number, __: number, ms: number) => {
        if (status >= 400) refused.set(status, (refused.get(status) ?? 0) + 1)
        else took.push(ms)
      })
      return sending
    }),
  )
  const passed = (performance.now() - from) / 1000
  const lost = results.reduce((sum, { errors, timeouts }) => sum + errors + timeouts, 0)
  if (refused.size + lost > 0) {
    throw new Error(`${lost} without an answer, by status ${JSON.stringify([...refused])}`)
  }
  const cpu = servers.reduce((sum, { pid }, nth) => sum + cpuOf(pid) - before[nth]!, 0)
  const sorted = took.toSorted((a, b) => a - b)
  return {
    perSecond: took.length / passed,
    p99: sorted[Math.floor(0.99 * (sorted.length - 1))] ?? 0,
    cpu: cpu / took.length,
  }
}

/** Runs two in turns, one turn to get warm, and prints the middle of each, the second beside the first. */
async function compare(
  title: string,
  { turns }: Turns,
  runs: Readonly<Record<string, () => Promise<Reading>>>,
): Promise<void> {
  const readings = Object.entries(runs).map(([what, run]) => ({ what, run, read: [] as Reading[] }))
  for (let turn = 0; turn <= turns; turn += 1) {
    for (const { run, read } of readings) {
      const reading = await run()
      if (turn > 0) read.push(reading)
    }
  }
  const told = readings.map(({ what, read }) => {
    const of = (figure: keyof Reading) => middle(read.map((one) => one[figure]))
    return { what, perSecond: of('perSecond'), p99: of('p99'), cpu: of('cpu') }
  })
  for (const { what, perSecond, p99, cpu } of told) {
    process.stdout.write(
      `${title}: ${what}: ${Math.round(perSecond)} a second, p99 ${p99.toFixed(2)} ms, ${cpu.toFixed(3)} ms of CPU each\n`,
    )
  }
  const [base, ours] = told
  const ratio = (figure: 'perSecond' | 'p99' | 'cpu') => (ours![figure] / base![figure]).toFixed(2)
  process.stdout.write(
    `${title}: ${ours!.what} beside ${base!.what}: ${ratio('perSecond')} times as many a second, p99 ${ratio('p99')} times, CPU ${ratio('cpu')} times\n`,
  )
}
