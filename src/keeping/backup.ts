import { createHash } from 'node:crypto'
import { constants, type FileHandle, open, rename, rm } from 'node:fs/promises'
import { dirname } from 'node:path'
import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { derivedInOrder, fileOf, isPhotoName, type PhotoStore } from '../photo/keep.ts'
import { migrationsIn } from '../store/contents.ts'
import { migrations as released } from '../store/migrations/list.ts'
import type { Store } from '../store/open.ts'
import {
  type Beginning,
  type Ending,
  firstEntry,
  formatName,
  formatVersion,
  largestEntry,
  lastEntry,
  photoEntry,
  rowsEntry,
  rowsOf,
  sumLine,
  sumsEntry,
  tableOf,
} from './format.ts'
import { Counting, lineOf, pagesOf, type Tallies, tablesThere } from './rows.ts'
import { bytesOf, entriesIn, TarWriter } from './tar.ts'

/** What a backup came to. */
export interface BackedUp {
  readonly file: string
  readonly bytes: number
  /** SHA-256 of the file. */
  readonly sha256: string
  readonly made: string
  readonly tables: Tallies
  readonly photos: Ending['photos']
}

export interface BackupParts {
  readonly store: Store
  readonly photos: PhotoStore
  readonly clock: Clock
}

/** So many sums are written in one go, and rows of so many characters in one entry. */
const sumsAtOnce = 1000
const charactersAtOnce = 1024 * 1024

/**
 * Writes everything that lasts into one new file, while others go on working: the rows as they stood at one moment,
 * then their photos. The file is there whole and durable, or not at all. Throws `file_there`, `file_not_written`,
 * `store_too_new` for a store of a later version, `nothing_kept` for one without tables.
 */
export async function backUp(parts: BackupParts, file: string): Promise<BackedUp> {
  const draft = `${file}.${newId()}.part`
  const handle = await claim(file, draft)
  try {
    const made = await writeAll(parts, handle)
    await handle.close()
    await publish(draft, file)
    return { file, ...made }
  } catch (error) {
    await handle.close().catch(() => {})
    await rm(draft, { force: true })
    throw isOfFiles(error) ? new Failure('file_not_written', { file }, { cause: error }) : error
  }
}

const isOfFiles = (error: unknown): boolean =>
  error instanceof Error && 'syscall' in error && !(error instanceof Failure)

async function claim(file: string, draft: string): Promise<FileHandle> {
  try {
    const there = await open(file, constants.O_RDONLY).catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null
      throw error
    })
    await there?.close()
    if (!there) return await open(draft, 'wx+', 0o600)
  } catch (cause) {
    throw new Failure('file_not_written', { file }, { cause })
  }
  throw new Failure('file_there', { file })
}

/** Under its own name once it is whole; durable only when the folder is. */
async function publish(draft: string, file: string): Promise<void> {
  await rename(draft, file)
  const folder = await open(dirname(file), 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
}

async function writeAll({ store, photos, clock }: BackupParts, handle: FileHandle) {
  const at = clock()
  const made = new Date(at).toISOString()
  const archive = new Archive(new TarWriter(handle, at))
  const tables = await store.snapshot(async (db) => {
    const within = { db, dialect: store.dialect }
    const migrations = await migrationsIn(within)
    refuseOthers(migrations)
    const beginning: Beginning = {
      format: formatName,
      version: formatVersion,
      made,
      store: store.dialect,
      migrations,
    }
    await archive.addJson(firstEntry, beginning)
    const tallies: Partial<Record<string, Tallies[keyof Tallies]>> = {}
    for (const table of await tablesThere(within)) {
      tallies[table] = await writeTable(archive, table, pagesOf(db, table))
    }
    return tallies as Tallies
  })
  const kept = await writePhotos(archive, photos, photosIn(handle, archive.length))
  await archive.addJson(lastEntry, { tables, photos: kept } satisfies Ending)
  const sha256 = await archive.end()
  return { bytes: archive.length, sha256, made, tables, photos: kept }
}

function refuseOthers(migrations: readonly string[]): void {
  if (migrations.length === 0) throw new Failure('nothing_kept')
  const unknown = migrations.findLast((name) => !Object.hasOwn(released, name))
  if (unknown) throw new Failure('store_too_new', { migration: unknown })
}

async function writeTable(
  archive: Archive,
  table: string,
  pages: AsyncIterable<Readonly<Record<string, unknown>>[]>,
) {
  const counting = new Counting()
  let lines: string[] = []
  let part = 0
  const write = async () => {
    if (lines.length === 0) return
    part += 1
    await archive.add(rowsEntry(table, part), Buffer.from(`${lines.join('\n')}\n`))
    lines = []
  }
  for await (const page of pages) {
    for (const row of page) {
      const line = lineOf(row)
      counting.add([line])
      lines.push(line)
    }
    if (lines.reduce((sum, line) => sum + line.length, 0) >= charactersAtOnce) await write()
  }
  await write()
  return counting.tally
}

/** Names of the photos whose rows stand in the first `length` bytes of the archive, each once. */
async function* photosIn(handle: FileHandle, length: number): AsyncGenerator<string> {
  let last = ''
  for await (const entry of entriesIn(handle, length)) {
    if (tableOf(entry) !== 'photo') continue
    for (const { row } of rowsOf(await bytesOf(handle, entry, largestEntry))) {
      const { hash, removed_at } = row as { hash: string; removed_at: number | null }
      if (removed_at !== null || hash === last) continue
      last = hash
      yield hash
    }
  }
}

/** Pictures in all their sizes. One that is gone was removed since its row was read, or lost before. */
async function writePhotos(
  archive: Archive,
  photos: PhotoStore,
  names: AsyncIterable<string>,
): Promise<Ending['photos']> {
  const kept = { photos: 0, pictures: 0, missing: 0 }
  for await (const name of names) {
    const pictures = []
    for (const size of isPhotoName(name) ? derivedInOrder : []) {
      const bytes = await photos.open(name, size).catch((error: unknown) => {
        if (error instanceof Failure && error.code === 'not_found') return null
        throw error
      })
      if (bytes) pictures.push({ size, bytes })
    }
    if (!pictures.some(({ size }) => size === 'full')) {
      kept.missing += 1
      continue
    }
    for (const { size, bytes } of pictures) {
      await archive.add(photoEntry(fileOf(name, size)), bytes)
    }
    kept.photos += 1
    kept.pictures += pictures.length
  }
  return kept
}

/** A tar archive with the sums of what it holds. */
class Archive {
  readonly #tar: TarWriter
  #sums: string[] = []
  #written = 0

  constructor(tar: TarWriter) {
    this.#tar = tar
  }

  get length(): number {
    return this.#tar.length
  }

  async add(name: string, bytes: Uint8Array): Promise<void> {
    await this.#tar.add(name, bytes)
    this.#sums.push(sumLine(createHash('sha256').update(bytes).digest('hex'), name))
    if (this.#sums.length >= sumsAtOnce) await this.#writeSums()
  }

  addJson(name: string, value: object): Promise<void> {
    return this.add(name, Buffer.from(`${JSON.stringify(value, undefined, 2)}\n`))
  }

  async end(): Promise<string> {
    await this.#writeSums()
    return this.#tar.end()
  }

  async #writeSums(): Promise<void> {
    if (this.#sums.length === 0) return
    this.#written += 1
    const sums = Buffer.from(this.#sums.join(''))
    this.#sums = []
    await this.#tar.add(sumsEntry(this.#written), sums)
  }
}
