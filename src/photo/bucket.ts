import { createHash } from 'node:crypto'
import { setTimeout as pause } from 'node:timers/promises'
import { S3mini, S3ServiceError } from 's3mini'
import { passes } from './bucket-trouble.ts'

/** A bucket of a store that speaks S3. */
export interface BucketSettings {
  /** The bucket's own: `https://store.example/bucket` or `https://bucket.store.example`. */
  readonly address: string
  readonly region: string
  /** What the keys of all objects begin with, without slashes around it; empty: nothing. */
  readonly prefix: string
  readonly accessKeyId: string
  readonly secretAccessKey: string
}

/** The bucket's objects by their keys, below the prefix. Each try ends with `signal`; errors are the store's own. */
export interface Bucket {
  /** Acknowledged by the store once it resolves. */
  put(key: string, bytes: Uint8Array, signal: AbortSignal): Promise<void>
  /** Null: there is no such object. */
  get(key: string, signal: AbortSignal): Promise<Uint8Array | null>
  /** Of an object that is not there, nothing. */
  remove(key: string, signal: AbortSignal): Promise<void>
  /** One try. Throws where the bucket is not there, or may not be listed. */
  look(signal: AbortSignal): Promise<void>
  /** Whether anyone may read an object, without any key. */
  isOpenToAll(key: string, signal: AbortSignal): Promise<boolean>
}

/** `waitsMs`: how long to wait before each further try of what may pass. */
export function bucketOf(settings: BucketSettings, waitsMs: readonly number[]): Bucket {
  const { address, prefix, region, accessKeyId, secretAccessKey } = settings
  const below = (key: string) => (prefix ? `${prefix}/${key}` : key)

  // Led on to another address, a request would go there signed for this one.
  const reach =
    (signal: AbortSignal): typeof fetch =>
    (input, init) =>
      fetch(input, { ...init, signal, redirect: 'manual' })
  const client = (signal: AbortSignal) =>
    new S3mini({ endpoint: address, region, accessKeyId, secretAccessKey, fetch: reach(signal) })

  async function tried<T>(signal: AbortSignal, work: () => Promise<T>): Promise<T> {
    for (const wait of waitsMs) {
      try {
        return await work()
      } catch (error) {
        if (signal.aborted || !passes(error)) throw error
        await pause(wait, undefined, { signal })
      }
    }
    return work()
  }

  async function look(signal: AbortSignal): Promise<void> {
    if (await client(signal).listObjects('/', prefix, 1)) return
    throw new S3ServiceError('there is no such bucket', 404, 'NoSuchBucket')
  }

  return {
    async put(key, bytes, signal) {
      // The signature does not cover the bytes. By their sum the store sees whether they came as they are.
      const sum = { 'content-md5': createHash('md5').update(bytes).digest('base64') }
      const s3 = client(signal)
      await tried(signal, () => s3.putObject(below(key), bytes, 'image/jpeg', undefined, sum))
    },
    async get(key, signal) {
      const s3 = client(signal)
      const bytes = await tried(signal, () => s3.getObjectArrayBuffer(below(key)))
      if (bytes) return new Uint8Array(bytes)
      // Where the bucket itself is missing, the store answers as if the object were.
      await tried(signal, () => look(signal))
      return null
    },
    async remove(key, signal) {
      const s3 = client(signal)
      await tried(signal, () => s3.deleteObject(below(key)))
    },
    look,
    async isOpenToAll(key, signal) {
      const url = `${address}/${below(key)}`
      const { ok, body } = await tried(signal, () => reach(signal)(url))
      await body?.cancel()
      return ok
    },
  }
}
