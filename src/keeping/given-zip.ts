import { Readable } from 'node:stream'
import { ZipFile } from 'yazl'
import type { PhotoStore } from '../photo/keep.ts'
import type { Db } from '../store/schema.ts'
import { givenOf } from './given.ts'

/**
 * What is kept of a pile as one ZIP file: `pile.json`, each photo in its largest size as `photos/<id>.jpg`, and
 * `read-me.txt` with the words given. Photos are opened one by one as the file is read; one that cannot be opened
 * breaks it off.
 */
export async function givenZip(
  { db, photos }: { db: Db; photos: PhotoStore },
  pileId: string,
  { at, readMe }: { at: number; readMe: string },
): Promise<Readable> {
  const given = await givenOf(db, pileId, at)
  const kept = await db
    .selectFrom('photo')
    .select(['id', 'hash', 'at'])
    .where('pile_id', '=', pileId)
    .where('removed_at', 'is', null)
    .orderBy('at')
    .execute()

  const zip = new ZipFile()
  const mtime = new Date(at)
  zip.addBuffer(Buffer.from(readMe), 'read-me.txt', { mtime })
  zip.addBuffer(Buffer.from(JSON.stringify(given, null, 2)), 'pile.json', { mtime })
  for (const photo of kept) {
    const options = { mtime: new Date(photo.at), compress: false }
    zip.addReadStreamLazy(`photos/${photo.id}.jpg`, options, (give) => {
      photos.open(photo.hash, 'full').then(
        (bytes) => give(null, Readable.from([bytes], { objectMode: false })),
        (error) => give(error, Readable.from([])),
      )
    })
  }
  zip.end()
  const out = zip.outputStream as Readable
  zip.on('error', (error) => out.destroy(error as Error))
  return out
}
