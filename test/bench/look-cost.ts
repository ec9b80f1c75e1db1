import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { workerMemory } from '../../src/photo/worker-process.ts'
import { openSet } from '../looks/open-set.ts'
import { growthOf, megabytes, memoryOf, timesOf } from './readings.ts'

const given = z.tuple([
  z.coerce.number().int().positive(),
  z.coerce.number().int().positive().default(10),
  z.coerce.number().int().positive().default(500),
])

/** What is compared, the first what all others are compared with. */
const works = ['bare', 'unmeasured', 'look'] as const
type Work = (typeof works)[number]
const called: Readonly<Record<Work, string>> = {
  bare: 'a smaller copy alone',
  unmeasured: 'looked at, no sheet searched for',
  look: 'looked at',
}

/** Files that each process has seen before time counts. */
const warmUp = 3

/**
 * What looking at a photo costs beside keeping a smaller copy of it, each in a process of its own, file by file
 * in turn: the ratio of times, what memory each takes at most, and whether it grows. The photos of a seed, the
 * first `photos`, until so many `readings` are done.
 */
export async function benchLookCost(told: readonly string[]): Promise<void> {
  const [seed, photos, readings] = given.parse([told[0], told[1], told[2]])
  const folder = fileURLToPath(new URL(`../.out/looks/${seed}/`, import.meta.url))
  if (!existsSync(folder))
    throw new Error(`Draw the photos first: npm run looks -- ${seed} ${photos} --long=4000`)
  const files = openSet(folder)
    .slice(0, photos)
    .map(({ path }) => path)
  const children = works.map((work) => start(work))
  const took = works.map((): number[] => [])
  const memory: number[] = []
  for (let n = 0; n < warmUp + readings; n += 1) {
    const file = files[n % files.length]!
    const times: number[] = []
    for (const child of children) times.push(await ask(child, file))
    if (n < warmUp) continue
    for (const [which, ms] of times.entries()) took[which]!.push(ms)
    memory.push(memoryOf(children.at(-1)!.pid).now)
  }
  const sums = took.map((times) => times.reduce((total, one) => total + one, 0))
  const most = children.map(({ pid }) => memoryOf(pid).most)
  for (const [which, times] of took.entries()) {
    const [long, more] = [sums[which]! / sums[0]!, most[which]! - most[0]!]
    process.stdout.write(
      `${called[works[which]!]}, ${times.length} times: ${timesOf(times)}; ${long.toFixed(2)} times as long as the copy alone; at most ${megabytes(most[which]!)}, ${megabytes(more)} more\n`,
    )
  }
  process.stdout.write(`memory of looking ${growthOf(memory)}\n`)
  for (const child of children) child.disconnect()
}

function start(work: Work): ChildProcess {
  const file = fileURLToPath(new URL('./look-cost-child.ts', import.meta.url))
  return fork(file, [work], {
    env: { ...process.env, ...workerMemory },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  })
}

async function ask(child: ChildProcess, file: string): Promise<number> {
  child.send(file)
  const [ms] = (await once(child, 'message')) as [number]
  return ms
}
