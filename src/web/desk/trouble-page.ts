import type { FastifyRequest } from 'fastify'
import type { Failure } from '../../base/failures.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence, toName } from '../errors.ts'
import type { DeskContext } from './context.ts'
import { frameOf } from './frame.ts'
import { deskPaths } from './paths.ts'
import { renderDesk } from './render.tsx'

/** A failure as a page of the desk: what happened, and the way back. */
export function troubleHtml(
  context: DeskContext,
  request: FastifyRequest,
  failure: Failure,
  language: Language,
): string {
  const out = failure.code === 'not_signed_in'
  return renderDesk(
    {
      page: 'trouble',
      sentence: failureSentence(failure, language),
      code: failure.code,
      toName: toName(failure, request),
      way: {
        label: language.say(out ? 'desk.sign_in.title' : 'desk.trouble.back'),
        href: out ? deskPaths.signIn : deskPaths.queue,
      },
    },
    frameOf(context, { language, visitor: request.atDesk ?? null, path: deskPaths.queue }),
    language.say,
  )
}
