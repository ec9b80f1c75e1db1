import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { freePort } from '../help/server.ts'
import { megabytes, memoryOf, middle } from './readings.ts'

const product = [fileURLToPath(new URL('../../dist/cli.js', import.meta.url)), 'serve']
const bare = [fileURLToPath(new URL('bare-server.mjs', import.meta.url))]

/** After so long a server counts as idle, ms; the reader of labels loads later. */
const idleMs = 10_000
const patienceMs = 120_000

interface Started {
  readonly readyMs: number
  /** Of the processor, until it was ready. */
  readonly workMs: number
  /** MB, when it has been idle for a while. */
  readonly idle: number
  /** MB of it and its reader together; null: not waited for. */
  readonly withReader: number | null
}

const childrenOf = (pid: number): number[] =>
  readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean).map(Number)

/** Of proc(5); Linux counts a hundred to the second. */
function workOf(pid: number): number {
  const line = readFileSync(`/proc/${pid}/stat`, 'utf8')
  const after = line.slice(line.lastIndexOf(')') + 2).split(' ')
  return (Number(after[11]) + Number(after[12])) * 10
}

async function untilIt(url: string, says: (text: string) => boolean, child: ChildProcess) {
  for (const until = performance.now() + patienceMs; performance.now() < until; await pause(5)) {
    if (child.exitCode !== null) throw new Error(`the server ended with ${child.exitCode}`)
    const answer = await fetch(url).catch(() => null)
    if (answer?.ok && says(await answer.text())) return
  }
  throw new Error(`${url} did not answer in time`)
}

/** A new process on a new folder, from its first instruction to its first answer that it is ready. */
async function start(command: readonly string[], waits: boolean): Promise<Started> {
  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-start-'))
  const port = await freePort()
  const url = `http://127.0.0.1:${port}/readyz`
  const { PATH = '', HOME = '' } = process.env
  const env = { PATH, HOME, PORT: String(port), DATA_DIR: folder, LOG_LEVEL: 'error' }
  const from = performance.now()
  const child = spawn(process.execPath, command, { env, stdio: ['ignore', 'ignore', 'inherit'] })
  const pid = child.pid!
  try {
    await untilIt(url, () => true, child)
    const readyMs = performance.now() - from
    const workMs = workOf(pid)
    await pause(idleMs)
    const idle = memoryOf(pid).now
    let withReader: number | null = null
    if (waits) {
      await untilIt(url, (text) => text.includes('"labels":"ready"'), child)
      await pause(1000)
      withReader = [pid, ...childrenOf(pid)].reduce((sum, one) => sum + memoryOf(one).now, 0)
    }
    return { readyMs, workMs, idle, withReader }
  } finally {
    child.kill('SIGKILL')
    await once(child, 'exit')
    rmSync(folder, { recursive: true, force: true })
  }
}

/**
 * `start [rounds]`: the built server and a bare Fastify one in turns; how long each takes to be ready and what it holds
 * when idle. The system has read the files before: the first round, of neither, is not counted. Linux alone.
 */
export async function benchStart([rounds = '5']: readonly string[]): Promise<void> {
  const starts = { ours: [] as Started[], bare: [] as Started[] }
  for (let round = 0; round <= Number(rounds); round += 1) {
    const ours = await start(product, round === Number(rounds))
    const other = await start(bare, false)
    if (round === 0) continue
    starts.ours.push(ours)
    starts.bare.push(other)
  }
  const of = (which: keyof typeof starts, what: 'readyMs' | 'workMs' | 'idle') =>
    middle(starts[which].map((one) => one[what]))
  const ratio = (what: 'readyMs' | 'workMs' | 'idle') =>
    `${(of('ours', what) / of('bare', what)).toFixed(1)} times a bare Fastify server`
  const seconds = (ms: number) => `${(ms / 1000).toFixed(2)} s`
  const all = starts.ours.map(({ readyMs }) => seconds(readyMs)).join(', ')
  const reader = starts.ours.at(-1)!.withReader!
  for (const line of [
    `cold to ready: median ${seconds(of('ours', 'readyMs'))}, bare ${seconds(of('bare', 'readyMs'))}, ${ratio('readyMs')} (${all}; at most 1.5 s)`,
    `processor until ready: median ${seconds(of('ours', 'workMs'))}, bare ${seconds(of('bare', 'workMs'))}, ${ratio('workMs')}`,
    `idle after ${seconds(idleMs)}: median ${megabytes(of('ours', 'idle'))}, bare ${megabytes(of('bare', 'idle'))}, ${ratio('idle')} (at most 150 MB)`,
    `with the reader of labels loaded: ${megabytes(reader)} (at most 800 MB)`,
  ]) {
    process.stdout.write(`${line}\n`)
  }
}
