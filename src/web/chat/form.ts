import '@fastify/multipart'
import type { FastifyRequest } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import type { RawReply } from '../../flow/reply.ts'
import { formFailure } from '../errors.ts'
import '../quotas.ts'

// As long as a form may be: the question says how much of it is kept, and shows what was too long.
const text = z.string()
const one = text.optional()
const key = z
  .string()
  .regex(/^[\w-]{8,64}$/)
  .optional()
  .transform((sent) => (sent === undefined ? newId() : copyOf(sent)))

/** In memory of its own: as a piece of the form, which is how it comes, it would hold all of it, and compares slowly. */
const copyOf = (sent: string): string => Buffer.from(sent, 'latin1').toString('latin1')

/** What a question's form may send. Everything is loose here; the question's kind makes it strict. */
export const answerForm = z.object({
  act: z.enum(['answer', 'skip', 'ask', 'read-label']).default('answer'),
  idem: key,
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
  /** Photos in the order in which they stand, and what each shows; the one that moves up or down. */
  order: z.union([text, z.array(text).max(50)]).optional(),
  shows: z.union([text, z.array(text).max(50)]).optional(),
  up: one,
  down: one,
  /** Photos that are not fit to tell of the garment are kept all the same. */
  anyway: one,
  /** Marks on photos, "photo:x:y:what" each, and the part that each lies in; empty: not known. */
  spot: z.union([text, z.array(text).max(50)]).optional(),
  part: z.union([text, z.array(text).max(50)]).optional(),
  /** What the next mark is, and where on a photo: chosen in its grid, or tapped. */
  what: one,
  cell: one,
  tap: one,
  mark: one,
  /** The place in the list of a mark that goes. */
  unmark: one,
  /** Kinds of marks that say otherwise than an answer, and stand all the same. */
  against: z.union([text, z.array(text).max(50)]).optional(),
  /** Words that stood in the field before a label's photo was read into it. */
  typed: one,
})

export type AnswerForm = z.infer<typeof answerForm>

/** The answer of a form; one that asks for a label to be read holds what is typed and chosen so far. */
export function rawOf(form: AnswerForm): RawReply {
  const { act, value, unit, words, found, iron, name, email, phone, note } = form
  const kept = { value, unit, words, found, iron, name, email, phone, note }
  return { ...kept, act: act === 'read-label' ? 'answer' : act }
}

/** What one name may have sent once, several times or never. */
export const listOf = (value: string | readonly string[] | undefined): readonly string[] =>
  value === undefined ? [] : typeof value === 'string' ? [value] : value

/** What a form of one button sends. */
export const buttonForm = z.object({
  act: z.string().max(40).optional(),
  idem: key,
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
  /** Why the form could not be read whole; what could be read of it stands beside. */
  readonly refusal: Failure | null
}

export interface Parts {
  readonly fields: Record<string, string | string[]>
  readonly files: SentFile[]
}

function nullIfTooLarge(error: unknown): null {
  if ((error as { code?: string }).code === 'FST_REQ_FILE_TOO_LARGE') return null
  throw error
}

/** Reads into `fields` and `files`, which keep what came before a fault. */
async function readParts(request: FastifyRequest, { fields, files }: Parts): Promise<void> {
  for await (const part of request.parts()) {
    if (part.type === 'file') {
      const bytes = await part.toBuffer().catch(nullIfTooLarge)
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
}

/** A form with files. Never throws: a fault comes with what could be read. */
export async function partsOf(
  request: FastifyRequest,
): Promise<Parts & { refusal: Failure | null }> {
  const parts: Parts = { fields: Object.create(null), files: [] }
  try {
    await readParts(request, parts)
    const { length } = parts.files
    if (length > 0) await request.server.quotas.photos(request.ip, length)
    return { ...parts, refusal: null }
  } catch (error) {
    return { ...parts, refusal: formFailure(error) }
  }
}

/** A question's form, plain or with files. Never throws: a fault comes with what could be read. */
export async function readAnswerForm(request: FastifyRequest): Promise<Form> {
  const sent = request.isMultipart()
    ? await partsOf(request)
    : { fields: (request.body ?? {}) as object, files: [], refusal: null }
  const read = answerForm.safeParse(sent.fields)
  if (read.success) return { fields: read.data, files: sent.files, refusal: sent.refusal }

  const [first] = read.error.issues
  const wrong = new Set(read.error.issues.map(({ path }) => String(path[0] ?? '')))
  const rest = Object.entries(sent.fields).filter(([name]) => !wrong.has(name))
  return {
    fields: answerForm.parse(Object.fromEntries(rest)),
    files: [],
    refusal: new Failure('bad_input', { field: String(first!.path[0] ?? ''), why: first!.message }),
  }
}
