import type { FastifyInstance } from 'fastify'
import type { z } from 'zod'
import { frozen } from '../../intake/agreement.ts'
import type { Open } from '../../intake/conversation.ts'
import { type DrawnQuilt, keptQuilt } from '../../papers/quilt-kept.ts'
import { quiltFile, sendQuiltPng } from '../quilt-png.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { becoming, keyParams, openPile } from './opened.ts'
import type { ConfirmedPaper } from './present-pages.ts'
import { drawnOrFail } from './quilts.ts'

const quiltParams = keyParams.extend({ file: quiltFile })

/** What the page shows: of a confirmed pile what was agreed. Throws `picture_waiting` while it is laid. */
async function quiltsShown(context: ChatContext, open: Open): Promise<readonly DrawnQuilt[]> {
  if (open.row.status !== 'open') {
    const papers = await frozen<ConfirmedPaper>(context.store.db, open.row.id)
    return (papers?.[open.row.language]?.quilts ?? []).map(keptQuilt)
  }
  return drawnOrFail((await becoming(context, open, 'reviewing')).quilts)
}

/** The pictures of a pile's quilts, to save. */
export function quiltRoutes(app: FastifyInstance, context: ChatContext): void {
  app.get<{ Params: z.infer<typeof quiltParams> }>(
    '/i/:key/quilt/:file',
    {
      config: { who: customer },
      schema: { summary: 'The picture of one quilt, as a PNG', params: quiltParams },
    },
    async (request, reply) => {
      const { key, file: n } = request.params
      const { open } = await openPile(context, key)
      const quilts = await quiltsShown(context, open)
      return sendQuiltPng(context, reply, open.row.id, quilts[n - 1])
    },
  )
}
