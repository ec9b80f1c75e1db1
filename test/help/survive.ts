import { setTimeout as pause } from 'node:timers/promises'
import { expect } from 'vitest'
import { openStore } from '../../src/store/open.ts'
import { answerAll, pileAnswers } from './chat.ts'
import { type RunningServer, startServer } from './server.ts'
import { newSchema } from './stores.ts'
import { Walker } from './walker.ts'

/** The same numbers each run: a fault that is found can be found again. */
function chance(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32
    return state / 2 ** 32
  }
}

interface Sent {
  readonly idem: string
  readonly value: string
}

type Reached = 'acknowledged' | 'no answer'

/** One answer, as a page that knows its key sends it. Throws where it is refused. */
async function send(url: string, pile: string, { idem, value }: Sent): Promise<Reached> {
  let response: Response
  try {
    response = await fetch(`${url}${pile}/0/not_to_cut`, {
      method: 'POST',
      redirect: 'manual',
      body: new URLSearchParams({ act: 'answer', idem, value }),
    })
  } catch {
    return 'no answer'
  }
  if (response.status === 303) return 'acknowledged'
  throw new Error(`answered ${response.status}: ${await response.text()}`)
}

interface Round {
  readonly acknowledged: Sent[]
  /** Sent again, as nobody could tell whether they had been kept. */
  retried: number
}

/** Answers one after the other, from the second on with a kill ahead; then what was open once more. */
async function answerUntilGone(
  server: RunningServer,
  pile: string,
  round: Round,
  next: () => Sent,
  afterMs: number,
): Promise<RunningServer> {
  const first = next()
  expect(await send(server.url, pile, first)).toBe('acknowledged')
  round.acknowledged.push(first)

  let gone = false
  const killed = pause(afterMs).then(async () => {
    await server.kill()
    gone = true
  })
  let open: Sent | null = null
  while (!gone && !open) {
    const sent = next()
    const reached = await send(server.url, pile, sent)
    if (reached === 'acknowledged') round.acknowledged.push(sent)
    else open = sent
  }
  await killed
  const again = await server.restart()
  if (open) {
    expect(await send(again.url, pile, open)).toBe('acknowledged')
    round.acknowledged.push(open)
    round.retried += 1
  }
  return again
}

interface Siege {
  /** Of the store, as it is printed. */
  readonly name: string
  readonly seed: number
  readonly kills: number
  /** Without it the embedded store is killed. */
  readonly databaseUrl?: string
}

/** Kills a server again and again while it is answered, then compares what was kept with what it acknowledged. */
async function survive({ name, seed, kills, databaseUrl }: Siege): Promise<void> {
  const env = { LOG_LEVEL: 'error', ...(databaseUrl && { DATABASE_URL: databaseUrl }) }
  const random = chance(seed)
  let server = await startServer({ env })
  try {
    const walker = await new Walker(server.url).start()
    await answerAll(walker, pileAnswers, 'not_to_cut')
    const pile = walker.pilePath

    let count = 0
    const next = (): Sent => ({ idem: `answer-${count}-${seed}`, value: `Answer ${count++}` })
    const round: Round = { acknowledged: [], retried: 0 }
    for (let kill = 0; kill < kills; kill += 1) {
      server = await answerUntilGone(server, pile, round, next, random() * 90)
    }
    await server.stop()

    const store = await openStore({
      ...(databaseUrl && { databaseUrl }),
      dataDir: server.dataDir,
    })
    const rows = await store.db.selectFrom('act').selectAll().orderBy('seq').execute()
    const standing = await store.db.selectFrom('standing').selectAll().execute()
    await store.close()

    const kept = rows.filter(({ idem }) => idem.startsWith('answer-'))
    expect(kept.map(({ idem }) => idem)).toEqual(round.acknowledged.map(({ idem }) => idem))
    expect(kept.map(({ act }) => JSON.parse(act).reply.given)).toEqual(
      round.acknowledged.map(({ value }) => value),
    )
    expect(rows.map(({ seq }) => seq)).toEqual(rows.map((_, at) => at + 1))
    expect(standing).toMatchObject([{ seq: rows.length }])
    expect(round.acknowledged.length).toBeGreaterThanOrEqual(kills + round.retried)
    process.stdout.write(
      `${name}: ${kills} kills, ${round.acknowledged.length} answers acknowledged, ${round.retried} of them sent again; lost 0, doubled 0\n`,
    )
  } finally {
    await server.remove()
  }
}

export const killedOnSqlite = (kills: number): Promise<void> =>
  survive({ name: 'SQLite', seed: 20_260_601, kills })

/** Says so where there is no PostgreSQL to be killed on. */
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
    await survive({ name: 'PostgreSQL', seed: 20_260_602, kills, databaseUrl })
  } finally {
    await schema.drop()
  }
}
