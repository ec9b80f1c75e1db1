import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { open } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { backUp } from '../../src/keeping/backup.ts'
import { openBackup } from '../../src/keeping/read-backup.ts'
import { type RestoreParts, restore } from '../../src/keeping/restore.ts'
import { entriesIn, TarWriter } from '../../src/keeping/tar.ts'
import { openFolderPhotos, type PhotoStore } from '../../src/photo/keep.ts'
import type { Store } from '../../src/store/open.ts'
import { fillEveryTable, filledPhoto } from './every-table.ts'
import { photoOf } from './kept-photo.ts'

export const madeAt = Date.UTC(2026, 5, 1, 12)

/** A folder of a test's own, with photos in it. */
export interface Shelf {
  readonly folder: string
  readonly photos: PhotoStore
  file(name: string): string
  remove(): void
}

export async function newShelf(): Promise<Shelf> {
  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-keeping-'))
  return {
    folder,
    photos: await openFolderPhotos(join(folder, 'photos')),
    file: (name) => join(folder, name),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}

/** A row in every table, and the photo that they tell of. */
export async function fillAll(store: Store, { photos }: Shelf): Promise<void> {
  await fillEveryTable(store)
  const name = await photos.keep(photoOf('shirt'))
  if (name !== filledPhoto) throw new Error('the rows tell of another photo')
}

export const backUpTo = (store: Store, { photos, file }: Shelf, name = 'backup.tar') =>
  backUp({ store, photos, clock: () => madeAt }, file(name))

export async function restoreFrom(
  file: string,
  store: Store,
  { photos }: Shelf,
  ledger: RestoreParts['ledger'] = [],
) {
  const backup = await openBackup(file)
  try {
    return await restore({ store, photos, ledger }, backup)
  } finally {
    await backup.close()
  }
}

/** An archive's entries by their names, in order. */
export async function unpacked(file: string): Promise<Map<string, Buffer>> {
  const handle = await open(file, 'r')
  const bytes = readFileSync(file)
  const found = new Map<string, Buffer>()
  for await (const { name, at, size } of entriesIn(handle)) {
    found.set(name, bytes.subarray(at, at + size))
  }
  await handle.close()
  return found
}

/** An archive of just these entries. */
export async function packed(file: string, entries: Iterable<[string, Buffer]>): Promise<string> {
  const handle = await open(file, 'w+')
  const tar = new TarWriter(handle, madeAt)
  for (const [name, bytes] of entries) await tar.add(name, bytes)
  await tar.end()
  await handle.close()
  return file
}

/** A copy of a file with some of its bytes changed. */
export function changed(file: string, to: string, change: (bytes: Buffer) => Buffer): string {
  writeFileSync(to, change(readFileSync(file)))
  return to
}
