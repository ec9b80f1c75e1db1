import { Failure } from '../../base/failures.ts'
import type { Reply } from '../../flow/grammar.ts'
import { readReply } from '../../flow/reply.ts'
import { faultsSeen, looksOf } from '../../intake/garment-look.ts'
import {
  draftsOf,
  dropPhotos,
  keepPhotos,
  type PhotoPlace,
  takePhoto,
} from '../../intake/photos.ts'
import { ticked } from '../../intake/replies.ts'
import type { ChatContext } from './context.ts'
import { type Form, listOf } from './form.ts'
import type { Asking } from './present-question.ts'

/** An answer that was read whole, and what becomes of photos that came with it or stood there before. */
export interface Answer {
  readonly reply: Reply
  /** `again`: the same form was kept before. */
  readonly settle: (again: boolean) => Promise<void>
  /** Photos that came now are not fit to tell of the garment: the question is shown once more. */
  readonly retake?: boolean
}

/** Photos answered before, drafts, and what came now, less what was ticked to go. */
export async function answerOfPhotos(
  context: ChatContext,
  place: PhotoPlace,
  { question, replies }: Asking,
  form: Form,
): Promise<Answer> {
  const { db } = context.store
  const drafts = await draftsOf(db, place)
  const held = [...ticked(replies, question.id), ...drafts]
  const gone = listOf(form.fields.remove)
  const most = question.max ?? 1
  const room = most - held.filter((id) => !gone.includes(id)).length
  if (form.files.length > room) throw new Failure('too_many_photos', { most })
  const taken = await takeAll(context, place, form)
  const ids = [...held, ...taken].filter((id) => !gone.includes(id))
  const reply = readReply(question, [], { act: 'answer', value: ids })
  const isUnfit = async () => faultsSeen(await looksOf(db, place.pileId, ids)).length > 0
  const retake = taken.length > 0 && form.fields.anyway === undefined && (await isUnfit())
  // What an answer still holds goes with the next answer alone; a draft may go at once.
  if (retake)
    await dropPhotos(
      db,
      place.pileId,
      gone.filter((id) => drafts.includes(id)),
      context.clock(),
    )
  return {
    reply,
    retake,
    settle: async (again) => {
      await dropPhotos(db, place.pileId, again ? taken : gone, context.clock())
      if (!again) await keepPhotos(db, place.pileId, 'given' in reply ? ids : [])
    },
  }
}

/** A file that is refused does not cost the others that came with it: they stay as drafts. */
async function takeAll(context: ChatContext, place: PhotoPlace, form: Form): Promise<string[]> {
  let refusal: unknown = null
  const taken: string[] = []
  for (const { bytes, tooLarge } of form.files) {
    try {
      if (tooLarge) throw new Failure('too_large')
      taken.push(await takePhoto({ ...context, db: context.store.db }, place, bytes, 'garment'))
    } catch (error) {
      refusal ??= error
    }
  }
  if (refusal) throw refusal
  return taken
}
