import type { Offering } from '../../desk/agreement.ts'
import type { AgreedDiff } from '../../intake/agreed-diff.ts'
import type { Offer } from '../../intake/offers.ts'
import { differenceWords } from '../../papers/diff-words.ts'
import { dayIn } from '../../papers/offer-paper.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { AgreeCard } from './view-agree.ts'

const minutesAnHour = 60

/** Hours with one decimal at most, as the reader writes them. */
export const hoursWords = (minutes: number, locale: string): string =>
  new Intl.NumberFormat(locale, { maximumFractionDigits: 1 }).format(minutes / minutesAnHour)

export interface AgreeOf {
  readonly number: number
  readonly needBy: number | null
  /** Null: nothing of it can be priced, or it is not with us. */
  readonly offering: Offering | null
  /** The newest first. */
  readonly offers: readonly Offer[]
  readonly changed: AgreedDiff | null
}

type Lines = AgreeCard['lines']

function roomLines({ offering, needBy }: AgreeOf, { say, locale }: Language): Lines {
  if (!offering) return []
  const { minutes, earliest, meets } = offering.room
  const day = earliest === null ? say('desk.agree.no_day') : dayIn(earliest, locale)
  return [
    { text: say('desk.agree.hours', { hours: hoursWords(minutes, locale) }), tone: 'plain' },
    { text: say('desk.agree.earliest', { day }), tone: 'plain' },
    ...(meets === null || needBy === null
      ? []
      : [{ text: say(`desk.agree.meets.${meets}`, { day: dayIn(needBy, locale) }), tone: meets }]),
  ]
}

export const offerSentence = (
  { row, state }: Offer,
  { say, locale }: Pick<Language, 'say' | 'locale'>,
): string =>
  say(`desk.agree.offer.${state}`, {
    day: dayIn(row.sent_at, locale),
    until: dayIn(row.expires_at - 1, locale),
    promised: dayIn(row.promised_at, locale),
    name: row.accepted_name ?? '',
    accepted: row.accepted_at === null ? '' : dayIn(row.accepted_at, locale),
  })

export function agreeCard(of: AgreeOf, language: Language): AgreeCard {
  const { say } = language
  const { number, offers, changed } = of
  const stands = offers.filter(({ state }) => state !== 'ended')
  return {
    title: say('desk.agree.title'),
    lines: [
      ...roomLines(of, language),
      ...stands.map((one) => ({ text: offerSentence(one, language), tone: 'plain' as const })),
    ],
    changed: changed && {
      title: say('desk.agree.changed'),
      sentences: differenceWords(changed, language),
    },
    links: [
      { label: say('desk.agree.to_offer'), href: deskPaths.offer(number) },
      { label: say('desk.agree.to_agreement'), href: deskPaths.agreement(number) },
      { label: say('desk.agree.to_calendar'), href: deskPaths.calendar },
    ],
  }
}

/** A card on one of the pages that it leads to needs no link to it. */
export const onlyElsewhere = (card: AgreeCard, here: string): AgreeCard => ({
  ...card,
  links: card.links.filter(({ href }) => href !== here),
})
