import { Agent, request } from 'node:http'
import type { Socket } from 'node:net'
import { chanceOf } from '../help/chance.ts'
import { startServer } from '../help/server.ts'
import {
  type Document,
  type FuzzRequest,
  type Known,
  requestMaker,
  type Session,
} from './fuzz-requests.ts'
import { type Growth, grownBy, growthIn, lowest } from './growth.ts'
import { clerkCookie, playPile } from './load.ts'

/** No answer may take longer, ms: much else runs on the machine, and a paper is printed in seconds. */
const patienceMs = 30_000
const atOnce = 8
/** Two people sign in anew before every so-manieth request. */
const freshEvery = 100
/** Of memory, in all. */
const readings = 100
/** From so many requests on a run says where it is, and what it holds must not grow. */
const longRun = 10_000

export interface Fuzzed {
  readonly requests: number
  readonly signedIn: number
  readonly statuses: Readonly<Record<string, number>>
  readonly longestMs: number
  /** What that was. */
  readonly longest: string
  /**
   * `heapInUse`: what is left of the heap after a collection; the engine lets it grow for a while before it collects.
   * `besideHeap`: threads, native code and buffers.
   */
  readonly megabytes: Readonly<Record<'resident' | 'heapInUse' | 'besideHeap', EarlyAndLate>>
  readonly faults: readonly string[]
}

interface EarlyAndLate {
  readonly early: number
  readonly late: number
}

const earlyAndLate = ({ early, late }: Growth): EarlyAndLate => ({
  early: Math.round(early),
  late: Math.round(late),
})

/** What a server holds at one time, MB. */
interface Held {
  readonly resident: number
  /** Taken from the system, and in use. */
  readonly heap: number
  readonly heapUsed: number
}

/** As the server itself tells it, at `/metrics`. */
async function heldBy(url: string): Promise<Held> {
  const text = await (await fetch(`${url}/metrics`)).text()
  const of = (name: string) => Number(new RegExp(`^${name} (\\S+)`, 'm').exec(text)![1]) / 1e6
  return {
    resident: of('process_resident_memory_bytes'),
    heap: of('nodejs_heap_size_total_bytes'),
    heapUsed: of('nodejs_heap_size_used_bytes'),
  }
}

type Answered = { readonly status: number; readonly retryAfter: boolean }

/** What was asked last on a connection: a connection that is found closed may have been closed behind that. */
const askedLast = new WeakMap<Socket, string>()

function send(agent: Agent, url: string, one: FuzzRequest): Promise<Answered> {
  const { hostname, port } = new URL(url)
  return new Promise((done, failed) => {
    const sent = request(
      {
        agent,
        hostname,
        port,
        path: one.path,
        method: one.method,
        headers: { ...one.headers, ...(one.body && { 'content-length': one.body.length }) },
      },
      (answer) => {
        answer.resume()
        answer.on('end', () =>
          done({ status: answer.statusCode ?? 0, retryAfter: 'retry-after' in answer.headers }),
        )
        answer.on('error', failed)
      },
    )
    let before: string | undefined
    sent.on('socket', (socket) => {
      before = askedLast.get(socket)
      askedLast.set(socket, `${one.method} ${one.path.slice(0, 100)}`)
    })
    sent.setTimeout(patienceMs, () => sent.destroy(new Error('no answer in time')))
    sent.on('error', (error: NodeJS.ErrnoException) => {
      if (before) error.message += ` (behind ${before})`
      failed(error)
    })
    sent.end(one.body ?? undefined)
  })
}

