import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { Failure } from '../base/failures.ts'
import { makeFolder } from '../base/make-folder.ts'
import { asFailure, atFault } from './trouble.ts'

export interface Held {
  release(): void
}

/** Beside the store, not in it: other commands may work on the store while a server holds this. */
const lockFile = 'serving.lock'

/**
 * Makes this process the only server of a data folder until it releases it or ends, however it
 * ends: the lock is the operating system's. Throws `folder_in_use` with the folder, or
 * `setting_invalid` where no file can be made.
 */
export function holdFolder(folder: string): Held {
  const file = join(folder, lockFile)
  try {
    makeFolder(folder)
    return lock(file)
  } catch (cause) {
    const failure = asFailure(cause)
    if (failure instanceof Failure && failure.code === 'busy') {
      throw new Failure('folder_in_use', { folder }, { cause })
    }
    throw atFault('sqlite', file, cause)
  }
}

/** An exclusive transaction that never ends: SQLite locks the file portably, Node itself cannot. */
function lock(file: string): Held {
  const db = new DatabaseSync(file, { timeout: 0 })
  try {
    db.exec('begin exclusive')
  } catch (error) {
    db.close()
    throw error
  }
  return { release: () => db.close() }
}
