import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { shownAtDesk } from '../../desk/decisions.ts'
import { pileWrittenOf } from '../../desk/threads.ts'
import { erasePile, sweepPhotos } from '../../keeping/erase.ts'
import { givenZip } from '../../keeping/given-zip.ts'
import { whyKept } from '../../keeping/may-erase.ts'
import { eraseOnePhoto, keptPhotos } from '../../keeping/sent-photos.ts'
import { lockPile } from '../../store/rows.ts'
import type { PileRow } from '../../store/schema.ts'
import type { Say } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { photosToErase } from '../kept-photos.ts'
import { sendGiven } from '../send-given.ts'
import { owner, staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import type { KeptPage } from './view-kept.ts'

const params = z.object({ pile: z.coerce.number().int().min(1).max(999_999_999) })
const photoParams = params.extend({ id: z.string().min(1).max(64) })
const photoForm = z.object({ csrf: z.string().max(200) })
const eraseForm = photoForm.extend({ sure: z.string().max(10).optional() })

/** What is kept of a customer who asks the workshop for it, or for its end. */
export const keptRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock, photos } = context
    const { db } = store

    const eraseOf = async (
      row: PileRow,
      isOwner: boolean,
      say: Say,
    ): Promise<Pick<KeptPage, 'erase' | 'why'>> => {
      if (!isOwner) return { erase: null, why: say('desk.kept.owner_only') }
      const why = await whyKept(db, row.id)
      if (why === 'here') return { erase: null, why: say('desk.kept.here') }
      const minds = why && say(`desk.kept.${why}`)
      return { erase: { postTo: deskPaths.erase(row.number), minds }, why: null }
    }

    const show = async (
      request: FastifyRequest,
      reply: FastifyReply,
      row: PileRow,
      refused: Failure | null = null,
    ) => {
      const language = deskLanguage(request, context)
      const { say } = language
      const { csrf, account } = signedIn(request)
      const { number } = row
      const isShown = shownAtDesk.includes(row.status)
      // What an open intake shows is its customer's until they give it to the workshop.
      const kept = isShown ? await keptPhotos(db, row.id) : []
      const page: KeptPage = {
        page: 'kept',
        title: say('desk.kept.title', { pile: number }),
        links: [
          ...(isShown
            ? [{ label: say('desk.pile', { number }), href: deskPaths.pile(number) }]
            : []),
          { label: say('desk.kept.messages'), href: deskPaths.messages(number) },
        ],
        refused: refused && failureSentence(refused, language),
        photos: photosToErase(kept, say, {
          photo: (id, size) => deskPaths.photo(number, id, size),
          erase: (id) => deskPaths.erasePhoto(number, id),
        }),
        hidden: { csrf },
        fileHref: deskPaths.given(number),
        ...(await eraseOf(row, owner.includes(account.role), say)),
      }
      return showDesk(context, request, reply, page, { path: deskPaths.kept(number) })
    }

    app.get(
      '/piles/:pile/kept',
      {
        config: { who: staff },
        schema: { summary: 'What is kept of a customer, and its end', params },
      },
      async (request, reply) => show(request, reply, await pileWrittenOf(db, request.params.pile)),
    )

    app.get(
      '/piles/:pile/kept.zip',
      {
        config: { who: staff },
        schema: { summary: 'What is kept of a customer, as one file to hand over', params },
      },
      async (request, reply) => {
        const row = await pileWrittenOf(db, request.params.pile)
        const { say } = context.knowledge.languages.get(row.language)!
        const words = { at: clock(), readMe: say('yours.file.read_me') }
        const zip = await givenZip({ db, photos }, row.id, words)
        const by = signedIn(request).account.id
        request.log.info({ pile: row.number, by }, 'what is kept of a pile was taken out')
        return sendGiven(reply, zip, row.number)
      },
    )

    app.post(
      '/piles/:pile/photos/:id/erase',
      {
        config: { who: staff },
        schema: {
          summary: 'Erases one photo for good',
          params: photoParams,
          body: photoForm,
        },
      },
      async (request, reply) => {
        const row = await pileWrittenOf(db, request.params.pile)
        if (!shownAtDesk.includes(row.status)) throw new Failure('not_found')
        const erasing = { id: request.params.id, by: 'staff', at: clock() } as const
        const gone = await eraseOnePhoto(context, row.id, erasing)
        const told = { pile: row.number, by: signedIn(request).account.id }
        if (gone) request.log.info(told, 'photo erased')
        else request.log.error(told, 'photo erased; its files are left to the next purge')
        return reply.redirect(`${deskPaths.kept(row.number)}#photos`, 303)
      },
    )

    app.post(
      '/piles/:pile/erase',
      {
        config: { who: owner },
        schema: { summary: 'Erases a pile for good', params, body: eraseForm },
      },
      async (request, reply) => {
        const row = await pileWrittenOf(db, request.params.pile)
        if (request.body.sure === undefined) {
          const failure = new Failure('erase_not_ticked')
          return show(request, reply.status(failure.status), row, failure)
        }
        await store.transaction(async (trx) => {
          if (!(await lockPile(trx, row.id))) throw new Failure('not_found')
          if ((await whyKept(trx, row.id)) === 'here') throw new Failure('erase_not_now')
          await erasePile(trx, row.id, 'staff', clock())
        })
        const told = { pile: row.number, by: signedIn(request).account.id }
        request.log.info(told, 'pile erased')
        await sweepPhotos(store, photos).catch((err) => request.log.error({ err }, 'photos left'))
        return reply.redirect(deskPaths.queue, 303)
      },
    )
  }
