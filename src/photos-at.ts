import { join, resolve } from 'node:path'
import { z } from 'zod'
import type { BucketSettings } from './photo/bucket.ts'
import { type Environment, readSettings, setting } from './settings.ts'

/** Where photos are kept. */
export type PhotosAt = { readonly folder: string } | { readonly bucket: BucketSettings }

const bucketUrl =
  /^s3:\/\/([a-z0-9][a-z0-9.-]{1,61}[a-z0-9])(?:\/((?:(?!\.{1,2}\/)[\w.-]+\/)*(?!\.{1,2}$)[\w.-]*))?$/

const where = z.object({
  PHOTOS_URL: setting(
    z
      .string()
      .refine((url) => bucketUrl.test(url) || !url.includes('://'), {
        error: 'name a folder, or s3://bucket/prefix',
      })
      .optional(),
  ),
})

const needed = 'name it, as PHOTOS_URL is s3://…'

/** Stands in the store's address where the bucket's name is part of the host. */
const bucketHere = '{bucket}'

const isAddress = (url: string): boolean =>
  z.url({ protocol: /^https?$/ }).safeParse(url).success && !/[@?#]/.test(url)

const key = z
  .string({ error: needed })
  .regex(/^[\x21-\x7e]+$/, { error: 'it is letters, figures and signs without a space' })

/** What else is asked for where photos are kept in a bucket. */
const ofBucket = z.object({
  S3_ENDPOINT: setting(
    z.string({ error: needed }).refine((url) => isAddress(url.replace(bucketHere, 'x')), {
      error: 'the address of the store, https://…, without keys or questions',
    }),
  ),
  S3_REGION: setting(
    z
      .string()
      .regex(/^[\w-]+$/, { error: 'one word, as the store names it' })
      .default('us-east-1'),
  ),
  S3_ACCESS_KEY_ID: setting(key),
  S3_SECRET_ACCESS_KEY: setting(key),
})

/** Reads `PHOTOS_URL` and, for a bucket, how to reach it. Throws `setting_invalid`. */
export function readPhotosAt(environment: Environment, dataDir: string): PhotosAt {
  const { PHOTOS_URL: url } = readSettings(where, environment)
  const [, bucket, path = ''] = bucketUrl.exec(url ?? '') ?? []
  if (bucket === undefined) return { folder: resolve(url ?? join(dataDir, 'photos')) }
  const { S3_ENDPOINT, S3_REGION, S3_ACCESS_KEY_ID, S3_SECRET_ACCESS_KEY } = readSettings(
    ofBucket,
    environment,
  )
  const endpoint = S3_ENDPOINT.replace(/\/+$/, '')
  return {
    bucket: {
      address: endpoint.includes(bucketHere)
        ? endpoint.replace(bucketHere, bucket)
        : `${endpoint}/${bucket}`,
      region: S3_REGION,
      prefix: path.replace(/\/$/, ''),
      accessKeyId: S3_ACCESS_KEY_ID,
      secretAccessKey: S3_SECRET_ACCESS_KEY,
    },
  }
}
