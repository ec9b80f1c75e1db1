import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import {
  chownSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import pg from 'pg'
import { freePort } from './server.ts'

/** A PostgreSQL of one test's own, that may be killed. */
export interface Cluster {
  /** Makes an empty database of that name, and tells its address. */
  database(name: string): Promise<string>
  /** Ends all of its processes at once, as a power cut would. */
  kill(): Promise<void>
  /** Asks it to end, with everybody's connections. */
  stop(): Promise<void>
  /** Starts it again after `kill` or `stop`. */
  start(): Promise<void>
  remove(): Promise<void>
}

/** Where Debian puts each version's programs, the newest first. */
function programs(): string | null {
  const versions = '/usr/lib/postgresql'
  const found = existsSync(versions) ? readdirSync(versions) : []
  const [newest] = found
    .toSorted((a, b) => Number(b) - Number(a))
    .map((version) => join(versions, version, 'bin'))
    .filter((bin) => existsSync(join(bin, 'initdb')))
  return newest ?? null
}

/** PostgreSQL refuses to run as root: then it is the account of that name. */
function account(): { uid: number; gid: number } | undefined {
  if (process.getuid?.() !== 0) return undefined
  const id = (flag: string) => Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }))
  return { uid: id('-u'), gid: id('-g') }
}

const patienceMs = 60_000

/** In a folder of its own within `home`. Null where no PostgreSQL is installed that could be started. */
export async function ownCluster(home = tmpdir()): Promise<Cluster | null> {
  const bin = programs()
  if (!bin) return null
  const who = account()
  const folder = mkdtempSync(join(home, 'pieceworth-cluster-'))
  const data = join(folder, 'data')
  mkdirSync(data, { mode: 0o700 })
  if (who) for (const one of [folder, data]) chownSync(one, who.uid, who.gid)
  const initial = ['-D', data, '-A', 'trust', '-U', 'shop', '-E', 'UTF8', '--no-locale']
  execFileSync(join(bin, 'initdb'), initial, { ...who, stdio: 'ignore', cwd: folder })
  const port = await freePort()
  const addressOf = (name: string) => `postgres://shop@127.0.0.1:${port}/${name}`
  let server: ChildProcess | null = null

  async function ask(statement: string): Promise<void> {
    const connectionString = addressOf('postgres')
    const client = new pg.Client({ connectionString, connectionTimeoutMillis: 2000 })
    client.on('error', () => {})
    try {
      await client.connect()
      await client.query(statement)
    } finally {
      await client.end().catch(() => {})
    }
  }

  const answers = (): Promise<boolean> =>
    ask('select 1').then(
      () => true,
      () => false,
    )

  async function start(): Promise<void> {
    const settings = ['-D', data, '-k', folder, '-p', String(port), '-h', '127.0.0.1']
    for (const until = Date.now() + patienceMs; Date.now() < until; await pause(100)) {
      // What was killed may hold its memory a moment longer: the start is refused until it has gone.
      if (!server || server.exitCode !== null || server.signalCode !== null) {
        server = spawn(join(bin!, 'postgres'), settings, { ...who, stdio: 'ignore', cwd: folder })
      }
      if (await answers()) return
    }
    throw new Error('the cluster does not start')
  }

  async function end(signal: NodeJS.Signals): Promise<void> {
    if (!server || server.exitCode !== null || server.signalCode !== null) return
    const ended = once(server, 'exit')
    const children = childrenOf(server.pid!)
    server.kill(signal)
    if (signal === 'SIGKILL') for (const pid of children) killIfThere(pid)
    await ended
  }

  await start()
  return {
    database: async (name) => {
      await ask(`create database ${name}`)
      return addressOf(name)
    },
    kill: () => end('SIGKILL'),
    // "Fast": connections are ended, what is committed is kept (PostgreSQL manual, "Shutting Down the Server").
    stop: () => end('SIGINT'),
    start,
    remove: async () => {
      await end('SIGINT')
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

const childrenOf = (pid: number): number[] =>
  readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean).map(Number)

function killIfThere(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL')
  } catch {
    // It went with its parent.
  }
}
