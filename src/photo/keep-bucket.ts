import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { type Bucket, type BucketSettings, bucketOf } from './bucket.ts'
import { settingAtFault, unavailable } from './bucket-trouble.ts'
import { derivedInOrder, fileOf, isPhotoName, nameOf, type PhotoStore } from './keep.ts'

export interface BucketPatience {
  /** How long the look at the bucket may take before it is opened, in ms. */
  readonly startMs: number
  /** How long keeping, opening or removing one photo may take in all, in ms. */
  readonly workMs: number
  /** How long `ready` may take, in ms. */
  readonly readyMs: number
  /** How long to wait before each further try, in ms. */
  readonly waitsMs: readonly number[]
}

/** Time enough for a large photo over a line of 1.5 Mbit/s, which takes 15 s. */
const patience: BucketPatience = {
  startMs: 20_000,
  workMs: 20_000,
  readyMs: 3_000,
  waitsMs: [200, 1_000],
}

/**
 * Photos as objects of a bucket, under the names that files have in a folder. Looks whether it can keep, open and
 * remove there, and that nobody else can open. Throws `setting_invalid`, naming the setting at fault.
 */
export async function openBucketPhotos(
  settings: BucketSettings,
  { startMs, workMs, readyMs, waitsMs }: BucketPatience = patience,
): Promise<PhotoStore> {
  const bucket = bucketOf(settings, waitsMs)
  await prove(bucket, AbortSignal.timeout(startMs)).catch((error: unknown) => {
    throw settingAtFault(error)
  })
  return {
    keep: (photo) =>
      reaching(workMs, async (signal) => {
        const name = nameOf(photo)
        for (const derived of derivedInOrder) {
          await bucket.put(fileOf(name, derived), photo[derived], signal)
        }
        return name
      }),
    put: (name, derived, bytes) =>
      reaching(workMs, (signal) => bucket.put(fileOf(name, derived), bytes, signal)),
    open: async (name, derived) => {
      if (!isPhotoName(name)) throw new Failure('not_found')
      const bytes = await reaching(workMs, (signal) => bucket.get(fileOf(name, derived), signal))
      if (!bytes) throw new Failure('not_found')
      return bytes
    },
    remove: async (name) => {
      if (!isPhotoName(name)) return
      await reaching(workMs, async (signal) => {
        for (const derived of derivedInOrder.toReversed()) {
          await bucket.remove(fileOf(name, derived), signal)
        }
      })
    },
    ready: () => reaching(readyMs, bucket.look),
  }
}

/** Keeps, opens and removes an object, and sees that nobody can read it without a key. */
async function prove(bucket: Bucket, signal: AbortSignal): Promise<void> {
  const key = `start-${newId()}.jpg`
  await bucket.put(key, Buffer.from('written and removed again at the start'), signal)
  try {
    await bucket.get(key, signal)
    await bucket.look(signal)
    if (await bucket.isOpenToAll(key, signal)) {
      const message = 'anyone can read what is in this bucket; make it private'
      throw new Failure('setting_invalid', { setting: 'PHOTOS_URL', message })
    }
  } finally {
    await bucket.remove(key, signal)
  }
}

async function reaching<T>(ms: number, work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  try {
    return await work(AbortSignal.timeout(ms))
  } catch (error) {
    throw unavailable(error)
  }
}
