import type { Readable } from 'node:stream'
import type { FastifyReply } from 'fastify'

/** Sends what is kept of a pile as a file to save, called by the pile's number. */
export const sendGiven = (reply: FastifyReply, zip: Readable, number: number): FastifyReply =>
  reply
    .type('application/zip')
    .header('cache-control', 'no-store')
    .header('content-disposition', `attachment; filename="pile-${number}.zip"`)
    .send(zip)
