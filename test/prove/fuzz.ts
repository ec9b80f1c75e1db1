import { Agent, request } from 'node:http'
import { memoryOf } from '../bench/readings.ts'
import { chanceOf } from '../help/chance.ts'
import { startServer } from '../help/server.ts'
import { type Document, type FuzzRequest, type Known, requestMaker } from './fuzz-requests.ts'
import { clerkCookie, playPile } from './load.ts'

/** No answer may take longer, ms: much else runs on the machine, and a paper is printed in seconds. */
const patienceMs = 30_000
const atOnce = 8

export interface Fuzzed {
  readonly requests: number
  readonly signedIn: number
  readonly statuses: Readonly<Record<string, number>>
  readonly longestMs: number
  readonly megabytes: { readonly early: number; readonly late: number }
  readonly faults: readonly string[]
}

type Answered = { readonly status: number; readonly retryAfter: boolean }

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
    sent.setTimeout(patienceMs, () => sent.destroy(new Error('no answer in time')))
    sent.on('error', (error: NodeJS.ErrnoException) => {
      // A kept connection may have been closed by the server just before: a client sends once more then.
      if (sent.reusedSocket && error.code === 'ECONNRESET') send(agent, url, one).then(done, failed)
      else failed(error)
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
  const memory: number[] = []
  let [sent, signedIn, longestMs] = [0, 0, 0]
  try {
    const contract = (await (await fetch(`${server.url}/api/docs`)).json()) as Document
    const settings = { dataDir: server.dataDir }
    const piles = await Promise.all([1, 2].map((n) => playPile(server.url, n, () => {})))
    const cookies = [await clerkCookie(settings, 'owner'), await clerkCookie(settings, 'bench')]
    let csrf = await csrfOf(server.url, cookies)
    const known: Known = {
      key: piles.map(({ pilePath }) => pilePath.split('/')[2]!),
      number: ['1', '2', '3'],
      n: ['1', '2', '3'],
      item: ['0', '1', '2'],
      question: ['recipient', 'kind', 'label', 'photos', 'spots', 'contact', 'words_check', 'size'],
      subject: ['1', '2', 'P1', 'Q1', '1-L1', 'F1'],
      get csrf() {
        return csrf
      },
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
    const pid = server.pid
    const oneByOne = async () => {
      while (sent < count) {
        const nth = sent
        sent += 1
        if (nth % Math.ceil(count / 50) === 0) memory.push(memoryOf(pid).now)
        // Signing out is among the requests.
        if (nth % 400 === 399) {
          cookies.splice(
            0,
            2,
            await clerkCookie(settings, 'owner'),
            await clerkCookie(settings, 'bench'),
          )
          csrf = await csrfOf(server.url, cookies)
        }
        const cookie = [null, cookies[0]!, cookies[1]!][nth % 3]!
        if (cookie) signedIn += 1
        const one = make(cookie)
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
        longestMs = Math.max(longestMs, performance.now() - from)
      }
    }
    await Promise.all(Array.from({ length: atOnce }, oneByOne))
    if (faults.length > 0) faults.push(server.stdout().slice(-20_000))
    const megabytes = { early: Math.round(memory[10] ?? 0), late: Math.round(memory.at(-1) ?? 0) }
    return {
      requests: sent,
      signedIn,
      statuses,
      longestMs: Math.round(longestMs),
      megabytes,
      faults,
    }
  } finally {
    agent.destroy()
    await server.remove()
  }
}

async function csrfOf(url: string, cookies: readonly string[]): Promise<string[]> {
  const pages = await Promise.all(
    cookies.map(async (cookie) =>
      (await fetch(`${url}/desk`, { headers: { accept: 'text/html', cookie } })).text(),
    ),
  )
  return pages.flatMap((page) => /name="csrf" value="([^"]*)"/.exec(page)?.[1] ?? [])
}

const told = ({ method, path, headers, body }: FuzzRequest, what: string): string =>
  `${what}: ${method} ${path.slice(0, 300)} ${JSON.stringify({ ...headers, cookie: headers.cookie ? 'yes' : 'no' })} ${body?.toString('utf8').slice(0, 500) ?? ''}`
