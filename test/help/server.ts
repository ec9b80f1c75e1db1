import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { type Ended, watch } from './child.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

export interface ServerSettings {
  /** A folder to keep; without it a new one, which `remove` takes away. */
  readonly dataDir?: string
  /** Further settings, as `serve` reads them. Those of the machine are not passed on. */
  readonly env?: Readonly<Record<string, string>>
  /** The built command to run. */
  readonly command?: string
}

/** The built product, serving in a process of its own. */
export interface RunningServer {
  readonly url: string
  readonly dataDir: string
  /** Of its process. */
  readonly pid: number
  stdout(): string
  stderr(): string
  /** The link of the first start's announcement, or null if none was printed. */
  ownerUrl(): string | null
  /** Asks it to end and waits until it has. */
  stop(): Promise<Ended>
  /** Ends it at once, as a power cut would. */
  kill(): Promise<Ended>
  /** Stopped, and its own data folder gone. */
  remove(): Promise<void>
  /** Starts it again after `stop` or `kill`: the same data, the same address. */
  restart(): Promise<RunningServer>
}

/** One test is many people at one address. */
const manyPeople = {
  INTAKES_PER_ADDRESS: '1000000',
  INTAKES_PER_DAY: '1000000',
  PHOTOS_PER_ADDRESS: '1000000',
  PHOTOS_PER_DAY: '1000000',
}

/** How long a server may take until it is ready. */
const patienceMs = 120_000

/** Starts the built server and waits until `/readyz` says that it can serve. */
export async function startServer(settings: ServerSettings = {}): Promise<RunningServer> {
  const dataDir = settings.dataDir ?? mkdtempSync(join(tmpdir(), 'pieceworth-data-'))
  try {
    return await start(settings, dataDir, await freePort())
  } catch (error) {
    if (!settings.dataDir) rmSync(dataDir, { recursive: true, force: true })
    throw error
  }
}

async function start(
  settings: ServerSettings,
  dataDir: string,
  port: number,
): Promise<RunningServer> {
  const command = settings.command ?? join(root, 'dist/cli.js')
  if (!existsSync(command)) throw new Error(`${command} is not there: run "npm run build" first`)

  const { PATH = '', HOME = '', TMPDIR = tmpdir(), LD_LIBRARY_PATH = '' } = process.env
  const machine = { PATH, HOME, TMPDIR, LD_LIBRARY_PATH }
  const child = watch(
    spawn(process.execPath, [command, 'serve'], {
      cwd: root,
      env: { ...machine, ...manyPeople, PORT: String(port), DATA_DIR: dataDir, ...settings.env },
      stdio: ['ignore', 'pipe', 'pipe'],
    }),
  )
  const end = (signal: NodeJS.Signals) => {
    child.process.kill(signal)
    return child.ended()
  }
  const tooLong = setTimeout(() => child.process.kill('SIGKILL'), patienceMs)
  try {
    const [, url] = await child.says(/listening (\S+)\n/)
    await ready(url!)
    return {
      url: url!,
      dataDir,
      pid: child.process.pid!,
      stdout: child.stdout,
      stderr: child.stderr,
      ownerUrl: () => /https?:\S+\/desk\/welcome\/\S+/.exec(child.stdout())?.[0] ?? null,
      stop: () => end('SIGTERM'),
      kill: () => end('SIGKILL'),
      remove: async () => {
        await end('SIGTERM')
        if (!settings.dataDir) rmSync(dataDir, { recursive: true, force: true })
      },
      restart: () => start(settings, dataDir, port),
    }
  } catch (error) {
    await end('SIGKILL')
    throw error
  } finally {
    clearTimeout(tooLong)
  }
}

async function ready(url: string): Promise<void> {
  const until = Date.now() + patienceMs
  let last: unknown
  while (Date.now() < until) {
    try {
      const { ok, status } = await fetch(`${url}/readyz`)
      if (ok) return
      last = status
    } catch (error) {
      // A server that has ended refuses, and will go on refusing.
      throw new Error(`the server at ${url} does not answer`, { cause: error })
    }
    await pause(50)
  }
  throw new Error(`the server at ${url} is not ready: ${last}`)
}

/** A port nobody listens on at this moment. */
export async function freePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as { port: number }
  await new Promise((resolve) => server.close(resolve))
  return port
}
