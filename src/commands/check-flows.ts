import { Failure } from '../base/failures.ts'
import type { Finding } from '../flow/finding.ts'
import { foldersOf } from '../folders.ts'
import { readFlowFiles } from '../intake/flow-files.ts'
import type { Counts } from '../intake/proofs.ts'
import { print } from './print.ts'
import { provenHere } from './proven-here.ts'

const usage = 'check-flows [--facts] [--json]'

/** What can be found in a folder, even one whose files cannot be read. */
async function examined(): Promise<{ findings: readonly Finding[]; counts?: Counts }> {
  try {
    const { flowsDir } = foldersOf(process.env)
    return await provenHere(readFlowFiles(flowsDir))
  } catch (error) {
    if (!(error instanceof Failure) || error.code !== 'flows_invalid') throw error
    const { file, line, why } = error.details
    const finding = { file: String(file), line: Number(line), message: String(why) }
    return { findings: [{ ...finding, rule: 'unreadable' }] }
  }
}

/** `check-flows [--facts] [--json]`: counts, or findings with exit 2. JSON is its one form. */
export async function checkFlowsVerb(given: readonly string[]): Promise<number> {
  const unknown = given.find((one) => one !== '--facts' && one !== '--json')
  if (unknown !== undefined) throw new Failure('bad_input', { field: unknown, why: usage })
  const { findings, counts } = await examined()
  if (findings.length > 0) {
    print({ ok: false, findings })
    return 2
  }
  print({ ok: true, ...counts })
  return 0
}
