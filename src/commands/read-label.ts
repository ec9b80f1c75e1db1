import { readFileSync } from 'node:fs'
import { Failure } from '../base/failures.ts'
import { openLabelReader } from '../photo/label-lane.ts'
import { isClear } from '../photo/label-words.ts'
import { openLane } from '../photo/lane.ts'
import { readLabel } from '../textile/label.ts'
import { readLines } from '../textile/label-lines.ts'
import { eachFile, readBytes } from './output.ts'
import { print } from './print.ts'

/**
 * `read-label <image…>`: what the words on photos of labels say, one document each. `read-label --text "…"`,
 * or `--text -` for standard input: what these words say.
 */
export async function readLabelVerb(given: readonly string[]): Promise<number> {
  const [first, text] = given
  if (first === '--text' && text !== undefined) {
    print(readLabel(text === '-' ? readFileSync(0, 'utf8') : text))
    return 0
  }
  if (first === undefined || first.startsWith('--')) {
    throw new Failure('bad_input', {
      field: 'read-label',
      why: 'name photos of labels, or use --text "the words", or --text -',
    })
  }
  return readPhotos(given)
}

async function readPhotos(files: readonly string[]): Promise<number> {
  const lane = openLane()
  const reader = openLabelReader()
  try {
    return await eachFile(files, async (file) => {
      const { full } = await lane.makeSafe(readBytes(file))
      const seen = await reader.read(full)
      return readLines(seen.lines, { isClear: isClear(seen) })
    })
  } finally {
    await lane.close()
    await reader.close()
  }
}
