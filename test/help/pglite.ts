import { existsSync } from 'node:fs'
import { readFile, rename, writeFile } from 'node:fs/promises'
import { PGlite } from '@electric-sql/pglite'
import type { PostgresPool } from 'kysely'
import { inject } from 'vitest'
import { newId } from '../../src/base/ids.ts'
import { asFailure } from '../../src/store/trouble.ts'

/** A PostgreSQL inside this process, made from the run's one prepared folder: a fresh one is slow. */
export async function pglitePool(): Promise<PostgresPool> {
  const dump = inject('pgliteDump')
  if (!existsSync(dump)) await prepare(dump)
  return onePool(await PGlite.create({ loadDataDir: new Blob([await readFile(dump)]) }))
}

/** Two workers may both prepare it at first; either's will do. */
async function prepare(dump: string): Promise<void> {
  const fresh = await PGlite.create()
  const packed = await fresh.dumpDataDir('none')
  await fresh.close()
  const draft = `${dump}.${newId()}`
  await writeFile(draft, new Uint8Array(await packed.arrayBuffer()))
  await rename(draft, dump)
}

/** A pool of its one connection: who asks for it waits until it is given back. */
function onePool(db: PGlite): PostgresPool {
  let free: Promise<void> = Promise.resolve()
  return {
    connect: async () => {
      const before = free
      let release = () => {}
      free = new Promise((resolve) => {
        release = resolve
      })
      await before
      return { query: (sql: string, values: unknown[]) => query(db, sql, values), release }
    },
    end: () => db.close(),
  } as unknown as PostgresPool
}

async function query(db: PGlite, sql: string, values: unknown[]) {
  try {
    const { rows, affectedRows } = await db.query(sql, values)
    return { command: /^\s*(\w+)/.exec(sql)?.[1]?.toUpperCase(), rowCount: affectedRows, rows }
  } catch (error) {
    throw asFailure(error)
  }
}
