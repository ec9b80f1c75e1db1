/** A process that holds the folder of its one argument until it is ended. */
import { holdFolder } from '../../src/store/lock.ts'

try {
  const held = holdFolder(process.argv[2]!)
  process.stdout.write('held\n')
  // Kept in use: a lock that nothing refers to any more may be collected, and let go.
  setInterval(() => held.release, 60_000)
} catch (error) {
  process.stdout.write(`${JSON.stringify(error)}\n`)
}
