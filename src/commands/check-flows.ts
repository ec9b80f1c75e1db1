import { Failure } from '../base/failures.ts'
import type { Finding } from '../flow/finding.ts'
import { foldersOf } from '../folders.ts'
import { type FlowFiles, readFlowFiles } from '../intake/flow-files.ts'
import type { Counts } from '../intake/proofs.ts'
import { print } from './print.ts'
import { provenHere } from './proven-here.ts'

const usage = 'check-flows [--facts] [--json]'

interface Examined {
  readonly findings: readonly Finding[]
  readonly counts?: Counts
  /** Whether a kept proof was found. */
  readonly found?: boolean
  readonly files?: FlowFiles
}

/** What can be found in a folder, even one whose files cannot be read. */
async function examined(): Promise<Examined> {
  try {
    const files = readFlowFiles(foldersOf(process.env).flowsDir)
    return { ...(await provenHere(files)), files }
  } catch (error) {
    if (!(error instanceof Failure) || error.code !== 'flows_invalid') throw error
    const { file, line, why } = error.details
    const finding = { file: String(file), line: Number(line), message: String(why) }
    return { findings: [{ ...finding, rule: 'unreadable' }] }
  }
}

/** Loaded only where it is asked for: counting needs every library that proving does. */
const factsOf = async (files: FlowFiles) => ({
  told: (await import('./flow-facts.ts')).flowFacts(files),
})

/**
 * `check-flows [--facts] [--json]`: counts, whether the proof was kept or new, and the seconds since the
 * command began, or findings with exit 2; with `--facts` the vocabulary and
 * the figures of each table too. JSON is its one form.
 */
export async function checkFlowsVerb(given: readonly string[]): Promise<number> {
  const unknown = given.find((one) => one !== '--facts' && one !== '--json')
  if (unknown !== undefined) throw new Failure('bad_input', { field: unknown, why: usage })
  const { findings, counts, files, found } = await examined()
  if (findings.length > 0) {
    print({ ok: false, findings })
    return 2
  }
  const seconds = Number((performance.now() / 1000).toFixed(2))
  const proof = found ? 'kept' : 'new'
  print({
    ok: true,
    ...counts,
    proof,
    seconds,
    ...(given.includes('--facts') && (await factsOf(files!))),
  })
  return 0
}
