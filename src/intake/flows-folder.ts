import { Failure } from '../base/failures.ts'
import { parseSource, type Source } from '../flow/source.ts'
import { type FlowFiles, readFlowFiles } from './flow-files.ts'

/** The owner's files, as read from the flows folder. */
export interface FlowsFolder {
  readonly shop: Source
  readonly flow: Source
  /** How many answers a garment may be asked for, by named example. */
  readonly pathLimits: Source
  readonly tables: readonly Source[]
  readonly mustHold: Source
  readonly better: Source
  readonly layouts: readonly Source[]
  readonly rates: readonly Source[]
  /** Words by subject and language: `intake` and `trade`. */
  readonly words: Readonly<Record<'intake' | 'trade', ReadonlyMap<string, Source>>>
}

/** Parses the files' text. Throws `flows_invalid` where one is missing; what is no YAML is a finding. */
export function parseFlows(files: FlowFiles): FlowsFolder {
  const source = (name: string): Source => {
    const bytes = files.get(name)
    if (bytes) return parseSource(bytes.toString('utf8'), name)
    throw new Failure('flows_invalid', { file: name, why: 'this file is missing', line: 1 })
  }
  const all = (folder: string, leaveOut = ''): Source[] => {
    const names = [...files.keys()].filter(
      (name) => name.slice(0, name.lastIndexOf('/')) === folder && name !== leaveOut,
    )
    if (names.length > 0) return names.map(source)
    throw new Failure('flows_invalid', { file: folder, why: 'no file is in this folder', line: 1 })
  }
  const words = (name: string) =>
    new Map(all(name).map((one) => [one.file.slice(name.length + 1, -'.yaml'.length), one]))

  return {
    shop: source('shop.yaml'),
    flow: source('intake/flow.yaml'),
    pathLimits: source('intake/limits.yaml'),
    tables: all('tables', 'tables/must-hold.yaml'),
    mustHold: source('tables/must-hold.yaml'),
    better: source('better.yaml'),
    layouts: all('layouts'),
    rates: all('rates'),
    words: { intake: words('intake/words'), trade: words('tables/words') },
  }
}

/** Reads and parses every file of the folder. Throws as reading and parsing do. */
export const readFlowsFolder = (folder: string): FlowsFolder => parseFlows(readFlowFiles(folder))
