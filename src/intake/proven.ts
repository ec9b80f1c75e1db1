import { Failure } from '../base/failures.ts'
import type { Finding } from '../flow/finding.ts'
import type { FlowFiles } from './flow-files.ts'
import { type Counts, findProof, keepProof, type Proof, proofKey } from './proofs.ts'

export interface Around {
  /** Names that a flow may use; asked for only where the files must be proven. */
  readonly drawings: () => Promise<Iterable<string>>
  /** YYYY-MM-DD: chooses the interfacings on sale. */
  readonly today: string
  /** Where proofs are kept. */
  readonly folders: readonly string[]
}

export interface Proven {
  /** Of the proof, in short, for logs. */
  readonly name: string
  /** Whether a kept proof was found; if not, the files were proven now. */
  readonly found: boolean
  readonly findings: readonly Finding[]
  readonly counts: Counts
  /** What the files say, where a kept proof tells it. */
  readonly values: Proof['values'] | null
}

/**
 * The owner's files, proven: by a kept proof of the very same files, or now, which takes seconds. A
 * proof without findings is kept. What only proving needs is loaded only for it.
 */
export async function proven(files: FlowFiles, around: Around): Promise<Proven> {
  const { today, folders } = around
  const key = proofKey(files)
  const name = key.slice(0, 12)
  const kept = findProof(key, today, folders)
  if (kept) {
    return { name, found: true, findings: [], counts: kept.counts, values: kept.values }
  }

  const [{ parseFlows, valuesOf }, { examine }, { onSale }] = await Promise.all([
    import('./flows-folder.ts'),
    import('./examine.ts'),
    import('./knowledge.ts'),
  ])
  const folder = parseFlows(files)
  const { findings, counts } = examine(folder, await around.drawings(), { today })
  if (findings.length === 0) {
    const values = valuesOf(folder)
    keepProof({ key, ...onSale(folder, today), counts, values }, folders)
  }
  return { name, found: false, findings, counts, values: null }
}

/** What an example comes to in one line; the chain behind it is told by `check-flows`. */
const toldOfExample = ['facts', 'step', 'must', 'cameOut'] as const

function inShort(example: string | object): string {
  if (typeof example === 'string') return example
  const told = new Map(Object.entries(example))
  return toldOfExample
    .filter((name) => told.has(name))
    .map((name) => `${name} ${JSON.stringify(told.get(name))}`)
    .join(', ')
}

/** The failure that a first finding is refused with: its file, its line and what is wrong. */
export const refusalOf = ({ file, line, message, example }: Finding): Failure =>
  new Failure('flows_invalid', {
    file,
    line,
    why: example === undefined ? message : `${message} (${inShort(example)})`,
  })
