import type { FastifyRequest } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { messageDraft, mostMessagePhotos } from '../../desk/message-photos.ts'
import { isMessageKept, readText, writeAsCustomer } from '../../desk/messages.ts'
import { dropPhotos, takePhoto } from '../../intake/photos.ts'
import type { ChatContext } from './context.ts'
import { type Parts, partsOf } from './form.ts'

export const messageForm = z.object({
  /** How long it may be the desk says, so that what was typed is not lost. */
  text: z.string().max(100_000).default(''),
  item: z
    .string()
    .regex(/^(|[1-9]\d{0,5})$/)
    .default('')
    .transform((item) => (item === '' ? null : Number(item))),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
  /** Which form of the page it was. */
  form: z.string().max(40).default(''),
})

/** A customer's message as it was sent, plain or with photos. */
export interface SentMessage {
  readonly fields: z.infer<typeof messageForm>
  readonly files: Parts['files']
  /** Why the form could not be read whole; what could be read of it stands beside. */
  readonly refusal: Failure | null
}

/** Throws `bad_input` where it is no such form. */
export async function readMessage(request: FastifyRequest): Promise<SentMessage> {
  const sent = request.isMultipart()
    ? await partsOf(request)
    : { fields: (request.body ?? {}) as object, files: [], refusal: null }
  const read = messageForm.safeParse(sent.fields)
  if (!read.success) throw new Failure('bad_input')
  return { fields: read.data, files: sent.files, refusal: sent.refusal }
}

/**
 * Makes the photos of a message safe and keeps both together, or neither. Photos come with words about a garment alone.
 * Throws what was wrong with a file, `too_many_photos` {most}, `bad_input`, and what `writeAsCustomer` throws.
 */
export async function keepMessage(
  context: ChatContext,
  pileId: string,
  { fields, files, refusal }: SentMessage,
): Promise<void> {
  if (refusal) throw refusal
  const { item, text, idem } = fields
  const { db } = context.store
  if (files.length > 0 && item === null) throw new Failure('bad_input')
  if (files.length > mostMessagePhotos) {
    throw new Failure('too_many_photos', { most: mostMessagePhotos })
  }
  // Words that are refused, and a form that was kept before, cost no work on photos.
  readText(text, files.length === 0)
  if (await isMessageKept(db, pileId, idem)) return
  const photos: string[] = []
  try {
    for (const { bytes, tooLarge } of files) {
      if (tooLarge) throw new Failure('too_large')
      const place = { pileId, item: item ?? 0, question: messageDraft }
      photos.push(await takePhoto({ ...context, db }, place, bytes, 'other'))
    }
    await writeAsCustomer(context, pileId, { item, text, idem, photos })
  } catch (error) {
    // The form comes back without its files: they are chosen anew.
    await dropPhotos(db, pileId, photos, context.clock())
    throw error
  }
}
