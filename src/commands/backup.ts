import { systemClock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { backUp } from '../keeping/backup.ts'
import { withKept } from './kept.ts'
import { print } from './print.ts'

/** `backup <file>`: everything that lasts in one new file, while others go on working. */
export async function backupVerb(given: readonly string[]): Promise<number> {
  const [file, ...more] = given
  if (!file || more.length > 0) {
    throw new Failure('bad_input', { field: 'backup', why: 'backup <file>, one that is not there' })
  }
  return withKept({ mayBeNew: false }, async ({ store, photos }) => {
    print({ ok: true, ...(await backUp({ store, photos, clock: systemClock }, file)) })
    return 0
  })
}
