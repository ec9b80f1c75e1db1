import { systemClock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import { learn } from '../intake/knowledge.ts'
import { purge } from '../keeping/purge.ts'
import { withKept } from './kept.ts'
import { print } from './print.ts'

/** `purge [--dry-run]`: erases what was kept for as long as `shop.yaml` says. */
export async function purgeVerb(given: readonly string[]): Promise<number> {
  const dry = given[0] === '--dry-run'
  if (given.length > (dry ? 1 : 0)) {
    throw new Failure('bad_input', { field: 'purge', why: 'purge [--dry-run]' })
  }
  return withKept({ mayBeNew: false }, async ({ config, store, photos }) => {
    const now = systemClock()
    const { shop } = learn(
      readFlowsFolder(config.flowsDir),
      new Date(now).toISOString().slice(0, 10),
    )
    const parts = { store, photos, keeping: shop.keeping, dataDir: config.dataDir }
    print({ ok: true, dry, ...(await purge(parts, now, { dry })) })
    return 0
  })
}
