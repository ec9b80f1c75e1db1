import { Failure } from '../../base/failures.ts'
import type { Review } from '../../desk/review.ts'
import type { SeenPhoto } from '../../intake/garment-look.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { filledAtFirst, sheetShown, sheetWords } from '../chat/present-sheet.ts'
import type { SheetFilled } from '../chat/sheet-form.ts'
import { deskPaths } from './paths.ts'
import { deskPhotos, readerAt } from './present-garment.ts'
import type { DeskPhoto } from './view.ts'
import type { DeskSheetPage } from './view-sheet.ts'
import { momentWords } from './when.ts'

/** Who marked the sheet that counts, and when. */
export function markedBy(
  { sheet, by, at }: NonNullable<SeenPhoto['sheet']>,
  { say, locale }: Language,
): string {
  return say('desk.sheet.by', {
    sheet: sheetWords(sheet, say),
    who: by === 'customer' ? say('desk.spots.customer') : by.staff,
    at: momentWords(at, locale),
  })
}

/** What was found by itself beside what somebody marked. */
export function foundBeside({ found, sheet }: SeenPhoto, { say }: Language): string | null {
  if (!sheet) return null
  return found
    ? say('desk.sheet.found', {
        sheet: sheetWords(found.by, say),
        error: Math.ceil(found.errorPct),
      })
    : say('desk.sheet.not_found')
}

/** Under a photo in a garment's card. */
export const sheetTold = (
  seen: SeenPhoto,
  number: number,
  n: number,
  language: Language,
): NonNullable<DeskPhoto['sheet']> => ({
  lines: [
    ...(seen.sheet ? [markedBy(seen.sheet, language)] : []),
    ...[foundBeside(seen, language)].flatMap((line) => line ?? []),
  ],
  open: { label: language.say('desk.sheet.open'), href: deskPaths.sheet(number, n, seen.photo) },
})

export interface SheetDesk {
  readonly language: Language
  readonly csrf: string
  /** The form as it was sent; null: the page is opened. */
  readonly filled: SheetFilled | null
  readonly refused: Failure | null
}

/** The page to mark a sheet on one photo of a garment. Throws `not_found` where there is none. */
export function sheetPage(
  { row, garments }: Review,
  n: number,
  id: string,
  { language, csrf, filled, refused }: SheetDesk,
): DeskSheetPage {
  const reviewed = garments.find(({ garment }) => garment.n === n)
  const at = reviewed?.photos.findIndex((photo) => photo.id === id) ?? -1
  if (!reviewed || at < 0) throw new Failure('not_found')
  const { say } = language
  const seen = reviewed.seen.find(({ photo }) => photo === id) ?? null
  return {
    page: 'sheet',
    title: say('desk.sheet.title', { name: nameOf(reviewed.garment, readerAt(language)) }),
    lead: say('desk.sheet.lead'),
    back: {
      label: say('desk.pile', { number: row.number }),
      href: deskPaths.garment(row.number, n),
    },
    found: seen && foundBeside(seen, language),
    shown: sheetShown(
      {
        picture: reviewed.photos[at]!,
        photo: deskPhotos(reviewed, row.number, language)[at]!,
        seen,
        filled: filled ?? filledAtFirst(seen),
        refused,
        by: (mark) => markedBy(mark, language),
        canTakeBack: Boolean(seen?.sheet),
        postTo: deskPaths.sheet(row.number, n, id),
        hidden: { csrf },
      },
      language,
    ),
  }
}
