import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { sha256 } from '../../src/base/ids.ts'
import type { PhotoStore } from '../../src/photo/keep.ts'
import { type BucketPatience, openBucketPhotos } from '../../src/photo/keep-bucket.ts'
import { photoOf } from '../help/kept-photo.ts'
import { bucketAt, type Fault, type S3, startS3 } from '../help/s3.ts'

const patient: BucketPatience = {
  startMs: 30_000,
  workMs: 30_000,
  readyMs: 30_000,
  waitsMs: [1, 2],
}
const hurried: BucketPatience = { ...patient, workMs: 300, readyMs: 300 }

let s3: S3
let photos: PhotoStore
const shirt = photoOf('shirt')
const nameOfShirt = sha256('shirt')
const objectsOf = (name: string) =>
  [...s3.objects.keys()].filter((key) => key.includes(name)).map((key) => key.split('.')[1])

beforeEach(async () => {
  s3 = await startS3()
  photos = await openBucketPhotos(bucketAt(s3), patient)
  s3.came.length = 0
})
afterEach(() => s3.close())

const unavailable = { name: 'Failure', code: 'store_unavailable', status: 503 }

test('the name is given once all four are acknowledged, the largest last', async () => {
  await photos.keep(shirt)
  expect(s3.came).toEqual(
    ['cloth', 'thumb', 'view', 'full'].map((one) => `PUT kept/here/${nameOfShirt}.${one}.jpg`),
  )
})

test('of a photo to be removed the largest goes first', async () => {
  await photos.remove(await photos.keep(shirt))
  expect(s3.came.slice(4)).toEqual(
    ['full', 'view', 'thumb', 'cloth'].map((one) => `DELETE kept/here/${nameOfShirt}.${one}.jpg`),
  )
})

test.each<[string, Fault]>([
  ['503', [503, 'SlowDown']],
  ['500', [500, 'InternalError']],
  ['429', [429, 'TooManyRequests']],
  ['a connection that is cut', 'cut'],
  ['a connection that is cut before the answer', 'lost'],
])('%s, twice, is tried again', async (_, fault) => {
  s3.fails([fault, fault], 'PUT')
  const name = await photos.keep(shirt)
  s3.fails([fault, fault], 'GET')
  expect(Buffer.from(await photos.open(name, 'full'))).toEqual(shirt.full)
  s3.fails([fault, fault], 'DELETE')
  await photos.remove(name)
  expect(s3.objects.size).toBe(0)
})

test.each<[string, Fault]>([
  ['503', [503, 'SlowDown']],
  ['a connection that is cut', 'cut'],
])('%s that goes on is told, and the photo has no largest picture then', async (_, fault) => {
  s3.fails([fault, fault, fault])
  await expect(photos.keep(shirt)).rejects.toMatchObject(unavailable)
  expect(s3.came).toHaveLength(3)
  expect(objectsOf(nameOfShirt)).not.toContain('full')
  s3.fails([fault, fault, fault])
  await expect(photos.open(nameOfShirt, 'full')).rejects.toMatchObject(unavailable)
})

test('an upload that breaks half way leaves no largest picture, and is whole when it is sent again', async () => {
  const hasty = await openBucketPhotos(bucketAt(s3), hurried)
  s3.fails(['none', 'none', 'silent'], 'PUT')
  await expect(hasty.keep(shirt)).rejects.toMatchObject(unavailable)
  expect(objectsOf(nameOfShirt)).not.toContain('full')
  await photos.keep(shirt)
  expect(objectsOf(nameOfShirt).sort()).toEqual(['cloth', 'full', 'thumb', 'view'])
})

test('bytes that were changed on the way are not acknowledged', async () => {
  s3.fails(['spoiled'], 'PUT')
  await expect(photos.keep(shirt)).rejects.toMatchObject(unavailable)
  expect(s3.objects.size).toBe(0)
})

test('an answer that ends half way is asked for again', async () => {
  const name = await photos.keep(shirt)
  s3.fails(['half', 'half'], 'GET')
  expect(Buffer.from(await photos.open(name, 'full'))).toEqual(shirt.full)
})

test.each<Fault>(['silent', 'stuck'])(
  'a store that goes %s is given up in its time',
  async (fault) => {
    const hasty = await openBucketPhotos(bucketAt(s3), hurried)
    const name = await photos.keep(shirt)
    s3.came.length = 0
    s3.fails([fault, fault, fault])
    await expect(hasty.open(name, 'full')).rejects.toMatchObject(unavailable)
    // What is slow is not made quicker by asking again.
    expect(s3.came).toHaveLength(1)
    await expect(hasty.ready()).rejects.toMatchObject(unavailable)
  },
)

