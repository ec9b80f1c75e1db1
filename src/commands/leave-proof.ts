import { fileURLToPath } from 'node:url'
import { readFlowFiles } from '../intake/flow-files.ts'
import { builtProofs } from '../intake/proofs.ts'
import { proven } from '../intake/proven.ts'
import { aroundHere } from './proven-here.ts'

/*
 * The last step of a build: proves the flows that come with the program and leaves the proof beside it,
 * so that a first start need not. Files that fail are told and leave no proof: the start refuses them.
 */
const flows = fileURLToPath(new URL('../../flows', import.meta.url))
const around = { ...aroundHere(), folders: [builtProofs] }
try {
  const { findings } = await proven(readFlowFiles(flows), around)
  for (const { file, line, message } of findings) tell(`${file}, line ${line}: ${message}`)
} catch (error) {
  tell(String(error))
}

function tell(line: string): void {
  process.stderr.write(`no proof of the flows: ${line}\n`)
}
