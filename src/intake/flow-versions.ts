import { Failure } from '../base/failures.ts'
import { canonical } from '../base/ids.ts'
import type { Flow } from '../flow/grammar.ts'
import { rulesNamed } from '../flow/pin.ts'
import { readFlow } from '../flow/read.ts'
import type { Db } from '../store/schema.ts'
import type { Knowledge } from './knowledge.ts'
import { rules } from './rules.ts'

/** Keeps a flow's questions and edges under their hash, once. */
export async function pinFlow(db: Db, hash: string, flow: Flow, at: number): Promise<void> {
  await db
    .insertInto('flow_version')
    .values({ hash, body: canonical(flow), first_used_at: at })
    .onConflict((conflict) => conflict.column('hash').doNothing())
    .execute()
}

const versions = new Map<string, Flow>()

/** The flow a conversation began with. A hash names one flow for ever, so it is read once. */
export async function pinnedFlow(db: Db, hash: string, knowledge: Knowledge): Promise<Flow> {
  if (hash === knowledge.flowHash) return knowledge.flow
  const known = versions.get(hash)
  if (known) return known
  const row = await db
    .selectFrom('flow_version')
    .select('body')
    .where('hash', '=', hash)
    .executeTakeFirstOrThrow()
  const flow = readFlow(JSON.parse(row.body))
  versions.set(hash, flow)
  return flow
}

/** Refuses the start where an open conversation's flow names a rule that is gone. */
export async function checkOpenVersions(db: Db): Promise<void> {
  const open = await db
    .selectFrom('flow_version')
    .select(['hash', 'body'])
    .where('hash', 'in', db.selectFrom('pile').select('flow_hash').where('status', '=', 'open'))
    .execute()
  for (const { hash, body } of open) {
    const gone = rulesNamed(readFlow(JSON.parse(body))).find((name) => !rules[name])
    if (gone) {
      throw new Failure('flows_invalid', {
        file: `flow version ${hash.slice(0, 12)}`,
        line: 1,
        why: `open conversations still need the rule ${gone}`,
      })
    }
  }
}
