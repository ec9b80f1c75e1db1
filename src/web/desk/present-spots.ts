import { Failure } from '../../base/failures.ts'
import type { Review, ReviewedGarment } from '../../desk/review.ts'
import { spotKinds } from '../../garment/spots.ts'
import { kindsAgainst, type MarkedSpot } from '../../intake/spots.ts'
import { saidOfCloth } from '../../intake/told.ts'
import type { Language, Say } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { likelySpot, markedPhotos, spotsShown, spotWords } from '../chat/present-spots.ts'
import { failureSentence } from '../errors.ts'
import { deskPaths } from './paths.ts'
import { deskPhotos, readerAt } from './present-garment.ts'
import type { DeskSpotsShown, SpotsPage } from './view-spots.ts'
import { momentWords } from './when.ts'

const byWords = ({ by, at }: MarkedSpot, { say, locale }: Language): string =>
  say('desk.spots.by', {
    who: by === 'customer' ? say('desk.spots.customer') : by.staff,
    at: momentWords(at, locale),
  })

const againstOf = ({ garment }: ReviewedGarment, say: Say): string[] =>
  kindsAgainst(garment.told.spots, saidOfCloth(garment.replies)).map((kind) =>
    say(`desk.spots.against.${kind}`),
  )

/** What is marked on a garment's photos, in the card that staff look at. */
export function deskSpotsShown(
  reviewed: ReviewedGarment,
  number: number,
  language: Language,
): DeskSpotsShown {
  const { say } = language
  const { garment, photos } = reviewed
  return {
    lines: garment.told.spots.map((spot, i) =>
      say('desk.spots.line', {
        n: i + 1,
        what: spotWords(spot, say),
        by: byWords(spot, language),
      }),
    ),
    against: againstOf(reviewed, say),
    open:
      photos.length === 0
        ? null
        : { label: say('desk.spots.open'), href: deskPaths.spots(number, garment.n) },
  }
}

export interface SpotsDesk {
  readonly language: Language
  readonly csrf: string
  /** Why a form was refused, and the kind that it had chosen. */
  readonly refused: Failure | null
  readonly what: string | null
}

/** The page to mark spots on one garment's photos. Throws `not_found` where there is none, or no photo. */
export function spotsPage(
  { row, garments }: Review,
  n: number,
  { language, csrf, refused, what }: SpotsDesk,
): SpotsPage {
  const reviewed = garments.find(({ garment }) => garment.n === n)
  if (!reviewed || reviewed.photos.length === 0) throw new Failure('not_found')
  const { garment, photos } = reviewed
  const { say } = language
  const { spots } = garment.told
  const next = what ?? likelySpot(garment.replies)
  const shown = spotsShown(spots, photos, garment.facts.kind, say)
  return {
    page: 'spots',
    title: say('desk.spots.title', { name: nameOf(garment, readerAt(language)) }),
    lead: say('desk.spots.lead'),
    back: {
      label: say('desk.pile', { number: row.number }),
      href: deskPaths.garment(row.number, n),
    },
    csrf,
    postTo: deskPaths.spots(row.number, n),
    refused: refused && failureSentence(refused, language),
    against: againstOf(reviewed, say),
    photos: markedPhotos(photos, deskPhotos(reviewed, row.number, language), spots),
    options: spotKinds.map((value) => ({
      value,
      label: say(`intake.spots.options.${value}`),
      help: null,
      drawing: null,
      chosen: value === next,
    })),
    spots: shown.map((spot, i) => ({ ...spot, by: byWords(spots[i]!, language) })),
  }
}
