import { fileURLToPath } from 'node:url'
import fastifyStatic from '@fastify/static'
import type { FastifyPluginAsync } from 'fastify'
import type { Assets } from './manifest.ts'

/** Styles, scripts and fonts. Their names change with their content, so they may be kept for ever. */
export const assetRoutes =
  ({ folder }: Assets): FastifyPluginAsync =>
  async (app) => {
    await app.register(fastifyStatic, {
      root: fileURLToPath(folder),
      prefix: '/assets/',
      immutable: true,
      maxAge: '365d',
      index: false,
      preCompressed: true,
      decorateReply: false,
    })
  }
