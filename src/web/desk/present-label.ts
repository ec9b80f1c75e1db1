import type { ReviewedGarment } from '../../desk/review.ts'
import type { LabelValue } from '../../flow/grammar.ts'
import { labelValue } from '../../intake/replies.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import type { DeskLabel } from './view.ts'

type Became = 'same' | 'changed' | 'unread' | 'typed' | 'signs' | 'none'

/** What the customer made of the words that were read. */
function became({ found, words, read }: LabelValue): Became {
  if (found !== 'words') return found
  if (read === undefined) return 'unread'
  if (read === '') return 'typed'
  return read === words ? 'same' : 'changed'
}

/** The label of a garment whose label was photographed. */
export function labelOf(
  { garment, label: photo }: ReviewedGarment,
  number: number,
  language: Language,
): DeskLabel | null {
  const value = labelValue(garment.replies)
  if (!value?.photo) return null
  const { say } = language
  const how = became(value)
  const shown = [
    { what: 'read', lines: value.read ?? '' },
    { what: 'sent', lines: how === 'same' || value.found !== 'words' ? '' : value.words },
  ]
  return {
    photo: photo
      ? {
          id: photo,
          thumb: deskPaths.photo(number, photo, 'thumb'),
          view: deskPaths.photo(number, photo, 'view'),
          alt: say('label.photo.alt', { name: nameOf(garment, readerAt(language)) }),
        }
      : null,
    verdict: say(`desk.label.${how}`),
    words: shown
      .filter(({ lines }) => lines !== '')
      .map(({ what, lines }) => ({ heading: say(`desk.label.words.${what}`), lines })),
  }
}
