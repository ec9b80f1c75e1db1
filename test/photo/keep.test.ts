import {
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { sha256 } from '../../src/base/ids.ts'
import { openFolderPhotos, type PhotoStore } from '../../src/photo/keep.ts'
import { openBucketPhotos } from '../../src/photo/keep-bucket.ts'
import { photoOf as photo } from '../help/kept-photo.ts'
import { bucketAt, type S3, startS3 } from '../help/s3.ts'

interface Place {
  readonly photos: PhotoStore
  /** The names of all that is there. */
  names(): string[]
  put(name: string): void
  lose(name: string): void
  close(): Promise<void> | void
}

async function inFolder(): Promise<Place & { readonly folder: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-photos-'))
  return {
    folder,
    photos: await openFolderPhotos(folder),
    names: () => readdirSync(folder),
    put: (name) => writeFileSync(join(folder, name), 'other'),
    lose: (name) => rmSync(join(folder, name)),
    close: () => rmSync(folder, { recursive: true, force: true }),
  }
}

async function inBucket(): Promise<Place & { readonly s3: S3 }> {
  const s3 = await startS3()
  return {
    s3,
    photos: await openBucketPhotos(bucketAt(s3)),
    names: () => [...s3.objects.keys()].map((key) => key.replace(/^kept\/here\//, '')),
    put: (name) => s3.objects.set(`kept/here/${name}`, Buffer.from('other')),
    lose: (name) => s3.objects.delete(`kept/here/${name}`),
    close: () => s3.close(),
  }
}

describe.each<[string, () => Promise<Place>]>([
  ['a folder', inFolder],
  ['a bucket', inBucket],
])('in %s', (_, openPlace) => {
  let place: Place
  let photos: PhotoStore

  beforeEach(async () => {
    place = await openPlace()
    photos = place.photos
  })
  afterEach(() => place.close())

  test('a photo is opened in each size under the hash of its content', async () => {
    const name = await photos.keep(photo('shirt'))
    expect(name).toBe(sha256('shirt'))
    expect(String(Buffer.from(await photos.open(name, 'full')))).toBe('shirt')
    expect(String(Buffer.from(await photos.open(name, 'view')))).toBe('shirt view')
    expect(String(Buffer.from(await photos.open(name, 'thumb')))).toBe('shirt thumb')
    expect(String(Buffer.from(await photos.open(name, 'cloth')))).toBe('shirt cloth')
  })

  test('the four pictures of a photo are there and nothing else, also where it comes twice', async () => {
    const name = await photos.keep(photo('shirt'))
    await photos.keep(photo('shirt'))
    expect(place.names().sort()).toEqual(
      ['cloth', 'full', 'thumb', 'view'].map((derived) => `${name}.${derived}.jpg`),
    )
  })

  test('the same photo kept twice at once is whole', async () => {
    const [one, other] = await Promise.all([photos.keep(photo('a')), photos.keep(photo('a'))])
    expect(one).toBe(other)
    expect(place.names()).toHaveLength(4)
    expect(String(Buffer.from(await photos.open(one, 'view')))).toBe('a view')
  })

  test('a photo kept when there was no picture of its cloth gets one when it is sent again', async () => {
    const name = await photos.keep(photo('shirt'))
    place.lose(`${name}.cloth.jpg`)
    await expect(photos.open(name, 'cloth')).rejects.toMatchObject({ code: 'not_found' })
    await photos.keep(photo('shirt'))
    expect(String(Buffer.from(await photos.open(name, 'cloth')))).toBe('shirt cloth')
  })

  test('a removed photo is gone, others stay, and removing it again is nothing', async () => {
    const gone = await photos.keep(photo('shirt'))
    const stays = await photos.keep(photo('coat'))
    await photos.remove(gone)
    await photos.remove(gone)
    await expect(photos.open(gone, 'thumb')).rejects.toMatchObject({ code: 'not_found' })
    expect(String(Buffer.from(await photos.open(stays, 'full')))).toBe('coat')
    expect(place.names()).toHaveLength(4)
  })

  test.each(['../../etc/passwd', '', 'A'.repeat(64), `${'a'.repeat(64)}/..`])(
    'a name that no photo can have (%s) leads nowhere',
    async (name) => {
      place.put('other.full.jpg')
      await expect(photos.open(name, 'full')).rejects.toMatchObject({ code: 'not_found' })
      await photos.remove(name)
      expect(place.names()).toEqual(['other.full.jpg'])
    },
  )

  test('it is ready', async () => {
    await expect(photos.ready()).resolves.toBeUndefined()
  })
})

describe('a folder', () => {
  let place: Awaited<ReturnType<typeof inFolder>>

  beforeEach(async () => {
    place = await inFolder()
  })
  afterEach(() => place.close())

  test('is for its owner alone', async () => {
    await place.photos.keep(photo('shirt'))
    const files = readdirSync(place.folder)
    expect(files).toHaveLength(4)
    for (const file of files) expect(statSync(join(place.folder, file)).mode & 0o077).toBe(0)
  })

  test('is swept of drafts of a process that died at the next start, young ones are left alone', async () => {
    const [old, young] = [join(place.folder, 'a.old.draft'), join(place.folder, 'b.young.draft')]
    writeFileSync(old, 'half')
    writeFileSync(young, 'half')
    utimesSync(old, new Date(0), new Date(0))
    await openFolderPhotos(place.folder)
    expect(readdirSync(place.folder)).toEqual(['b.young.draft'])
  })

  test('opens beside a process that gives a draft its own name meanwhile', async () => {
    // A link that leads nowhere is listed, and gone when it is looked at.
    symlinkSync(join(place.folder, 'renamed'), join(place.folder, 'a.renamed.draft'))
    await (await openFolderPhotos(place.folder)).ready()
  })

  test('that is lost is unavailable, and a write that failed leaves no name', async () => {
    const { photos, folder } = place
    rmSync(folder, { recursive: true })
    await expect(photos.ready()).rejects.toMatchObject({ code: 'store_unavailable', status: 503 })
    await expect(photos.keep(photo('shirt'))).rejects.toMatchObject({ code: 'store_unavailable' })
    await expect(openFolderPhotos('/dev/null/photos')).rejects.toMatchObject({
      code: 'setting_invalid',
      details: { setting: 'PHOTOS_URL', message: expect.stringContaining('ENOTDIR') },
    })
  })
})
