import { sql } from 'kysely'
import { z } from 'zod'
import type { Store } from '../../src/store/open.ts'
import { type TableName, tableNames } from '../../src/store/tables.ts'
import { confirmPile, openWorkshop, said } from '../help/workshop.ts'
import { onBothStores } from './stores.ts'

const told = z.tuple([
  z.coerce.number().int().min(2).default(60),
  z.coerce.number().int().positive().default(12),
])
const clock = () => Date.UTC(2026, 10, 1, 9)
const kinds = ['button-shirt', 'tshirt', 'jeans', 'dress', 'jumper', 'uniform']

/** Bytes of each table with its indexes. */
async function sizes({ db, dialect }: Store): Promise<Map<TableName, number>> {
  const found = new Map<TableName, number>()
  for (const name of tableNames) {
    const size =
      dialect === 'postgres'
        ? sql<{ bytes: string }>`select pg_total_relation_size(${name}::regclass) as bytes`
        : sql<{ bytes: number }>`
            select coalesce(sum(pgsize), 0) as bytes from dbstat where name in
              (select name from sqlite_master where tbl_name = ${name})`
    const { rows } = await size.execute(db)
    found.set(name, Number(rows[0]!.bytes))
  }
  return found
}

const rowsOf = async ({ db }: Store, name: TableName): Promise<number> => {
  const { rows } = await sql<{ n: number }>`select count(*) as n from ${sql.table(name)}`.execute(
    db,
  )
  return Number(rows[0]!.n)
}

/**
 * What a confirmed pile of so many garments costs: rows and bytes by table, and this process's time to take it in,
 * as the mean over so many piles; on SQLite, then on PostgreSQL. Photos are not in it.
 */
export async function benchGrowth(given: readonly string[]): Promise<void> {
  const [piles, garments] = told.parse([given[0], given[1]])
  await onBothStores((name, store) => measure(name, store, piles, garments))
}

async function measure(name: string, store: Store, piles: number, garments: number): Promise<void> {
  const workshop = await openWorkshop(store, clock)
  const worn = Array.from({ length: garments }, (_, n) => ({
    kind: said(kinds[n % kinds.length]!),
    size: said('L'),
    name: said(`The ${n + 1}th that was kept`),
  }))
  try {
    await confirmPile(workshop.conversation, worn)
    const before = await sizes(store)
    const spent = process.cpuUsage()
    for (let n = 0; n < piles; n += 1) await confirmPile(workshop.conversation, worn)
    const { user, system } = process.cpuUsage(spent)
    const after = await sizes(store)
    let all = 0
    for (const table of tableNames) {
      const bytes = (after.get(table)! - before.get(table)!) / piles
      all += bytes
      if (bytes <= 0) continue
      const rows = (await rowsOf(store, table)) / (piles + 1)
      process.stdout.write(
        `${name}: ${table}: ${rows.toFixed(1)} rows, ${(bytes / 1024).toFixed(1)} KiB a pile\n`,
      )
    }
    const { rows: acts } = await sql<{ n: number }>`select count(*) as n from act`.execute(store.db)
    const each = Number(acts[0]!.n) / (piles + 1)
    const ms = (user + system) / 1000 / piles
    process.stdout.write(
      `${name}: ${garments} garments, ${each.toFixed(0)} answers: ${(all / 1024).toFixed(0)} KiB a pile; ${ms.toFixed(0)} ms of CPU a pile, ${(ms / each).toFixed(2)} an answer\n`,
    )
  } finally {
    await workshop.close()
  }
}
