import { Failure } from '../../base/failures.ts'
import type { Review } from '../../desk/review.ts'
import { teardownSheet } from '../../papers/teardown-sheet.ts'
import type { Language } from '../../words/words.ts'
import { kindWords, nameOf } from '../chat/present-garment.ts'
import { markedPhotos, spotWords } from '../chat/present-spots.ts'
import { custodyPaths } from './custody-paths.ts'
import { deskPaths } from './paths.ts'
import { deskPhotos, readerAt } from './present-garment.ts'
import type { TeardownPage } from './view.ts'

/** The teardown sheet of one garment of a pile. Throws `not_found` where it is not there or not graded. */
export function teardownPage(
  { row, pile, garments }: Review,
  n: number,
  language: Language,
): TeardownPage {
  const reviewed = garments.find((one) => one.garment.n === n)
  const grading = reviewed?.garment.grading
  if (!reviewed || !grading) throw new Failure('not_found')
  const { garment, photos } = reviewed
  const { code, facts, panels, told } = garment
  const reader = readerAt(language)
  const { size } = told
  return {
    page: 'teardown',
    title: language.say('bench.title', { code }),
    sheet: teardownSheet(
      {
        code,
        name: nameOf(garment, reader),
        kind: kindWords(garment, reader) ?? '',
        size: size === 'unknown' ? null : size,
        facts,
        panels,
        grading,
      },
      pile.recipient,
      language,
    ),
    marked: markedPhotos(photos, deskPhotos(reviewed, row.number, language), told.spots).filter(
      ({ marks }) => marks.length > 0,
    ),
    spots: told.spots.map((spot, i) =>
      language.say('bench.spot', { n: i + 1, what: spotWords(spot, language.say) }),
    ),
    record: {
      label: language.say('records.open'),
      href: custodyPaths.record(row.number, n),
    },
    bench: {
      label: language.say('printed.sheets.bench'),
      href: deskPaths.benchSheet(row.number, n),
    },
    back: {
      label: language.say('desk.pile', { number: row.number }),
      href: deskPaths.garment(row.number, n),
    },
  }
}
