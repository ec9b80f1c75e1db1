import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { systemClock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { move } from '../keeping/move.ts'
import { holdFolder } from '../store/lock.ts'
import { openStore, storeFile } from '../store/open.ts'
import { withKept } from './kept.ts'
import { print } from './print.ts'

const usage = 'move, with DATA_DIR where the records are and DATABASE_URL where they go'

/** `move`: all records from the file in DATA_DIR to the database of DATABASE_URL, with no server running. */
export async function moveVerb(given: readonly string[]): Promise<number> {
  if (given.length > 0) throw new Failure('bad_input', { field: 'move', why: usage })
  return withKept({ mayBeNew: true }, async ({ config, store, photos }) => {
    const { databaseUrl, dataDir } = config
    if (!databaseUrl) throw new Failure('bad_input', { field: 'move', why: usage })
    if (!existsSync(join(dataDir, storeFile))) throw new Failure('nothing_kept')
    const hold = holdFolder(dataDir)
    const from = await openStore({ dataDir })
    try {
      print({ ok: true, ...(await move({ from, to: store, photos, clock: systemClock })) })
      return 0
    } finally {
      await from.close()
      hold.release()
    }
  })
}
