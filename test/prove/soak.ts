import { mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { setTimeout as pause } from 'node:timers/promises'
import { memoryOf } from '../bench/readings.ts'
import { startServer } from '../help/server.ts'
import { type Growth, grownBy, growthIn } from './growth.ts'
import { clerkCookie, clerkTurn, playPile } from './load.ts'

const out = 'test/.out'
const everyMs = 10_000

interface Reading {
  /** Since the start. */
  readonly minutes: number
  readonly megabytes: number
  readonly handles: number
}

export interface Soaked {
  readonly minutes: number
  readonly requests: number
  readonly piles: number
  readonly refused: number
  readonly failed: readonly string[]
  /** In the second fifth of the time and in the last one. */
  readonly megabytes: Omit<Growth, 'grew'>
  readonly handles: Omit<Growth, 'grew'>
  readonly longestMs: number
  /** What that was. */
  readonly longest: string
  readonly graph: string
}

const handlesOf = (pid: number): number => readdirSync(`/proc/${pid}/fd`).length

/** Mixed load on the built server for so many minutes: what it holds in memory and open, with a graph. Linux alone. */
export async function soak(minutes: number, customers: number): Promise<Soaked> {
  const server = await startServer({ env: { LOG_LEVEL: 'error' } })
  const { pid } = server
  const cookie = await clerkCookie({ dataDir: server.dataDir }, 'owner')
  const readings: Reading[] = []
  const failed: string[] = []
  let [requests, piles, refused, longestMs, longest] = [0, 0, 0, 0, '']
  const from = performance.now()
  const until = from + minutes * 60_000
  const done = (what: string, ms: number, status: number) => {
    requests += 1
    if (ms > longestMs) [longestMs, longest] = [ms, what]
    if (status === 503 || status === 429) refused += 1
  }
  const goOn = async (work: () => Promise<unknown>) => {
    while (performance.now() < until) {
      try {
        await work()
      } catch (error) {
        failed.push(error instanceof Error ? error.message : String(error))
        await pause(1000)
      }
    }
  }
  const watching = (async () => {
    while (performance.now() < until) {
      readings.push({
        minutes: (performance.now() - from) / 60_000,
        megabytes: memoryOf(pid).now,
        handles: handlesOf(pid),
      })
      await pause(everyMs)
    }
  })()
  try {
    await Promise.all([
      watching,
      ...Array.from({ length: customers }, () =>
        goOn(async () => {
          await playPile(server.url, 3, done)
          piles += 1
        }),
      ),
      goOn(async () => {
        await clerkTurn(server.url, cookie, done)
        await pause(500)
      }),
    ])
    const memory = growthIn(readings.map(({ megabytes }) => megabytes))
    const open = growthIn(readings.map(({ handles }) => handles))
    if (memory.grew) failed.push(grownBy('memory, MB,', memory))
    if (open.grew) failed.push(grownBy('open handles', open))
    mkdirSync(out, { recursive: true })
    const graph = `${out}/soak.svg`
    writeFileSync(graph, drawn(readings, minutes))
    return {
      minutes,
      requests,
      piles,
      refused,
      failed,
      megabytes: { early: Math.round(memory.early), late: Math.round(memory.late) },
      handles: { early: open.early, late: open.late },
      longestMs: Math.round(longestMs),
      longest,
      graph,
    }
  } finally {
    await server.remove()
  }
}

const [width, height, edge] = [900, 320, 50]

/** Memory above, handles below, over the minutes. */
function drawn(readings: readonly Reading[], minutes: number): string {
  const line = (of: (one: Reading) => number, top: number, most: number) =>
    readings
      .map((one) => {
        const x = edge + (one.minutes / minutes) * (width - 2 * edge)
        const y = top + height / 2 - edge - (of(one) / most) * (height / 2 - edge - 10)
        return `${x.toFixed(1)},${y.toFixed(1)}`
      })
      .join(' ')
  const mostMegabytes = Math.max(...readings.map(({ megabytes }) => megabytes))
  const mostHandles = Math.max(...readings.map(({ handles }) => handles))
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">
<rect width="${width}" height="${height}" fill="#fff"/>
<polyline fill="none" stroke="#1d4e89" stroke-width="1.5" points="${line(({ megabytes }) => megabytes, 20, mostMegabytes)}"/>
<polyline fill="none" stroke="#8a3b2f" stroke-width="1.5" points="${line(({ handles }) => handles, height / 2 + 20, mostHandles)}"/>
<text x="${edge}" y="16" fill="#1d4e89">memory, MB: ${Math.round(mostMegabytes)} at most, from 0</text>
<text x="${edge}" y="${height / 2 + 16}" fill="#8a3b2f">handles: ${mostHandles} at most, from 0</text>
<text x="${width - edge}" y="${height - 8}" text-anchor="end">${minutes} minutes</text>
</svg>
`
}
