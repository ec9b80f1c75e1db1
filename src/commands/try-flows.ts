import { Failure } from '../base/failures.ts'
import { readConfig } from '../config.ts'
import { type Compares, impactReport } from '../desk/impact-report.ts'
import { pinnedFlows } from '../desk/piles-to-try.ts'
import { tryFlows } from '../desk/try-flows.ts'
import { readFlowFiles } from '../intake/flow-files.ts'
import { migrate } from '../store/migrate.ts'
import { openStore } from '../store/open.ts'
import { print } from './print.ts'
import { aroundHere } from './proven-here.ts'

const usage = 'try-flows <folder>: a whole flows folder, held against the one that applies'

/**
 * `try-flows <folder>`: what the folder's files would change in every pile that is not decided; findings with exit 2
 * where they do not hold. Nothing is written.
 */
export async function tryFlowsVerb([folder, ...more]: readonly string[]): Promise<number> {
  if (!folder || more.length > 0) throw new Failure('bad_input', { field: 'try-flows', why: usage })
  const { databaseUrl, dataDir, flowsDir } = readConfig(process.env)
  const [live, draft] = [readFlowFiles(flowsDir), readFlowFiles(folder)]
  const store = await openStore({ ...(databaseUrl && { databaseUrl }), dataDir })
  try {
    await migrate(store)
    const files = { live, draft, pinned: await pinnedFlows(store.db) }
    const { findings, trying } = await tryFlows(files, aroundHere())
    if (!trying) {
      print({ ok: false, findings })
      return 2
    }
    const compares: Compares = {
      ...trying,
      of: async (piles) => piles.map((one) => trying.of(one)),
    }
    print({ ok: true, ...(await impactReport(store.db, compares)) })
    return 0
  } finally {
    await store.close()
  }
}
