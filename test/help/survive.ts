import { expect } from 'vitest'
import { type Siege, siege } from '../prove/siege.ts'
import { newSchema } from './stores.ts'

/** Nothing that was told to be kept is lost or doubled when servers are killed under load. */
async function survive(name: string, asked: Siege): Promise<void> {
  const { faults, acknowledged, kills } = await siege(asked)
  expect(faults).toEqual([])
  expect(kills).toBe(asked.kills)
  const told = Object.entries(acknowledged).map(([what, count]) => `${count} ${what}`)
  process.stdout.write(`${name}: ${kills} kills, ${told.join(', ')}; lost 0, doubled 0\n`)
}

export const killedOnSqlite = (kills: number): Promise<void> =>
  survive('SQLite', { kills, seed: 20_260_601, processes: 1 })

/** One of two. Says so where there is no PostgreSQL to be killed on. */
export async function killedOnPostgres(kills: number): Promise<void> {
  const schema = await newSchema()
  if (!schema) {
    process.stdout.write(
      'PostgreSQL: no server was there, so nothing was killed on it; PGlite lives inside one process\n',
    )
    return
  }
  try {
    const { databaseUrl } = schema
    await survive('PostgreSQL', { kills, seed: 20_260_602, processes: 2, databaseUrl })
  } finally {
    await schema.drop()
  }
}
