import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))
const sources = new URL('./sources.mjs', import.meta.url).href

export interface Ended {
  readonly code: number | null
  readonly signal: NodeJS.Signals | null
  readonly stdout: string
  readonly stderr: string
}

export interface Child {
  readonly process: ChildProcess
  /** Resolves once what was said on stdout matches; fails if the process ends first. */
  says(pattern: RegExp): Promise<RegExpExecArray>
  stdout(): string
  stderr(): string
  ended(): Promise<Ended>
}

/** Runs a TypeScript file of this project in a Node process of its own. */
export const startChild = (file: string, args: readonly string[] = []): Child =>
  watch(spawn(process.execPath, ['--import', sources, file, ...args], { cwd: root }))

/** Keeps what a process says, so that a test can wait for a line of it. */
export function watch(child: ChildProcess): Child {
  let stdout = ''
  let stderr = ''
  child.stdout?.setEncoding('utf8').on('data', (part) => {
    stdout += part
  })
  child.stderr?.setEncoding('utf8').on('data', (part) => {
    stderr += part
  })
  const closed = once(child, 'close').then(([code, signal]) => ({ code, signal }))

  return {
    process: child,
    ended: async () => ({ ...(await closed), stdout, stderr }),
    stdout: () => stdout,
    stderr: () => stderr,
    async says(pattern) {
      for (let ended = null; ; ) {
        const found = pattern.exec(stdout)
        if (found) return found
        if (ended) throw new Error(`the process ended before it said ${pattern}: ${stderr}`)
        ended = await Promise.race([once(child.stdout!, 'data').then(() => null), closed])
      }
    },
  }
}
