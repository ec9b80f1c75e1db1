import type { Replies, SpotValue } from '../../flow/grammar.ts'
import { type Part, partsOf, type Spot } from '../../garment/spots.ts'
import type { Garment } from '../../intake/pile.ts'
import { spotText } from '../../intake/spot-marking.ts'
import type { SpotPhoto } from '../../intake/spot-photos.ts'
import { kindsAgainst, type SpotKey } from '../../intake/spots.ts'
import { saidOfCloth } from '../../intake/told.ts'
import type { Say } from '../../words/words.ts'
import type { Photo } from './view.ts'
import type { MarkedPhoto, SpotShown } from './view-question.ts'

export const partWords = (part: Part, say: Say): string => say(`spots.parts.${part}`)

/** "Hole (left sleeve)". */
export function spotWords({ what, part }: Spot, say: Say): string {
  const named = say(`intake.spots.options.${what}`)
  return part ? say('spots.with_part', { what: named, part: partWords(part, say) }) : named
}

/** Photos with their marks, numbered through all of them. `links` are the photos' own, in the same order. */
export const markedPhotos = (
  photos: readonly Pick<SpotPhoto, 'id' | 'width' | 'height'>[],
  links: readonly Photo[],
  spots: readonly SpotKey[],
): MarkedPhoto[] =>
  photos.map(({ id, width, height }, i) => ({
    photo: links[i]!,
    width,
    height,
    marks: spots.flatMap(({ photo, x, y }, n) => (photo === id ? [{ n: n + 1, x, y }] : [])),
  }))

/** Marks as a list beside their photos, each with the parts to choose from. */
export function spotsShown(
  spots: readonly SpotValue[],
  photos: readonly Pick<SpotPhoto, 'id'>[],
  kind: Garment['facts']['kind'],
  say: Say,
): SpotShown[] {
  const parts = partsOf(kind).map((value) => ({ value, label: partWords(value, say) }))
  const several = photos.length > 1
  return spots.map((spot, i) => ({
    n: i + 1,
    value: spotText(spot),
    words: say(several ? 'spots.one' : 'spots.on', {
      n: i + 1,
      what: say(`intake.spots.options.${spot.what}`),
      photo: photos.findIndex(({ id }) => id === spot.photo) + 1,
    }),
    parts: parts.length > 1 ? [{ value: '', label: say('spots.unknown') }, ...parts] : parts,
    part: spot.part ?? '',
  }))
}

export const againstShown = (spots: readonly SpotValue[], replies: Replies, say: Say) =>
  kindsAgainst(spots, saidOfCloth(replies)).map((kind) => ({
    kind,
    sentence: say(`spots.against.${kind}`),
  }))

/** What is marked first where nobody has chosen: what the answers tell of. */
export function likelySpot(replies: Replies): Spot['what'] {
  const { wear, soil } = saidOfCloth(replies)
  if (wear === 'holes') return 'hole'
  return soil === 'soiled' ? 'stain' : 'thin'
}
