import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { holdFolder } from '../../src/store/lock.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore } from '../../src/store/open.ts'
import { type Child, startChild } from '../help/child.ts'

let folder: string
let children: Child[]

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pieceworth-lock-'))
  children = []
})

afterEach(() => {
  for (const child of children) child.process.kill('SIGKILL')
  rmSync(folder, { recursive: true, force: true })
})

function hold(): Child {
  const child = startChild('test/help/holding.ts', [folder])
  children.push(child)
  return child
}

test('a second process is refused the folder, which is named', async () => {
  await hold().says(/held/)
  expect((await hold().ended()).stdout).toContain(
    JSON.stringify({ name: 'Failure', code: 'folder_in_use', details: { folder } }),
  )
  expect(() => holdFolder(folder)).toThrow(expect.objectContaining({ code: 'folder_in_use' }))
})

test('a process that was killed holds nothing', async () => {
  const first = hold()
  await first.says(/held/)
  first.process.kill('SIGKILL')
  expect(await first.ended()).toMatchObject({ signal: 'SIGKILL' })

  await hold().says(/held/)
})

test('of several that start at once exactly one gets the folder', async () => {
  const started = [hold(), hold(), hold(), hold()]
  const said = await Promise.all(started.map((child) => child.says(/.*\n/)))
  expect(said.filter(([line]) => line === 'held\n')).toHaveLength(1)
  expect(said.filter(([line]) => line.includes('folder_in_use'))).toHaveLength(3)
})

test('a released folder may be held again, in the same process too', () => {
  const held = holdFolder(folder)
  expect(() => holdFolder(folder)).toThrow(expect.objectContaining({ code: 'folder_in_use' }))
  held.release()
  holdFolder(folder).release()
})

test('the store in a held folder is open to other commands', async () => {
  await hold().says(/held/)
  const store = await openStore({ dataDir: folder })
  await migrate(store)
  await store.ready()
  await store.close()
})

test('a folder where nothing can be written is a wrong setting, not in use', () => {
  expect(() => holdFolder('/dev/null/data')).toThrow(
    expect.objectContaining({ code: 'setting_invalid' }),
  )
})
