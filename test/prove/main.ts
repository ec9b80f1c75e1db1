import { loadavg } from 'node:os'
import { compareCeilings } from './ceiling.ts'
import { crash, roll } from './crash.ts'
import { bearAll, makers, tableOf } from './faults.ts'
import { fuzz } from './fuzz.ts'
import { soak } from './soak.ts'

/** What one proof found: its figures, and a line for each thing that does not hold. */
interface Found {
  readonly figures: object
  readonly faults: readonly string[]
}

function ceiling([count = '1000000']: readonly string[]): Found {
  const { disagreements, broken, ...figures } = compareCeilings(positive(count))
  const counts = { disagreements: disagreements.length, broken: broken.length }
  return { figures: { ...figures, ...counts }, faults: [...disagreements, ...broken] }
}

async function crashed([kills = '200', ofDatabase = '20']: readonly string[]): Promise<Found> {
  const { faults, ...figures } = await crash(positive(kills), positive(ofDatabase))
  return { figures: { ...figures, faults: faults.length }, faults }
}

async function rolled([rounds = '10']: readonly string[]): Promise<Found> {
  const { faults, kills, ...figures } = await roll(positive(rounds))
  return { figures: { restarts: kills, ...figures, faults: faults.length }, faults }
}

async function fuzzed([requests = '100000', seed = '1']: readonly string[]): Promise<Found> {
  const { faults, ...figures } = await fuzz(positive(requests), positive(seed))
  return { figures: { ...figures, faults: faults.length }, faults }
}

/** Names of troubles, and how many seconds each lasts, in any order; the database is away twice as long. */
async function troubled(given: readonly string[]): Promise<Found> {
  const named = given.filter((one) => Object.hasOwn(makers, one))
  const [lasts = '15'] = given.filter((one) => !Object.hasOwn(makers, one))
  const found = await bearAll(1000 * positive(lasts), named)
  process.stdout.write(`${tableOf(found)}\n`)
  return {
    figures: { troubles: found.borne.length, notHere: found.notHere, faults: found.faults.length },
    faults: found.faults,
  }
}

async function soaked([minutes = '30', customers = '3']: readonly string[]): Promise<Found> {
  const { failed, ...figures } = await soak(positive(minutes), positive(customers))
  return { figures: { ...figures, failed: failed.length }, faults: failed }
}

function positive(text: string): number {
  if (Number(text) > 0) return Number(text)
  throw new Error(`a number above 0 is wanted, not ${text}`)
}

/** Each with what may be said after its name. */
const proofs: Readonly<
  Record<string, { readonly given: string; run(given: readonly string[]): Found | Promise<Found> }>
> = {
  ceiling: { given: '[combinations]', run: ceiling },
  crash: { given: '[kills] [kills of the database]', run: crashed },
  faults: { given: `[seconds] [${Object.keys(makers).join('] [')}]`, run: troubled },
  fuzz: { given: '[requests] [seed]', run: fuzzed },
  roll: { given: '[rounds]', run: rolled },
  soak: { given: '[minutes] [customers]', run: soaked },
}

const [what = '', ...given] = process.argv.slice(2)
if (!Object.hasOwn(proofs, what)) {
  for (const [name, proof] of Object.entries(proofs)) {
    process.stderr.write(`prove ${name} ${proof.given}\n`)
  }
  process.exit(2)
}
const from = performance.now()
const { figures, faults } = await proofs[what]!.run(given)
const seconds = Math.round((performance.now() - from) / 100) / 10
const load = loadavg().map((one) => Number(one.toFixed(1)))
process.stdout.write(`${JSON.stringify({ ...figures, seconds, load }, null, 2)}\n`)
for (const line of faults.slice(0, 10)) process.stderr.write(`${line}\n`)
process.exitCode = faults.length > 0 ? 1 : 0
