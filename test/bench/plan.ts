import { openPlanningLane } from '../../src/planning/lane.ts'
import { planPile } from '../../src/planning/plan-pile.ts'
import { checkPlan } from '../../src/quilt/plan/check.ts'
import { readPile } from '../../src/quilt/plan/instance.ts'
import { naivePlan } from '../../src/quilt/plan/naive.ts'
import { pileLike } from '../help/piles.ts'

interface Row {
  readonly garments: number
  readonly firstMs: number
  readonly ms: number
  /** What the processor worked: what else runs on the machine does not show in it. */
  readonly cpuMs: number
  readonly proven: boolean
  readonly bounded: boolean
  readonly steps: readonly [ours: number, naive: number]
  readonly pieces: readonly [ours: number, naive: number]
  readonly idle: readonly [ours: number, naive: number]
}

/** From too little cloth to more than enough. */
const plenties = [0.8, 1, 1.25, 1.6, 2.2]

function at(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!
}

/**
 * Times of the pile plan over invented piles of 4 to 60 garments whose patterns are known, and what is
 * bought against a greedy plan of the same piles.
 */
export async function benchPlan(given: readonly string[]): Promise<void> {
  const [piles = 40, least = 4, most = 60, from = 1] = given.map(Number)
  const lane = openPlanningLane()
  // The thread and its solver are loaded before the clock runs.
  for await (const _ of planPile(readPile(pileLike({ garments: 4, seed: 1 })), lane));
  const rows: Row[] = []
  for (let n = 0; n < piles; n += 1) {
    const garments = Math.round(least + ((most - least) * n) / Math.max(1, piles - 1))
    const plenty = plenties[n % plenties.length]!
    const json = pileLike({ garments, plenty, seed: from + n })
    const pile = readPile(json)
    const naive = checkPlan(pile, naivePlan(pile)).worth
    const start = performance.now()
    const cpu = process.cpuUsage()
    let firstMs = Number.NaN
    let last = null
    for await (const one of planPile(pile, lane)) {
      if (Number.isNaN(firstMs)) firstMs = performance.now() - start
      last = one
    }
    const ms = performance.now() - start
    const { user, system } = process.cpuUsage(cpu)
    const cpuMs = (user + system) / 1000
    const { worth, bounds, proven, plan } = last!
    const { problems } = checkPlan(last!.pile, plan)
    if (problems.length > 0) throw new Error(`pile ${from + n}: ${problems[0]}`)
    rows.push({
      garments,
      firstMs,
      ms,
      cpuMs,
      proven,
      bounded: proven || bounds.Q !== null,
      steps: [worth.Q, naive.Q],
      pieces: [worth.P, naive.P],
      idle: [worth.V, naive.V],
    })
    const told = (['V', 'Q', 'P', 'M'] as const).map(
      (aim) => `${aim} ${worth[aim]}${bounds[aim] === worth[aim] ? '' : ` (≥ ${bounds[aim]})`}`,
    )
    process.stdout.write(
      `${String(from + n).padStart(4)} ${String(garments).padStart(3)} garments ${json.sizes.length} sizes  ${ms.toFixed(0).padStart(5)} ms (cpu ${cpuMs.toFixed(0).padStart(5)})  ${proven ? 'proven' : 'open  '}  ${told.join(', ')}; naive V ${naive.V}, Q ${naive.Q}, P ${naive.P}, M ${naive.M}\n`,
    )
  }
  await lane.close()
  const sum = (pick: (row: Row) => number) => rows.reduce((all, row) => all + pick(row), 0)
  const alike = rows.filter(({ idle }) => idle[0] === idle[1])
  const ratio = (key: 'steps' | 'pieces' | 'idle', of: readonly Row[]) => {
    const [ours, theirs] = [0, 1].map((n) => of.reduce((all, row) => all + row[key][n]!, 0))
    return `${ours} to ${theirs} (${(ours! / theirs!).toFixed(2)})`
  }
  const ms = rows.map((row) => row.ms)
  const cpuMs = rows.map((row) => row.cpuMs)
  const large = rows.filter(({ garments }) => garments >= most - 5)
  process.stdout.write(
    [
      `${rows.length} piles, ${sum(({ proven }) => +proven)} proven, ${sum(({ bounded }) => +bounded)} with a bound on cloth`,
      `to the proof or the end: median ${at(ms, 0.5).toFixed(0)} ms, p90 ${at(ms, 0.9).toFixed(0)} ms, longest ${Math.max(...ms).toFixed(0)} ms`,
      `processor time: median ${at(cpuMs, 0.5).toFixed(0)} ms, p90 ${at(cpuMs, 0.9).toFixed(0)} ms`,
      `from ${most - 5} garments: first plan ${Math.max(...large.map((row) => row.firstMs)).toFixed(0)} ms at most, ${large.filter((row) => row.proven).length} of ${large.length} proven`,
      `must-use garments left out, ours to naive: ${ratio('idle', rows)}`,
      `where both leave out as many, ${alike.length} piles: steps of cloth ${ratio('steps', alike)}, pieces short ${ratio('pieces', alike)}`,
      '',
    ].join('\n'),
  )
}