/** So many requests made from the server's own document, a third each as nobody, as the bench and as the owner. */
export async function fuzz(count: number, seed: number): Promise<Fuzzed> {
  const server = await startServer({ env: { LOG_LEVEL: 'error' } })
  const agent = new Agent({ keepAlive: true, maxSockets: atOnce })
  const faults: string[] = []
  const statuses: Record<string, number> = {}
  const held: Held[] = []
  let [sent, signedIn, longestMs, longest] = [0, 0, 0, '']
  try {
    const contract = (await (await fetch(`${server.url}/api/docs`)).json()) as Document
    const settings = { dataDir: server.dataDir }
    const piles = await Promise.all([1, 2].map((n) => playPile(server.url, n, () => {})))
    const signIn = async (role: 'owner' | 'bench'): Promise<Session> => {
      const cookie = await clerkCookie(settings, role)
      return { cookie, csrf: await csrfOf(server.url, cookie) }
    }
    let sessions = await Promise.all([signIn('owner'), signIn('bench')])
    const known: Known = {
      key: piles.map(({ pilePath }) => pilePath.split('/')[2]!),
      number: ['1', '2', '3'],
      n: ['1', '2', '3'],
      item: ['0', '1', '2'],
      question: ['recipient', 'kind', 'label', 'photos', 'spots', 'contact', 'words_check', 'size'],
      subject: ['1', '2', 'P1', 'Q1', '1-L1', 'F1'],
      act: [
        'answer',
        'skip',
        'ask',
        'read-label',
        'mark',
        'unmark',
        'tap',
        'up',
        'down',
        'save',
        'try',
      ],
      lang: ['en', 'es'],
    }
    const make = requestMaker(contract, known, chanceOf(seed))
    const oneByOne = async () => {
      while (sent < count) {
        const nth = sent
        sent += 1
        if (nth % Math.ceil(count / readings) === 0) {
          held.push(await heldBy(server.url))
          if (count >= longRun)
            process.stderr.write(
              `${nth} of ${count}, ${faults.length} faults: ${faults.at(-1) ?? ''}\n`,
            )
        }
        // Signing out is among the requests.
        if (nth % freshEvery === freshEvery - 1) {
          sessions = await Promise.all([signIn('owner'), signIn('bench')])
        }
        const by = [null, ...sessions][nth % 3]!
        if (by) signedIn += 1
        const one = make(by)
        const from = performance.now()
        try {
          const { status, retryAfter } = await send(agent, server.url, one)
          statuses[status] = (statuses[status] ?? 0) + 1
          if (status >= 500 && !(status === 503 && retryAfter))
            faults.push(told(one, String(status)))
        } catch (error) {
          const { code, message } = error as NodeJS.ErrnoException
          statuses[code ?? 'none'] = (statuses[code ?? 'none'] ?? 0) + 1
          faults.push(told(one, message))
        }
        const ms = performance.now() - from
        if (ms > patienceMs) faults.push(told(one, `answered after ${Math.round(ms / 1000)} s`))
        if (ms > longestMs) [longestMs, longest] = [ms, `${one.method} ${one.path.slice(0, 100)}`]
      }
    }
    await Promise.all(Array.from({ length: atOnce }, oneByOne))
    if (faults.length > 0) faults.push(server.stdout().slice(-20_000))
    const inUse = growthIn(lowest(held.map(({ heapUsed }) => heapUsed)))
    const beside = growthIn(held.map(({ resident, heap }) => resident - heap))
    if (count >= longRun) {
      if (inUse.grew) faults.push(grownBy('what is in use of the heap, MB,', inUse))
      if (beside.grew) faults.push(grownBy('memory beside the heap, MB,', beside))
    }
    const resident = growthIn(held.map((one) => one.resident))
    const megabytes = {
      resident: earlyAndLate(resident),
      heapInUse: earlyAndLate(inUse),
      besideHeap: earlyAndLate(beside),
    }
    return {
      requests: sent,
      signedIn,
      statuses,
      longestMs: Math.round(longestMs),
      longest,
      megabytes,
      faults,
    }
  } finally {
    agent.destroy()
    await server.remove()
  }
}

async function csrfOf(url: string, cookie: string): Promise<string> {
  const page = await fetch(`${url}/desk`, { headers: { accept: 'text/html', cookie } })
  return /name="csrf" value="([^"]*)"/.exec(await page.text())![1]!
}

const told = ({ method, path, headers, body }: FuzzRequest, what: string): string =>
  `${what}: ${method} ${path.slice(0, 300)} ${JSON.stringify({ ...headers, cookie: headers.cookie ? 'yes' : 'no' })} ${body?.toString('utf8').slice(0, 500) ?? ''}`
