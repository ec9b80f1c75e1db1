import type { FastifyBaseLogger } from 'fastify'
import { Failure, type FailureCode } from '../../base/failures.ts'
import type { LabelValue } from '../../flow/grammar.ts'
import { type RawReply, readReply } from '../../flow/reply.ts'
import { longestOf } from '../../flow/sense.ts'
import { cleanText, isBlank } from '../../flow/text.ts'
import {
  doubtedBefore,
  doubtedWords,
  judge,
  type LabelPhoto,
  photoOfLabel,
  readLabelPhoto,
  wordsSeen,
} from '../../intake/label-photo.ts'
import {
  draftsOf,
  dropPhotos,
  keepPhotos,
  type PhotoPlace,
  takePhoto,
} from '../../intake/photos.ts'
import { labelSeen, labelValue } from '../../intake/replies.ts'
import type { LabelReader } from '../../photo/label-words.ts'
import type { ChatContext } from './context.ts'
import { type AnswerForm, type Form, listOf, rawOf } from './form.ts'
import type { Asking } from './present-question.ts'
import type { Answer } from './received-photos.ts'

/** The reader of label photos; null where they are typed alone. */
export const labelReader = ({ labels }: ChatContext): LabelReader | null =>
  labels && labels.state() !== 'absent' ? labels : null

/** Our own troubles with a photo: the page stays with what was typed on it. */
export const photoTroubles: readonly FailureCode[] = [
  'label_unread',
  'photo_failed',
  'busy',
  'store_unavailable',
]

/** Its button was pressed, or a photo was sent where words should be. */
export function asksToRead(context: ChatContext, { question }: Asking, form: Form): boolean {
  const { act, words = '', found = 'words' } = form.fields
  if (act === 'read-label') return true
  if (question.kind !== 'label' || act !== 'answer' || !labelReader(context)) return false
  return form.files.length > 0 && isBlank(words) && found === 'words'
}

interface Held {
  readonly photo: LabelPhoto | null
  /** Those that the photo stands in for. */
  readonly gone: readonly string[]
  /** What stood before one that came with this form. */
  readonly before: LabelPhoto | null
}

/** The label's photo: the one that came with the form, else the one that is there and was not ticked to go. */
async function hold(
  context: ChatContext,
  place: PhotoPlace,
  asking: Asking,
  { files, fields }: Form,
): Promise<Held> {
  const { db } = context.store
  const answered = labelSeen(asking.replies).photo
  const drafts = await draftsOf(db, place)
  const before = await photoOfLabel(db, place, drafts.at(-1) ?? answered)
  const all = [...drafts, ...(answered === undefined ? [] : [answered])]
  const [file, ...more] = labelReader(context) ? files : []
  if (!file) {
    const photo = before && !listOf(fields.remove).includes(before.id) ? before : null
    return { photo, gone: all.filter((id) => id !== photo?.id), before }
  }
  if (more.length > 0) throw new Failure('too_many_photos', { most: 1 })
  if (file.tooLarge) throw new Failure('too_large')
  const id = await takePhoto({ ...context, db }, place, file.bytes, 'label')
  return { photo: await photoOfLabel(db, place, id), gone: all, before }
}

/** A label's answer, or the wish that a person looks, with its photo beside what was typed and chosen. */
export async function answerOfLabel(
  context: ChatContext,
  place: PhotoPlace,
  asking: Asking,
  form: Form,
): Promise<Answer> {
  const { question, replies } = asking
  const { db } = context.store
  const { photo, gone, before } = await hold(context, place, asking, form)
  const longest = longestOf(question)
  const read = photo?.seen ? wordsSeen(photo.seen, longest) : null
  const reply = readReply(question, [], {
    ...rawOf(form.fields),
    labelPhoto: photo ? { id: photo.id, read } : undefined,
    doubtedWords: await doubtedWords(db, place, labelValue(replies), longest),
  })
  return {
    reply,
    settle: async (again) => {
      const came = photo && photo.id !== before?.id ? [photo.id] : []
      await dropPhotos(db, place.pileId, again ? came : gone, context.clock())
      if (!again && photo) await keepPhotos(db, place.pileId, [photo.id])
    },
  }
}

/** What a form says of a label that no photo ever came for; `answered`: what stood before. */
export const withoutPhoto = (fields: AnswerForm, answered: LabelValue | undefined): RawReply => ({
  ...rawOf(fields),
  doubtedWords: doubtedBefore(answered),
})

/** What the form holds once its label was read. */
export interface LabelSent {
  readonly raw: RawReply
  /** What was typed in place of the words that were read; empty: nothing. */
  readonly typed: string
}

/**
 * Reads the photo that came with a form, or the one that is there. Throws what was wrong with the file,
 * `form_incomplete` where there is no photo, and `label_unread` or `busy`; the photo is kept then.
 */
export async function readSentLabel(
  context: ChatContext,
  place: PhotoPlace,
  asking: Asking,
  { form, log }: { form: Form; log: FastifyBaseLogger },
): Promise<LabelSent> {
  const labels = labelReader(context)
  if (asking.question.kind !== 'label') throw new Failure('bad_input')
  if (!labels) throw new Failure('label_unread')
  const { photo, gone, before } = await hold(context, place, asking, form)
  if (!photo) throw new Failure('form_incomplete', { field: 'photo' })
  const { db } = context.store
  const drafts = await draftsOf(db, place)
  const replaced = gone.filter((id) => drafts.includes(id))
  await dropPhotos(db, place.pileId, replaced, context.clock())
  const { seen, ms } = await readLabelPhoto({ ...context, db, labels }, photo)
  const longest = longestOf(asking.question)
  const { words, verdict } = judge(seen, longest)
  const sure = verdict === 'sure'
  log.info({ seconds: ms / 1000, lines: seen.lines.length, sure }, 'label read')
  const wordsBefore = before?.seen ? wordsSeen(before.seen, longest) : ''
  return filledIn(form, { words, wordsBefore, sure })
}

/** Words that were read take the field; what a person typed there is shown beside it. */
function filledIn(
  { fields }: Form,
  { words, wordsBefore, sure }: { words: string; wordsBefore: string; sure: boolean },
): LabelSent {
  const raw = rawOf(fields)
  const { typed = '' } = fields
  if (words === '') return { raw, typed }
  const there = cleanText(raw.words ?? '')
  const known = ['', words, wordsBefore, typed].includes(there)
  return {
    raw: { ...raw, words, found: sure || !raw.found ? 'words' : raw.found },
    typed: known ? typed : [typed, there].filter((text) => text !== '').join('\n'),
  }
}
