import type { FastifyRequest } from 'fastify'
import type { Failure, FailureCode } from '../../base/failures.ts'
import { cleanText } from '../../flow/text.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence, toName } from '../errors.ts'
import type { ChatContext } from './context.ts'
import { frameOf } from './frame.ts'
import { paths } from './paths.ts'
import { renderPage } from './render.tsx'
import type { Link, TroublePage } from './view.ts'

const troubles: Partial<Record<FailureCode, TroublePage['trouble']>> = {
  not_found: 'not-found',
  link_unknown: 'not-found',
  link_expired: 'gone',
  question_moved_on: 'stale',
  pile_confirmed: 'stale',
  too_many_requests: 'too-many',
  busy: 'busy',
  store_unavailable: 'busy',
}

const troubleOf = ({ code, status }: Failure): TroublePage['trouble'] =>
  troubles[code] ?? (status >= 500 ? 'fault' : 'refused')

/** What was typed, so that it can be copied and is not lost. */
function typedIn({ body }: FastifyRequest): string | null {
  const { value, words, note } = (body ?? {}) as Record<string, unknown>
  const typed = [words, value, note].find((one) => typeof one === 'string' && one.trim() !== '')
  return typeof typed === 'string' ? cleanText(typed).slice(0, 2_000) : null
}

function waysOf(request: FastifyRequest, failure: Failure, { say }: Language): Link[] {
  const { key } = (request.params ?? {}) as { key?: string }
  const lost = failure.code === 'link_unknown' || failure.code === 'link_expired'
  const back = key && !lost ? [{ label: say('ways.back'), href: paths.pile(key) }] : []
  return [...back, { label: say('ways.start'), href: '/' }]
}

/** The page of a failure: what happened, what to do, and what had been typed. */
export function troublePage(
  context: ChatContext,
  request: FastifyRequest,
  failure: Failure,
  language: Language,
): string {
  const typed = typedIn(request)
  const sentence = failureSentence(failure, language)
  const page: TroublePage = {
    page: 'trouble',
    trouble: troubleOf(failure),
    code: failure.code,
    toName: toName(failure, request),
    sentence: typed ? `${sentence} ${language.say('ways.typed', { typed })}` : sentence,
    ways: waysOf(request, failure, language),
  }
  return renderPage(page, frameOf(context, { language, key: null }), language.say)
}
