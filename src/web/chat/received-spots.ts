import { Failure } from '../../base/failures.ts'
import type { SpotValue } from '../../flow/grammar.ts'
import { readReply } from '../../flow/reply.ts'
import { optionNames } from '../../flow/rules.ts'
import type { Open } from '../../intake/conversation.ts'
import {
  type Markable,
  newSpot,
  readSpot,
  readSpotAt,
  spotNear,
} from '../../intake/spot-marking.ts'
import { spotPhotos } from '../../intake/spot-photos.ts'
import { kindsAgainst } from '../../intake/spots.ts'
import { saidOfCloth } from '../../intake/told.ts'
import type { ChatContext } from './context.ts'
import { type AnswerForm, listOf, rawOf } from './form.ts'
import type { Asking, Sent } from './present-question.ts'
import type { Answer } from './received-photos.ts'

/** The marks of a form: those that are sound, and why another is not. */
export interface SpotsSent {
  readonly spots: readonly SpotValue[]
  readonly refusal: Failure | null
  readonly markable: Markable
}

/** The marks that came with a form; null where its question is none of marks. */
export async function spotsSent(
  { store: { db } }: Pick<ChatContext, 'store'>,
  { row, pile }: Open,
  asking: Asking,
  fields: AnswerForm,
): Promise<SpotsSent | null> {
  const garment = pile.garments.find(({ n }) => n === asking.item)
  if (asking.question.kind !== 'spots' || !garment) return null
  const { facts, told } = garment
  const photos = await spotPhotos(db, row.id, told.photoIds)
  return readSpots(asking, fields, { kind: facts.kind, size: told.size, photos })
}

/** A mark that cannot be does not cost the others. */
function readSpots({ question }: Asking, fields: AnswerForm, markable: Markable): SpotsSent {
  const parts = listOf(fields.part)
  const spots: SpotValue[] = []
  let refusal: Failure | null = null
  for (const [n, text] of listOf(fields.spot).entries()) {
    try {
      spots.push(readSpot(text, parts[n], markable, optionNames(question)))
    } catch (error) {
      if (!(error instanceof Failure)) throw error
      refusal ??= error
    }
  }
  return { spots, refusal, markable }
}

/** The form as it is shown again, with all its sound marks. */
export const sentAgain = (fields: AnswerForm, sent: SpotsSent | null): Omit<Sent, 'error'> => ({
  raw: { ...rawOf(fields), ...(sent && { spots: sent.spots }) },
  what: fields.what,
})

/** One mark more or fewer was asked for, and nothing else yet; a place that was chosen is not passed over. */
export const changesSpots = ({ act, mark, unmark, cell, tap }: AnswerForm): boolean =>
  act === 'answer' && [mark, unmark, cell, tap].some((sent) => sent !== undefined)

/** The marks with the change that a form asks for. Throws why it cannot be made; `too_many_spots` {most}. */
export function changedSpots(
  { question }: Asking,
  fields: AnswerForm,
  { spots, refusal, markable }: SpotsSent,
): readonly SpotValue[] {
  if (refusal) throw refusal
  if (fields.unmark !== undefined) return spots.filter((_, n) => String(n) !== fields.unmark)
  const place = fields.tap ?? fields.cell
  if (place === undefined) throw new Failure('form_incomplete', { field: 'spots' })
  const at = readSpotAt(place, markable.photos)
  const meant = spotNear(spots, at, markable.photos)
  if (meant >= 0) return spots.filter((_, n) => n !== meant)
  const { max: most = 1 } = question
  if (spots.length >= most) throw new Failure('too_many_spots', { most })
  const what = fields.what ?? ''
  if (!optionNames(question).includes(what)) throw new Failure('answer_not_offered')
  return [...spots, newSpot(at, what, markable)]
}

/** The answer; `retake` where the marks say worse of the cloth than was said, and nobody has asked about it. */
export function answerOfSpots(asking: Asking, fields: AnswerForm, sent: SpotsSent): Answer {
  if (sent.refusal) throw sent.refusal
  const { question, replies } = asking
  const { raw } = sentAgain(fields, sent)
  const reply = readReply(question, optionNames(question), raw)
  const against = kindsAgainst(sent.spots, saidOfCloth(replies))
  return {
    reply,
    retake: against.some((kind) => !listOf(fields.against).includes(kind)),
    settle: () => Promise.resolve(),
  }
}
