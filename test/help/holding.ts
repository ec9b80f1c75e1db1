/** A process that holds the folder of its one argument until it is ended. */
import { holdFolder } from '../../src/store/lock.ts'

try {
  holdFolder(process.argv[2]!)
  process.stdout.write('held\n')
  setInterval(() => {}, 60_000)
} catch (error) {
  process.stdout.write(`${JSON.stringify(error)}\n`)
}
