import type { FastifyInstance } from 'fastify'
import { sha256 } from '../../base/ids.ts'
import type { Shop } from '../../intake/shop.ts'
import { dress, groundIsDark } from '../embed/dress.ts'
import type { Theme } from '../embed/spoken.ts'
import { anyone } from '../who.ts'

type Look = Shop['look']

/** The shop's look as pages on other sites say it. */
const themeOf = ({ corner, ...rest }: Look): Theme => ({
  ...rest,
  ...(corner !== undefined && { corner: String(corner) }),
})

function block(scheme: 'light' | 'dark', look: Look): string {
  const { ground, ...rest } = themeOf(look)
  // A ground counts where it is as light or dark as the reader wishes pages to be.
  const fits = ground !== undefined && groundIsDark(ground) === (scheme === 'dark')
  const { tokens } = dress(fits ? { ...rest, ground } : rest, scheme === 'dark')
  const lines = Object.entries(tokens).map(([name, value]) => `${name}:${value}`)
  if (lines.length === 0) return ''
  return `@media screen and (prefers-color-scheme: ${scheme}){:root{${lines.join(';')}}}`
}

/** A stylesheet of tokens for customers' pages; '' where the shop has no look of its own. Paper stays black on white. */
export const lookSheet = (look: Look): string => block('light', look) + block('dark', look)

const path = '/look.css'

/** Where a page finds it; its address changes with what it says. Null: there is none. */
export function lookPath(look: Look): string | null {
  const sheet = lookSheet(look)
  return sheet === '' ? null : `${path}?v=${sha256(sheet).slice(0, 12)}`
}

export function lookRoutes(app: FastifyInstance, { look }: Pick<Shop, 'look'>): void {
  const sheet = lookSheet(look)
  app.get(
    path,
    { config: { who: anyone }, schema: { summary: 'How the shop’s pages look' } },
    async (_request, reply) =>
      reply
        .type('text/css; charset=utf-8')
        .header('cache-control', 'public, max-age=31536000, immutable')
        .send(sheet),
  )
}
