import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { sql } from 'kysely'
import { z } from 'zod'
import { days } from '../../src/base/clock.ts'
import { newId } from '../../src/base/ids.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { fillWaiting } from '../../src/intake/waiting.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { queuePile } from '../help/desk.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { openWorkshop } from '../help/workshop.ts'
import { middle } from './readings.ts'

const given = z.tuple([
  z.coerce.number().int().positive().default(5000),
  z.coerce.number().int().positive().default(60),
])
const now = Date.UTC(2026, 10, 1, 9)
const clock = () => now
const password = 'needle and thimble'

const address = process.env.TEST_DATABASE_URL ?? 'postgres://root@127.0.0.1:5432/test'

/**
 * How long the desk's first page takes at the server with so many piles, all of them waiting, beside a bare select
 * of as many rows by an index, in turns on the same store: SQLite, then PostgreSQL.
 */
export async function benchDesk(told: readonly string[]): Promise<void> {
  const [piles, rounds] = given.parse([told[0], told[1]])
  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-bench-'))
  const schema = `bench_${newId().toLowerCase().replaceAll('-', '_')}`
  const url = new URL(address)
  url.searchParams.set('options', `-csearch_path=${schema}`)
  const outside = await openStore({ databaseUrl: address, dataDir: '' })
  try {
    await sql`create schema ${sql.id(schema)}`.execute(outside.db)
    await measure('SQLite', await openStore({ dataDir: folder }), piles, rounds)
    await measure(
      'PostgreSQL',
      await openStore({ databaseUrl: url.href, dataDir: '' }),
      piles,
      rounds,
    )
  } finally {
    await sql`drop schema ${sql.id(schema)} cascade`.execute(outside.db)
    await outside.close()
    rmSync(folder, { recursive: true })
  }
}

async function measure(name: string, store: Store, piles: number, rounds: number): Promise<void> {
  await migrate(store)
  await store.transaction(async (trx) => {
    for (let number = 1; number <= piles; number += 1) {
      await queuePile(trx, {
        number,
        confirmedAt: now - days(1 + ((number * 7919) % 60)),
        needBy: number % 3 ? now + days((number * 104_729) % 200) : null,
        grades: ['sound', 'care', number % 2 ? 'eyes' : 'sound', 'sound', 'sound', 'home'],
        who: `Ana ${number}`,
      })
    }
  })
  await fillWaiting(store.db)
  const workshop = await openWorkshop(store, clock)
  try {
    const email = 'marta@lantern-street.example'
    await addAccount(store, clock, { email, name: 'Marta', role: 'staff', password })
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email, password })
    const bare = () =>
      store.db
        .selectFrom('waiting')
        .selectAll()
        .where('on_whom', '=', 'us')
        .orderBy('since')
        .limit(50)
        .execute()
    const pages: Record<string, number[]> = {
      'a bare select by the index': [],
      'first page': [],
      'last page': [],
      'narrowed by a name': [],
      'narrowed to what needs eyes': [],
    }
    const last = Math.ceil(piles / 50)
    const runs = [
      bare,
      () => visitor.get('/desk'),
      () => visitor.get(`/desk?page=${last}`),
      () => visitor.get(`/desk?text=Ana ${piles}`),
      () => visitor.get('/desk?only=eyes'),
    ]
    for (let round = 0; round <= rounds; round += 1) {
      for (const [i, run] of runs.entries()) {
        const from = performance.now()
        await run()
        // The first round is for getting warm.
        if (round > 0) Object.values(pages)[i]!.push(performance.now() - from)
      }
    }
    const [plain] = Object.values(pages).map(middle)
    for (const [what, took] of Object.entries(pages)) {
      const worst = Math.max(...took)
      process.stdout.write(
        `${name}, ${piles} piles: ${what}: median ${middle(took).toFixed(1)} ms, longest ${worst.toFixed(1)} ms, ${(middle(took) / plain!).toFixed(1)} times the bare select\n`,
      )
    }
  } finally {
    await workshop.close()
    await store.close()
  }
}
