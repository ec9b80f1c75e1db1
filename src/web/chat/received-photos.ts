import { Failure } from '../../base/failures.ts'
import type { Reply } from '../../flow/grammar.ts'
import { readReply } from '../../flow/reply.ts'
import { faultsSeen, looksOf } from '../../intake/garment-look.ts'
import {
  draftsOf,
  dropPhotos,
  firstOfItsKind,
  keepPhotos,
  type PhotoPlace,
  type Sides,
  takePhoto,
  tellSides,
} from '../../intake/photos.ts'
import { chosen, ticked } from '../../intake/replies.ts'
import { type PhotoSide, photoSides } from '../../store/schema.ts'
import type { ChatContext } from './context.ts'
import { type AnswerForm, type Form, listOf } from './form.ts'
import type { Asking } from './present-question.ts'

/** An answer that was read whole, and what becomes of photos that came with it or stood there before. */
export interface Answer {
  readonly reply: Reply
  /** `again`: the same form was kept before. */
  readonly settle: (again: boolean) => Promise<void>
  /** Photos that came now are not fit to tell of the garment: the question is shown once more. */
  readonly retake?: boolean
  /** Photos as the form has them, where it is shown once more. */
  readonly photos?: SentPhotos
}

/** Photos as a form has them: their order, what they show, and which are ticked to go. */
export interface SentPhotos {
  readonly order: readonly string[]
  readonly sides: Sides
  readonly gone: readonly string[]
}

/** Ids in the order of a form; those that it does not know stay behind, as they came. */
export const inOrder = (ids: readonly string[], order: readonly string[]): string[] => {
  const place = (id: string) => (order.includes(id) ? order.indexOf(id) : order.length)
  return ids.toSorted((a, b) => place(a) - place(b))
}

/** The same with one of them moved by one place, where the form asks for that. */
function moved(ids: readonly string[], { up, down }: AnswerForm): string[] {
  const at = ids.indexOf(up ?? down ?? '')
  const to = at + (up === undefined ? 1 : -1)
  if (at < 0 || to < 0 || to >= ids.length) return [...ids]
  return ids.with(at, ids[to]!).with(to, ids[at]!)
}

/** What a form says that photos show, those alone that are `held`. Throws `answer_not_offered`. */
function sidesIn({ order, shows }: AnswerForm, held: readonly string[]): Sides {
  const told = listOf(shows)
  return new Map(
    listOf(order).flatMap((id, n): [string, PhotoSide | null][] => {
      const text = told[n]
      if (text === undefined || !held.includes(id)) return []
      const side = photoSides.find((one) => one === text) ?? null
      if (text !== '' && side === null) throw new Failure('answer_not_offered')
      return [[id, side]]
    }),
  )
}

/**
 * What an answer that was kept before has to do with photos, once more: the server may have died behind it. What it
 * holds stays, and is no draft; what its form took away goes.
 */
export async function settleOnceMore(
  { store, clock }: ChatContext,
  { pileId }: PhotoPlace,
  { question, replies }: Asking,
  { fields }: Form,
): Promise<void> {
  if (question.kind !== 'photo') return
  const answered = ticked(replies, question.id)
  const gone = listOf(fields.remove).filter((id) => !answered.includes(id))
  await dropPhotos(store.db, pileId, gone, clock())
  await keepPhotos(store.db, pileId, answered)
}

/** Photos answered before, drafts, and what came now, less what was ticked to go, in the form's order. */
export async function answerOfPhotos(
  context: ChatContext,
  place: PhotoPlace,
  { question, replies }: Asking,
  form: Form,
): Promise<Answer> {
  const { db } = context.store
  const { fields } = form
  const drafts = await draftsOf(db, place)
  const answered = ticked(replies, question.id)
  const held = inOrder([...new Set([...answered, ...drafts])], listOf(fields.order))
  const sides = sidesIn(fields, held)
  const gone = listOf(fields.remove)
  const most = question.max ?? 1
  const room = most - held.filter((id) => !gone.includes(id)).length
  if (form.files.length > room) throw new Failure('too_many_photos', { most })
  const taken = await takeAll(context, place, form)
  const order = moved([...new Set([...held, ...taken])], fields)
  const ids = order.filter((id) => !gone.includes(id))
  const photos = { order, sides, gone }
  if (fields.up !== undefined || fields.down !== undefined) {
    return { reply: { skipped: true }, retake: true, photos, settle: () => Promise.resolve() }
  }
  const reply = readReply(question, [], { act: 'answer', value: ids })
  const isUnfit = async () => {
    const seen = await looksOf(db, place.pileId, ids)
    const told = seen.map((one) => ({ ...one, shows: sides.get(one.photo) ?? null }))
    return faultsSeen(told, chosen(replies, 'kind')).length > 0
  }
  const retake = taken.length > 0 && fields.anyway === undefined && (await isUnfit())
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
    photos,
    settle: async (again) => {
      // A draft may be what the same form brought before.
      const toDrop = again ? taken.filter((id) => !drafts.includes(id)) : gone
      await dropPhotos(db, place.pileId, toDrop, context.clock())
      if (again) return
      await keepPhotos(db, place.pileId, 'given' in reply ? ids : [])
      await tellSides(db, place.pileId, sides)
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
      const { db } = context.store
      const id = await takePhoto({ ...context, db }, place, bytes, 'garment')
      taken.push(await firstOfItsKind(db, place, id, context.clock()))
    } catch (error) {
      refusal ??= error
    }
  }
  if (refusal) throw refusal
  return taken
}
