import type { FastifyReply } from 'fastify'
import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { canonical, sha256 } from '../base/ids.ts'
import { photoOf } from '../intake/photos.ts'
import type { DrawnQuilt } from '../papers/quilt-kept.ts'
import { quiltPicture } from '../papers/quilt-picture.ts'
import type { ChatContext } from './chat/context.ts'

/** "2.png" is the second quilt's picture. */
export const quiltFile = z
  .string()
  .regex(/^[1-9]\d{0,2}\.png$/)
  .transform((file) => Number.parseInt(file, 10))

type PngContext = Pick<ChatContext, 'store' | 'photos' | 'paints'>

/** The cloth of a photo within a drawing; null where the photo is gone. */
async function embedded(
  { store, photos }: PngContext,
  pileId: string,
  id: string,
): Promise<string | null> {
  try {
    const { hash } = await photoOf(store.db, pileId, id)
    const jpeg = await photos.open(hash, 'cloth')
    return `data:image/jpeg;base64,${Buffer.from(jpeg).toString('base64')}`
  } catch (error) {
    if (error instanceof Failure && error.code === 'not_found') return null
    throw error
  }
}

/**
 * Answers with a quilt's picture to save. Throws `not_found` where the pile has no such quilt, and what
 * painting throws.
 */
export async function sendQuiltPng(
  context: PngContext,
  reply: FastifyReply,
  pileId: string,
  drawn: DrawnQuilt | undefined,
): Promise<FastifyReply> {
  if (!drawn) throw new Failure('not_found')
  const { quilt } = drawn
  const png = await context.paints.paint(sha256(canonical({ pileId, quilt })), async () => {
    const ids = new Set(quilt.cloths.flatMap(({ photo }) => photo ?? []))
    const cloth = new Map<string, string | null>()
    for (const id of ids) cloth.set(id, await embedded(context, pileId, id))
    const look = { name: 'quilt', addressOf: (id: string) => cloth.get(id) ?? null }
    return quiltPicture(quilt, look, { title: null })
  })
  return reply
    .type('image/png')
    .header('cache-control', 'private, max-age=300')
    .send(Buffer.from(png))
}
