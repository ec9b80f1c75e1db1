import type { KeptPhoto } from '../keeping/sent-photos.ts'
import type { Say } from '../words/words.ts'
import type { YourPhoto } from './chat/view-yours.ts'

/** Where a photo is shown, and where it is erased. */
interface PhotoPaths {
  photo(id: string, size: 'thumb' | 'view'): string
  erase(id: string): string
}

/** Photos that may be erased one by one, as the customer's page and the desk's show them. */
export const photosToErase = (
  photos: readonly KeptPhoto[],
  say: Say,
  { photo, erase }: PhotoPaths,
): YourPhoto[] =>
  photos.map(({ id, item }, n) => ({
    id,
    thumb: photo(id, 'thumb'),
    view: photo(id, 'view'),
    alt: say(item ? 'yours.photos.of_garment' : 'yours.photos.one', { n: n + 1, item: item ?? 0 }),
    eraseTo: erase(id),
  }))
