import type { Failure, FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { reasonLimits } from '../../desk/decisions.ts'
import type { LaidOut } from '../../desk/laid-out.ts'
import { dayIn } from '../../papers/offer-paper.ts'
import { failureSentence } from '../errors.ts'
import type { Opened } from './opened.ts'
import { paths } from './paths.ts'
import type { LaidOutPage } from './view-laid-out.ts'

/** An answer that was refused, and what had been typed. */
export interface RefusedSaying {
  readonly text: string
  readonly failure: Failure
}

/** Refusals that belong to the words of a change. */
const ofText: readonly FailureCode[] = ['empty_answer', 'answer_too_long']

const sentence = ({ failure }: RefusedSaying, { language }: Opened): string =>
  failure.code === 'empty_answer'
    ? language.say('laid_out.change_empty')
    : failureSentence(failure, language)

function standingOf({ state, since, answer, sewn }: LaidOut, { language }: Opened): string {
  const { say, locale } = language
  const day = dayIn(answer?.phone?.day ?? since, locale)
  if (state !== 'yes') return say(`laid_out.stands.${state}`, { day })
  const said = answer?.phone
    ? say('laid_out.stands.phone', { by: answer.phone.by, day })
    : say('laid_out.stands.yes', { day })
  return `${said} ${say(sewn.length > 0 ? 'laid_out.sewing' : 'laid_out.to_sew')}`
}

/** Null: nothing is laid out. */
export function laidOutPage(
  now: LaidOut,
  opened: Opened,
  refused: RefusedSaying | null = null,
): LaidOutPage | null {
  const { laid, answer, state, current, sewn } = now
  if (!laid || !state) return null
  const { key, language } = opened
  const { say } = language
  const textError = refused && ofText.includes(refused.failure.code) ? refused : null
  const mayChange = state !== 'anew' && sewn.length === 0
  return {
    page: 'laid-out',
    state,
    standing: standingOf(now, opened),
    note: laid.note,
    photos: laid.photos.map((id, n) => ({
      id,
      view: paths.photo(key, id, 'view'),
      alt: say('laid_out.photo', { n: n + 1 }),
    })),
    wish: answer?.kind === 'change' ? answer.note : null,
    postTo: paths.laidOut(key),
    hidden: { of: String(laid.seq), idem: newId() },
    yes:
      current && state !== 'yes'
        ? say(state === 'change' ? 'laid_out.yes_after_all' : 'laid_out.yes')
        : null,
    change: mayChange
      ? {
          text: refused?.text ?? '',
          longest: reasonLimits.longest,
          error: textError && sentence(textError, opened),
          folded: state === 'yes',
        }
      : null,
    refused: refused && !textError ? sentence(refused, opened) : null,
    ways: [
      { label: say('laid_out.back'), href: paths.pile(key) },
      { label: say('laid_out.write'), href: paths.messages(key) },
    ],
  }
}
