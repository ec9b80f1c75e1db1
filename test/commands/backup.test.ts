import { appendFileSync, existsSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { fillAll, newShelf, type Shelf } from '../help/backups.ts'
import { refusal, runHere } from '../help/command.ts'

let from: Shelf
let store: Store
let to: Shelf
beforeAll(async () => {
  from = await newShelf()
  store = await openStore({ dataDir: from.folder })
  await migrate(store)
  await fillAll(store, from)
})
afterAll(async () => {
  await store.close()
  from.remove()
})
beforeEach(async () => {
  to?.remove()
  to = await newShelf()
})
afterAll(() => to?.remove())

const backup = async (file: string) => {
  const ran = await runHere(['backup', file], { DATA_DIR: from.folder })
  expect(ran).toMatchObject({ code: 0, stderr: '' })
  return JSON.parse(ran.stdout)
}

test('a backup beside an open store, and its restore, print their counts', async () => {
  const file = from.file('one.tar')
  const made = await backup(file)
  expect(made).toMatchObject({ ok: true, file, bytes: statSync(file).size })
  const ran = await runHere(['restore', file], { DATA_DIR: to.file('data') })
  expect(ran).toMatchObject({ code: 0, stderr: '' })
  const restored = JSON.parse(ran.stdout)
  expect(restored).toMatchObject({ ok: true, made: made.made, erased: { piles: 0, photos: 0 } })
  expect(restored.tables).toEqual(made.tables)
  expect(existsSync(to.file('data/photos'))).toBe(true)

  const again = refusal(await runHere(['restore', file], { DATA_DIR: to.file('data') }))
  expect(again).toMatchObject({ exit: 2, stdout: '', code: 'store_not_empty' })
  const over = refusal(await runHere(['backup', file], { DATA_DIR: from.folder }))
  expect(over).toMatchObject({ exit: 2, stdout: '', code: 'file_there' })
})

test('a restore goes by the list of erasures in its own folder and by those that are named', async () => {
  const file = from.file('two.tar')
  await backup(file)
  const { what_hash } = await store.db.selectFrom('erasure').selectAll().executeTakeFirstOrThrow()
  const known = { what_hash: 'b'.repeat(64), what: 'pile', by_whom: 'time', at: 7 }
  writeFileSync(to.file('named.jsonl'), `${JSON.stringify(known)}\n`)
  appendFileSync(
    to.file('erasures.jsonl'),
    `${JSON.stringify({ ...known, what_hash: 'c'.repeat(64) })}\n`,
  )
  const given = ['restore', file, '--erasures', to.file('named.jsonl')]
  expect(await runHere(given, { DATA_DIR: to.folder })).toMatchObject({ code: 0 })
  const ledger = readFileSync(join(to.folder, 'erasures.jsonl'), 'utf8')
  for (const hash of ['b'.repeat(64), 'c'.repeat(64), what_hash])
    expect(ledger).toContain(JSON.stringify(hash))
  expect(statSync(join(to.folder, 'erasures.jsonl')).mode & 0o077).toBe(0)
})

test.each([
  ['a backup without a file', ['backup'], 'bad_input'],
  ['a backup into two files', ['backup', 'a', 'b'], 'bad_input'],
  ['a restore without a file', ['restore'], 'bad_input'],
  ['a restore with a word it does not know', ['restore', 'a', '--force'], 'bad_input'],
  ['a restore of nothing', ['restore', 'nowhere.tar'], 'file_unread'],
  ['a backup of an empty folder', ['backup', 'a.tar'], 'nothing_kept'],
])('%s is refused', async (_, given, code) => {
  const ran = refusal(await runHere(given, { DATA_DIR: to.file('none') }))
  expect(ran).toMatchObject({ exit: 2, stdout: '', code })
  expect(existsSync('a.tar')).toBe(false)
})
