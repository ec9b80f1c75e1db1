import { access, constants, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId, sha256 } from '../base/ids.ts'
import { makeFolder } from '../base/make-folder.ts'
import type { Derived, SafePhoto } from './safe.ts'

/** Where photos are kept, each under a name that is the hash of its content. */
export interface PhotoStore {
  /** Durable once it resolves: only then is its row written. Gives the name. */
  keep(photo: SafePhoto): Promise<string>
  /** One picture under the name that it had in another store, durable once it resolves. */
  put(name: string, derived: Derived, bytes: Uint8Array): Promise<void>
  /** Throws `not_found`. */
  open(name: string, derived: Derived): Promise<Uint8Array>
  /** The same picture sent twice has one name: remove it when no row holds that name any more. */
  remove(name: string): Promise<void>
  /** Resolves if photos can be kept and opened. Throws `store_unavailable`. */
  ready(): Promise<void>
}

/** The largest comes last and goes first: where it is the others are too, but for those kept only since. */
export const derivedInOrder = [
  'cloth',
  'thumb',
  'view',
  'full',
] as const satisfies readonly Derived[]

/** The name of a photo: SHA-256 of its largest picture. */
export const nameOf = ({ full }: SafePhoto): string => sha256(full)

/** What each of its pictures is called, in a folder and in a bucket. */
export const fileOf = (name: string, derived: Derived): string => `${name}.${derived}.jpg`

export const isPhotoName = (name: string): boolean => /^[0-9a-f]{64}$/.test(name)

const draftSuffix = '.draft'

/** Photos as files of one folder, which is made if need be. Throws `setting_invalid` where it cannot be written. */
export async function openFolderPhotos(folder: string): Promise<PhotoStore> {
  const file = (name: string, derived: Derived) => join(folder, fileOf(name, derived))

  await reaching(async () => {
    makeFolder(folder)
    await sync(dirname(folder))
    await sweep(folder)
  }).catch(({ cause }: Failure) => {
    const { code } = cause as NodeJS.ErrnoException
    const message = `photos cannot be kept in ${folder} (${code})`
    throw new Failure('setting_invalid', { setting: 'PHOTOS_URL', message }, { cause })
  })
  return {
    keep: (photo) =>
      reaching(async () => {
        const name = nameOf(photo)
        for (const derived of derivedInOrder) {
          const path = file(name, derived)
          if (!(await exists(path))) await write(path, photo[derived])
        }
        await sync(folder)
        return name
      }),
    put: (name, derived, bytes) =>
      reaching(async () => {
        await write(file(name, derived), bytes)
        await sync(folder)
      }),
    open: async (name, derived) => {
      if (!isPhotoName(name)) throw new Failure('not_found')
      return reaching(() => readFile(file(name, derived)).catch(notThere))
    },
    remove: (name) =>
      reaching(async () => {
        if (!isPhotoName(name)) return
        for (const derived of derivedInOrder.toReversed())
          await rm(file(name, derived), { force: true })
        await sync(folder)
      }),
    ready: () => reaching(() => access(folder, constants.R_OK | constants.W_OK)),
  }
}

/** Nothing half written ever stands under a photo's own name, whenever the power goes. */
async function write(file: string, bytes: Uint8Array): Promise<void> {
  const draft = `${file}.${newId()}${draftSuffix}`
  try {
    const handle = await open(draft, 'wx', 0o600)
    try {
      await handle.writeFile(bytes)
      await handle.sync()
    } finally {
      await handle.close()
    }
    await rename(draft, file)
  } catch (error) {
    await rm(draft, { force: true })
    throw error
  }
}

/** A new name in a folder is durable only when the folder is. */
async function sync(folder: string): Promise<void> {
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

/** Drafts of a process that was killed; a young one may be another process's at this moment. */
async function sweep(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    if (!name.endsWith(draftSuffix)) continue
    const draft = join(folder, name)
    // One that is gone by now has got its own name.
    const seen = await stat(draft).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error
    })
    if (seen && seen.mtimeMs < Date.now() - days(1)) await rm(draft, { force: true })
  }
}

const exists = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  )

function notThere(error: NodeJS.ErrnoException): never {
  throw error.code === 'ENOENT' ? new Failure('not_found', {}, { cause: error }) : error
}

/** What the disk refuses is a store that cannot be reached. */
async function reaching<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (cause) {
    if (cause instanceof Failure) throw cause
    throw new Failure('store_unavailable', {}, { cause })
  }
}
