import '@fastify/multipart'
import type { FastifyRequest } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import type { RawReply } from '../../flow/reply.ts'

const text = z.string().max(20_000)
const one = text.optional()

/** What a question's form may send. Everything is loose here; the question's kind makes it strict. */
export const answerForm = z.object({
  act: z.enum(['answer', 'skip', 'ask']).default('answer'),
  idem: z.string().min(8).max(64).default(newId),
  seq: z.coerce.number().int().min(0).catch(0),
  value: z.union([text, z.array(text).max(400)]).optional(),
  unit: one,
  words: one,
  found: one,
  iron: one,
  name: one,
  email: one,
  phone: one,
  note: one,
  remove: z.union([text, z.array(text).max(50)]).optional(),
})

export type AnswerForm = z.infer<typeof answerForm>

export const rawOf = ({ idem: _, seq: __, remove: ___, ...raw }: AnswerForm): RawReply => raw

/** What a form of one button sends. */
export const buttonForm = z.object({
  act: z.string().max(40).optional(),
  idem: z.string().min(8).max(64).default(newId),
  seq: z.coerce.number().int().min(0).catch(0),
  item: z.coerce.number().int().min(1).max(100_000).optional(),
})

export interface SentFile {
  readonly bytes: Uint8Array
  readonly tooLarge: boolean
}

export interface Form {
  readonly fields: AnswerForm
  readonly files: readonly SentFile[]
}

async function multipart(request: FastifyRequest): Promise<{ fields: object; files: SentFile[] }> {
  const fields: Record<string, string | string[]> = {}
  const files: SentFile[] = []
  for await (const part of request.parts()) {
    if (part.type === 'file') {
      const bytes = await part.toBuffer().catch(() => null)
      // An empty file input still sends a part, without a name.
      if (bytes === null || bytes.byteLength > 0 || part.filename) {
        files.push({ bytes: bytes ?? new Uint8Array(), tooLarge: bytes === null })
      }
      continue
    }
    const value = String(part.value)
    const before = fields[part.fieldname]
    fields[part.fieldname] =
      before === undefined ? value : [...(Array.isArray(before) ? before : [before]), value]
  }
  return { fields, files }
}

/** A question's form, plain or with files. Throws `bad_input` where it is no form of ours. */
export async function readAnswerForm(request: FastifyRequest): Promise<Form> {
  const sent = request.isMultipart()
    ? await multipart(request)
    : { fields: (request.body ?? {}) as object, files: [] }
  const read = answerForm.safeParse(sent.fields)
  if (!read.success) {
    const issue = read.error.issues[0]!
    throw new Failure('bad_input', { field: String(issue.path[0] ?? ''), why: issue.message })
  }
  return { fields: read.data, files: sent.files }
}
