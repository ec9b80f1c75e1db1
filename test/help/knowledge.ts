import { readdirSync, readFileSync } from 'node:fs'
import { parse } from 'yaml'
import { readTable } from '../../src/flow/read.ts'
import { compileTable, decide as decideBy } from '../../src/flow/table.ts'
import type { Table } from '../../src/flow/table-grammar.ts'
import { type Act, readActs } from '../../src/garment/better-acts.ts'
import { columns } from '../../src/garment/facts.ts'
import type { Decide, Knowledge } from '../../src/garment/knowledge.ts'
import { type Layout, readLayout } from '../../src/quilt/layout.ts'
import { interfacingsOf, ratesAt, readRates } from '../../src/quilt/rates.ts'

const folder = new URL('../../flows/tables/', import.meta.url)

export const readYaml = (path: string): unknown =>
  parse(readFileSync(new URL(`../../flows/${path}`, import.meta.url), 'utf8'))

const tableFiles = readdirSync(folder).filter(
  (file) => file.endsWith('.yaml') && file !== 'must-hold.yaml',
)

export const tables: readonly Table[] = tableFiles.map((file) =>
  readTable(readYaml(`tables/${file}`)),
)

/** Decisions from tables of one's own, for tests that break a table on purpose. */
export function decideFrom(some: readonly Table[]): Decide {
  const compiled = new Map(some.map((table) => [table.table, compileTable(table, columns())]))
  return (name, facts) => decideBy(compiled.get(name)!, facts)
}

export const layouts: readonly Layout[] = [
  'quartered-nine-patch',
  'plain-squares',
  'framed-panels',
  'mixed-columns',
].map((id) => readLayout(readYaml(`layouts/${id}.yaml`)))

export const rates = ratesAt(readRates([readYaml('rates/2026-01-01.yaml')]), '2026-06-01')

export const knowledge: Knowledge = {
  decide: decideFrom(tables),
  interfacings: interfacingsOf(rates),
  layouts,
}

/** What may be found out or done to better a garment. */
export const acts: readonly Act[] = readActs(readYaml('better.yaml'))
