import type { Replies, SpotValue } from '../flow/grammar.ts'
import { type Facts, type Known, type Source, scales } from '../garment/facts.ts'
import { type Part, partsOf, type Spot, type SpotKind, spotKinds } from '../garment/spots.ts'
import { given } from './replies.ts'

/** A spot that somebody marked on a photo of a garment. `x` and `y` are shares of the upright picture. */
export interface MarkedSpot extends Spot {
  readonly photo: string
  readonly x: number
  readonly y: number
  /** The customer, or the name of a member of staff. */
  readonly by: 'customer' | { readonly staff: string }
  /** Milliseconds UTC. */
  readonly at: number
}

/** Which of a garment's spots is meant: no two of one kind lie at one place. */
export type SpotKey = Pick<SpotValue, 'photo' | 'x' | 'y' | 'what'>

export const isSameSpot = (a: SpotKey, b: SpotKey): boolean =>
  a.photo === b.photo && a.x === b.x && a.y === b.y && a.what === b.what

/** What staff made of a garment's spots: those they marked, and the customer's that they took away. */
export interface DeskSpots {
  readonly added: readonly MarkedSpot[]
  readonly gone: readonly SpotKey[]
}

const isKind = (what: string): what is SpotKind => spotKinds.some((one) => one === what)

/** A part that the garment has; null for any other, as where its kind was changed since. */
export const partOf = (kind: Facts['kind'] | undefined, part: string | null): Part | null =>
  partsOf(kind ?? 'other').find((one) => one === part) ?? null

/** The spots that the reply to a question holds, as they were sent. */
export function spotValues(replies: Replies, question = 'spots'): readonly SpotValue[] {
  const value = given(replies, question)
  const isSpots = Array.isArray(value) && value.every((one) => typeof one === 'object')
  return isSpots ? (value as readonly SpotValue[]) : []
}

/** The customer's spots on photos that are still there, less what staff took away, and theirs. */
export function spotsTold(
  replies: Replies,
  {
    kind,
    photoIds,
    at,
    desk,
  }: {
    readonly kind: Facts['kind'] | undefined
    readonly photoIds: readonly string[]
    readonly at: number
    readonly desk: DeskSpots | undefined
  },
): MarkedSpot[] {
  const theirs = spotValues(replies).flatMap(({ what, part, photo, x, y }): MarkedSpot[] =>
    isKind(what) ? [{ photo, x, y, what, part: partOf(kind, part), by: 'customer', at }] : [],
  )
  const left = theirs.filter((spot) => !desk?.gone.some((one) => isSameSpot(one, spot)))
  const ours = (desk?.added ?? []).map((spot) => ({ ...spot, part: partOf(kind, spot.part) }))
  return [...left, ...ours].filter(({ photo }) => photoIds.includes(photo))
}

/** What is said of the cloth, without what is marked. */
interface Said {
  readonly wear: Facts['wear']
  readonly soil: Facts['soil']
}

type OfSpots = { readonly fact: 'wear' | 'soil'; readonly value: string }

/** What a spot makes of the cloth where it is worse than what is said. Of what nobody told it tells nothing. */
function madeOf(what: SpotKind, said: Said): OfSpots | null {
  const made: OfSpots =
    what === 'stain'
      ? { fact: 'soil', value: 'soiled' }
      : { fact: 'wear', value: what === 'hole' ? 'holes' : 'thin' }
  const scale: readonly string[] = scales[made.fact]
  const now = scale.indexOf(said[made.fact])
  return now >= 0 && now < scale.indexOf(made.value) ? made : null
}

/** The kinds of spots that say worse of the cloth than is said of it. */
export const kindsAgainst = (spots: readonly { readonly what: string }[], said: Said): SpotKind[] =>
  spotKinds.filter((kind) => spots.some(({ what }) => what === kind) && madeOf(kind, said) !== null)

/** What spots make of wear and soil where they are worse than what is said: the page has asked about it. */
export function factsOfSpots(
  spots: readonly MarkedSpot[],
  said: Said,
): { readonly fact: 'wear' | 'soil'; readonly known: Known }[] {
  let now = said
  return spots.flatMap(({ what, by, at }) => {
    const made = madeOf(what, now)
    if (!made) return []
    now = { ...now, [made.fact]: made.value }
    const source: Source = by === 'customer' ? 'said' : 'staff'
    return [{ fact: made.fact, known: { value: made.value, source, at } }]
  })
}
