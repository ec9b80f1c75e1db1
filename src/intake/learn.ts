import type { FlowFiles } from './flow-files.ts'
import { parseFlows, provenFlows } from './flows-folder.ts'
import { type Knowledge, learn } from './knowledge.ts'
import { type Around, type Proven, proven, refusalOf } from './proven.ts'

/**
 * What a shop knows, its files proven first. Throws `flows_invalid` with the first finding's file, line
 * and message.
 */
export async function learnProven(
  files: FlowFiles,
  around: Around,
): Promise<{ knowledge: Knowledge; proof: Proven }> {
  const proof = await proven(files, around)
  const [first] = proof.findings
  if (first) throw refusalOf(first)
  const folder = proof.values ? provenFlows(proof.values) : parseFlows(files)
  return { knowledge: learn(folder, around.today), proof }
}
