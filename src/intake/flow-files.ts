import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Failure } from '../base/failures.ts'

/** The owner's files as bytes, by their names in the flows folder, with `/` on every system. */
export type FlowFiles = ReadonlyMap<string, Buffer>

/** Reads every YAML file of the folder, once. Throws `flows_invalid` where the folder is missing. */
export function readFlowFiles(folder: string): FlowFiles {
  if (!existsSync(folder)) {
    throw new Failure('flows_invalid', { file: folder, why: 'this folder is missing', line: 1 })
  }
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.replaceAll('\\', '/'))
  return new Map(names.sort().map((name) => [name, readFileSync(join(folder, name))]))
}
