import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Failure } from '../base/failures.ts'
import { parseSource, type Source } from '../flow/source.ts'

/** The owner's files, as read from the flows folder. */
export interface FlowsFolder {
  readonly shop: Source
  readonly flow: Source
  readonly tables: readonly Source[]
  readonly mustHold: Source
  readonly better: Source
  readonly layouts: readonly Source[]
  readonly rates: readonly Source[]
  /** Words by subject and language: `intake` and `trade`. */
  readonly words: Readonly<Record<'intake' | 'trade', ReadonlyMap<string, Source>>>
}

/** Reads every file of the folder. Throws `flows_invalid` where a file or folder is missing. */
export function readFlowsFolder(folder: string): FlowsFolder {
  const source = (name: string): Source => {
    const path = join(folder, name)
    if (!existsSync(path)) {
      throw new Failure('flows_invalid', { file: path, why: 'this file is missing', line: 1 })
    }
    return parseSource(readFileSync(path, 'utf8'), name)
  }
  const all = (name: string, leaveOut: readonly string[] = []): Source[] => {
    const path = join(folder, name)
    if (!existsSync(path)) {
      throw new Failure('flows_invalid', { file: path, why: 'this folder is missing', line: 1 })
    }
    return readdirSync(path)
      .filter((file) => file.endsWith('.yaml') && !leaveOut.includes(file))
      .sort()
      .map((file) => source(join(name, file)))
  }
  const words = (name: string) =>
    new Map(all(name).map((one) => [one.file.slice(name.length + 1, -'.yaml'.length), one]))

  return {
    shop: source('shop.yaml'),
    flow: source('intake/flow.yaml'),
    tables: all('tables', ['must-hold.yaml']),
    mustHold: source('tables/must-hold.yaml'),
    better: source('better.yaml'),
    layouts: all('layouts'),
    rates: all('rates'),
    words: { intake: words('intake/words'), trade: words('tables/words') },
  }
}
