import { accessSync, constants, statSync } from 'node:fs'
import { Failure } from './base/failures.ts'
import { makeFolder } from './base/make-folder.ts'

/**
 * Mails and the owner's drafts stand in it, wherever the records are. Made if need be, for this account alone.
 * Throws `setting_invalid`.
 */
export function useDataFolder(folder: string): void {
  try {
    makeFolder(folder)
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK)
  } catch (cause) {
    const message = `the folder ${folder} cannot be made, or this account may not write there`
    throw new Failure('setting_invalid', { setting: 'DATA_DIR', message }, { cause })
  }
}

/** Those of the folders that other accounts of the machine may look into. */
export const openToOthers = (folders: readonly string[]): string[] =>
  // Elsewhere than on POSIX systems the mode says nothing of other accounts.
  process.platform === 'win32' ? [] : folders.filter((one) => (statSync(one).mode & 0o077) !== 0)
