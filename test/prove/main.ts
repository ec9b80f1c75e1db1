import { compareCeilings } from './ceiling.ts'

/** `npm run prove -- ceiling [combinations]`. */
const [what, count = '1000000'] = process.argv.slice(2)

if (what !== 'ceiling' || !(Number(count) > 0)) {
  process.stderr.write('prove ceiling [combinations]\n')
  process.exit(2)
}
const from = performance.now()
const { disagreements, broken, ...figures } = compareCeilings(Number(count))
const seconds = Math.round((performance.now() - from) / 100) / 10
const counts = { disagreements: disagreements.length, broken: broken.length, seconds }
process.stdout.write(`${JSON.stringify({ ...figures, ...counts }, null, 2)}\n`)
for (const line of [...disagreements, ...broken].slice(0, 10)) process.stderr.write(`${line}\n`)
process.exitCode = disagreements.length + broken.length > 0 ? 1 : 0
