import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import type { Condition } from '../../custody/conditions.ts'
import { type MoveName, moveNames } from '../../custody/move.ts'
import { readSubjectKey, subjectCode } from '../../custody/subject.ts'
import { bear, type Moving, moveSubject, undoMove } from '../../desk/moving.ts'
import { arrive, overdueParcels } from '../../desk/parcels.ts'
import { pileAtDesk } from '../../desk/review.ts'
import { scannedCode } from '../../desk/scanned.ts'
import { subjectAtDesk } from '../../desk/subject.ts'
import { hereInState, mostLocated, ofCode, placesUsed, whereIs } from '../../desk/whereabouts.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { conditionWords } from './custody-words.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { custodyHomePage, custodyMapPage } from './present-custody-home.ts'
import { subjectPage } from './present-custody-subject.ts'
import { takePhotos } from './sent-files.ts'

const homeQuery = z.object({
  q: z.string().max(300).default(''),
  lang: z.string().max(8).optional(),
})

const params = z.object({
  pile: z.string().min(1).max(64),
  subject: z.string().min(1).max(24),
})

const form = z.object({
  csrf: z.string().max(200),
  act: z.enum([...moveNames, 'put', 'undo']),
  place: z.string().max(10_000).default(''),
  note: z.string().max(100_000).default(''),
  parcel: z.string().max(24).optional(),
  condition: z
    .union([z.string().max(20), z.array(z.string().max(20)).max(12)])
    .optional()
    .transform((sent) => (sent === undefined ? [] : [sent].flat())),
  seen: z.coerce.number().int().min(0).default(0),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
})

/** Refusals that are answered with the page itself. */
const onThePage: readonly FailureCode[] = [
  'bad_input',
  'form_expired',
  'moved_meanwhile',
  'move_not_now',
  'move_too_early',
  'place_missing',
  'reason_missing',
  'answer_too_long',
  'undo_not_now',
  'parcel_isolated',
  'unsupported_type',
  'corrupt_image',
  'too_many_pixels',
  'too_small',
  'too_large',
  'empty_file',
  'nothing_ticked',
  'none_with_others',
  'answer_not_offered',
  'busy',
]

const textIn = (request: FastifyRequest, name: string): string => {
  const value = ((request.body ?? {}) as Record<string, unknown>)[name]
  return typeof value === 'string' ? value : ''
}

