import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { days } from '../../base/clock.ts'
import { csvStream } from '../../desk/csv.ts'
import { exported, exportNames } from '../../desk/export.ts'
import { numbersOf, type Period } from '../../desk/numbers.ts'
import { owner } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { dayOf, numbersPage } from './present-numbers.ts'

const dayAsked = z.iso.date().optional().catch(undefined)
const query = z.object({ from: dayAsked, to: dayAsked, lang: z.string().max(8).optional() })
const params = z.object({ name: z.enum(exportNames) })

/** Shown where nothing else is asked for. */
const usual = days(90)

const startOf = (day: string): number => Date.parse(`${day}T00:00:00Z`)

/** From the first day's beginning to the last day's end, UTC. */
function periodOf(asked: { from?: string | undefined; to?: string | undefined }, now: number) {
  const to = startOf(asked.to ?? dayOf(now)) + days(1)
  const from = asked.from ? startOf(asked.from) : to - usual
  return { from, to } satisfies Period
}

/** Numbers over a time, and everything as files for other programs. */
export const numberRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock, knowledge } = context

    app.get(
      '/numbers',
      {
        config: { who: owner },
        schema: { summary: 'What is counted over a time', querystring: query },
      },
      async (request, reply) => {
        const language = deskLanguage(request, context)
        const now = clock()
        const asked = periodOf(request.query, now)
        const backwards = asked.from >= asked.to
        const period = backwards ? periodOf({}, now) : asked
        const numbers = await numbersOf(store.db, period, now)
        const error = backwards ? language.say('desk.numbers.backwards') : null
        return showDesk(
          context,
          request,
          reply,
          numbersPage(numbers, period, { language, error }),
          { path: deskPaths.numbersOver(dayOf(period.from), dayOf(period.to - 1)) },
        )
      },
    )

    app.get(
      '/numbers/export/:name.csv',
      {
        config: { who: owner },
        schema: { summary: 'Every row of one kind: RFC 4180, UTF-8', params },
      },
      async (request, reply) => {
        const { name } = request.params
        const { columns, rows } = exported(name, store.db, knowledge)
        request.log.info({ export: name, by: signedIn(request).account.id }, 'exported')
        return reply
          .type('text/csv; charset=utf-8; header=present')
          .header('content-disposition', `attachment; filename="${name}-${dayOf(clock())}.csv"`)
          .header('cache-control', 'no-store')
          .send(csvStream(columns, rows))
      },
    )
  }
