import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { sql } from 'kysely'
import { newId } from '../../src/base/ids.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store, type StoreSettings } from '../../src/store/open.ts'
import { middle } from './readings.ts'

const address = process.env.TEST_DATABASE_URL ?? 'postgres://root@127.0.0.1:5432/test'

/** Measures on a new SQLite store, then on a new schema of PostgreSQL; both are taken away again. */
export async function onBothStores(
  measure: (name: string, store: Store, settings: StoreSettings) => Promise<void>,
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-bench-'))
  const schema = `bench_${newId().toLowerCase().replaceAll('-', '_')}`
  const url = new URL(address)
  url.searchParams.set('options', `-csearch_path=${schema}`)
  const outside = await openStore({ databaseUrl: address, dataDir: '' })
  const on = async (name: string, settings: StoreSettings) => {
    const store = await openStore(settings)
    try {
      await migrate(store)
      await measure(name, store, settings)
    } finally {
      await store.close()
    }
  }
  try {
    await sql`create schema ${sql.id(schema)}`.execute(outside.db)
    await on('SQLite', { dataDir: folder })
    await on('PostgreSQL', { databaseUrl: url.href, dataDir: folder })
  } finally {
    await sql`drop schema ${sql.id(schema)} cascade`.execute(outside.db)
    await outside.close()
    rmSync(folder, { recursive: true })
  }
}

/** Runs each in turns, so many rounds and one to get warm, and prints its times beside those of the first. */
export async function inTurns(
  title: string,
  runs: Readonly<Record<string, () => Promise<unknown>>>,
  rounds: number,
): Promise<void> {
  const times = Object.entries(runs).map(([what, run]) => ({ what, run, took: [] as number[] }))
  for (let round = 0; round <= rounds; round += 1) {
    for (const { run, took } of times) {
      const from = performance.now()
      await run()
      if (round > 0) took.push(performance.now() - from)
    }
  }
  const plain = middle(times[0]!.took)
  for (const { what, took } of times) {
    const worst = Math.max(...took)
    process.stdout.write(
      `${title}: ${what}: median ${middle(took).toFixed(1)} ms, longest ${worst.toFixed(1)} ms, ${(middle(took) / plain).toFixed(1)} times ${times[0]!.what}\n`,
    )
  }
}
