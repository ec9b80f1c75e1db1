import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { logFound } from '../../desk/found-things.ts'
import { garmentRecords } from '../../desk/garment-records.ts'
import { reportIncident, settleIncident } from '../../desk/incidents.ts'
import { writeAsStaff } from '../../desk/messages.ts'
import { type Recording, takeBackRecord } from '../../desk/recording.ts'
import { askRelease, release } from '../../desk/release.ts'
import { pileAtDesk } from '../../desk/review.ts'
import { logTest } from '../../desk/test-log.ts'
import { logWash } from '../../desk/wash-record.ts'
import { placesUsed } from '../../desk/whereabouts.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { recordPage } from './present-record.ts'
import { type PhotoOf, takePhotos } from './sent-files.ts'

const params = z.object({
  pile: z.string().min(1).max(64),
  n: z.coerce.number().int().min(1).max(100_000),
})

const line = z.string().max(10_000).default('')
const words = z.string().max(100_000).default('')
const common = {
  csrf: z.string().max(200),
  note: words,
  seen: z.coerce.number().int().min(0).default(0),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
}
const acts = ['picture', 'ask', 'release', 'test', 'found', 'wash', 'incident', 'undo'] as const
const form = z.object({
  ...common,
  act: z.enum(acts),
  record: z.coerce.number().int().min(0).default(0),
  lot: line,
  interfacing: line,
  sole: line,
  seconds: line,
  peel: line,
  look: line,
  result: line,
  where: line,
  place: line,
  how: line,
  celsius: line,
  bled: line,
  shrunk: line,
  size: line,
})
const staffForm = z.object({ ...common, act: z.enum(['settle', 'tell']) })

/** Refusals that would lose what was typed; anything else is told on a page of its own. */
const elsewhere: readonly FailureCode[] = ['not_found', 'not_signed_in', 'not_allowed', 'internal']

/** What a photo that comes with an act shows. */
const questionOf = (act: (typeof acts)[number]): PhotoOf['question'] =>
  act === 'picture' ? 'bench' : 'record'

/** What the bench writes down of one garment. */
export const recordRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge } = context

    const show = async (request: FastifyRequest, reply: FastifyReply, refused: Failure | null) => {
      // A form that is refused before its parts are read brings them as they were sent.
      const read = params.safeParse(request.params)
      if (!read.success) throw new Failure('not_found')
      const { pile, n } = read.data
      const row = await pileAtDesk(store.db, pile)
      const { csrf, account } = signedIn(request)
      const sent = (refused ? (request.body ?? {}) : {}) as Record<string, unknown>
      const page = recordPage(await garmentRecords(store.db, knowledge, row, n), {
        language: deskLanguage(request, context),
        customer: knowledge.languages.get(row.language)!,
        csrf,
        who: account.id,
        staff: staff.includes(account.role),
        places: await placesUsed(store.db),
        refused,
        typed: (field) => {
          const value = Object.hasOwn(sent, field) ? sent[field] : undefined
          return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
        },
      })
      return showDesk(context, request, reply, page, { path: custodyPaths.record(row.number, n) })
    }

    const refusedOnPage = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = !elsewhere.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      request.log.info({ code: failure.code }, 'record refused')
      await show(request, reply.status(failure.status), failure)
    }

    app.get(
      '/piles/:pile/garments/:n/record',
      {
        config: { who: workshop },
        schema: { summary: 'What the bench wrote down of one garment', params },
      },
      async (request, reply) => show(request, reply, null),
    )

    app.post(
      '/piles/:pile/garments/:n/record',
      {
        config: { who: workshop },
        schema: { summary: 'Writes down something of a garment', params, body: form },
        errorHandler: refusedOnPage,
      },
      async (request, reply) => {
        const { n } = request.params
        const { act, record, csrf: _, ...fields } = request.body
        const row = await pileAtDesk(store.db, request.params.pile)
        const taken = await takePhotos(context, row.id, request.deskFiles ?? [], () => ({
          item: n,
          question: questionOf(act),
        }))
        const photo = [...taken.values()].flat()[0] ?? null
        const recording = { ...fields, item: n, photo, who: signedIn(request).account.id }
        await keep(context, row.id, act, { ...recording, seq: record })
        request.log.info({ pile: row.number, garment: n, act }, 'written down at the bench')
        return reply.redirect(`${custodyPaths.record(row.number, n)}#${sectionOf[act]}`, 303)
      },
    )

    app.post(
      '/piles/:pile/garments/:n/incident',
      {
        config: { who: staff },
        schema: {
          summary: 'Decides of an incident, or tells the customer of it',
          params,
          body: staffForm,
        },
        errorHandler: refusedOnPage,
      },
      async (request, reply) => {
        const { n } = request.params
        const { act, note, seen, idem } = request.body
        const row = await pileAtDesk(store.db, request.params.pile)
        const who = signedIn(request).account.id
        if (act === 'tell') {
          const writing = { item: n, text: note, wantsAnswer: true, idem, who }
          await writeAsStaff(context, row.id, writing)
        } else {
          await settleIncident(context, row.id, { item: n, note, photo: null, seen, idem, who })
        }
        request.log.info({ pile: row.number, garment: n, act }, 'an incident was seen to')
        return reply.redirect(`${custodyPaths.record(row.number, n)}#stop`, 303)
      },
    )
  }

const sectionOf = {
  picture: 'release',
  ask: 'release',
  release: 'release',
  test: 'test',
  found: 'found',
  wash: 'wash',
  incident: 'stop',
  undo: 'main',
} as const satisfies Record<(typeof acts)[number], string>

type Sent = Omit<z.infer<typeof form>, 'csrf' | 'act' | 'record'> &
  Recording & { readonly seq: number }

function keep(
  context: DeskContext,
  pileId: string,
  act: (typeof acts)[number],
  sent: Sent,
): Promise<void> {
  switch (act) {
    case 'picture':
      // The photo is kept with the garment; nothing else is written.
      if (sent.photo === null) throw new Failure('empty_file')
      return Promise.resolve()
    case 'ask':
      return askRelease(context, pileId, sent)
    case 'release':
      return release(context, pileId, sent)
    case 'test':
      return logTest(context, pileId, sent)
    case 'found':
      return logFound(context, pileId, sent)
    case 'wash':
      return logWash(context, pileId, sent)
    case 'incident':
      return reportIncident(context, pileId, sent)
    case 'undo':
      return takeBackRecord(context, pileId, sent)
  }
}
