import { Failure } from '../../base/failures.ts'
import type { Review } from '../../desk/review.ts'
import { teardownSheet } from '../../papers/teardown-sheet.ts'
import type { Language } from '../../words/words.ts'
import { kindWords, nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import type { TeardownPage } from './view.ts'

/** The teardown sheet of one garment of a pile. Throws `not_found` where it is not there or not graded. */
export function teardownPage(
  { row, pile, garments }: Review,
  n: number,
  language: Language,
): TeardownPage {
  const garment = garments.find((one) => one.garment.n === n)?.garment
  if (!garment?.grading) throw new Failure('not_found')
  const { code, facts, panels, grading, told } = garment
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
    back: {
      label: language.say('desk.pile', { number: row.number }),
      href: deskPaths.garment(row.number, n),
    },
  }
}
