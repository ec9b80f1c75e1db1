import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import type { Finding } from '../../src/flow/finding.ts'
import { parseSource, type Source } from '../../src/flow/source.ts'
import { examine } from '../../src/intake/examine.ts'
import { type FlowsFolder, readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { learn } from '../../src/intake/knowledge.ts'
import { drawings } from '../../src/papers/drawings/index.ts'
import { flowsFolder } from './app.ts'
import { statements } from './changed-tables.ts'

const today = '2026-06-01'
const drawn = Object.keys(drawings)
const mustHold = 'tables/must-hold.yaml'

export const folder = readFlowsFolder(flowsFolder)

/**
 * What is changed in a file, and the rule that finds it; for another file than the changed one, that
 * file's name stands before the rule. `says` is a part of the finding's message.
 */
export type Mutation = readonly [
  what: string,
  before: string,
  after: string,
  caught: string,
  says?: string,
]

/** Mutations with their names, for `test.each`. */
export const each = (all: readonly Mutation[]) => all.map((one) => [one[0], one] as const)

export const textOf = (file: string): string => readFileSync(join(flowsFolder, file), 'utf8')

const isOnce = (text: string, part: string): boolean => text.split(part).length === 2

/** Replaces what stands there once, or says that this test is lost. */
function changedText(file: string, before: string, after: string): string {
  const text = textOf(file)
  if (!isOnce(text, before)) throw new Error(`${file} has "${before}" not once`)
  return text.replace(before, () => after)
}

const put = (one: Source, changed: Source): Source => (one.file === changed.file ? changed : one)

/** Every source in what the folder holds, at any depth, put through one change. */
function putAll(held: unknown, changed: Source): unknown {
  if (Array.isArray(held)) return held.map((one) => putAll(one, changed))
  if (held instanceof Map)
    return new Map([...held].map(([key, one]) => [key, putAll(one, changed)]))
  if ('file' in (held as object)) return put(held as Source, changed)
  return Object.fromEntries(
    Object.entries(held as object).map(([key, one]) => [key, putAll(one, changed)]),
  )
}

/** The shop's folder with one file saying something else. */
export const folderWith = (file: string, before: string, after: string): FlowsFolder =>
  putAll(folder, parseSource(changedText(file, before, after), file)) as FlowsFolder

/** A row of a table as it stands in its file, from its id to the next row or the end. */
export function rowOf(table: string, id: string): string {
  const text = textOf(`tables/${table}.yaml`)
  const from = text.indexOf(`  - id: ${id}\n`)
  if (from < 0) throw new Error(`${table} has no row "${id}"`)
  const next = text.indexOf('  - id: ', from + 1)
  return text.slice(from, next < 0 ? text.length : next)
}

/** The row before and after one of its cells is changed. */
export function rowWith(
  table: string,
  id: string,
  before: string,
  after: string,
): [before: string, after: string] {
  const row = rowOf(table, id)
  if (!isOnce(row, before)) throw new Error(`${id} has "${before}" not once`)
  return [row, row.replace(before, after)]
}

function orRefused(find: () => readonly Finding[]): readonly Finding[] {
  try {
    return find()
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    const { file, line, why } = error.details
    return [{ file: String(file), line: Number(line), rule: error.code, message: String(why) }]
  }
}

/** What a full examination finds. A refusal counts as a finding, its code as the rule. */
export const faults = (changed: FlowsFolder): readonly Finding[] =>
  orRefused(() => examine(changed, drawn, { today }).findings)

/** What stops the start; nothing where it does not. */
export const refusals = (changed: FlowsFolder): readonly Finding[] =>
  orRefused(() => {
    learn(changed, today)
    return []
  })

/** Proves of the statements the one that is named, if any. */
function provingOnly(rule: string, changed: FlowsFolder): FlowsFolder {
  const { value } = changed.mustHold
  if (!Array.isArray(value)) return changed
  const isRead = statements.some(({ id }) => id === rule)
  const named = value.filter((one) => (one as { id: string }).id === rule)
  return { ...changed, mustHold: { ...changed.mustHold, value: isRead ? named : value } }
}

/** For what is changed beside the flow: without repeated garments no longest path is looked for. */
function withoutLongest(changed: FlowsFolder): FlowsFolder {
  const text = changedText(folder.flow.file, '    repeat: true\n    most: 300\n', '')
  return { ...changed, flow: parseSource(text, folder.flow.file) }
}

/** Changes the file and expects the finding by its rule, its file and what it says. */
export function isCaught(
  file: string,
  [, before, after, caught, says = '']: Mutation,
  look = faults,
): void {
  const end = caught.lastIndexOf(' ')
  const rule = caught.slice(end + 1)
  const isStatement = statements.some(({ id }) => id === rule)
  const changed = provingOnly(rule, folderWith(file, before, after))
  const found = look(file === folder.flow.file ? changed : withoutLongest(changed))
  expect(found).toContainEqual(
    expect.objectContaining({
      file: end > 0 ? caught.slice(0, end) : isStatement ? mustHold : file,
      rule,
      message: expect.stringContaining(says),
    }),
  )
}
