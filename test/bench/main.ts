import { loadavg } from 'node:os'
import { benchCloset } from './closet.ts'
import { benchCut } from './cut.ts'
import { benchDesk } from './desk.ts'
import { benchFlow } from './flow.ts'
import { benchGrowth } from './growth.ts'
import { benchLabel } from './label.ts'
import { benchLook } from './look.ts'
import { benchLookCost } from './look-cost.ts'
import { benchNumbers } from './numbers.ts'
import { benchPage } from './page.ts'
import { benchPlace } from './place.ts'
import { benchPlan } from './plan.ts'
import { benchServe } from './serve.ts'
import { benchStart } from './start.ts'
import { benchUploads } from './uploads.ts'
import { benchWords } from './words.ts'

/** What can be measured by name; whatever else runs on the machine slows it down, so its load is told. */
const benches: Readonly<Record<string, (given: readonly string[]) => Promise<void>>> = {
  closet: benchCloset,
  cut: benchCut,
  desk: benchDesk,
  flow: benchFlow,
  growth: benchGrowth,
  label: benchLabel,
  look: benchLook,
  'look-cost': benchLookCost,
  numbers: benchNumbers,
  page: benchPage,
  place: benchPlace,
  plan: benchPlan,
  serve: benchServe,
  start: benchStart,
  uploads: benchUploads,
  words: benchWords,
}

const [name = '', ...given] = process.argv.slice(2)
if (!Object.hasOwn(benches, name)) {
  process.stderr.write(`Measure one of: ${Object.keys(benches).join(', ')}\n`)
  process.exit(2)
}
await benches[name]!(given)
process.stdout.write(
  `load of this machine: ${loadavg()
    .map((load) => load.toFixed(1))
    .join(' ')}\n`,
)
