import { readFileSync } from 'node:fs'
import { Failure } from '../base/failures.ts'
import { readWords } from '../garment/words/read-words.ts'
import { eachFile, readBytes } from './output.ts'
import { print } from './print.ts'

/**
 * `read-words --text "…"`: what a customer's own line says of one garment; `--text -` reads standard input.
 * `read-words <file…>`: the line in each file.
 */
export async function readWordsVerb(given: readonly string[]): Promise<number> {
  const [first, text] = given
  if (first === '--text' && text !== undefined) {
    print(readWords(text === '-' ? readFileSync(0, 'utf8') : text))
    return 0
  }
  if (first === undefined || first.startsWith('--')) {
    throw new Failure('bad_input', {
      field: 'read-words',
      why: 'use --text "the words", or --text -, or name files that hold them',
    })
  }
  return eachFile(given, (file) => readWords(Buffer.from(readBytes(file)).toString('utf8')))
}
