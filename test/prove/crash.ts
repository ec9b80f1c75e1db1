import { ownCluster } from '../help/cluster.ts'
import { type Held, siege } from './siege.ts'

export interface Crashed {
  readonly sqlite: Omit<Held, 'faults'>
  /** Null: no PostgreSQL is installed here that could be started and killed. */
  readonly postgres: Omit<Held, 'faults'> | null
  readonly database: Omit<Held, 'faults'> | null
  readonly faults: readonly string[]
}

const without = ({ faults: _, ...others }: Held): Omit<Held, 'faults'> => others

/** So many times each of two processes is asked to end and started again, under load: no request may fail. */
export async function roll(rounds: number): Promise<Held> {
  const cluster = await ownCluster()
  if (!cluster) {
    const faults = ['no PostgreSQL is installed here, which two processes need']
    return { kills: 0, acknowledged: { answers: 0, photos: 0, decisions: 0, moves: 0 }, faults }
  }
  try {
    const databaseUrl = await cluster.database('rolling')
    return await siege({ kills: 2 * rounds, seed: 4, processes: 2, databaseUrl, gently: true })
  } finally {
    await cluster.remove()
  }
}

/**
 * Kills the single server on SQLite, one of two on PostgreSQL, and PostgreSQL itself, each so often, and holds what
 * was told to be kept against what is there. Linux alone.
 */
export async function crash(kills: number, ofDatabase: number): Promise<Crashed> {
  const sqlite = await siege({ kills, seed: 1, processes: 1 })
  const cluster = await ownCluster()
  if (!cluster) {
    process.stderr.write(
      'no PostgreSQL is installed here: neither it nor servers on it were killed\n',
    )
    return { sqlite: without(sqlite), postgres: null, database: null, faults: sqlite.faults }
  }
  try {
    const postgres = await siege({
      kills,
      seed: 2,
      processes: 2,
      databaseUrl: await cluster.database('servers'),
    })
    const database = await siege({
      kills: ofDatabase,
      seed: 3,
      processes: 2,
      databaseUrl: await cluster.database('itself'),
      cluster,
    })
    return {
      sqlite: without(sqlite),
      postgres: without(postgres),
      database: without(database),
      faults: [
        ...sqlite.faults.map((one) => `SQLite: ${one}`),
        ...postgres.faults.map((one) => `PostgreSQL: ${one}`),
        ...database.faults.map((one) => `PostgreSQL killed: ${one}`),
      ],
    }
  } finally {
    await cluster.remove()
  }
}
