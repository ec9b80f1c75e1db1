import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { sha256 } from '../../src/base/ids.ts'
import { readLedger } from '../../src/keeping/erasures.ts'
import { sumLine } from '../../src/keeping/format.ts'
import { openBackup } from '../../src/keeping/read-backup.ts'
import { tablesIn } from '../../src/store/contents.ts'
import {
  backUpTo,
  changed,
  fillAll,
  newShelf,
  packed,
  restoreFrom,
  type Shelf,
  unpacked,
} from '../help/backups.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { random } from '../help/xorshift.ts'

let shelf: Shelf
let good: string
let whole: Map<string, Buffer>
let target: TestStore
beforeAll(async () => {
  shelf = await newShelf()
  const source = await openSqlite()
  await fillAll(source.store, shelf)
  await backUpTo(source.store, shelf)
  await source.end()
  good = shelf.file('backup.tar')
  whole = await unpacked(good)
  target = await openSqlite(false)
})
afterAll(async () => {
  await target.end()
  shelf.remove()
})

let bad: string
let n = 0
beforeEach(() => {
  n += 1
  bad = shelf.file(`bad-${n}.tar`)
})

/** Why a file is refused; nothing may have come into the store or among the photos. */
async function refused(file: string): Promise<string> {
  const to = await newShelf()
  try {
    const error = await restoreFrom(file, target.store, to).then(
      () => ({ code: 'taken' }),
      (thrown) => thrown,
    )
    expect([...(await tablesIn(target.store))]).toEqual([])
    expect(readdirSync(join(to.folder, 'photos'))).toEqual([])
    return error.code
  } finally {
    to.remove()
  }
}

/** The backup with entries changed, its sums made anew: only what it says is wrong, not how it is packed. */
async function repacked(change: (entries: Map<string, Buffer>) => void): Promise<string> {
  const entries = new Map(whole)
  const sums = [...entries.keys()].find((name) => name.startsWith('sums/'))!
  entries.delete(sums)
  change(entries)
  const lines = [...entries].map(([name, bytes]) => sumLine(sha256(bytes), name))
  entries.set(sums, Buffer.from(lines.join('')))
  return packed(bad, entries)
}

const json = (bytes: Buffer) => JSON.parse(bytes.toString('utf8'))
const asJson = (value: unknown) => Buffer.from(JSON.stringify(value))

test('the backup itself is good, and so is one that was packed anew', async () => {
  for (const file of [good, await repacked(() => {})]) {
    const backup = await openBackup(file)
    expect(backup.ending.photos.pictures).toBe(4)
    await backup.close()
  }
})

test('one that breaks off is refused, wherever it does', async () => {
  const { length } = readFileSync(good)
  const below = random(11)
  const places = Array.from({ length: 40 }, () => below(length))
  for (const at of [0, 1, 511, 512, length - 1, length - 512, length - 1024, ...places]) {
    const code = await refused(changed(good, bad, (bytes) => bytes.subarray(0, at)))
    expect(code, `cut at ${at}`).toMatch(/^backup_(cut_short|unknown|altered)$/)
  }
})

test('one with a byte changed is refused, whichever it is', async () => {
  const { length } = readFileSync(good)
  const below = random(12)
  for (let tried = 0; tried < 150; tried += 1) {
    const at = below(length)
    const bit = 1 << below(8)
    const file = changed(good, bad, (bytes) => {
      bytes[at]! ^= bit
      return bytes
    })
    // Of an entry's mode, owner and time nothing is read; its header's own sum covers them.
    expect(await refused(file), `byte ${at}`).toMatch(/^backup_(cut_short|unknown|altered)$/)
  }
})

test('one with something behind its end is refused', async () => {
  const longer = changed(good, bad, (bytes) => Buffer.concat([bytes, Buffer.alloc(512, 'x')]))
  expect(await refused(longer)).toBe('backup_cut_short')
})

test.each<[string, (folder: string) => readonly string[]]>([
  ['a name that leads out of the folder', () => ['--transform', 's,inner,../../outside,', 'inner']],
  ['a name from the root', () => ['--transform', 's,inner,/tmp/outside,', 'inner']],
  ['a link', () => ['link']],
  ['a folder', () => ['folder']],
])('one with %s is refused', async (_, what) => {
  const folder = shelf.file(`parts-${n}`)
  mkdirSync(join(folder, 'folder'), { recursive: true })
  writeFileSync(join(folder, 'backup.json'), whole.get('backup.json')!)
  writeFileSync(join(folder, 'inner'), 'written where it should not be')
  execFileSync('ln', ['-s', '/etc/hostname', 'link'], { cwd: folder })
  const options = ['-P', '--format=ustar', '-b1', '-cf', bad, 'backup.json', ...what(folder)]
  execFileSync('tar', options, { cwd: folder })
  expect(await refused(bad)).toBe('backup_cut_short')
  expect(existsSync(shelf.file('outside')) || existsSync('/tmp/outside')).toBe(false)
})

test.each<[string, string, (entries: Map<string, Buffer>) => void]>([
  [
    'a later form',
    'backup_too_new',
    (all) => all.set('backup.json', asJson({ ...json(all.get('backup.json')!), version: 2 })),
  ],
  [
    'another program',
    'backup_unknown',
    (all) => all.set('backup.json', asJson({ ...json(all.get('backup.json')!), format: 'other' })),
  ],
  [
    'no beginning of ours',
    'backup_unknown',
    (all) => all.set('backup.json', Buffer.from('nothing')),
  ],
  [
    'a later version of the product',
    'store_too_new',
    (all) => {
      const begun = json(all.get('backup.json')!)
      const migrations = [...begun.migrations, '9999-later']
      all.set('backup.json', asJson({ ...begun, migrations }))
    },
  ],
  [
    'an entry that is none of ours',
    'backup_altered',
    (all) => all.set('more.txt', Buffer.from('')),
  ],
  [
    'a row more than it tells of',
    'backup_altered',
    (all) => {
      const name = 'tables/counter/000001.jsonl'
      all.set(name, Buffer.concat([all.get(name)!, asJson({ name: 'a', value: 1 })]))
    },
  ],
  [
    'a photo under the name of another',
    'backup_altered',
    (all) => {
      const name = [...all.keys()].find((one) => one.endsWith('.full.jpg'))!
      all.set(name, Buffer.from('another'))
    },
  ],
  [
    'a line that is no row',
    'backup_altered',
    (all) => all.set('tables/counter/000001.jsonl', Buffer.from('{"name":["x"]}\n')),
  ],
  ['no end', 'backup_cut_short', (all) => all.delete('end.json')],
])('one of %s is refused', async (_, code, change) => {
  expect(await refused(await repacked(change))).toBe(code)
})

test('files that are no backup, or not there, are refused', async () => {
  writeFileSync(bad, 'Not an archive. '.repeat(100))
  expect(await refused(bad)).toBe('backup_unknown')
  expect(await refused(shelf.file('nowhere.tar'))).toBe('file_unread')
  expect(await refused(shelf.folder)).toBe('backup_unknown')
})

test('a list of erasures that is none is refused, with its line', async () => {
  const line = { what_hash: 'a'.repeat(64), what: 'pile', by_whom: 'staff', at: 1 }
  writeFileSync(bad, `${JSON.stringify(line)}\n\n{"what_hash":"short"}\n`)
  await expect(readLedger(bad)).rejects.toMatchObject({
    code: 'ledger_damaged',
    details: { line: 3 },
  })
})
