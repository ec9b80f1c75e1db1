import { type FileHandle, open } from 'node:fs/promises'
import { Failure } from '../base/failures.ts'
import {
  type Beginning,
  beginning,
  type Ending,
  ending,
  firstEntry,
  formatName,
  formatVersion,
  isSums,
  largestEntry,
  lastEntry,
  pictureOf,
  rowsOf,
  sumLine,
  tableOf,
} from './format.ts'
import { Counting, type PlainRow, type Tally } from './rows.ts'
import { bytesOf, type Entry, entriesIn, NotWhole, sumOfEntry } from './tar.ts'

/** A backup that was read from end to end and is whole. */
export interface Backup {
  readonly file: string
  readonly beginning: Beginning
  readonly ending: Ending
  /** The rows of its tables, an entry at a time, in the order in which they can be written. */
  rows(): AsyncGenerator<{ readonly table: string; readonly rows: readonly PlainRow[] }>
  pictures(): AsyncGenerator<{
    readonly name: string
    readonly size: string
    readonly bytes: Buffer
  }>
  close(): Promise<void>
}

/**
 * Opens a backup and reads all of it once: every entry against its sum, every photo against its name, every table
 * against its count. Throws `file_unread`, `backup_unknown` for another kind of file, `backup_too_new` for a later
 * form, `backup_cut_short` or `backup_altered` {entry}.
 */
export async function openBackup(file: string): Promise<Backup> {
  const handle = await open(file, 'r').catch((cause: unknown) => {
    throw new Failure('file_unread', { file }, { cause })
  })
  try {
    const begun = await readBeginning(handle, file)
    const ended = await readAll(handle, file)
    return {
      file,
      beginning: begun,
      ending: ended,
      rows: async function* () {
        for await (const entry of entriesIn(handle)) {
          const table = tableOf(entry)
          if (!table) continue
          const read = rowsOf(await bytesOf(handle, entry, largestEntry))
          yield { table, rows: read.map(({ row }) => row) }
        }
      },
      pictures: async function* () {
        for await (const entry of entriesIn(handle)) {
          const picture = pictureOf(entry)
          if (picture) yield { ...picture, bytes: await bytesOf(handle, entry, largestEntry) }
        }
      },
      close: () => handle.close(),
    }
  } catch (error) {
    await handle.close()
    throw error
  }
}

async function readBeginning(handle: FileHandle, file: string): Promise<Beginning> {
  const unknown = (cause?: unknown) => new Failure('backup_unknown', { file }, { cause })
  const entry = await entriesIn(handle)
    .next()
    .catch((cause: unknown) => {
      throw unknown(cause)
    })
  if (entry.done || entry.value.name !== firstEntry) throw unknown()
  let told: unknown
  try {
    told = JSON.parse((await bytesOf(handle, entry.value, largestEntry)).toString('utf8'))
  } catch (cause) {
    throw unknown(cause)
  }
  const { format, version } = (told ?? {}) as { format?: unknown; version?: unknown }
  if (format !== formatName) throw unknown()
  if (version !== formatVersion) throw new Failure('backup_too_new', { file })
  const read = beginning.safeParse(told)
  if (!read.success) throw unknown(read.error)
  return read.data
}

/** What was read so far that no sum has been held against. */
type Pending = { readonly line: string; readonly name: string }[]

async function readAll(handle: FileHandle, file: string): Promise<Ending> {
  let at: string = firstEntry
  try {
    const counted = new Map<string, Counting>()
    const photos = { photos: 0, pictures: 0 }
    let pending: Pending = []
    let ended: Ending | null = null
    for await (const entry of entriesIn(handle)) {
      at = entry.name
      if (isSums(entry)) {
        const sums = (await bytesOf(handle, entry, largestEntry)).toString('utf8')
        at = firstUnlike(pending, sums) ?? at
        if (sums !== pending.map(({ line }) => line).join('')) throw altered(file, at)
        pending = []
        continue
      }
      if (ended) throw altered(file, at)
      const sum = await sumOfEntry(handle, entry)
      pending.push({ line: sumLine(sum, entry.name), name: entry.name })
      ended = await readEntry(handle, entry, sum, { file, counted, photos })
    }
    if (!ended || pending.length > 0) throw new Failure('backup_cut_short', { file })
    refuseUnlike(file, ended, counted, photos)
    return ended
  } catch (error) {
    if (error instanceof NotWhole) throw new Failure('backup_cut_short', { file }, { cause: error })
    if (error instanceof Failure) throw error
    throw altered(file, at, error)
  }
}

const altered = (file: string, entry: string, cause?: unknown): Failure =>
  new Failure('backup_altered', { file, entry }, { cause })

const firstUnlike = (pending: Pending, sums: string): string | undefined =>
  pending.find(({ line }) => !sums.includes(line))?.name

/** Counts what an entry holds; gives what the last one tells, null for any other. */
async function readEntry(
  handle: FileHandle,
  entry: Entry,
  sum: string,
  so: {
    readonly file: string
    readonly counted: Map<string, Counting>
    readonly photos: { photos: number; pictures: number }
  },
): Promise<Ending | null> {
  if (entry.name === firstEntry) return null
  const table = tableOf(entry)
  const picture = pictureOf(entry)
  if (table) {
    const counting = so.counted.get(table) ?? new Counting()
    so.counted.set(table, counting)
    counting.add(rowsOf(await bytesOf(handle, entry, largestEntry)).map(({ line }) => line))
  } else if (picture) {
    if (picture.size === 'full' && picture.name !== sum) throw altered(so.file, entry.name)
    so.photos.pictures += 1
    if (picture.size === 'full') so.photos.photos += 1
  } else if (entry.name === lastEntry) {
    return ending.parse(JSON.parse((await bytesOf(handle, entry, largestEntry)).toString('utf8')))
  } else {
    throw altered(so.file, entry.name)
  }
  return null
}

/** The closing must tell of just what was read. */
function refuseUnlike(
  file: string,
  { tables, photos }: Ending,
  counted: ReadonlyMap<string, Counting>,
  read: { readonly photos: number; readonly pictures: number },
): void {
  const none: Tally = new Counting().tally
  for (const name of new Set([...Object.keys(tables), ...counted.keys()])) {
    const [told, found] = [tables[name], counted.get(name)?.tally ?? none]
    if (told?.rows !== found.rows || told.sum !== found.sum) throw altered(file, lastEntry)
  }
  if (photos.photos !== read.photos || photos.pictures !== read.pictures) {
    throw altered(file, lastEntry)
  }
}