test('a store that is down for a while is told of, and serves again afterwards', async () => {
  const name = await photos.keep(shirt)
  await s3.down()
  await expect(photos.ready()).rejects.toMatchObject(unavailable)
  await expect(photos.open(name, 'full')).rejects.toMatchObject(unavailable)
  await expect(photos.keep(photoOf('coat'))).rejects.toMatchObject(unavailable)
  await expect(photos.remove(name)).rejects.toMatchObject(unavailable)
  await s3.back()
  await photos.ready()
  expect(Buffer.from(await photos.open(name, 'full'))).toEqual(shirt.full)
})

test('an absent picture of a bucket that is gone is no word on the picture', async () => {
  const gone: Fault = [404, 'NoSuchBucket']
  s3.fails([gone, gone], 'GET')
  await expect(photos.open(nameOfShirt, 'full')).rejects.toMatchObject(unavailable)
  await expect(photos.open(nameOfShirt, 'full')).rejects.toMatchObject({ code: 'not_found' })
})

test('a request is not followed to another address', async () => {
  s3.fails([[307, 'TemporaryRedirect']], 'PUT')
  await expect(photos.keep(shirt)).rejects.toMatchObject(unavailable)
  expect(s3.came).toHaveLength(1)
})

test('what the store says of a failure is told without keys and signatures', async () => {
  s3.fails([[403, 'SignatureDoesNotMatch']], 'PUT')
  const failure = await photos.keep(shirt).catch((error: unknown) => error)
  expect(failure).toBeInstanceOf(Failure)
  const { cause } = failure as Failure
  expect((cause as Error).message).toBe('the store answers 403 SignatureDoesNotMatch')
  expect(Object.keys(cause as Error)).toEqual([])
})

describe('at the start', () => {
  const starting = (changed: Partial<ReturnType<typeof bucketAt>> = {}) =>
    openBucketPhotos({ ...bucketAt(s3), ...changed }, patient)

  test.each([
    ['a key that is unknown', { accessKeyId: 'AKIDOTHER' }, 'S3_ACCESS_KEY_ID', 'does not know it'],
    [
      'a secret that is another key’s',
      { secretAccessKey: 'another' },
      'S3_SECRET_ACCESS_KEY',
      'does not belong',
    ],
    ['another region', { region: 'us-east-1' }, 'S3_REGION', 'another region'],
    [
      'an address where nobody listens',
      { address: 'http://127.0.0.1:1/no-store' },
      'S3_ENDPOINT',
      'does not answer',
    ],
  ])('%s is told by the setting', async (_, changed, setting, message) => {
    await expect(starting(changed)).rejects.toMatchObject({
      code: 'setting_invalid',
      details: { setting, message: expect.stringContaining(message) },
    })
  })

  test('a bucket that is not there is told by the setting', async () => {
    await expect(starting(bucketAt(s3, 'no-such'))).rejects.toMatchObject({
      code: 'setting_invalid',
      details: { setting: 'PHOTOS_URL', message: 'the store has no such bucket' },
    })
  })

  test('a key that may not list the bucket is refused, as it could not tell what is absent', async () => {
    s3.mayList = false
    await expect(starting()).rejects.toMatchObject({
      code: 'setting_invalid',
      details: { setting: 'S3_ACCESS_KEY_ID', message: expect.stringContaining('list') },
    })
  })

  test.each<[string, Fault, string]>([
    ['write', [403, 'AccessDenied'], 'PUT'],
    ['read', [403, 'AccessDenied'], 'GET'],
    ['remove', [403, 'AccessDenied'], 'DELETE'],
  ])('a key that may not %s is refused', async (_, fault, method) => {
    s3.fails([fault], method)
    await expect(starting()).rejects.toMatchObject({
      details: { setting: 'S3_ACCESS_KEY_ID' },
    })
  })

  test('a bucket that anyone can read is refused', async () => {
    s3.open = true
    await expect(starting()).rejects.toMatchObject({
      details: { setting: 'PHOTOS_URL', message: expect.stringContaining('anyone can read') },
    })
  })

  test.each([
    ['refused', async () => expect(starting({ region: 'us-east-1' })).rejects.toThrow()],
    ['good', () => starting()],
  ])('nothing is left in the bucket after a %s one', async (_, start) => {
    await start()
    expect([...s3.objects.keys()]).toEqual([])
  })
})
