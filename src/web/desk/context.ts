import type { FastifyReply, FastifyRequest } from 'fastify'
import type { Drafts } from '../../desk/drafts.ts'
import type { Live } from '../../desk/live-files.ts'
import type { Session } from '../../desk/sessions.ts'
import type { Language } from '../../words/words.ts'
import type { ChatContext } from '../chat/context.ts'
import { languageOf } from '../chat/frame.ts'
import { languageCookie, setLanguage } from './cookies.ts'

/** What the desk's pages are made from. `https`: cookies are sent over it alone. */
export interface DeskContext extends ChatContext {
  readonly https: boolean
  /** Origins of the sites whose pages may hold the intake. */
  readonly embedOrigins: readonly string[]
  readonly live: Live
  readonly drafts: Drafts
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Who is at the desk; null outside of what its guard has let in. */
    atDesk: Session | null
  }
}

/** Asked for on this page, else kept from before, else the browser's. */
export function deskLanguage(request: FastifyRequest, context: DeskContext): Language {
  const { languages: known, shop } = context.knowledge
  const { lang } = (request.query ?? {}) as { lang?: unknown }
  const kept = request.cookies?.[languageCookie]
  const code = [lang, kept].find((one) => shop.languages.includes(String(one ?? '')))
  return code ? known.get(String(code))! : languageOf(request, context)
}

/** A language that was asked for on a page is that of the next ones too. */
export function keepLanguage(
  request: FastifyRequest,
  reply: FastifyReply,
  context: DeskContext,
): void {
  const { lang } = (request.query ?? {}) as { lang?: unknown }
  const { code } = deskLanguage(request, context)
  if (lang === code && request.cookies?.[languageCookie] !== lang) setLanguage(reply, context, code)
}
