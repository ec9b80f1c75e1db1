import { mkdtempSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { sha256 } from '../../src/base/ids.ts'
import { openFolderPhotos, type PhotoStore } from '../../src/photo/keep.ts'
import type { SafePhoto } from '../../src/photo/safe.ts'

let folder: string
let photos: PhotoStore

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'pieceworth-photos-'))
  photos = await openFolderPhotos(folder)
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const photo = (full: string): SafePhoto => ({
  width: 1,
  height: 1,
  full: Buffer.from(full),
  view: Buffer.from(`${full} view`),
  thumb: Buffer.from(`${full} thumb`),
  cloth: Buffer.from(`${full} cloth`),
  seen: { mean: '#35619f', main: [{ colour: '#35619f', share: 1 }] },
})

test('a photo is opened in each size under the hash of its content', async () => {
  const name = await photos.keep(photo('shirt'))
  expect(name).toBe(sha256('shirt'))
  expect(String(await photos.open(name, 'full'))).toBe('shirt')
  expect(String(await photos.open(name, 'view'))).toBe('shirt view')
  expect(String(await photos.open(name, 'thumb'))).toBe('shirt thumb')
  expect(String(await photos.open(name, 'cloth'))).toBe('shirt cloth')
})

test('the folder holds the four files of a photo and nothing else, for the owner alone', async () => {
  await photos.keep(photo('shirt'))
  await photos.keep(photo('shirt'))
  const files = readdirSync(folder)
  expect(files).toHaveLength(4)
  for (const file of files) expect(statSync(join(folder, file)).mode & 0o077).toBe(0)
})

test('the same photo kept twice at once is whole', async () => {
  const [one, other] = await Promise.all([photos.keep(photo('a')), photos.keep(photo('a'))])
  expect(one).toBe(other)
  expect(readdirSync(folder)).toHaveLength(4)
  expect(String(await photos.open(one, 'view'))).toBe('a view')
})

test('a photo kept when there was no picture of its cloth gets one when it is sent again', async () => {
  const name = await photos.keep(photo('shirt'))
  rmSync(join(folder, `${name}.cloth.jpg`))
  await expect(photos.open(name, 'cloth')).rejects.toMatchObject({ code: 'not_found' })
  await photos.keep(photo('shirt'))
  expect(String(await photos.open(name, 'cloth'))).toBe('shirt cloth')
})

test('a removed photo is gone, others stay, and removing it again is nothing', async () => {
  const gone = await photos.keep(photo('shirt'))
  const stays = await photos.keep(photo('coat'))
  await photos.remove(gone)
  await photos.remove(gone)
  await expect(photos.open(gone, 'thumb')).rejects.toMatchObject({ code: 'not_found' })
  expect(String(await photos.open(stays, 'full'))).toBe('coat')
  expect(readdirSync(folder)).toHaveLength(4)
})

test.each(['../../etc/passwd', '', 'A'.repeat(64), `${'a'.repeat(64)}/..`])(
  'a name that no photo can have (%s) leads nowhere',
  async (name) => {
    writeFileSync(join(folder, 'other.full.jpg'), 'other')
    await expect(photos.open(name, 'full')).rejects.toMatchObject({ code: 'not_found' })
    await photos.remove(name)
    expect(readdirSync(folder)).toEqual(['other.full.jpg'])
  },
)

test('drafts of a process that died are swept at the next start, young ones are left alone', async () => {
  const [old, young] = [join(folder, 'a.old.draft'), join(folder, 'b.young.draft')]
  writeFileSync(old, 'half')
  writeFileSync(young, 'half')
  utimesSync(old, new Date(0), new Date(0))
  await openFolderPhotos(folder)
  expect(readdirSync(folder)).toEqual(['b.young.draft'])
})

test('a folder that is lost is unavailable, and a write that failed leaves no name', async () => {
  await photos.ready()
  rmSync(folder, { recursive: true })
  await expect(photos.ready()).rejects.toMatchObject({ code: 'store_unavailable', status: 503 })
  await expect(photos.keep(photo('shirt'))).rejects.toMatchObject({ code: 'store_unavailable' })
  await expect(openFolderPhotos('/dev/null/photos')).rejects.toMatchObject({
    code: 'store_unavailable',
  })
})
