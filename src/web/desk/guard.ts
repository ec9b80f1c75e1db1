import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { Failure } from '../../base/failures.ts'
import { newKey, sha256 } from '../../base/ids.ts'
import { type Session, sameSecret, sessionOf } from '../../desk/sessions.ts'
import { wantsPage } from '../errors.ts'
import { type DeskContext, keepLanguage } from './context.ts'
import { formCookie, sessionCookie, setForm } from './cookies.ts'
import { deskPaths } from './paths.ts'
import { readFiles } from './sent-files.ts'
import { textForm } from './text-form.ts'

const onlyReads = ({ method }: FastifyRequest): boolean => method === 'GET' || method === 'HEAD'

const sentWith = (request: FastifyRequest): string => {
  const { csrf } = (request.body ?? {}) as { csrf?: unknown }
  return typeof csrf === 'string' ? csrf : ''
}

export async function visitorOf(
  request: FastifyRequest,
  { store, clock }: DeskContext,
): Promise<Session | null> {
  const token = request.cookies[sessionCookie]
  return token ? sessionOf(store.db, clock, token) : null
}

/** Who is signed in, on a route that the guard stands before. */
export const signedIn = (request: FastifyRequest): Session => {
  if (!request.atDesk) throw new Failure('not_signed_in')
  return request.atDesk
}

/** Throws `not_allowed` where the route is not for this person's role. An address that is none is not theirs either way. */
function letOnly(request: FastifyRequest, { account }: Session): void {
  const { who } = request.routeOptions.config
  if (who && !who.includes(account.role)) throw new Failure('not_allowed')
}

/**
 * Every route of this scope asks for a session, and every form for the session's own secret. A person
 * who opens a page is led to sign in; anything else is refused.
 */
export function guardDesk(app: FastifyInstance, context: DeskContext): void {
  app.addHook('onRequest', async (request, reply) => {
    request.atDesk = await visitorOf(request, context)
    if (request.atDesk) return letOnly(request, request.atDesk)
    if (!onlyReads(request) || !wantsPage(request)) throw new Failure('not_signed_in')
    keepLanguage(request, reply, context)
    return reply.redirect(`${deskPaths.signIn}?next=${encodeURIComponent(request.url)}`, 303)
  })
  app.addHook('preValidation', async (request) => {
    if (onlyReads(request)) return
    if (request.isMultipart()) {
      if (request.routeOptions.config.textFiles) request.body = await textForm(request)
      else await readFiles(request)
    }
    if (!sameSecret(sentWith(request), signedIn(request).csrf)) throw new Failure('form_expired')
  })
}

// Before there is a session the secret hangs on a cookie that only our own pages' forms know of.
const secretOf = (cookie: string): string => sha256(`form ${cookie}`)

/** The secret for a form of somebody who is not signed in; leaves the cookie that it hangs on. */
export function formSecret(
  request: FastifyRequest,
  reply: FastifyReply,
  context: DeskContext,
): string {
  const known = request.cookies[formCookie]
  const cookie = known && /^[\w-]{32}$/.test(known) ? known : newKey()
  if (cookie !== known) setForm(reply, context, cookie)
  return secretOf(cookie)
}

/** Every form of this scope asks for the secret that its page was given. */
export function guardForms(app: FastifyInstance): void {
  app.addHook('preValidation', async (request) => {
    if (onlyReads(request)) return
    const cookie = request.cookies[formCookie]
    if (!cookie || !sameSecret(sentWith(request), secretOf(cookie))) {
      throw new Failure('form_expired')
    }
  })
}
