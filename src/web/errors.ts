import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { Failure, type FailureCode } from '../base/failures.ts'
import type { Language } from '../words/words.ts'
import { collectRoutes } from './known-routes.ts'
import { limits } from './limits.ts'

/** What Fastify and its plugins throw, in the catalogue's words. */
const foreign: Readonly<Record<string, FailureCode>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: 'too_large',
  FST_REQ_FILE_TOO_LARGE: 'too_large',
  FST_FILES_LIMIT: 'too_many_photos',
  FST_PARTS_LIMIT: 'bad_input',
  FST_FIELDS_LIMIT: 'bad_input',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'bad_input',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'bad_input',
  FST_ERR_VALIDATION: 'bad_input',
  FST_ERR_BAD_URL: 'not_found',
  FST_ERR_MAX_PARAM_LENGTH: 'not_found',
  FST_ERR_CTP_INVALID_JSON_BODY: 'bad_input',
}

const byStatus: Readonly<Record<number, FailureCode>> = {
  404: 'not_found',
  405: 'method_not_allowed',
  413: 'too_large',
  429: 'too_many_requests',
  503: 'busy',
}

/** What fills the sentences of failures that come from outside. */
const details: Partial<Record<FailureCode, Record<string, number>>> = {
  too_many_photos: { most: limits.photosAtOnce },
}

/** Any thrown thing as a failure of the catalogue; what nobody foresaw is `internal`, its cause kept. */
export function asFailure(error: unknown): Failure {
  if (error instanceof Failure) return error
  const { code, statusCode, validationContext } = (error ?? {}) as Partial<FastifyError>
  // An address with a part that cannot be: there is no such page.
  if (validationContext === 'params') return new Failure('not_found', {}, { cause: error })
  const known = (code && foreign[code]) || (statusCode && byStatus[statusCode])
  if (known) return new Failure(known, details[known] ?? {}, { cause: error })
  if (statusCode && statusCode >= 400 && statusCode < 500) {
    return new Failure('bad_input', {}, { cause: error })
  }
  return new Failure('internal', {}, { cause: error })
}

/** A fault of the parser of forms with files is a form that was cut off or is none; it carries no code of its own. */
export function formFailure(error: unknown): Failure {
  const failure = asFailure(error)
  return failure.code === 'internal' ? new Failure('bad_input', {}, { cause: error }) : failure
}

export const failureSentence = (failure: Failure, { say }: Language): string =>
  say(`failures.${failure.code}`, failure.details)

/** What somebody who writes to us is to name: of a fault of ours the lines in the log that tell of it, too. */
export const toName = ({ code, status }: Failure, { id }: { id: string }): string =>
  status >= 500 ? `${code} ${id}` : code

/** RFC 9457 problem details, with the catalogue's code and the request's id in the log. */
export const problem = (failure: Failure, language: Language, request: { id: string }) => ({
  type: 'about:blank',
  title: failureSentence(failure, language),
  status: failure.status,
  code: failure.code,
  request: request.id,
})

export const wantsPage = (request: FastifyRequest): boolean =>
  (request.headers.accept ?? '').includes('text/html')

export interface TroubleShown {
  readonly language: (request: FastifyRequest, failure: Failure) => Language | Promise<Language>
  readonly page: (request: FastifyRequest, failure: Failure, language: Language) => string
  /** Hears of every failure that ends a request. */
  readonly failed: ((code: FailureCode) => void) | undefined
}

/** After how many seconds the same may be tried again, where nothing says more. */
const soon = 5

/** Whatever is not to be had now, on a page of its own or on the one it was asked from, says when to ask again. */
export function sayWhenAgain(app: FastifyInstance): void {
  app.addHook('onSend', (_, reply, payload, done) => {
    if (reply.statusCode === 503 && !reply.hasHeader('retry-after'))
      reply.header('retry-after', soon)
    done(null, payload)
  })
}

type Answer = (request: FastifyRequest, reply: FastifyReply, error: unknown) => Promise<unknown>

/** Answers a failure: with a page for a person, with problem details for a program. */
export function failureAnswer(shown: TroubleShown): Answer {
  return async (request, reply, error) => {
    const failure = asFailure(error)
    const language = await shown.language(request, failure)
    reply.status(failure.status)
    const { minutes } = failure.details
    if (typeof minutes === 'number' && !reply.hasHeader('retry-after'))
      reply.header('retry-after', minutes * 60)
    return wantsPage(request)
      ? reply.type('text/html; charset=utf-8').send(shown.page(request, failure, language))
      : reply.type('application/problem+json').send(problem(failure, language, request))
  }
}

/** One handler for every failure of `app`'s routes, and for addresses that it does not know. */
export function handleFailures(app: FastifyInstance, shown: TroubleShown): void {
  const answer = failureAnswer(shown)
  const allowed = collectRoutes(app)
  app.setErrorHandler((error, request, reply) => {
    const { code, status } = asFailure(error)
    // Too much to do is no fault, and whoever has too much to do writes no long lines.
    const level = code === 'busy' ? 'warn' : status >= 500 ? 'error' : 'info'
    request.log[level]({ code, ...(level === 'error' && { err: error }) }, 'refused')
    shown.failed?.(code)
    return answer(request, reply, error)
  })
  app.setNotFoundHandler((request, reply) => {
    const methods = allowed(request.url)
    if (methods.length === 0) return answer(request, reply, new Failure('not_found'))
    reply.header('allow', methods.join(', '))
    return answer(request, reply, new Failure('method_not_allowed'))
  })
}
