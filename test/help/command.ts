import { spawn } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { vi } from 'vitest'
import { runVerb } from '../../src/commands/run.ts'
import { watch } from './child.ts'

const built = fileURLToPath(new URL('../../dist/cli.js', import.meta.url))
const root = fileURLToPath(new URL('../..', import.meta.url))

export interface Ran {
  readonly code: number | null
  readonly stdout: string
  readonly stderr: string
}

type Settings = Readonly<Record<string, string>>

/** Runs a verb of the built command line to its end. Settings of the machine are not passed on. */
export async function run(
  args: readonly string[],
  {
    input = '',
    env = {},
    command = built,
  }: { input?: string; env?: Settings; command?: string } = {},
): Promise<Ran> {
  const { PATH = '', HOME = '', LD_LIBRARY_PATH = '' } = process.env
  const child = spawn(process.execPath, [command, ...args], {
    cwd: root,
    env: { PATH, HOME, LD_LIBRARY_PATH, ...env },
  })
  // A command that ends before it has read its input is no fault of the test.
  child.stdin.on('error', () => {})
  child.stdin.end(input)
  const { code, stdout, stderr } = await watch(child).ended()
  return { code, stdout, stderr }
}

/** Where commands that run from the sources keep proofs, so that each need not prove for itself. */
const dataDir = fileURLToPath(new URL('../../node_modules/.cache/pieceworth', import.meta.url))

/** The same in this process, from the sources: for verbs that read no standard input. */
export async function runHere(args: readonly string[], env: Settings = {}): Promise<Ran> {
  const said = { stdout: '', stderr: '' }
  const listen = (stream: 'stdout' | 'stderr') =>
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      said[stream] += text
      return true
    })
  const spies = [listen('stdout'), listen('stderr')]
  mkdirSync(dataDir, { recursive: true })
  for (const [name, value] of Object.entries({ DATA_DIR: dataDir, ...env })) {
    vi.stubEnv(name, value)
  }
  try {
    const code = await runVerb(args)
    return { code, ...said }
  } finally {
    for (const spy of spies) spy.mockRestore()
    vi.unstubAllEnvs()
  }
}

/** What a refused command says: one line of JSON with a code and a sentence. */
export function refusal({ code, stdout, stderr }: Ran) {
  const { error } = JSON.parse(stderr) as { error: { code: string; message: string } }
  return { exit: code, stdout, ...error }
}
