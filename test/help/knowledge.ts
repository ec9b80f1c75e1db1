import { readdirSync, readFileSync } from 'node:fs'
import { parse } from 'yaml'
import { type Cell, type Table, tableSchema } from '../../src/flow/table-grammar.ts'
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
  tableSchema.parse(readYaml(`tables/${file}`)),
)

function matches(cell: Cell, value: string | number): boolean {
  if (typeof cell === 'string') return cell === value
  if (Array.isArray(cell)) return cell.includes(value as string)
  if ('not' in cell) return !matches(cell.not, value)
  return (cell.from ?? -Infinity) <= Number(value) && Number(value) <= (cell.to ?? Infinity)
}

const byName = new Map(tables.map((table) => [table.table, table]))

export const decide: Decide = (name, facts) => {
  const { rows, hit } = byName.get(name)!
  const found = rows.filter(({ when }) =>
    Object.entries(when).every(([column, cell]) => matches(cell, facts[column]!)),
  )
  return hit === 'first' ? found.slice(0, 1) : found
}

export const layouts: readonly Layout[] = [
  'quartered-nine-patch',
  'plain-squares',
  'framed-panels',
  'mixed-columns',
].map((id) => readLayout(readYaml(`layouts/${id}.yaml`)))

export const rates = ratesAt(readRates([readYaml('rates/2026-01-01.yaml')]), '2026-06-01')

export const knowledge: Knowledge = {
  decide,
  interfacings: interfacingsOf(rates),
  layouts,
}
