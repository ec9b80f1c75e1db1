import { Failure } from '../base/failures.ts'
import { examine } from './examine.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { type Knowledge, learn } from './knowledge.ts'

/**
 * What a shop knows, its files examined first. Throws `flows_invalid` with the first finding's file,
 * line and message. `today` is YYYY-MM-DD.
 */
export function learnChecked(
  folder: FlowsFolder,
  drawings: Iterable<string>,
  today: string,
): Knowledge {
  const [first] = examine(folder, drawings, { proving: false, today }).findings
  if (first) {
    throw new Failure('flows_invalid', { file: first.file, line: first.line, why: first.message })
  }
  return learn(folder, today)
}
