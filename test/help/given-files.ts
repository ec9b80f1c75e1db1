import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll } from 'vitest'

/**
 * Writes files for the tests of one test file into a folder that is gone after them: text as it is, other
 * content as JSON. Gives the file's path; `folder()` is the folder itself.
 */
export function givenFiles() {
  let folder: string
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'pieceworth-given-'))
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return {
    folder: () => folder,
    file(name: string, content: unknown): string {
      const path = join(folder, name)
      writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content))
      return path
    },
  }
}
