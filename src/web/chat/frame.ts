import type { FastifyRequest } from 'fastify'
import { namesOfLanguages } from '../../base/formats.ts'
import { pileOfKey } from '../../intake/rows.ts'
import type { Language } from '../../words/words.ts'
import type { ChatContext } from './context.ts'
import { paths } from './paths.ts'
import { lookPath } from './shop-look.ts'
import type { Frame } from './view.ts'

/** The shop's language that suits a reader best: asked for, else the browser's, else the shop's first. */
export function languageOf(request: FastifyRequest, context: ChatContext): Language {
  const { languages: known, shop } = context.knowledge
  const { lang } = (request.query ?? {}) as { lang?: unknown }
  const accepted = (request.headers['accept-language'] ?? '')
    .split(',')
    .map((part) => part.trim().slice(0, 2).toLowerCase())
  const wanted = [String(lang ?? ''), ...accepted].find((code) => shop.languages.includes(code))
  return known.get(wanted ?? shop.languages[0]!)!
}

/** The language of the pile whose key a request bears; else the one that suits its reader best. */
export async function spokenIn(request: FastifyRequest, context: ChatContext): Promise<Language> {
  const fitting = languageOf(request, context)
  // Read from the address: where no route was found there are no parameters.
  const key = /^\/i\/([\w-]+)/.exec(request.url)?.[1]
  if (!key) return fitting
  const spoken = await pileOfKey(context.store.db, key, context.clock).then(
    ({ language }) => context.knowledge.languages.get(language),
    () => undefined,
  )
  return spoken ?? fitting
}

const ownName = (code: string): string => {
  const name = namesOfLanguages(code, {}).of(code) ?? code
  return name.charAt(0).toLocaleUpperCase(code) + name.slice(1)
}

export interface Framing {
  readonly language: Language
  /** The key of the open pile; null outside of one. */
  readonly key: string | null
  readonly notice?: string | null
  readonly asked?: Frame['asked']
}

export function frameOf(
  context: ChatContext,
  { language, key, notice = null, asked = null }: Framing,
): Frame {
  const { shop } = context.knowledge
  return {
    shop: {
      name: shop.name,
      tagline: shop.tagline[language.code] ?? null,
      email: shop.email,
      phone: shop.phone,
    },
    language: language.code,
    languages: shop.languages.map((code) => ({
      code,
      name: ownName(code),
      href: key ? paths.language(key, code) : `/?lang=${code}`,
    })),
    style: context.assets.path('chat.css'),
    look: lookPath(shop.look),
    script: context.assets.path('chat.js'),
    framedScript: context.assets.path('framed.js'),
    spotScript: context.assets.path('spots.js'),
    sheetScript: context.assets.path('sheet.js'),
    homeHref: '/',
    saveHref: key ? paths.keep(key) : null,
    notice,
    asked,
  }
}

/** The address a person would type, for links that leave the page. */
export const outside = (request: FastifyRequest, { publicUrl }: ChatContext): string =>
  publicUrl ?? `${request.protocol}://${request.host}`
