import { Failure } from '../base/failures.ts'
import { canonical } from '../base/ids.ts'
import type { Flow } from '../flow/grammar.ts'
import { rulesNamed } from '../flow/pin.ts'
import { readFlow } from '../flow/read.ts'
import type { Db } from '../store/schema.ts'
import { flowWords } from './flow-words.ts'
import type { Knowledge } from './knowledge.ts'
import { rules } from './rules.ts'

/** Keeps a flow's questions and edges under their hash, once. */
export async function pinFlow(db: Db, hash: string, flow: Flow, at: number): Promise<void> {
  const version = db.selectFrom('flow_version').select('hash').where('hash', '=', hash)
  // Its body is long, and is there at each intake but the first.
  if (await version.executeTakeFirst()) return
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

/** What an open conversation's flow needs and can no longer have; undefined: nothing. */
export function goneFrom(flow: Flow, { languages }: Knowledge): string | undefined {
  const rule = rulesNamed(flow).find((name) => !Object.hasOwn(rules, name))
  if (rule) return `the rule ${rule}`
  const missing = [...languages.values()].flatMap(({ code, has }) =>
    flowWords(flow)
      .filter((key) => !has(`intake.${key}`))
      .map((key) => `the words ${key} (${code})`),
  )
  return missing[0]
}

/** Refuses the start where an open conversation's flow names a rule, or needs words, that are gone. */
export async function checkOpenVersions(db: Db, knowledge: Knowledge): Promise<void> {
  const open = await db
    .selectFrom('flow_version')
    .select(['hash', 'body'])
    .where('hash', 'in', db.selectFrom('pile').select('flow_hash').where('status', '=', 'open'))
    .execute()
  for (const { hash, body } of open) {
    const gone = goneFrom(readFlow(JSON.parse(body)), knowledge)
    if (gone) {
      throw new Failure('flows_invalid', {
        file: `flow version ${hash.slice(0, 12)}`,
        line: 1,
        why: `open conversations still need ${gone}`,
      })
    }
  }
}
