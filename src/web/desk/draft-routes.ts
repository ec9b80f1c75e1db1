import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { type DraftFile, draftFile, withFile } from '../../desk/draft-files.ts'
import { draftOf } from '../../desk/drafts.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { owner } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { draftPage } from './present-draft.ts'

const name = z.string().max(200).default('')
const draftId = z.string().max(64)
/** The desk itself says how long a text may be, so that what was typed is not lost. */
const text = z
  .string()
  .max(1024 * 1024)
  .default('')
const lang = z.string().max(8).optional()

const tryQuery = z.object({ name, base: draftId.default(''), lang })
const form = z.object({
  csrf: z.string().max(200),
  name,
  base: draftId.default(''),
  text,
  upload: text,
})
const params = z.object({ draft: draftId.min(1) })
const fileQuery = z.object({ name, lang })

const onThePage: readonly FailureCode[] = [
  'bad_input',
  'form_expired',
  'too_large',
  'file_name_wrong',
  'file_too_long',
]

/** Drafts an owner may begin: each is proven, which costs a core for seconds. */
export const draftTries = { max: 30, timeWindow: '15 minutes' } as const

/** A page waits for its draft no longer than this. */
const patienceMs = 2_500

const typed = (value: unknown): string => (typeof value === 'string' ? value : '')

/** Trying files of the owner's before they go live; nothing is written among those that apply. */
export const draftRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock, live, drafts } = context

    const filesOf = async (base: string): Promise<readonly DraftFile[]> =>
      base === '' ? [] : (await draftOf(store.db, clock, base)).files

    const textOf = (files: readonly DraftFile[], wanted: string): string =>
      files.find((one) => one.name === wanted)?.text ??
      live.files.get(wanted)?.toString('utf8') ??
      ''

    const showTry = async (
      request: FastifyRequest,
      reply: FastifyReply,
      given: { name: string; base: string; text: string | null; error: string | null },
    ) => {
      const { say, locale } = deskLanguage(request, context)
      const files = await filesOf(given.base)
      const others = files.map((one) => one.name)
      return showDesk(
        context,
        request,
        reply,
        {
          page: 'try',
          title: say('desk.drafts.form.title'),
          postTo: deskPaths.drafts,
          csrf: signedIn(request).csrf,
          base: given.base,
          besides:
            others.length === 0
              ? null
              : say('desk.drafts.form.besides', {
                  names: new Intl.ListFormat(locale).format(others),
                }),
          names: [...live.files.keys()],
          name: given.name,
          text: given.text ?? textOf(files, given.name),
          error: given.error,
          back: { label: say('desk.files.back'), href: deskPaths.files },
        },
        { path: deskPaths.tryFile({ name: given.name, base: given.base }) },
      )
    }

    app.get(
      '/files/try',
      {
        config: { who: owner },
        schema: { summary: 'The form to try a file otherwise', querystring: tryQuery },
      },
      async (request, reply) =>
        showTry(request, reply, { ...request.query, text: null, error: null }),
    )

    app.post(
      '/files/drafts',
      {
        config: {
          who: owner,
          textFiles: true,
          rateLimit: { ...draftTries, hook: 'preHandler' },
        },
        schema: { summary: 'Keeps a draft and begins to compare it', body: form },
        bodyLimit: 3 * 1024 * 1024,
        errorHandler: async (error, request, reply) => {
          const failure = asFailure(error)
          const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
          if (!shows) throw error
          const body = (request.body ?? {}) as Record<string, unknown>
          reply.status(failure.status)
          return showTry(request, reply, {
            name: typed(body.name),
            base: '',
            text: typed(body.upload) || typed(body.text),
            error: failureSentence(failure, deskLanguage(request, context)),
          })
        },
      },
      async (request, reply) => {
        const { base, upload, text: pasted, name: called } = request.body
        const file = draftFile({ name: called, text: upload || pasted }, live.files)
        const who = signedIn(request).account.id
        const id = await drafts.begin(who, withFile(await filesOf(base), file))
        request.log.info({ draft: id, file: file.name, by: who }, 'draft begun')
        return reply.redirect(deskPaths.draft(id), 303)
      },
    )

    app.get(
      '/files/drafts/:draft',
      { config: { who: owner }, schema: { summary: 'What a draft would change', params } },
      async (request, reply) => {
        const { draft: id } = request.params
        await drafts.settled(id, patienceMs)
        const draft = await draftOf(store.db, clock, id)
        return showDesk(context, request, reply, draftPage(draft, deskLanguage(request, context)))
      },
    )

    app.get(
      '/files/drafts/:draft/file',
      {
        config: { who: owner },
        schema: { summary: 'A file of a draft, to download', params, querystring: fileQuery },
      },
      async (request, reply) => {
        const { files } = await draftOf(store.db, clock, request.params.draft)
        const file = files.find((one) => one.name === request.query.name)
        if (!file) throw new Failure('not_found')
        // Names of drafts' files are plain letters, figures and dashes.
        const plain = file.name.slice(file.name.lastIndexOf('/') + 1)
        return reply
          .type('application/yaml; charset=utf-8')
          .header('content-disposition', `attachment; filename="${plain}"`)
          .header('cache-control', 'no-store')
          .send(file.text)
      },
    )
  }
