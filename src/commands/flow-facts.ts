import { proveTable } from '../flow/prove.ts'
import { readTable } from '../flow/read.ts'
import type { Domains } from '../flow/table-grammar.ts'
import { columns } from '../garment/facts.ts'
import { readStatements } from '../garment/must-hold.ts'
import type { FlowFiles } from '../intake/flow-files.ts'
import { parseFlows } from '../intake/flows-folder.ts'

/** A table as `--facts` tells it: `combinations` of the facts that its rows look at, exactly. */
interface TableFacts {
  readonly table: string
  readonly hit: 'first' | 'collect'
  readonly rows: number
  readonly combinations: number
  readonly reads: readonly string[]
}

interface FlowFacts {
  /** What tables may read: values, from best to worst where that means something, or whole numbers. */
  readonly facts: Domains
  readonly tables: readonly TableFacts[]
  readonly mustHold: readonly { readonly id: string; readonly says: string }[]
}

/** The vocabulary, and what each table makes of it. The files must have passed their proof. */
export function flowFacts(files: FlowFiles): FlowFacts {
  const folder = parseFlows(files)
  return {
    facts: columns(),
    tables: folder.tables.map((source) => {
      const table = readTable(source.value, source)
      const { combinations } = proveTable(table, columns(), source)
      const { hit, rows, reads } = table
      return { table: table.table, hit, rows: rows.length, combinations, reads }
    }),
    mustHold: readStatements(folder.mustHold.value).map(({ id, says }) => ({ id, says })),
  }
}
