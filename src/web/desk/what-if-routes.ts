import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { pileAtDesk, review } from '../../desk/review.ts'
import { mostTries, readTry, tryText } from '../../desk/tries.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { whatIfPage } from './present-what-if.ts'

const params = z.object({ pile: z.string().min(1).max(64) })

/** One of a name, or several; more than are looked at are left. */
const texts = (most: number) =>
  z
    .union([z.string().transform((one) => [one]), z.array(z.string())])
    .catch([])
    .transform((all) => all.slice(0, most))

const query = z.object({
  try: texts(2 * mostTries).default([]),
  /** A further way, as the form sends it: what it begins with, changes, and the roles of one garment. */
  from: z.string().max(1000).catch('').default(''),
  and: texts(12).default([]),
  of: z.string().max(10).catch('').default(''),
  plays: texts(3).default([]),
  add: z.string().max(10).optional().catch(undefined),
  lang: z.string().max(8).optional(),
})

/** The way that a form describes, as an address tells of it; empty: nothing was chosen. */
function described({ from, and, of, plays }: z.infer<typeof query>): string {
  const roles = of === '' ? '' : ['roles', of, ...(plays.length > 0 ? plays : ['any'])].join(':')
  const parts = [from, ...and, roles].filter((part) => part !== '')
  const changes = readTry(parts.join(','))
  return changes ? tryText(changes) : parts.join(',')
}

/** Plans are waited for so long. */
const patienceMs = 2500

/** A pile beside other ways to make its quilt. */
export const whatIfRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/piles/:pile/what-if',
      {
        config: { who: staff },
        schema: { summary: 'A pile beside other ways', params, querystring: query },
      },
      async (request, reply) => {
        const { store, knowledge, plans } = context
        const { try: tries, add } = request.query
        if (add !== undefined) {
          const { number } = await pileAtDesk(store.db, request.params.pile)
          const further = described(request.query)
          const all = further === '' ? tries : [...tries, further]
          return reply.redirect(deskPaths.whatIf(number, all), 303)
        }
        const found = await review(store.db, knowledge, request.params.pile)
        const trying = { plans, layouts: knowledge.layouts, patienceMs }
        const page = await whatIfPage(found, tries, trying, deskLanguage(request, context))
        return showDesk(context, request, reply, page)
      },
    )
  }
