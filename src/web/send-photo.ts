import type { FastifyReply } from 'fastify'
import { type Drawing, toSvg } from '../papers/drawing.ts'
import type { PhotoStore } from '../photo/keep.ts'
import type { Derived } from '../photo/safe.ts'
import type { PhotoRow } from '../store/schema.ts'

/** An empty frame. */
const empty: Drawing = {
  width: 40,
  height: 40,
  unit: 'mm',
  marks: [
    { mark: 'rect', at: [4, 4], w: 32, h: 32, r: 2, fill: 'paper', stroke: 'soft', dash: [2, 2] },
    { mark: 'line', from: [4, 36], to: [36, 4], stroke: 'soft' },
  ],
}

/**
 * Sends one size of a photo. A browser may hold it, and asks each time whether it still stands; where it was removed,
 * pages that name it still show a sign in its place (410).
 */
export async function sendPhoto(
  photos: PhotoStore,
  reply: FastifyReply,
  { row, size }: { row: PhotoRow; size: Derived },
): Promise<FastifyReply> {
  reply.header('cache-control', 'private, no-cache')
  if (row.removed_at !== null) {
    return reply
      .status(410)
      .type('image/svg+xml')
      .send(toSvg(empty, { title: null }))
  }
  const etag = `"${row.hash}-${size}"`
  reply.header('etag', etag)
  if (reply.request.headers['if-none-match'] === etag) return reply.status(304).send()
  return reply.type('image/jpeg').send(Buffer.from(await photos.open(row.hash, size)))
}
