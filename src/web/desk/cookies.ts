import type { FastifyReply } from 'fastify'
import { sessionLasts } from '../../desk/sessions.ts'
import type { DeskContext } from './context.ts'
import { deskPaths } from './paths.ts'

export const sessionCookie = 'pw_desk'
export const formCookie = 'pw_desk_form'
export const languageCookie = 'pw_desk_lang'

const kept = ({ https }: DeskContext) => ({
  path: deskPaths.queue,
  httpOnly: true,
  secure: https,
})

/** Lax, not strict: a link in a mail to a page of the desk is to find who is signed in. */
export const setSession = (
  reply: FastifyReply,
  context: DeskContext,
  token: string,
): FastifyReply =>
  reply.setCookie(sessionCookie, token, {
    ...kept(context),
    sameSite: 'lax',
    maxAge: sessionLasts.whole / 1000,
  })

export const clearSession = (reply: FastifyReply, context: DeskContext): FastifyReply =>
  reply.clearCookie(sessionCookie, kept(context))

export const setForm = (reply: FastifyReply, context: DeskContext, value: string): FastifyReply =>
  reply.setCookie(formCookie, value, { ...kept(context), sameSite: 'strict' })

export const setLanguage = (
  reply: FastifyReply,
  context: DeskContext,
  code: string,
): FastifyReply =>
  reply.setCookie(languageCookie, code, {
    ...kept(context),
    sameSite: 'lax',
    maxAge: 365 * 24 * 60 * 60,
  })
