/** A process that takes so many running numbers and prints them as JSON. */
import { openStore } from '../../src/store/open.ts'
import { takeNumbers } from './rows.ts'

const [settings, count] = process.argv.slice(2)
const store = await openStore(JSON.parse(settings!))
process.stdout.write(JSON.stringify(await takeNumbers(store, Number(count))))
await store.close()
