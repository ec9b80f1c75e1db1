import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import type { SpotValue } from '../flow/grammar.ts'
import type { Facts, Size } from '../garment/facts.ts'
import type { SpotPhoto } from './spot-photos.ts'
import { partSeen } from './spot-place.ts'
import { partOf, type SpotKey } from './spots.ts'

/** Where somebody tapped: a photo, and a place on it in shares of its width and height. */
export type SpotAt = Pick<SpotValue, 'photo' | 'x' | 'y'>

/** The garment that is marked, and its photos. */
export interface Markable {
  readonly kind: Facts['kind']
  readonly size: Size
  readonly photos: readonly SpotPhoto[]
}

/** As many spots of one garment as anybody may mark at the desk, with the customer's. */
export const mostAtDesk = 24

/** So near to a mark, in shares of the picture's width, a tap means that mark. */
const nearby = 0.07

/** A thousandth of a picture is finer than any finger. */
const rounded = (share: number): number => Math.round(share * 1000) / 1000

const share = z
  .string()
  .regex(/^[\d.]{1,20}$/)
  .transform(Number)
  .pipe(z.number().min(0).max(1))

function shareIn(text: string | undefined): number {
  const { data } = share.safeParse(text)
  if (data === undefined) throw new Failure('spot_outside')
  return rounded(data)
}

/** As a form holds it: "photo:x:y". Throws `spot_outside`, `spot_without_photo`. */
export function readSpotAt(text: string, photos: readonly SpotPhoto[]): SpotAt {
  const [photo = '', x, y] = text.split(':')
  const at = { photo, x: shareIn(x), y: shareIn(y) }
  if (!photos.some(({ id }) => id === photo)) throw new Failure('spot_without_photo')
  return at
}

/** A mark that stands, as a form names it: "photo:x:y:what". Throws `spot_outside`. */
export function readSpotKey(text: string): SpotKey {
  const [photo = '', x, y, what = ''] = text.split(':')
  return { photo, x: shareIn(x), y: shareIn(y), what }
}

export const spotAtText = ({ photo, x, y }: SpotAt): string => `${photo}:${x}:${y}`

/** As a form holds a mark: "photo:x:y:what". */
export const spotText = (spot: SpotValue): string => `${spotAtText(spot)}:${spot.what}`

/** A mark of a form with the part chosen for it. Throws what `readSpotAt` does, and `answer_not_offered`. */
export function readSpot(
  text: string,
  part: string | undefined,
  { kind, photos }: Markable,
  offered: readonly string[],
): SpotValue {
  const at = readSpotAt(text, photos)
  const what = text.split(':')[3] ?? ''
  if (!offered.includes(what)) throw new Failure('answer_not_offered')
  const known = partOf(kind, part ?? null)
  if (part && known === null) throw new Failure('answer_not_offered')
  return { ...at, what, part: known }
}

/** A new mark, its part proposed from what the photo shows. */
export function newSpot(at: SpotAt, what: string, { kind, size, photos }: Markable): SpotValue {
  const photo = photos.find(({ id }) => id === at.photo)
  const seen = photo ? partSeen(at, photo.look, photo.view, { kind, size }) : partOf(kind, null)
  return { ...at, what, part: seen }
}

/** The mark that is meant by a place: the nearest, where one is near; its place in the list, or -1. */
export function spotNear(
  spots: readonly SpotAt[],
  at: SpotAt,
  photos: readonly Pick<SpotPhoto, 'id' | 'width' | 'height'>[],
): number {
  const photo = photos.find(({ id }) => id === at.photo)
  const tall = photo ? photo.height / photo.width : 1
  const away = spots.map((spot) =>
    spot.photo === at.photo
      ? Math.hypot(spot.x - at.x, (spot.y - at.y) * tall)
      : Number.POSITIVE_INFINITY,
  )
  const nearest = Math.min(...away)
  return nearest <= nearby ? away.indexOf(nearest) : -1
}
