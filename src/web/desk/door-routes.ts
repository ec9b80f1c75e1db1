import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { Failure, FailureCode } from '../../base/failures.ts'
import { plainEmail, signIn } from '../../desk/accounts.ts'
import { checkOwnerLink, welcomeOwner } from '../../desk/once-links.ts'
import { choosePassword, invitedBy } from '../../desk/password-links.ts'
import { closeSession } from '../../desk/sessions.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { anyone } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { sessionCookie, setSession } from './cookies.ts'
import { formSecret, visitorOf } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths, ownPage } from './paths.ts'

/** Longer than any true one; what is too long for its field is told by the field's own sentence. */
const typed = z.string().max(2_000).default('')

const signInQuery = z.object({
  next: z.string().max(2_000).optional(),
  lang: z.string().optional(),
})
const signInForm = z.object({ csrf: typed, email: typed, password: typed, next: typed })
const welcomeParams = z.object({ token: z.string().min(20).max(64) })
const welcomeForm = z.object({ csrf: typed, name: typed, email: typed, password: typed })

/** Looks and tries at one-time links from one place before it has to wait. */
export const linkTries = { max: 60, timeWindow: '15 minutes' } as const

/** Tries for one address from one place before it has to wait. */
export const signInTries = { max: 10, timeWindow: '15 minutes' } as const

const text = (value: unknown): string => (typeof value === 'string' ? value : '')

/** What had been typed, but never a password. */
const typedIn = (request: FastifyRequest) => {
  const { name, email, next } = (request.body ?? {}) as Record<string, unknown>
  return { name: text(name), email: text(email), next: text(next) }
}

/** As the failure itself says, or the limit that was met. */
const minutesToWait = ({ details }: Failure, reply: FastifyReply): number =>
  Number(details.minutes ?? Math.ceil(Number(reply.getHeader('retry-after')) / 60))

/** Refusals of the welcome form; every other one speaks of the link. */
const ofTheForm: readonly FailureCode[] = [
  'form_expired',
  'name_missing',
  'answer_too_long',
  'email_not_valid',
  'email_taken',
  'password_too_short',
  'password_too_long',
]

/** The door: signing in, the owner's first visit, and choosing a password. */
export const doorRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock } = context

    const letIn = async (
      request: FastifyRequest,
      reply: FastifyReply,
      token: string,
      to: string,
    ) => {
      const before = request.cookies[sessionCookie]
      if (before) await closeSession(store.db, before)
      return setSession(reply, context, token).redirect(to, 303)
    }

    const showSignIn = (
      request: FastifyRequest,
      reply: FastifyReply,
      filled: { email: string; next: string; error: string | null },
    ) =>
      showDesk(
        context,
        request,
        reply,
        {
          page: 'sign-in',
          postTo: deskPaths.signIn,
          hidden: { csrf: formSecret(request, reply, context), next: ownPage(filled.next) },
          email: filled.email,
          name: '',
          error: filled.error,
        },
        { path: `${deskPaths.signIn}?next=${encodeURIComponent(ownPage(filled.next))}` },
      )

    /** The form of a one-time link: for the first account, or for the password of the person it was made for. */
    const showWelcome = async (
      request: FastifyRequest,
      reply: FastifyReply,
      token: string,
      filled: { email: string; name: string; error: string | null },
    ) => {
      const invited = await invitedBy(store.db, clock, token)
      if (!invited) await checkOwnerLink(store.db, clock, token)
      return showDesk(context, request, reply, {
        page: invited ? 'password' : 'welcome',
        postTo: deskPaths.welcome(token),
        hidden: { csrf: formSecret(request, reply, context) },
        ...filled,
        ...invited,
      })
    }

    app.get(
      '/sign-in',
      {
        config: { who: anyone },
        schema: { summary: 'The form to sign in', querystring: signInQuery },
      },
      async (request, reply) => {
        const { next = '' } = request.query
        if (await visitorOf(request, context)) return reply.redirect(ownPage(next), 303)
        return showSignIn(request, reply, { email: '', next, error: null })
      },
    )

    app.post(
      '/sign-in',
      {
        schema: { summary: 'Signs in', body: signInForm },
        config: {
          who: anyone,
          rateLimit: {
            ...signInTries,
            hook: 'preHandler',
            keyGenerator: (request: FastifyRequest) =>
              `${request.ip} ${plainEmail(text((request.body as { email?: unknown })?.email))}`,
          },
        },
        errorHandler: (error, request, reply) => {
          const failure = asFailure(error)
          if (failure.status >= 500 || !wantsPage(request)) throw error
          const language = deskLanguage(request, context)
          const sentence =
            failure.code === 'too_many_requests'
              ? language.say('desk.sign_in.too_many', { minutes: minutesToWait(failure, reply) })
              : failureSentence(failure, language)
          reply.status(failure.status)
          showSignIn(request, reply, { ...typedIn(request), error: sentence })
        },
      },
      async (request, reply) => {
        await request.server.quotas.signIn(plainEmail(request.body.email))
        const session = await signIn(store, clock, request.body)
        return letIn(request, reply, session.token, ownPage(request.body.next))
      },
    )

    app.get(
      '/welcome/:token',
      {
        config: { who: anyone, rateLimit: linkTries },
        schema: { summary: "A one-time link's page: a first visit", params: welcomeParams },
      },
      async (request, reply) =>
        showWelcome(request, reply, request.params.token, { email: '', name: '', error: null }),
    )

    app.post(
      '/welcome/:token',
      {
        config: { who: anyone, rateLimit: linkTries },
        schema: {
          summary: "Makes the owner's account, or keeps the password that was chosen, and signs in",
          params: welcomeParams,
          body: welcomeForm,
        },
        errorHandler: async (error, request, reply) => {
          const failure = asFailure(error)
          if (!ofTheForm.includes(failure.code) || !wantsPage(request)) throw error
          const { token } = request.params as z.infer<typeof welcomeParams>
          const sentence = failureSentence(failure, deskLanguage(request, context))
          reply.status(failure.status)
          return showWelcome(request, reply, token, { ...typedIn(request), error: sentence })
        },
      },
      async (request, reply) => {
        const { token } = request.params
        const invited = await invitedBy(store.db, clock, token)
        const session = await (invited
          ? choosePassword(store, clock, token, request.body.password)
          : welcomeOwner(store, clock, token, request.body))
        return letIn(request, reply, session.token, deskPaths.queue)
      },
    )
  }
