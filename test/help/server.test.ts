import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { startServer } from './server.ts'

const command = fileURLToPath(new URL('./stand-in.mjs', import.meta.url))
const starts = async (url: string) => (await fetch(url)).text()

test('a server is ready once started, may be ended either way, and comes back to its data and address', async () => {
  const first = await startServer({ command })
  expect((await fetch(`${first.url}/readyz`)).status).toBe(200)
  expect(first.ownerUrl()).toBe(`${first.url}/desk/welcome/abc_-1`)

  expect(await first.kill()).toMatchObject({ signal: 'SIGKILL' })
  await expect(fetch(first.url)).rejects.toThrow()
  const second = await first.restart()
  expect(await second.stop()).toMatchObject({ code: 0 })
  const third = await second.restart()
  expect(third.url).toBe(first.url)
  expect(await starts(third.url)).toBe('start\n'.repeat(3))

  await third.remove()
  expect(existsSync(first.dataDir)).toBe(false)
})

test('a server that does not start says what it said', async () => {
  const failing = startServer({ command, env: { FAILS: 'the flows are not valid' } })
  await expect(failing).rejects.toThrow('the flows are not valid')
})

test('a server that was never built says how to build it', async () => {
  await expect(startServer({ command: '/nowhere/cli.js' })).rejects.toThrow('npm run build')
})
