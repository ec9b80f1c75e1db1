import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import type { FastifyInstance } from 'fastify'
import { sha256 } from '../../base/ids.ts'
import type { Assets } from '../assets/manifest.ts'
import { anyone } from '../who.ts'

/** So long a page may go on with the script it has, in seconds: its name cannot change when it does. */
const keptFor = 3600

/** The script of the element, under the one name that other sites write. */
export function embedRoutes(app: FastifyInstance, { folder, path }: Assets): void {
  app.get(
    '/embed.js',
    {
      config: { who: anyone },
      schema: { summary: 'The element that holds the intake on any page' },
    },
    async (request, reply) => {
      const script = await readFile(new URL(basename(path('embed.js')), folder))
      const tag = `"${sha256(script)}"`
      reply
        .header('cache-control', `public, max-age=${keptFor}`)
        .header('etag', tag)
        // It is made to be loaded from other sites.
        .header('cross-origin-resource-policy', 'cross-origin')
      if (request.headers['if-none-match'] === tag) return reply.status(304).send()
      return reply.type('text/javascript; charset=utf-8').send(script)
    },
  )
}
