// Clones the committed project into an empty folder and runs the README's two commands there, as a
// newcomer with nothing but Node would. Prints the seconds from the end of the install to a ready
// server, and those of the whole test bar. Plain JavaScript: it must run before anything is built.
import { execFileSync, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'

const here = new URL('../..', import.meta.url).pathname
const folder = mkdtempSync(join(tmpdir(), 'pieceworth-clone-'))
const clone = join(folder, 'pieceworth')
const seconds = (since) => ((Date.now() - since) / 1000).toFixed(1)
const tell = (line) => process.stdout.write(`${line}\n`)

const freePort = () =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address()
      server.close(() => resolve(port))
    })
  })

const isReady = (url) =>
  fetch(url).then(
    ({ ok }) => ok,
    () => false,
  )

async function untilReady(port) {
  const since = Date.now()
  while (!(await isReady(`http://127.0.0.1:${port}/readyz`))) {
    if (Date.now() - since > 60_000) throw new Error('the server was not ready within a minute')
    await pause(20)
  }
  return seconds(since)
}

try {
  execFileSync('git', ['clone', '--quiet', here, clone])
  const installing = Date.now()
  execFileSync('npm', ['ci'], { cwd: clone, stdio: 'ignore' })
  tell(`install: ${seconds(installing)} s`)

  const port = await freePort()
  const env = { ...process.env, PORT: String(port), LOG_LEVEL: 'silent' }
  const server = spawn('npm', ['start'], { cwd: clone, env, stdio: 'ignore', detached: true })
  tell(`ready: ${await untilReady(port)} s after the install (at most 5)`)
  process.kill(-server.pid, 'SIGTERM')

  const testing = Date.now()
  const run = spawn('npm', ['test'], { cwd: clone, stdio: ['ignore', 'pipe', 'inherit'] })
  let said = ''
  run.stdout.on('data', (chunk) => {
    said += chunk
  })
  const code = await new Promise((resolve) => run.on('close', resolve))
  tell(
    `tests: ${seconds(testing)} s (at most 480), exit ${code}, ${said.trim().split('\n').at(-1)}`,
  )
  process.exitCode = code
} finally {
  rmSync(folder, { recursive: true, force: true })
}
