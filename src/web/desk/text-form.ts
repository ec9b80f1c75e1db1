import '@fastify/multipart'
import type { FastifyRequest } from 'fastify'
import { Failure } from '../../base/failures.ts'
import { formFailure } from '../errors.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The route's form may bring files of text; each stands in the body as its text. */
    textFiles?: boolean
  }
}

/** Bytes of a field or a file; longer text is told by its own sentence. */
const most = 1024 * 1024

/** UTF-8, a byte order mark left out. Throws `bad_input` where it is no such text. */
function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch (cause) {
    throw new Failure('bad_input', {}, { cause })
  }
}

/**
 * A form of fields and files of text. Of a name that comes twice the last counts; a file that is empty was not chosen.
 * Throws `bad_input` for a broken one.
 */
export async function textForm(request: FastifyRequest): Promise<Record<string, string>> {
  try {
    return await readParts(request)
  } catch (error) {
    throw formFailure(error)
  }
}

async function readParts(request: FastifyRequest): Promise<Record<string, string>> {
  const fields: Record<string, string> = {}
  const limits = { fieldSize: most, fileSize: most, files: 2, fields: 20 }
  for await (const part of request.parts({ limits })) {
    if (part.type === 'field') {
      fields[part.fieldname] = String(part.value)
      continue
    }
    const bytes = await part.toBuffer()
    if (bytes.length > 0) fields[part.fieldname] = textOf(bytes)
  }
  return fields
}
