import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { FailureCode } from '../../base/failures.ts'
import { onceLinkLasts } from '../../desk/once-links.ts'
import {
  addPerson,
  changePerson,
  newPasswordLink,
  type Person,
  people,
  type Stand,
} from '../../desk/people.ts'
import { type Role, roles } from '../../store/schema.ts'
import { outside } from '../chat/frame.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { owner } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { handedLink, peoplePage } from './present-people.ts'

/** Longer than any true one; what is too long for its field is told by the field's own sentence. */
const typed = z.string().max(2_000).default('')
const role = z.enum(roles)
const addForm = z.object({ csrf: typed, name: typed, email: typed, role })
const params = z.object({ person: z.string().min(1).max(64) })
/** What the page showed of the account. */
const seenForm = z.object({ csrf: typed, was: role, closed: z.enum(['0', '1']) })
const roleForm = seenForm.extend({ role })

const onThePage: readonly FailureCode[] = [
  'bad_input',
  'form_expired',
  'name_missing',
  'answer_too_long',
  'email_not_valid',
  'email_taken',
  'last_owner',
  'people_full',
  'person_changed',
  'person_closed',
]

const seenIn = (body: z.infer<typeof seenForm>): Stand => ({
  role: body.was,
  closed: body.closed === '1',
})

const text = (value: unknown): string => (typeof value === 'string' ? value : '')

/** What had been typed into the form for a new person. */
function typedIn(request: FastifyRequest): { name: string; email: string; role: Role } {
  const body = (request.body ?? {}) as Record<string, unknown>
  const known = roles.find((one) => one === body.role)
  return { name: text(body.name), email: text(body.email), role: known ?? 'staff' }
}

const nothingTyped = { name: '', email: '', role: 'staff' as Role }

/** Who has an account: for the owner alone. */
export const peopleRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock } = context

    const show = async (
      request: FastifyRequest,
      reply: FastifyReply,
      more: Partial<{
        error: string
        typed: { name: string; email: string; role: Role }
        handed: { id: string; token: string }
      }> = {},
    ) => {
      const { account, csrf } = signedIn(request)
      const language = deskLanguage(request, context)
      const all = await people(store.db)
      const handed = all.find(({ id }) => id === more.handed?.id)
      const link = (person: Person, token: string) =>
        handedLink(
          {
            name: person.name,
            url: `${outside(request, context)}${deskPaths.welcome(token)}`,
            until: clock() + onceLinkLasts,
          },
          language,
        )
      return showDesk(
        context,
        request,
        reply,
        peoplePage(all, {
          language,
          csrf,
          reader: account.id,
          error: more.error ?? null,
          handed: handed && more.handed ? link(handed, more.handed.token) : null,
          typed: more.typed ?? nothingTyped,
        }),
        { path: deskPaths.people },
      )
    }

    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      reply.status(failure.status)
      const sentence = failureSentence(failure, deskLanguage(request, context))
      return show(request, reply, { error: sentence, typed: typedIn(request) })
    }

    const change = async (
      request: FastifyRequest<{ Params: unknown }>,
      reply: FastifyReply,
      how: { id: string; seen: Stand; to: Stand },
    ) => {
      await changePerson(store, clock, how.id, how)
      request.log.info({ person: how.id, ...how.to, by: signedIn(request).account.id }, 'account')
      return reply.redirect(deskPaths.people, 303)
    }

    app.get(
      '/people',
      { config: { who: owner }, schema: { summary: 'Everybody with an account' } },
      async (request, reply) => show(request, reply),
    )

    app.post(
      '/people',
      {
        config: { who: owner },
        schema: { summary: 'Adds a person; shows the link to hand over', body: addForm },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const handed = await addPerson(store, clock, request.body)
        const by = signedIn(request).account.id
        request.log.info({ person: handed.id, role: request.body.role, by }, 'account added')
        return show(request, reply, { handed })
      },
    )

    app.post(
      '/people/:person/link',
      {
        config: { who: owner },
        schema: { summary: 'Shows a new link for a new password', params, body: seenForm },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const id = request.params.person
        const token = await newPasswordLink(store, clock, id)
        request.log.info({ person: id, by: signedIn(request).account.id }, 'password link made')
        return show(request, reply, { handed: { id, token } })
      },
    )

    app.post(
      '/people/:person/role',
      {
        config: { who: owner },
        schema: { summary: 'Gives a person another role', params, body: roleForm },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const seen = seenIn(request.body)
        const to = { ...seen, role: request.body.role }
        return change(request, reply, { id: request.params.person, seen, to })
      },
    )

    for (const [act, closed] of [
      ['close', true],
      ['reopen', false],
    ] as const) {
      app.post(
        `/people/:person/${act}`,
        {
          config: { who: owner },
          schema: {
            summary: closed ? 'Closes an account' : 'Opens a closed account again',
            params,
            body: seenForm,
          },
          errorHandler: showRefused,
        },
        async (request, reply) => {
          const seen = seenIn(request.body)
          return change(request, reply, {
            id: request.params.person,
            seen,
            to: { ...seen, closed },
          })
        },
      )
    }
  }
