import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { Failure } from '../base/failures.ts'
import { type Config, readConfig } from '../config.ts'
import { openFolderPhotos, type PhotoStore } from '../photo/keep.ts'
import { openBucketPhotos } from '../photo/keep-bucket.ts'
import { openStore, type Store, storeFile } from '../store/open.ts'

/** What the settings name: records and photos. */
export interface Kept {
  readonly config: Config
  readonly store: Store
  readonly photos: PhotoStore
}

/** Throws `nothing_kept` where the data folder holds no records and none may be made. */
export async function withKept<T>(
  { mayBeNew }: { readonly mayBeNew: boolean },
  work: (kept: Kept) => Promise<T>,
): Promise<T> {
  const config = readConfig(process.env)
  const { databaseUrl, dataDir, photosAt } = config
  if (!databaseUrl && !mayBeNew && !existsSync(join(dataDir, storeFile))) {
    throw new Failure('nothing_kept')
  }
  const store = await openStore({ ...(databaseUrl && { databaseUrl }), dataDir })
  try {
    const photos = await ('bucket' in photosAt
      ? openBucketPhotos(photosAt.bucket)
      : openFolderPhotos(photosAt.folder))
    return await work({ config, store, photos })
  } finally {
    await store.close()
  }
}
