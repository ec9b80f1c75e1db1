import { isList, namedIn } from './cells.ts'
import { type Finding, nowhere, type Path, type Where } from './finding.ts'
import type { Cell, Domain, Domains, Table } from './table-grammar.ts'

type Note = (rule: string, message: string, path: Path) => void

/** Names in a table that are not there, and cells that can never match. Never throws. */
export function checkTable(table: Table, domains: Domains, where: Where = nowhere): Finding[] {
  const findings: Finding[] = []
  const note: Note = (rule, message, path) =>
    findings.push({ file: where.file, line: where.lineOf(path), rule, message })

  for (const [at, column] of table.reads.entries()) {
    if (!Object.hasOwn(domains, column)) {
      note('unknown-column', `${column} is no fact that is known`, ['reads', at])
    }
    if (table.reads.indexOf(column) < at) {
      note('duplicate-column', `${column} stands twice`, ['reads', at])
    }
  }
  for (const [at, row] of table.rows.entries()) {
    const path = ['rows', at]
    if (table.rows.findIndex(({ id }) => id === row.id) < at) {
      note('duplicate-id', `another row is called ${row.id}`, [...path, 'id'])
    }
    for (const [column, cell] of Object.entries(row.when)) {
      const spot = [...path, 'when', column]
      if (!table.reads.includes(column)) {
        note('unknown-column', `${row.id}: the table does not read ${column}`, spot)
      } else if (Object.hasOwn(domains, column)) {
        const wrong = wrongCell(cell, domains[column]!)
        if (wrong) note('unknown-value', `${row.id}: ${column} ${wrong}`, spot)
      }
    }
    checkOutputs(table, at, note)
  }
  return findings
}

/** What is wrong with a cell of a column; null where nothing is. */
function wrongCell(cell: Cell, domain: Domain): string | null {
  const isRange = typeof cell === 'object' && !Array.isArray(cell) && !('not' in cell)
  if (!isList(domain)) {
    if (!isRange) return 'wants a range of numbers'
    const { from = domain.from, to = domain.to } = cell
    if (from > to) return `holds no number from ${from} to ${to}`
    const isInside = from >= domain.from && to <= domain.to
    return isInside ? null : `goes beyond ${domain.from} to ${domain.to}`
  }
  if (isRange) return 'wants named values'
  const names = namedIn(cell)
  const unknown = names.find((name) => !domain.includes(name))
  if (unknown) return `is never ${unknown}`
  const isAll = 'not' in Object(cell) && domain.every((value) => names.includes(value))
  return isAll ? 'leaves no value' : null
}

function checkOutputs(table: Table, at: number, note: Note): void {
  const { id, give } = table.rows[at]!
  const path = ['rows', at, 'give']
  for (const output of Object.keys(give)) {
    if (table.gives.includes(output)) continue
    note('unknown-output', `${id}: the table does not give ${output}`, [...path, output])
  }
  for (const output of table.gives) {
    if (Object.hasOwn(give, output)) continue
    note('output-missing', `${id} does not give ${output}`, path)
  }
}
