import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { laidOutRecords } from '../../desk/laid-out-records.ts'
import { layOut, mostLaidPhotos, saidOnPhone } from '../../desk/lay-out.ts'
import { takeBackRecord } from '../../desk/recording.ts'
import { pileAtDesk } from '../../desk/review.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { laidOutPage } from './present-laid-out.ts'
import { takePhotos } from './sent-files.ts'

const params = z.object({ pile: z.string().min(1).max(64) })
const words = z.string().max(100_000).default('')
const seq = z.coerce.number().int().min(0).default(0)
const common = {
  csrf: z.string().max(200),
  note: words,
  seen: seq,
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
}
const form = z.object({ ...common, act: z.enum(['laid', 'undo']), record: seq })
const phoneForm = z.object({
  ...common,
  act: z.literal('phone').default('phone'),
  of: seq,
  by: z.string().max(10_000).default(''),
  day: z.string().max(40).default(''),
})

/** "2026-06-01" as milliseconds UTC; null: no such day. */
const dayTold = (text: string): number | null =>
  z.iso.date().safeParse(text).success ? Date.parse(text) : null

/** Refusals that would lose what was typed; anything else is told on a page of its own. */
const elsewhere: readonly FailureCode[] = ['not_found', 'not_signed_in', 'not_allowed', 'internal']

/** The quilt laid out, for its customer's yes before it is sewn. */
export const laidOutRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock } = context

    const show = async (request: FastifyRequest, reply: FastifyReply, refused: Failure | null) => {
      // A form that is refused before its parts are read brings them as they were sent.
      const read = params.safeParse(request.params)
      if (!read.success) throw new Failure('not_found')
      const row = await pileAtDesk(store.db, read.data.pile)
      const { csrf, account } = signedIn(request)
      const sent = (refused ? (request.body ?? {}) : {}) as Record<string, unknown>
      const page = laidOutPage(await laidOutRecords(store.db, row), {
        language: deskLanguage(request, context),
        csrf,
        staff: staff.includes(account.role),
        now: clock(),
        refused,
        typed: (field) => {
          const value = Object.hasOwn(sent, field) ? sent[field] : undefined
          return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
        },
      })
      return showDesk(context, request, reply, page, { path: custodyPaths.laidOut(row.number) })
    }

    const refusedOnPage = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = !elsewhere.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      request.log.info({ code: failure.code }, 'laid-out quilt refused')
      await show(request, reply.status(failure.status), failure)
    }

    app.get(
      '/piles/:pile/laid-out',
      {
        config: { who: workshop },
        schema: { summary: 'The laid-out quilt, and what its customer said of it', params },
      },
      async (request, reply) => show(request, reply, null),
    )

    app.post(
      '/piles/:pile/laid-out',
      {
        config: { who: workshop },
        schema: { summary: 'Lays the quilt out, or takes an entry back', params, body: form },
        errorHandler: refusedOnPage,
      },
      async (request, reply) => {
        const { act, record, csrf: _, ...fields } = request.body
        const row = await pileAtDesk(store.db, request.params.pile)
        const writing = { ...fields, who: signedIn(request).account.id }
        if (act === 'undo') {
          const taking = { ...writing, item: 0, photo: null, seq: record }
          await takeBackRecord(context, row.id, taking)
        } else {
          const files = request.deskFiles ?? []
          if (files.length > mostLaidPhotos) {
            throw new Failure('too_many_photos', { most: mostLaidPhotos })
          }
          const taken = await takePhotos(context, row.id, files, () => ({
            item: 0,
            question: 'laid-out',
          }))
          await layOut(context, row.id, { ...writing, photos: [...taken.values()].flat() })
        }
        request.log.info({ pile: row.number, act }, 'the laid-out quilt was written down')
        return reply.redirect(custodyPaths.laidOut(row.number), 303)
      },
    )

    app.post(
      '/piles/:pile/laid-out/phone',
      {
        config: { who: staff },
        schema: {
          summary: "Writes down the customer's yes on the phone",
          params,
          body: phoneForm,
        },
        errorHandler: refusedOnPage,
      },
      async (request, reply) => {
        const { csrf: _, act: __, ...fields } = request.body
        const said = { ...fields, day: dayTold(fields.day) }
        const row = await pileAtDesk(store.db, request.params.pile)
        await saidOnPhone(context, row.id, { ...said, who: signedIn(request).account.id })
        request.log.info({ pile: row.number }, 'a yes on the phone was written down')
        return reply.redirect(custodyPaths.laidOut(row.number), 303)
      },
    )
  }
