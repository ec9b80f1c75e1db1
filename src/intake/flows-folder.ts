import { Failure } from '../base/failures.ts'
import { nowhere } from '../flow/finding.ts'
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

/** Puts sources in their places by their files' names. Throws `flows_invalid` where one is missing. */
function inPlace(names: readonly string[], read: (name: string) => Source): FlowsFolder {
  const source = (name: string): Source => {
    if (names.includes(name)) return read(name)
    throw new Failure('flows_invalid', { file: name, why: 'this file is missing', line: 1 })
  }
  const all = (folder: string, leaveOut = ''): Source[] => {
    const inside = names.filter(
      (name) => name.slice(0, name.lastIndexOf('/')) === folder && name !== leaveOut,
    )
    if (inside.length > 0) return inside.map(source)
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

/** Parses the files' text. Throws `flows_invalid` where one is missing; what is no YAML is a finding. */
export const parseFlows = (files: FlowFiles): FlowsFolder =>
  inPlace([...files.keys()], (name) => parseSource(files.get(name)!.toString('utf8'), name))

const sourcesOf = ({ words, ...others }: FlowsFolder): Source[] => [
  ...Object.values(others).flat(),
  ...Object.values(words).flatMap((one) => [...one.values()]),
]

/** What each file says, as plain data, by its name. */
export const valuesOf = (folder: FlowsFolder): Readonly<Record<string, unknown>> =>
  Object.fromEntries(sourcesOf(folder).map(({ file, value }) => [file, value]))

/** Files that were proven, from what a proof tells of them: nothing is to be found in them, so they know no lines. */
export const provenFlows = (values: Readonly<Record<string, unknown>>): FlowsFolder =>
  inPlace(Object.keys(values), (file) => ({
    ...nowhere,
    file,
    value: values[file],
    findings: [],
  }))

/** Reads and parses every file of the folder. Throws as reading and parsing do. */
export const readFlowsFolder = (folder: string): FlowsFolder => parseFlows(readFlowFiles(folder))
