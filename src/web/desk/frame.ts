import type { FastifyRequest } from 'fastify'
import { type QueueCounts, queueLists } from '../../desk/queue.ts'
import type { Session } from '../../desk/sessions.ts'
import type { WaitsOn } from '../../store/schema-desk.ts'
import type { Language } from '../../words/words.ts'
import type { DeskContext } from './context.ts'
import { deskPaths } from './paths.ts'
import { placesFor } from './places.ts'
import type { Frame } from './view-frame.ts'

export interface Framing {
  readonly language: Language
  readonly visitor: Session | null
  /** The page that a reader may open in another language. */
  readonly path: string
  readonly counts?: QueueCounts
  /** The list that is shown; null on other pages. */
  readonly list?: WaitsOn | null
}

const inLanguage = (path: string, code: string): string =>
  `${path}${path.includes('?') ? '&' : '?'}lang=${code}`

export function frameOf(
  { knowledge, assets }: DeskContext,
  { language, visitor, path, counts, list = null }: Framing,
): Frame {
  const { shop, languages } = knowledge
  const places = visitor
    ? placesFor(visitor.account.role).map(({ name, href, behind = false }) => ({
        behind,
        label: language.say(`desk.places.${name}`),
        href,
        current: path.split('?', 1)[0] === href,
      }))
    : []
  const behind = places.filter((one) => one.behind)
  // One alone is not put away.
  const more = behind.length > 1 ? behind : []
  return {
    shop: shop.name,
    language: language.code,
    languages: shop.languages
      .filter((code) => code !== language.code)
      .map((code) => ({
        code,
        name: languages.get(code)!.say('desk.own_name'),
        href: inLanguage(path, code),
      })),
    style: assets.path('desk.css'),
    script: assets.path('desk.js'),
    sheetScript: assets.path('sheet.js'),
    visitor: visitor && { name: visitor.account.name, csrf: visitor.csrf },
    places: places.filter((one) => !more.includes(one)),
    more,
    tabs: counts
      ? queueLists.map((one) => ({
          label: language.say(`desk.tabs.${one}`, { count: counts[one] }),
          href: deskPaths.list(one),
          current: one === list,
        }))
      : [],
  }
}

/** The path of this request without a wish for a language; never more than our own. */
export const pathOf = (request: FastifyRequest): string => {
  const { pathname, searchParams } = new URL(request.url, 'http://desk.invalid')
  searchParams.delete('lang')
  const query = searchParams.toString()
  return query ? `${pathname}?${query}` : pathname
}
