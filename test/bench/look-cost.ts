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

/** Files that each process has seen before time counts. */
const warmUp = 3

/**
 * What looking at a photo costs beside keeping a smaller copy of it, each in a process of its own, file by file
 * in turn: the ratio of times, what memory each takes at most, and whether it grows. The photos of a seed, the
 * first `most`, until so many `readings` are done.
 */
export async function benchLookCost(told: readonly string[]): Promise<void> {
  const [seed, most, readings] = given.parse([told[0], told[1], told[2]])
  const folder = fileURLToPath(new URL(`../.out/looks/${seed}/`, import.meta.url))
  if (!existsSync(folder))
    throw new Error(`Draw the photos first: npm run looks -- ${seed} ${most} --long=4000`)
  const files = openSet(folder)
    .slice(0, most)
    .map(({ path }) => path)
  const [bare, look] = [start('bare'), start('look')]
  const took: Record<'bare' | 'look', number[]> = { bare: [], look: [] }
  const memory: number[] = []
  for (let n = 0; n < warmUp + readings; n += 1) {
    const file = files[n % files.length]!
    const times = { bare: await ask(bare, file), look: await ask(look, file) }
    if (n < warmUp) continue
    took.bare.push(times.bare)
    took.look.push(times.look)
    memory.push(memoryOf(look.pid).now)
  }
  const sum = (times: readonly number[]) => times.reduce((total, one) => total + one, 0)
  const [one, other] = [memoryOf(bare.pid).most, memoryOf(look.pid).most]
  process.stdout.write(
    `a smaller copy alone, ${took.bare.length} times: ${timesOf(took.bare)}; at most ${megabytes(one)}\n` +
      `looked at, ${took.look.length} times: ${timesOf(took.look)}; at most ${megabytes(other)}, ${megabytes(other - one)} more\n` +
      `looking to copying: ${(sum(took.look) / sum(took.bare)).toFixed(2)} times as long\n` +
      `memory of looking ${growthOf(memory)}\n`,
  )
  bare.disconnect()
  look.disconnect()
}

function start(work: 'bare' | 'look'): ChildProcess {
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
