import { readFileSync } from 'node:fs'
import { Failure } from '../base/failures.ts'
import { readLabel } from '../textile/label.ts'
import { print } from './print.ts'

/** `read-label --text "…"`, or `--text -` for standard input: what a label's words say. */
export async function readLabelVerb(given: readonly string[]): Promise<number> {
  const [option, text] = given
  if (option !== '--text' || text === undefined) {
    throw new Failure('bad_input', {
      field: 'read-label',
      why: 'use --text "the words", or --text -',
    })
  }
  print(readLabel(text === '-' ? readFileSync(0, 'utf8') : text))
  return 0
}
