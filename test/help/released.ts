import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { sql } from 'kysely'
import { openStore, type Store, storeFile } from '../../src/store/open.ts'
import { openBare, type TestStore } from './stores.ts'

const root = new URL('../releases', import.meta.url).pathname

/** Releases whose stores are kept, oldest first. */
export const releases: readonly string[] = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)
  .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))

/** Keys of the links of a release's piles, and the time at which they were made. */
export interface ReleasedPiles {
  readonly at: number
  readonly begun: string
  readonly review: string
  readonly confirmed: string
  readonly accepted: string
}

export const releasedPiles = (release: string, store: Store['dialect']): ReleasedPiles =>
  JSON.parse(readFileSync(join(root, release, 'piles.json'), 'utf8'))[store]

const unpacked = (release: string, name: string): Buffer =>
  gunzipSync(readFileSync(join(root, release, `${name}.gz`)))

/** The store of a release as it was left, not yet migrated. */
export const releasedStores = [
  [
    'SQLite',
    async (release: string): Promise<TestStore> => {
      const dataDir = mkdtempSync(join(tmpdir(), 'pieceworth-released-'))
      writeFileSync(join(dataDir, storeFile), unpacked(release, storeFile))
      const store = await openStore({ dataDir })
      return {
        store,
        settings: { dataDir },
        end: async () => {
          await store.close()
          rmSync(dataDir, { recursive: true })
        },
      }
    },
  ],
  [
    'PostgreSQL',
    async (release: string): Promise<TestStore> => {
      const opened = await openBare()
      const here = await sql<{ name: string }>`select current_schema() as name`.execute(
        opened.store.db,
      )
      const dump = unpacked(release, 'postgres.sql')
        .toString('utf8')
        .replace(/^(--|\\|SET |SELECT pg_catalog.set_config|CREATE SCHEMA|COMMENT ON).*$/gm, '')
        .replaceAll('public.', `${here.rows[0]!.name}.`)
      for (const statement of dump.split(/;\n/).map((one) => one.trim())) {
        if (statement) await sql.raw(statement).execute(opened.store.db)
      }
      return opened
    },
  ],
] as const
