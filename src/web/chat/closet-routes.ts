import type { FastifyInstance, FastifyReply } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import {
  addKind,
  addLines,
  closetLines,
  isUnscreened,
  type Screened,
  type Screening,
  screened,
  screenings,
} from '../../intake/closet.ts'
import { failureSentence } from '../errors.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { buttonForm, listOf } from './form.ts'
import { keyParams, type Opened, openPile, plannedFor, show } from './opened.ts'
import { paths, screenedTold } from './paths.ts'
import { closetPage, screeningPage, type Typed } from './present-closet.ts'
import { readerOf } from './present-pages.ts'
import { goOn, prefersPage } from './show-place.ts'

const many = z.union([z.string(), z.array(z.string()).max(5_000)]).optional()

const linesForm = buttonForm.extend({
  lines: z.string().max(200_000).default(''),
  kind: z.string().max(40).optional(),
})

const screeningForm = buttonForm.extend({
  garments: z.string().max(2_000).default(''),
  right: many,
  kind: many,
  size: many,
  alone: many,
  mark: many,
})

interface Pressed<B extends z.ZodType> {
  Params: z.infer<typeof keyParams>
  Body: z.infer<B>
}

/** "4.5.6" */
const numbersIn = (ids: string): number[] => ids.split('.').map(Number).filter(Number.isInteger)

/** What is said of several garments at once, "4.5.6:L", by each. */
function byGarment(sent: string | readonly string[] | undefined): Map<number, string[]> {
  const said = new Map<number, string[]>()
  for (const one of listOf(sent)) {
    const [ids = '', ...value] = one.split(':')
    if (value.length === 0) continue
    for (const n of numbersIn(ids)) said.set(n, [...(said.get(n) ?? []), value.join(':')])
  }
  return said
}

const isScreening = (question: string): question is Screening =>
  (screenings as readonly string[]).includes(question)

function marksIn(sent: string | readonly string[] | undefined): Screened['marks'] {
  const marks = new Map<number, Map<Screening, string[]>>()
  for (const [n, ones] of byGarment(sent)) {
    const own = new Map<Screening, string[]>()
    for (const one of ones) {
      const [question = '', mark = ''] = one.split(':')
      if (!isScreening(question)) throw new Failure('bad_input', { field: 'mark', why: 'unknown' })
      own.set(question, [...(own.get(question) ?? []), mark])
    }
    marks.set(n, own)
  }
  return marks
}

const firstOf = (said: ReadonlyMap<number, readonly string[]>): Map<number, string> =>
  new Map([...said].map(([n, [value]]) => [n, value!]))

const saidIn = (form: z.infer<typeof screeningForm>): Screened => ({
  garments: numbersIn(form.garments),
  alone: new Set(listOf(form.alone).flatMap(numbersIn)),
  right: byGarment(form.right),
  kind: firstOf(byGarment(form.kind)),
  size: firstOf(byGarment(form.size)),
  marks: marksIn(form.mark),
})

/** Many garments at once: told in lines or by taps, looked over together, then asked one by one. */
export function closetRoutes(app: FastifyInstance, context: ChatContext): void {
  const { conversation } = context

  const showCloset = async (reply: FastifyReply, opened: Opened, typed?: Typed) => {
    const { key, open, language } = opened
    const planned = await plannedFor(context, open, 'asking')
    const page = closetPage(open, planned, readerOf(open, key, language), typed)
    return show(context, reply, page, { language, key })
  }

  const showScreening = async (reply: FastifyReply, opened: Opened) => {
    const { key, open, language } = opened
    const page = screeningPage(open, readerOf(open, key, language))
    if (!page) return reply.redirect(paths.closet(key), 303)
    return show(context, reply, page, { language, key })
  }

  /** As `goOn` does it: by a redirect, or at once where a script prefers it. */
  const follow = async (
    prefers: boolean,
    reply: FastifyReply,
    path: string,
    shown: () => Promise<FastifyReply>,
  ) => {
    if (!prefers) return reply.redirect(path, 303)
    reply.header('content-location', path).header('preference-applied', 'return=representation')
    return shown()
  }

  const looks = [
    ['/i/:key/closet', 'Many garments at once', showCloset],
    ['/i/:key/closet/look', 'Garments, looked over together', showScreening],
  ] as const
  for (const [path, summary, showIt] of looks) {
    app.get<{ Params: z.infer<typeof keyParams> }>(
      path,
      { config: { who: customer }, schema: { summary, params: keyParams } },
      async (request, reply) => {
        const opened = await openPile(context, request.params.key)
        const { key, open } = opened
        if (open.row.status !== 'open') return reply.redirect(paths.pile(key), 303)
        return showIt(reply, opened)
      },
    )
  }

  app.post<Pressed<typeof linesForm>>(
    '/i/:key/closet',
    {
      config: { who: customer },
      schema: {
        summary: 'Adds a garment for each line, or one of a kind',
        params: keyParams,
        body: linesForm,
      },
    },
    async (request, reply) => {
      const { key } = request.params
      const { idem, seq, lines, kind } = request.body
      const prefers = prefersPage(request)
      try {
        const told = kind === undefined ? closetLines(lines) : []
        const { open } = await openPile(context, key)
        await conversation.act(key, {
          act: (followed) =>
            kind === undefined ? addLines(followed, told) : addKind(open.flow, followed, kind),
          idem,
          seen: seq,
        })
      } catch (error) {
        if (!(error instanceof Failure) || error.status !== 422) throw error
        const opened = await openPile(context, key)
        request.log.info({ code: error.code }, 'garments refused')
        const refusal = failureSentence(error, opened.language)
        return showCloset(reply.status(error.status), opened, { lines, refusal, added: null })
      }
      const opened = await openPile(context, key)
      if (kind === undefined)
        return follow(prefers, reply, paths.screening(key), () => showScreening(reply, opened))
      // Lines that were begun stay where they are.
      const added = opened.open.pile.followed.items.at(-1)?.n ?? null
      return showCloset(reply, opened, { lines, refusal: null, added })
    },
  )

  app.post<Pressed<typeof screeningForm>>(
    '/i/:key/closet/look',
    {
      config: { who: customer },
      schema: {
        summary: 'Says what is right and true of several garments',
        params: keyParams,
        body: screeningForm,
      },
    },
    async (request, reply) => {
      const { key } = request.params
      const { idem, seq } = request.body
      const prefers = prefersPage(request)
      const said = saidIn(request.body)
      const { flow } = (await openPile(context, key)).open
      await conversation.act(key, {
        act: (followed) => screened(flow, followed, said),
        idem,
        seen: seq,
      })
      const opened = await openPile(context, key)
      const { garments, followed } = opened.open.pile
      const wereThere = ({ n }: { n: number }) => said.garments.includes(n)
      const open = followed.items.filter(isUnscreened)
      // Those that are asked about one by one are open still.
      if (open.length > 0 && !open.some(wereThere))
        return follow(prefers, reply, paths.screening(key), () => showScreening(reply, opened))
      if (garments.some((garment) => wereThere(garment) && garment.early !== null))
        return follow(prefers, reply, paths.closet(key), () => showCloset(reply, opened))
      return goOn(context, request, reply, key, { told: screenedTold })
    },
  )
}
