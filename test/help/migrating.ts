/** A process that opens the store of its one argument, brings its tables up to date and ends. */
import { migrate } from '../../src/store/migrate.ts'
import { openStore } from '../../src/store/open.ts'

const store = await openStore(JSON.parse(process.argv[2]!))
await migrate(store)
await store.close()
