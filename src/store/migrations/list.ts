import type { Migration } from 'kysely'
import { intakeAndDesk } from './0001-intake-and-desk.ts'
import { clothOfPhotos } from './0002-cloth-of-photos.ts'
import { planMarks } from './0003-plan-marks.ts'
import { labelOfPhotos } from './0004-label-of-photos.ts'
import { lookOfPhotos } from './0005-look-of-photos.ts'
import { sideOfPhotos } from './0006-side-of-photos.ts'
import { messagesAndMail } from './0007-messages-and-mail.ts'
import { custody } from './0008-custody.ts'
import { agreement } from './0009-agreement.ts'
import { waiting } from './0010-waiting.ts'
import { owner } from './0011-owner.ts'
import { flagDecisions } from './0012-flag-decisions.ts'
import { benchRecords } from './0013-bench-records.ts'
import { sheetMarks } from './0014-sheet-marks.ts'
import { laidOut } from './0015-laid-out.ts'
import { useCounts } from './0017-use-counts.ts'
import { keeping } from './0019-keeping.ts'
import { fewerPages } from './0021-fewer-pages.ts'
import { photosByQuestion } from './0022-photos-by-question.ts'

/** In order, which is law: a migration that was released is never changed, renamed or moved. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0001-intake-and-desk': intakeAndDesk,
  '0002-cloth-of-photos': clothOfPhotos,
  '0003-plan-marks': planMarks,
  '0004-label-of-photos': labelOfPhotos,
  '0005-look-of-photos': lookOfPhotos,
  '0006-side-of-photos': sideOfPhotos,
  '0007-messages-and-mail': messagesAndMail,
  '0008-custody': custody,
  '0009-agreement': agreement,
  '0010-waiting': waiting,
  '0011-owner': owner,
  '0012-flag-decisions': flagDecisions,
  '0013-bench-records': benchRecords,
  '0014-sheet-marks': sheetMarks,
  '0015-laid-out': laidOut,
  '0017-use-counts': useCounts,
  '0019-keeping': keeping,
  '0021-fewer-pages': fewerPages,
  '0022-photos-by-question': photosByQuestion,
}
