import { existsSync, mkdirSync } from 'node:fs'
import { dirname, resolve } from 'node:path'

/**
 * Makes a folder and those above it, for this account alone unless `mode` lets others in (as far as the process's
 * umask does); one that is there stays as it is. Throws what the system says against it. Node's own `recursive` never ends where a folder refuses a new one with ENOENT, as
 * `/proc` does.
 */
export function makeFolder(folder: string, mode = 0o700): void {
  const missing: string[] = []
  for (let at = resolve(folder); !existsSync(at) && dirname(at) !== at; at = dirname(at)) {
    missing.unshift(at)
  }
  for (const one of missing) {
    try {
      mkdirSync(one, { mode })
    } catch (error) {
      // Another process may have made it meanwhile.
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
    }
  }
}
