import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { Failure } from '../base/failures.ts'
import { makeFolder } from '../base/make-folder.ts'
import { type Erasure, ledgerFile, readLedger, writeLedger } from '../keeping/erasures.ts'
import { openBackup } from '../keeping/read-backup.ts'
import { restore } from '../keeping/restore.ts'
import { holdFolder } from '../store/lock.ts'
import { type Kept, withKept } from './kept.ts'
import { print } from './print.ts'

const usage = 'restore <file> [--erasures <file>]…'

interface Asked {
  readonly file: string
  readonly ledgers: readonly string[]
}

function readArguments(given: readonly string[]): Asked {
  const wrong = (cause?: unknown) =>
    new Failure('bad_input', { field: 'restore', why: usage }, { cause })
  try {
    const { positionals, values } = parseArgs({
      args: [...given],
      allowPositionals: true,
      options: { erasures: { type: 'string', multiple: true, default: [] } },
    })
    const [file, ...more] = positionals
    if (!file || more.length > 0) throw wrong()
    return { file, ledgers: values.erasures }
  } catch (cause) {
    throw cause instanceof Failure ? cause : wrong(cause)
  }
}

/**
 * `restore <file>`: a backup into records and photos that are empty. What was erased since is erased again, as the
 * ledger in the data folder and those that are named tell it.
 */
export async function restoreVerb(given: readonly string[]): Promise<number> {
  const { file, ledgers } = readArguments(given)
  const backup = await openBackup(file)
  try {
    return await withKept({ mayBeNew: true }, (kept) => restoreInto(kept, backup, ledgers))
  } finally {
    await backup.close()
  }
}

async function restoreInto(
  { config, store, photos }: Kept,
  backup: Awaited<ReturnType<typeof openBackup>>,
  ledgers: readonly string[],
): Promise<number> {
  const { dataDir, databaseUrl } = config
  makeFolder(dataDir)
  const hold = databaseUrl ? null : holdFolder(dataDir)
  try {
    const own = join(dataDir, ledgerFile)
    const ledger: Erasure[] = []
    for (const one of [...(existsSync(own) ? [own] : []), ...ledgers]) {
      ledger.push(...(await readLedger(one)))
    }
    const restored = await restore({ store, photos, ledger }, backup)
    await writeLedger(store.db, dataDir)
    print({ ok: true, ...restored })
    return 0
  } finally {
    hold?.release()
  }
}
