import { Failure } from '../base/failures.ts'
import { readConfig } from '../config.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import { countKinds, figuresOf, sourcesOf } from '../intake/sources.ts'
import { print } from './output.ts'

/** `sources`: every figure with its source and how sure that is. */
export async function sourcesVerb(given: readonly string[]): Promise<number> {
  if (given.length > 0) throw new Failure('bad_input', { field: 'sources', why: 'takes nothing' })
  const sources = sourcesOf(figuresOf(readFlowsFolder(readConfig(process.env).flowsDir)))
  print({ sources, counts: countKinds(sources) })
  return 0
}
