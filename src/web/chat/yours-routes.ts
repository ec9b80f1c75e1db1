import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { erasePile, sweepPhotos } from '../../keeping/erase.ts'
import { givenZip } from '../../keeping/given-zip.ts'
import { whyKept } from '../../keeping/may-erase.ts'
import { eraseOnePhoto, keptPhotos } from '../../keeping/sent-photos.ts'
import { lockPile } from '../../store/rows.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { photosToErase } from '../kept-photos.ts'
import { sendGiven } from '../send-given.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { buttonForm } from './form.ts'
import { keyParams, type Opened, openPile, show } from './opened.ts'
import { paths } from './paths.ts'
import type { YoursPage } from './view-yours.ts'

const photoParams = keyParams.extend({ id: z.string().min(1).max(64) })
const eraseForm = buttonForm.extend({ sure: z.string().max(10).optional() })

/** What customers are told of, in this order. */
const shownDays = [
  'open_days',
  'withdrawn_days',
  'unsent_days',
  'finished_days',
  'removed_photo_days',
  'backup_days',
] as const

/** What is kept of a customer; and the end of it, by their own hand. */
export function yoursRoutes(app: FastifyInstance, context: ChatContext): void {
  const { store, photos, clock, knowledge } = context

  const yoursPage = async (
    { key, open, language: { say } }: Opened,
    refusal: string | null,
  ): Promise<YoursPage> => {
    const why = await whyKept(store.db, open.row.id)
    const sent = (await keptPhotos(store.db, open.row.id)).filter((photo) => photo.sent)
    const { keeping } = knowledge.shop
    return {
      page: 'yours',
      kept: shownDays.map((name) => ({
        what: say(`yours.kinds.${name}`),
        days: say('yours.days', { days: keeping[name] }),
      })),
      photos: photosToErase(sent, say, {
        photo: (id, size) => paths.photo(key, id, size),
        erase: (id) => paths.erasePhoto(key, id),
      }),
      photoHidden: { seq: String(open.row.seq) },
      fileHref: paths.given(key),
      erase: why
        ? null
        : {
            postTo: paths.erase(key),
            hidden: { idem: newId(), seq: String(open.row.seq) },
            refusal,
          },
      why: why && say(`yours.kept.${why}`),
      askHref: paths.messages(key),
      backHref: paths.pile(key),
    }
  }

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/yours',
    {
      config: { who: customer },
      schema: { summary: 'What is kept of a customer, and how long', params: keyParams },
    },
    async (request, reply) => {
      const opened = await openPile(context, request.params.key)
      const { key, language } = opened
      return show(context, reply, await yoursPage(opened, null), { language, key })
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/yours.zip',
    {
      config: { who: customer },
      schema: { summary: 'All that is kept of a customer, as one file', params: keyParams },
    },
    async (request, reply) => {
      const { open, language } = await openPile(context, request.params.key)
      const readMe = language.say('yours.file.read_me')
      const zip = await givenZip({ db: store.db, photos }, open.row.id, { at: clock(), readMe })
      request.log.info('what is kept of a pile was given to its customer')
      return sendGiven(reply, zip, open.row.number)
    },
  )

  app.post<{ Params: z.infer<typeof photoParams>; Body: z.infer<typeof buttonForm> }>(
    '/i/:key/photos/:id/erase',
    {
      config: { who: customer },
      schema: { summary: 'Erases one photo for good', params: photoParams, body: buttonForm },
    },
    async (request, reply) => {
      const { key, id } = request.params
      const { open } = await openPile(context, key)
      const erasing = { id, by: 'customer', at: clock() } as const
      const gone = await eraseOnePhoto(context, open.row.id, erasing)
      if (gone) request.log.info('photo erased by its customer')
      else request.log.error('photo erased by its customer; its files are left to the next purge')
      return reply.redirect(`${paths.yours(key)}#photos`, 303)
    },
  )

  /** All of it or nothing; what came meanwhile may stand against it. */
  const erase = (pileId: string): Promise<void> =>
    store.transaction(async (db) => {
      if (!(await lockPile(db, pileId))) throw new Failure('link_unknown')
      if (await whyKept(db, pileId)) throw new Failure('erase_not_now')
      await erasePile(db, pileId, 'customer', clock())
    })

  app.post<{ Params: z.infer<typeof keyParams>; Body: z.infer<typeof eraseForm> }>(
    '/i/:key/erase',
    {
      config: { who: customer },
      schema: { summary: 'Erases a pile for good', params: keyParams, body: eraseForm },
    },
    async (request, reply) => {
      const opened = await openPile(context, request.params.key)
      const { key, open, language } = opened
      try {
        if (request.body.sure === undefined) throw new Failure('erase_not_ticked')
        await erase(open.row.id)
      } catch (error) {
        const failure = asFailure(error)
        if (failure.status >= 500 || failure.status === 404 || !wantsPage(request)) throw error
        reply.status(failure.status)
        const page = await yoursPage(opened, failureSentence(failure, language))
        return show(context, reply, page, { language, key })
      }
      request.log.info('pile erased by its customer')
      // The rows are gone; files that cannot be reached now go with the next purge.
      await sweepPhotos(store, photos).catch((err) => request.log.error({ err }, 'photos left'))
      const { backup_days: days } = knowledge.shop.keeping
      return show(
        context,
        reply,
        {
          page: 'erased',
          backups: language.say('erased.backups', { days }),
          startHref: '/',
        },
        { language, key: null },
      )
    },
  )
}
