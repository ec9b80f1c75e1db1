import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { newId } from '../../base/ids.ts'
import { subjectCode } from '../../custody/subject.ts'
import {
  countKey,
  type DayCount,
  dayCounts,
  keepCount,
  type NotSeen,
  notSeenIn,
} from '../../desk/day-count.ts'
import { type Located, shouldBeHere } from '../../desk/whereabouts.ts'
import type { Language } from '../../words/words.ts'
import { workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { nameWords, stateWords } from './custody-words.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import type { CountPage } from './view-custody.ts'
import { momentWords } from './when.ts'

const key = z.string().max(40)
const form = z.object({
  csrf: z.string().max(200),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .default(newId),
  seen: z
    .union([key, z.array(key).max(100_000)])
    .optional()
    .transform((sent) => (sent === undefined ? [] : [sent].flat())),
  note: z.string().max(10_000).default(''),
})

interface Counted {
  readonly here: readonly Located[]
  readonly counts: readonly DayCount[]
  readonly missing: readonly NotSeen[]
}

function placesOf(here: readonly Located[], language: Language): CountPage['places'] {
  const places = new Map<string, Located[]>()
  for (const one of here) {
    const place = one.place ?? language.say('custody.count.no_place')
    places.set(place, [...(places.get(place) ?? []), one])
  }
  return [...places].map(([place, things]) => ({
    place,
    things: things.map((one) => ({
      value: countKey(one),
      label: `${one.code} · ${nameWords(one, language)} · ${stateWords(one.state, language)}`,
      href: custodyPaths.subject(one.pile, one.subject),
    })),
  }))
}

function countPage(
  { here, counts, missing }: Counted,
  language: Language,
  csrf: string,
): CountPage {
  const { say, locale } = language
  const line = ({ by, at, seen, expected }: DayCount) =>
    say('custody.count.kept', { who: by, at: momentWords(at, locale), seen, expected })
  const [newest, ...earlier] = counts
  return {
    page: 'count',
    title: say('custody.count.title'),
    lead: say('custody.count.lead', { count: here.length }),
    form: { postTo: custodyPaths.count, csrf, idem: newId(), places: [] },
    places: placesOf(here, language),
    newest: newest
      ? {
          line: line(newest),
          missing: missing.map(({ pile, subject, place }) => ({
            label: [subjectCode(pile, subject), place].filter(Boolean).join(' · '),
            href: custodyPaths.subject(pile, subject),
          })),
        }
      : null,
    notSeen:
      missing.length === 0
        ? say('custody.count.all_seen')
        : say('custody.count.not_seen', { count: missing.length }),
    earlier: earlier.map(line),
  }
}

/** The count at the end of a day. */
export const countRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock } = context

    app.get(
      '/count',
      {
        config: { who: workshop },
        schema: { summary: 'Everything that should be in the house, to tick' },
      },
      async (request, reply) => {
        const counts = await dayCounts(store.db)
        const [newest] = counts
        const page = countPage(
          {
            here: await shouldBeHere(store.db),
            counts,
            missing: newest ? await notSeenIn(store.db, newest.id) : [],
          },
          deskLanguage(request, context),
          signedIn(request).csrf,
        )
        return showDesk(context, request, reply, page)
      },
    )

    app.post(
      '/count',
      {
        config: { who: workshop },
        schema: { summary: 'Keeps a count of the house', body: form },
      },
      async (request, reply) => {
        const { idem: id, seen, note } = request.body
        const who = signedIn(request).account.id
        if (await keepCount({ store, clock }, { id, ticked: seen, note, who })) {
          const missing = await notSeenIn(store.db, id)
          request.log.info({ missing: missing.length }, 'the house was counted')
        }
        return reply.redirect(custodyPaths.count, 303)
      },
    )
  }
