import { Failure } from '../base/failures.ts'
import { readConfig } from '../config.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import { countKinds, figuresOf, sourcesOf } from '../intake/sources.ts'
import { print } from './print.ts'

/** What is typed behind the verb: a part of a figure's name, or nothing. */
function partOf(given: readonly string[]): string {
  const option = given.find((one) => one.startsWith('-'))
  if (option) throw new Failure('bad_input', { field: 'sources', why: `knows no ${option}` })
  if (given.length > 1) throw new Failure('bad_input', { field: 'sources', why: 'takes one name' })
  return (given[0] ?? '').toLowerCase()
}

/**
 * `sources [<part of a name>]`: every figure, or those whose name holds that part, with its source and
 * how sure that is. One without a source is refused even where it is not asked for.
 */
export async function sourcesVerb(given: readonly string[]): Promise<number> {
  const part = partOf(given)
  const sources = sourcesOf(figuresOf(readFlowsFolder(readConfig(process.env).flowsDir))).filter(
    ({ figure }) => figure.toLowerCase().includes(part),
  )
  print({ sources, counts: countKinds(sources) })
  return 0
}
