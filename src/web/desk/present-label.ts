import type { ReviewedGarment } from '../../desk/review.ts'
import type { LabelSeen, Replies } from '../../flow/grammar.ts'
import { chosen, labelSeen, labelValue } from '../../intake/replies.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import type { DeskLabel } from './view.ts'

type Became =
  | 'same'
  | 'doubted'
  | 'doubted_still'
  | 'changed'
  | 'unread'
  | 'typed'
  | 'signs'
  | 'none'
  | 'asked'
  | 'asked_unread'
  | 'asked_no_words'

/** What the customer made of a label that was left to a person. */
function askedAbout({ read }: LabelSeen): Became {
  if (read === undefined) return 'asked_unread'
  return read === '' ? 'asked_no_words' : 'asked'
}

/** What the customer made of the words that were read. */
function became(replies: Replies): Became {
  const value = labelValue(replies)
  if (!value) return askedAbout(labelSeen(replies))
  const { found, words, read, doubted } = value
  if (found !== 'words') return found
  if (doubted) return chosen(replies, 'label_check') === 'no' ? 'doubted_still' : 'doubted'
  if (read === undefined) return 'unread'
  if (read === '') return 'typed'
  return read === words ? 'same' : 'changed'
}

/** Lines of words; those that differ have no like among the others, where there are others. */
function linesOf(words: string, others: string): DeskLabel['words'][number]['lines'] {
  if (words === '') return []
  const known = new Set(others.split('\n'))
  return words
    .split('\n')
    .map((text) => ({ text, differs: others !== '' && text.trim() !== '' && !known.has(text) }))
}

/** The label of a garment whose label was photographed; a copied one has the words alone. */
export function labelOf(
  { garment, label: photo }: ReviewedGarment,
  number: number,
  language: Language,
): DeskLabel | null {
  const { replies } = garment
  const value = labelValue(replies)
  const { photo: sent, read = '' } = labelSeen(replies)
  if (!sent && !value?.doubted) return null
  const { say } = language
  const how = became(replies)
  const words = value?.found === 'words' && value.words !== read ? value.words : ''
  const shown = [
    { what: 'read', lines: linesOf(read, words) },
    { what: 'sent', lines: linesOf(words, read) },
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
    doubted: garment.facts.labelDoubt === 'yes',
    words: shown
      .filter(({ lines }) => lines.length > 0)
      .map(({ what, lines }) => ({ heading: say(`desk.label.words.${what}`), lines })),
  }
}