/** Where everything is, and the page of one thing with what can happen to it. */
export const custodyRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock, knowledge } = context
    const seesCustomers = (request: FastifyRequest) =>
      staff.includes(signedIn(request).account.role)

    app.get(
      '/custody',
      {
        config: { who: workshop },
        schema: { summary: 'Where is it: by tag, name, customer or place', querystring: homeQuery },
      },
      async (request, reply) => {
        const q = request.query.q.trim()
        const scanned = scannedCode(q)
        const exact = scanned?.fits ? await ofCode(store.db, scanned.code) : null
        if (exact) return reply.redirect(custodyPaths.subject(exact.pile, exact.subject), 303)
        const customers = seesCustomers(request)
        const page = custodyHomePage(
          {
            asked: q,
            mistyped: scanned !== null && !scanned.fits,
            found: q === '' ? null : await whereIs(store.db, q.slice(0, 80), { customers }),
            overdue: await overdueParcels(store.db, clock(), knowledge.shop),
            apart: await hereInState(store.db, 'isolated'),
            waiting: await hereInState(store.db, 'arrived'),
          },
          { language: deskLanguage(request, context), customers, most: mostLocated },
        )
        return showDesk(context, request, reply, page)
      },
    )

    app.get(
      '/custody/map',
      { config: { who: workshop }, schema: { summary: 'The states and moves, drawn' } },
      async (request, reply) =>
        showDesk(context, request, reply, custodyMapPage(deskLanguage(request, context))),
    )

    const show = async (request: FastifyRequest, reply: FastifyReply, refused: Failure | null) => {
      const { pile, subject } = request.params as z.infer<typeof params>
      const row = await pileAtDesk(store.db, pile)
      const found = await subjectAtDesk(store.db, row, subject)
      const session = signedIn(request)
      const page = subjectPage(found, {
        language: deskLanguage(request, context),
        csrf: session.csrf,
        staff: seesCustomers(request),
        places: await placesUsed(store.db),
        refused,
        typed: refused && {
          move: textIn(request, 'act'),
          place: textIn(request, 'place'),
          note: textIn(request, 'note'),
        },
      })
      return showDesk(context, request, reply, page, {
        path: custodyPaths.subject(row.number, subject),
      })
    }

    app.get(
      '/piles/:pile/custody/:subject',
      {
        config: { who: workshop },
        schema: { summary: 'Where one thing is, what happened to it and what can happen', params },
      },
      async (request, reply) => show(request, reply, null),
    )

    app.post(
      '/piles/:pile/custody/:subject',
      {
        config: { who: workshop },
        schema: { summary: 'Moves a thing, or takes its last entry back', params, body: form },
        errorHandler: async (error, request, reply) => {
          const failure = asFailure(error)
          const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
          if (!shows) throw error
          request.log.info({ code: failure.code }, 'move refused')
          await show(request, reply.status(failure.status), failure)
        },
      },
      async (request, reply) => {
        const { pile, subject } = request.params
        const { act, place, note, parcel, condition, seen, idem } = request.body
        const row = await pileAtDesk(store.db, pile)
        const known = readSubjectKey(subject)
        if (!known) throw new Failure('not_found')
        const who = signedIn(request).account.id
        const at = { store, clock }
        if (act === 'undo') {
          await undoMove(at, row.id, { subject, note, seen, idem, who })
          request.log.info({ pile: row.number, subject }, 'an entry was taken back')
          // A birth that is taken back leaves no page.
          const kept = await ofCode(store.db, subjectCode(row.number, subject))
          const to = kept
            ? custodyPaths.subject(row.number, subject)
            : custodyPaths.pile(row.number)
          return reply.redirect(to, 303)
        }
        if (act === 'arrive' && known.kind === 'parcel') {
          const { say } = deskLanguage(request, context)
          const tell = (found: readonly Condition[]) => conditionWords(found, say)
          await arrive(at, row.id, subject, { condition, place, note, tell, seen, idem, who })
          request.log.info({ pile: row.number, subject }, 'a parcel arrived')
          return reply.redirect(custodyPaths.subject(row.number, subject), 303)
        }
        // What is shown of a bag, a parcel or a found thing is no photo of the garment.
        const shown = known.kind === 'garment' && act !== 'bag' ? known.n : 0
        const taken = await takePhotos(context, row.id, request.deskFiles ?? [], () => ({
          item: shown,
          question: 'custody',
        }))
        const photo = [...taken.values()].flat()[0] ?? null
        const moving = { place, note, photo, idem, who }
        const entry = await made(at, row.id, subject, act, { ...moving, via: parcel ?? null, seen })
        request.log.info({ pile: row.number, subject: entry.subject, move: act }, 'moved')
        return reply.redirect(custodyPaths.subject(row.number, entry.subject), 303)
      },
    )
  }

type Made = Pick<Moving, 'place' | 'note' | 'photo' | 'idem' | 'who' | 'via' | 'seen'>

/** A move; or the birth of a bag of its leftovers. */
function made(
  at: Parameters<typeof moveSubject>[0],
  pileId: string,
  subject: string,
  act: MoveName | 'put',
  { seen, ...moving }: Made,
) {
  const { n } = readSubjectKey(subject)!
  if (act === 'bag') {
    return bear(at, pileId, { ...moving, kind: 'leftover', of: n, move: 'bag', via: null })
  }
  // The customer is told of what was found: that is written down with the garment's records.
  if (act === 'find') throw new Failure('move_not_now')
  return moveSubject(at, pileId, { ...moving, subject, move: act, seen })
}
