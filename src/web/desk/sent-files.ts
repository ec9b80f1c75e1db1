import '@fastify/multipart'
import type { FastifyRequest } from 'fastify'
import { Failure } from '../../base/failures.ts'
import { keepPhotos, takePhoto } from '../../intake/photos.ts'
import type { workshopQuestions } from '../../keeping/sent-photos.ts'
import { formFailure } from '../errors.ts'
import type { DeskContext } from './context.ts'

/** A file as a form of the desk sends it, by the name of its field. */
export interface DeskFile {
  readonly field: string
  readonly bytes: Uint8Array
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Files of a form; none where it was sent without. */
    deskFiles: readonly DeskFile[] | null
  }
}

/** A list of a box check is long; its form holds a few fields for each garment of the largest pile. */
const formLimits = { fields: 8_000, files: 24 } as const

/** Reads a form with files: its fields become the body, its files stand beside. Throws `bad_input` for a broken one. */
export async function readFiles(request: FastifyRequest): Promise<void> {
  try {
    await readParts(request)
  } catch (error) {
    throw formFailure(error)
  }
}

async function readParts(request: FastifyRequest): Promise<void> {
  const fields: Record<string, string | string[]> = Object.create(null)
  const files: DeskFile[] = []
  for await (const part of request.parts({ limits: formLimits })) {
    if (part.type === 'file') {
      const bytes = await part.toBuffer()
      // An empty file input still sends a part, without a name.
      if (bytes.byteLength > 0 || part.filename) files.push({ field: part.fieldname, bytes })
      continue
    }
    const before = fields[part.fieldname]
    const value = String(part.value)
    fields[part.fieldname] = before === undefined ? value : [before, value].flat()
  }
  request.body = { ...fields }
  request.deskFiles = files
}

/**
 * What a photo of the workshop shows: the garment (`bench`, `custody`), something beside what was written down, or the
 * quilt laid out; of no garment where `item` is 0.
 */
export interface PhotoOf {
  readonly item: number
  readonly question: (typeof workshopQuestions)[number]
}

/** Makes a form's photos safe and keeps them as the pile's. Ids by the field that they came in. */
export async function takePhotos(
  context: DeskContext,
  pileId: string,
  files: readonly DeskFile[],
  placeOf: (field: string) => PhotoOf,
): Promise<ReadonlyMap<string, readonly string[]>> {
  const { db } = context.store
  const taken = new Map<string, string[]>()
  for (const { field, bytes } of files) {
    if (bytes.byteLength === 0) throw new Failure('empty_file')
    const place = { pileId, ...placeOf(field) }
    const shows = place.question === 'laid-out' ? 'other' : 'garment'
    const id = await takePhoto({ ...context, db }, place, bytes, shows)
    taken.set(field, [...(taken.get(field) ?? []), id])
  }
  await keepPhotos(db, pileId, [...taken.values()].flat())
  return taken
}
