import type { FastifyInstance, FastifyReply } from 'fastify'
import { validatorCompiler } from 'fastify-type-provider-zod'
import type { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { type Followed, isComplete } from '../../flow/followed.ts'
import type { Kind } from '../../flow/grammar.ts'
import { questionsOf } from '../../flow/kept.ts'
import { offered, readReply } from '../../flow/reply.ts'
import type { Outcome } from '../../intake/conversation.ts'
import { hasReceived, type PhotoPlace } from '../../intake/photos.ts'
import { labelValue } from '../../intake/replies.ts'
import { rules } from '../../intake/rules.ts'
import { knows } from '../../intake/stood.ts'
import { failureSentence } from '../errors.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { type AnswerForm, answerForm, type Form, rawOf, readAnswerForm } from './form.ts'
import { openPile, plannedFor, questionParams, show, withDrafts } from './opened.ts'
import { questionPage, readerOf } from './present-pages.ts'
import { type Asking, findAsking, type Sent } from './present-question.ts'
import {
  answerOfLabel,
  asksToRead,
  photoTroubles,
  readSentLabel,
  withoutPhoto,
} from './received-label.ts'
import { type Answer, answerOfPhotos, settleOnceMore } from './received-photos.ts'
import {
  answerOfSpots,
  changedSpots,
  changesSpots,
  type SpotsSent,
  sentAgain,
  spotsSent,
} from './received-spots.ts'
import { goOn, type Left } from './show-place.ts'
import type { FieldError } from './view.ts'

/** The field that a refusal speaks of. */
function fieldOf(failure: Failure, asking: Asking, fields: AnswerForm): FieldError['field'] {
  const { field } = failure.details
  if (fields.act === 'ask' && (asking.question.kind !== 'label' || isOfTheWords(failure))) {
    return 'note'
  }
  if (field === 'name' || field === 'email' || field === 'phone') return field
  if (failure.code === 'email_not_valid') return 'email'
  if (asking.question.kind === 'photo') return 'photo'
  if (asking.question.kind === 'spots') return 'spots'
  if (asking.question.kind === 'contact') return 'name'
  if (asking.question.kind === 'label') return labelFieldOf(failure, fields)
  return 'value'
}

const ofTheWords: readonly FailureCode[] = [
  'empty_answer',
  'answer_not_offered',
  'answer_too_long',
  'bad_input',
]

const isOfTheWords = ({ code }: Failure): boolean => ofTheWords.includes(code)

/** Whatever is not about words and signs is about the label's photo. */
function labelFieldOf(failure: Failure, { words, act }: AnswerForm): FieldError['field'] {
  if (act === 'read-label' || !isOfTheWords(failure)) return 'photo'
  return words ? 'words' : 'found'
}

const nothingToSettle = () => Promise.resolve()

async function answerOf(
  context: ChatContext,
  place: PhotoPlace,
  asking: Asking,
  form: Form,
  marks: SpotsSent | null,
): Promise<Answer> {
  const { question, replies } = asking
  const raw = rawOf(form.fields)
  if (raw.act === 'answer' && question.kind === 'photo') {
    return answerOfPhotos(context, place, asking, form)
  }
  if (raw.act === 'answer' && marks) return answerOfSpots(asking, form.fields, marks)
  if (raw.act !== 'skip' && question.kind === 'label') {
    return answerOfLabel(context, place, asking, form)
  }
  const reply = readReply(question, offered(question, replies, rules), raw)
  return { reply, settle: nothingToSettle }
}

/** Whether an answer can change a price that was there: of a graded garment, or of the quilt behind one. */
const hadPrice = ({ items }: Followed, item: number): boolean =>
  items.some((one) => isComplete(one) && (item === 0 || one.n === item))

const takesPhotos = ({ question }: Asking): boolean =>
  question.kind === 'label' || question.kind === 'photo'

/** A refusal shows the question again; of our own failures only those with a photo. */
const staysHere = ({ code, status }: Failure, asking: Asking): boolean =>
  status < 500 || (takesPhotos(asking) && photoTroubles.includes(code))

function leftBy({ overtaken, seq }: Outcome, priced: boolean): Left {
  if (overtaken) return { told: overtaken }
  return seq !== null && priced ? { since: seq - 1 } : {}
}

/** Whether an answer hangs on more than its form: on photos that came before it. */
async function beyondTheForm(
  { store }: ChatContext,
  place: PhotoPlace,
  kind: Kind,
  { act }: AnswerForm,
): Promise<boolean> {
  if (kind === 'photo') return act !== 'skip' && act !== 'ask'
  if (kind !== 'label' || act === 'skip') return kind === 'spots'
  return act === 'read-label' || (await hasReceived(store.db, place))
}

/**
 * Takes an answer that its form holds whole, read where the pile is held, so that nothing is looked up before. Null:
 * the pile has to be opened first, to take it or to say why not.
 */
async function takeAtOnce(
  context: ChatContext,
  { key, item, question }: z.infer<typeof questionParams>,
  { fields, files, refusal }: Form,
): Promise<Left | null> {
  const { conversation } = context
  const pile = conversation.remembered(key)
  const asked = pile && questionsOf(pile.flow)[item === 0 ? 'once' : 'repeated'].get(question)
  if (!asked || files.length > 0 || refusal) return null
  const place = { pileId: pile.pileId, item, question }
  if (await beyondTheForm(context, place, asked.kind, fields)) return null
  let priced = false
  try {
    const outcome = await conversation.act(key, {
      act: (followed) => {
        const asking = findAsking(followed, item, question)
        if (!asking) throw new Failure('question_moved_on', { question })
        priced = hadPrice(followed, item)
        const options = offered(asking.question, asking.replies, rules)
        const raw =
          asked.kind === 'label' ? withoutPhoto(fields, labelValue(asking.replies)) : rawOf(fields)
        return {
          act: 'answer',
          item,
          question,
          reply: readReply(asking.question, options, raw),
        }
      },
      idem: fields.idem,
      seen: fields.seq,
    })
    return leftBy(outcome, priced)
  } catch (error) {
    if (error instanceof Failure && error.status < 500) return null
    throw error
  }
}

/** The question once more, with what was sent. */
async function showAgain(
  context: ChatContext,
  reply: FastifyReply,
  key: string,
  { asking, sent, typed }: { asking: Asking; sent: Sent; typed: string },
) {
  const { open, language } = await openPile(context, key)
  const shown = {
    asking: await withDrafts(context, open, asking, typed),
    sent,
    planned: await plannedFor(context, open, 'asking'),
  }
  const page = questionPage(open, shown, readerOf(open, key, language))
  return show(context, reply, page, { language, key })
}

/** An answer is taken, kept, and the next question follows; a refused one comes back as it was sent. */
export function answerRoutes(app: FastifyInstance, context: ChatContext): void {
  app.post<{ Params: z.infer<typeof questionParams> }>(
    '/i/:key/:item/:question',
    {
      config: { who: customer },
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
      const taken = await takeAtOnce(context, request.params, form)
      if (taken) return goOn(context, request, reply, key, taken)
      const opened = await openPile(context, key)
      const { open } = opened
      const asking = findAsking(open.pile.followed, item, question)
      const place = { pileId: open.row.id, item, question }
      if (knows(open, form.fields.idem)) {
        if (asking) await settleOnceMore(context, place, asking, form)
        return goOn(context, request, reply, key)
      }
      if (open.row.status !== 'open') throw new Failure('pile_confirmed')
      if (!asking) throw new Failure('question_moved_on', { question })

      const marks = await spotsSent(context, open, asking, form.fields)
      const again = (sent: Sent, typed: string) =>
        showAgain(context, reply, key, { asking, sent, typed })
      let left: Left
      try {
        if (form.refusal) throw form.refusal
        if (asksToRead(context, asking, form)) {
          const { raw, typed } = await readSentLabel(context, place, asking, {
            form,
            log: request.log,
          })
          return await again({ raw, error: null }, typed)
        }
        if (marks && changesSpots(form.fields)) {
          const spots = changedSpots(asking, form.fields, marks)
          const sent = sentAgain(form.fields, { ...marks, spots })
          return await again({ ...sent, error: null }, '')
        }
        const answer = await answerOf(context, place, asking, form, marks)
        if (answer.retake) {
          const sent = { ...sentAgain(form.fields, marks), photos: answer.photos }
          return await again({ ...sent, error: null }, '')
        }
        const outcome = await context.conversation.act(key, {
          act: { act: 'answer', item, question, reply: answer.reply },
          idem: form.fields.idem,
          seen: form.fields.seq,
        })
        await answer.settle(outcome.again)
        left = leftBy(outcome, hadPrice(open.pile.followed, item))
      } catch (error) {
        if (!(error instanceof Failure) || !staysHere(error, asking)) throw error
        const ours = error.status >= 500
        request.log[ours ? 'error' : 'info'](
          { code: error.code, question, ...(ours && { err: error }) },
          'answer refused',
        )
        const sentence = failureSentence(error, opened.language)
        const field = fieldOf(error, asking, form.fields)
        reply.status(error.status)
        const sent = sentAgain(form.fields, marks)
        return again({ ...sent, error: { field, sentence } }, form.fields.typed ?? '')
      }
      return goOn(context, request, reply, key, left)
    },
  )
}
