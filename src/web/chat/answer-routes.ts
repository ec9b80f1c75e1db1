import type { FastifyInstance } from 'fastify'
import { validatorCompiler } from 'fastify-type-provider-zod'
import type { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import type { Reply } from '../../flow/grammar.ts'
import { offered, readReply } from '../../flow/reply.ts'
import {
  draftsOf,
  dropPhotos,
  keepPhotos,
  type PhotoPlace,
  takePhoto,
} from '../../intake/photos.ts'
import type { Pile } from '../../intake/pile.ts'
import { given } from '../../intake/replies.ts'
import { isKept } from '../../intake/rows.ts'
import { rules } from '../../intake/rules.ts'
import { failureSentence } from '../errors.ts'
import type { ChatContext } from './context.ts'
import { type AnswerForm, answerForm, type Form, rawOf, readAnswerForm } from './form.ts'
import { type Opened, openPile, plannedFor, questionParams, show, withDrafts } from './opened.ts'
import { paths } from './paths.ts'
import { questionPage, readerOf } from './present-pages.ts'
import { type Asking, findAsking } from './present-question.ts'
import type { FieldError } from './view.ts'

/** The field that a refusal speaks of. */
function fieldOf(failure: Failure, asking: Asking, fields: AnswerForm): FieldError['field'] {
  const { field } = failure.details
  if (fields.act === 'ask') return 'note'
  if (field === 'name' || field === 'email' || field === 'phone') return field
  if (failure.code === 'email_not_valid') return 'email'
  if (asking.question.kind === 'photo') return 'photo'
  if (asking.question.kind === 'contact') return 'name'
  if (asking.question.kind === 'label') return fields.words ? 'words' : 'found'
  return 'value'
}

const list = (value: string | readonly string[] | undefined): readonly string[] =>
  value === undefined ? [] : typeof value === 'string' ? [value] : value

interface TakenPhotos {
  readonly ids: readonly string[]
  /** Those that came with this form. */
  readonly taken: readonly string[]
}

/** Photos answered before, drafts, and what came now, less what was ticked to go. */
async function photoIds(
  context: ChatContext,
  place: PhotoPlace,
  asking: Asking,
  form: Form,
): Promise<TakenPhotos> {
  const before = given(asking.replies, asking.question.id)
  const held = [
    ...(Array.isArray(before) ? (before as readonly string[]) : []),
    ...(await draftsOf(context.store.db, place)),
  ]
  const gone = list(form.fields.remove)
  const room = (asking.question.max ?? 1) - held.filter((id) => !gone.includes(id)).length
  if (form.files.length > room) {
    throw new Failure('too_many_photos', { most: asking.question.max ?? 1 })
  }
  let refusal: unknown = null
  const taken: string[] = []
  for (const { bytes, tooLarge } of form.files) {
    // A file that is refused does not cost the others that came with it: they stay as drafts.
    try {
      if (tooLarge) throw new Failure('too_large')
      taken.push(await takePhoto({ ...context, db: context.store.db }, place, bytes))
    } catch (error) {
      refusal ??= error
    }
  }
  if (refusal) throw refusal
  return { ids: [...held, ...taken].filter((id) => !gone.includes(id)), taken }
}

async function replyOf(
  context: ChatContext,
  { open }: Opened,
  asking: Asking,
  form: Form,
): Promise<{ reply: Reply; taken: readonly string[] }> {
  const { question, item, replies } = asking
  const raw = rawOf(form.fields)
  if (form.refusal) throw form.refusal
  if (question.kind !== 'photo' || raw.act !== 'answer') {
    return { reply: readReply(question, offered(question, replies, rules), raw), taken: [] }
  }
  const place = { pileId: open.row.id, item, question: question.id }
  const { ids, taken } = await photoIds(context, place, asking, form)
  return { reply: readReply(question, [], { act: 'answer', value: ids }), taken }
}

/** Settles what becomes of photos once their answer is kept, or was kept before. */
async function settlePhotos(
  { store, clock }: ChatContext,
  pileId: string,
  {
    reply,
    taken,
    gone,
    again,
  }: {
    reply: Reply
    taken: readonly string[]
    gone: readonly string[]
    again: boolean
  },
): Promise<void> {
  await dropPhotos(store.db, pileId, again ? taken : gone, clock())
  if (again) return
  const kept = 'given' in reply && Array.isArray(reply.given) ? (reply.given as string[]) : []
  await keepPhotos(store.db, pileId, kept)
}

/** Whether an answer can change a price that was there: of a graded garment, or of the quilt behind one. */
const hadPrice = ({ garments }: Pile, item: number): boolean =>
  garments.some(({ n, dropped, grading }) => grading && !dropped && (item === 0 || n === item))

/** An answer is taken, kept, and the next question follows; a refused one comes back as it was sent. */
export function answerRoutes(app: FastifyInstance, context: ChatContext): void {
  app.post<{ Params: z.infer<typeof questionParams> }>(
    '/i/:key/:item/:question',
    {
      schema: {
        summary: 'Answers a question',
        params: questionParams,
        body: answerForm,
        consumes: ['application/x-www-form-urlencoded', 'multipart/form-data'],
      },
      // The body is checked in readAnswerForm: it may be multipart, and a refused form is shown again.
      validatorCompiler: ({ schema, httpPart, ...route }) =>
        httpPart === 'body'
          ? (value) => ({ value })
          : validatorCompiler({ schema: schema as z.ZodType, httpPart, ...route }),
    },
    async (request, reply) => {
      const { key, item, question } = request.params
      const form = await readAnswerForm(request)
      const opened = await openPile(context, key)
      const { open, language } = opened
      if (await isKept(context.store.db, open.row.id, form.fields.idem)) {
        return reply.redirect(paths.pile(key), 303)
      }
      const asking = findAsking(open.pile.followed, item, question)
      if (open.row.status !== 'open') throw new Failure('pile_confirmed')
      if (!asking) throw new Failure('question_moved_on', { question })

      try {
        const answer = await replyOf(context, opened, asking, form)
        const { again, overtaken, seq } = await context.conversation.act(key, {
          act: { act: 'answer', item, question, reply: answer.reply },
          idem: form.fields.idem,
          seen: form.fields.seq,
        })
        if (asking.question.kind === 'photo') {
          await settlePhotos(context, open.row.id, {
            ...answer,
            gone: list(form.fields.remove),
            again,
          })
        }
        if (overtaken) return reply.redirect(`${paths.pile(key)}?told=${overtaken}`, 303)
        const changed = seq !== null && hadPrice(opened.open.pile, item)
        return reply.redirect(changed ? paths.changed(key, seq - 1) : paths.pile(key), 303)
      } catch (error) {
        if (!(error instanceof Failure) || error.status >= 500) throw error
        request.log.info({ code: error.code, question }, 'answer refused')
        const sentence = failureSentence(error, language)
        const refused = {
          raw: rawOf(form.fields),
          error: { field: fieldOf(error, asking, form.fields), sentence },
        }
        const now = await openPile(context, key)
        reply.status(error.status)
        return show(
          context,
          reply,
          questionPage(
            now.open,
            {
              asking: await withDrafts(context, now.open, asking),
              refused,
              planned: await plannedFor(context, now.open, 'asking'),
            },
            readerOf(now.open, key, language),
          ),
          { language, key },
        )
      }
    },
  )
}
