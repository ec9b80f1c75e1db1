import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { follow } from '../../custody/follow.ts'
import { boxChanges } from '../../desk/box-changes.ts'
import { type CheckedGarment, saveBoxCheck } from '../../desk/box-check.ts'
import { boxChecksOf } from '../../desk/box-results.ts'
import { entriesOfPile } from '../../desk/custody-entries.ts'
import { factSetsOf } from '../../desk/fact-sets.ts'
import { parcelsOf } from '../../desk/parcels.ts'
import { planMarksOf } from '../../desk/plan-marks.ts'
import { pileAtDesk } from '../../desk/review.ts'
import { pileAsKnown } from '../../desk/spots.ts'
import { placesUsed } from '../../desk/whereabouts.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { conditionWords } from './custody-words.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { boxChangedPage, boxCheckPage, boxFacts } from './present-box-check.ts'
import { type PhotoOf, takePhotos } from './sent-files.ts'

const params = z.object({ pile: z.string().min(1).max(64) })
const query = z.object({
  parcel: z.string().max(24).optional(),
  lang: z.string().max(8).optional(),
})

const text = z.string().max(100_000)
/** Fields of a garment end in its number; which there are is the pile's to say. */
const form = z.record(z.string().max(60), z.union([text, z.array(text).max(60)]))

type Fields = z.infer<typeof form>

const all = (fields: Fields, name: string): string[] => {
  const value = Object.hasOwn(fields, name) ? fields[name] : undefined
  return value === undefined ? [] : [value].flat()
}
const first = (fields: Fields, name: string): string => all(fields, name)[0] ?? ''
const count = (fields: Fields, name: string): number => {
  const value = Number(first(fields, name))
  return Number.isSafeInteger(value) && value >= 0 ? value : 0
}

const isResult = (result: string): result is CheckedGarment['result'] =>
  result === 'matched' || result === 'missing' || result === 'different'

/** What a form says of one garment; null: nothing. */
function checkedIn(fields: Fields, item: number, photos: readonly string[]): CheckedGarment | null {
  const result = first(fields, `result-${item}`)
  if (result === '') return null
  if (!isResult(result)) throw new Failure('answer_not_offered')
  const facts = boxFacts.flatMap((fact): [string, string][] => {
    const value = first(fields, `fact-${item}-${fact}`).trim()
    return value === '' ? [] : [[fact, value]]
  })
  return {
    item,
    result,
    facts: Object.fromEntries(facts),
    condition: all(fields, `condition-${item}`),
    note: first(fields, `note-${item}`),
    photos,
    seen: count(fields, `seen-${item}`),
    factsSeen: count(fields, `facts-seen-${item}`),
  }
}

/** Garments that a form speaks of, by their numbers. */
const itemsIn = (fields: Fields): number[] =>
  Object.keys(fields)
    .flatMap((name) => /^result-([1-9]\d{0,4})$/.exec(name)?.[1] ?? [])
    .map(Number)

const placeOf = (field: string): PhotoOf => {
  const item = /^photos-([1-9]\d{0,4})$/.exec(field)?.[1]
  if (item === undefined) throw new Failure('bad_input', { field: 'photos', why: 'unknown' })
  return { item: Number(item), question: 'custody' }
}

/** Refusals that would lose what was typed; anything else is told on a page of its own. */
const elsewhere: readonly FailureCode[] = ['not_found', 'not_signed_in', 'not_allowed', 'internal']

/** The box check of one parcel, and what changed by it. */
export const boxCheckRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge } = context

    const show = async (
      request: FastifyRequest,
      reply: FastifyReply,
      asked: string | undefined,
      refused: Failure | null,
    ) => {
      const { pile } = request.params as z.infer<typeof params>
      const { db } = store
      const row = await pileAtDesk(db, pile)
      const parcels = await parcelsOf(db, row.id)
      const inside = parcels.filter(({ state }) =>
        ['arrived', 'unpacked', 'isolated'].includes(state),
      )
      const parcel =
        inside.find(({ subject }) => subject === asked) ??
        inside.find(({ state }) => state === 'arrived') ??
        inside[0] ??
        null
      const known = await pileAsKnown(db, knowledge, row, await planMarksOf(db, row.id))
      const standing = follow(await entriesOfPile(db, row.id))
      const sent = refused ? ((request.body ?? {}) as Fields) : {}
      const page = boxCheckPage(
        {
          row,
          parcel,
          garments: known.garments.filter(({ dropped }) => !dropped),
          standing: (n) => standing.get(String(n)) ?? null,
          checks: await boxChecksOf(db, row.id),
          sets: await factSetsOf(db, row.id),
        },
        {
          language: deskLanguage(request, context),
          csrf: signedIn(request).csrf,
          places: await placesUsed(db),
          refused,
          sent: (field) => all(sent, field).map(String),
        },
      )
      return showDesk(context, request, reply, page, {
        path: custodyPaths.boxCheck(row.number, parcel?.subject),
      })
    }

    app.get(
      '/piles/:pile/box-check',
      {
        config: { who: workshop },
        schema: { summary: 'The list to check an opened box by', params, querystring: query },
      },
      async (request, reply) => show(request, reply, request.query.parcel, null),
    )

    app.post(
      '/piles/:pile/box-check',
      {
        config: { who: workshop },
        schema: { summary: 'Keeps what the box check found', params, body: form },
        errorHandler: async (error, request, reply) => {
          const failure = asFailure(error)
          const shows = !elsewhere.includes(failure.code) && request.atDesk && wantsPage(request)
          if (!shows) throw error
          request.log.info({ code: failure.code }, 'box check refused')
          const { parcel } = (request.body ?? {}) as { parcel?: unknown }
          await show(request, reply.status(failure.status), String(parcel ?? ''), failure)
        },
      },
      async (request, reply) => {
        const fields = request.body
        const row = await pileAtDesk(store.db, request.params.pile)
        const { say } = deskLanguage(request, context)
        const idem = /^[\w-]{8,64}$/.exec(first(fields, 'idem'))?.[0] ?? newId()
        const taken = await takePhotos(context, row.id, request.deskFiles ?? [], placeOf)
        const garments = itemsIn(fields).flatMap(
          (item) => checkedIn(fields, item, taken.get(`photos-${item}`) ?? []) ?? [],
        )
        const note = first(fields, 'extra-note').trim()
        await saveBoxCheck(context, row.id, {
          parcel: first(fields, 'parcel'),
          place: first(fields, 'place'),
          garments,
          extra: note === '' ? null : { note, condition: all(fields, 'extra-condition') },
          emptied: first(fields, 'emptied') !== '',
          tell: (found) => conditionWords(found, say),
          idem,
          who: signedIn(request).account.id,
        })
        request.log.info({ pile: row.number, garments: garments.length }, 'box checked')
        return reply.redirect(custodyPaths.changed(row.number), 303)
      },
    )

    app.get(
      '/piles/:pile/box-check/changed',
      { config: { who: workshop }, schema: { summary: 'What changed by the box check', params } },
      async (request, reply) => {
        const row = await pileAtDesk(store.db, request.params.pile)
        const changes = await boxChanges(store.db, knowledge, row)
        const sees = staff.includes(signedIn(request).account.role)
        const language = deskLanguage(request, context)
        return showDesk(
          context,
          request,
          reply,
          boxChangedPage({ row, changes, staff: sees }, language),
        )
      },
    )
  }
