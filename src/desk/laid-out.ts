import { z } from 'zod'
import { canonical, sha256 } from '../base/ids.ts'
import type { Entry } from '../custody/follow.ts'
import { answeredOf, areStillCut, type Cuts, type LaidAct, sewnOf } from '../custody/laid-out.ts'
import { refreshWaiting } from '../intake/waiting.ts'
import type { Db, MarkKind } from '../store/schema.ts'
import type { LaidOutState } from '../store/schema-bench.ts'
import { recordsOf, type StandingRecord, standingRecords } from './bench-records.ts'
import { entriesOfPile } from './custody-entries.ts'

const number = z.number().int().positive()
const laidBody = z.object({
  /** Ids, in the order they were taken. */
  photos: z.array(z.string()),
  /** Garments' numbers, each with the entry that cut it. */
  cuts: z.array(z.tuple([number, number])),
  plan: z.string(),
})
const answerBody = z.object({ of: number })
const yesBody = answerBody.extend({
  /** Who said it on the phone, and the day, ms UTC; null: the customer's own page. */
  phone: z.object({ by: z.string(), day: z.number() }).nullable(),
})

/** What the records of these kinds hold beside their words. */
export type LaidBody = z.infer<typeof laidBody>
export type AnswerBody = z.infer<typeof answerBody>
export type YesBody = z.infer<typeof yesBody>

type Kept = LaidAct & Pick<StandingRecord, 'note' | 'who' | 'at'>

/** The quilt laid out, with what was shown of it. */
export interface Laying extends Kept {
  readonly kind: 'laid'
  readonly photos: readonly string[]
  readonly cuts: Cuts
  readonly plan: string
}

/** What the customer said of a laying: on their page, or on the phone to whoever wrote it down. */
export interface LaidAnswer extends Kept {
  readonly kind: 'yes' | 'change'
  readonly phone: YesBody['phone']
}

const kept = ({ seq, note, who, at }: StandingRecord) => ({ seq, note, who, at })

/** A record of these kinds as it was meant; null: it is of another. */
export function readLaid(record: StandingRecord): Laying | LaidAnswer | null {
  const { kind, seq, body } = record
  if (kind === 'laid') {
    const { photos, cuts, plan } = laidBody.parse(body)
    return { ...kept(record), kind, of: seq, photos, cuts: new Map(cuts), plan }
  }
  if (kind === 'yes') return { ...kept(record), kind, ...yesBody.parse(body) }
  if (kind === 'change') return { ...kept(record), kind, ...answerBody.parse(body), phone: null }
  return null
}

/** How it stands with a pile's laid-out quilt. */
export interface LaidOut {
  /** Null: it was not laid out, or that was taken back. */
  readonly laid: Laying | null
  /** The newest of the customer to that laying. */
  readonly answer: LaidAnswer | null
  /** Null: nothing is laid out. */
  readonly state: LaidOutState | null
  /** It is still the quilt that was shown: the same pieces, as they were cut, by the same plan. */
  readonly current: boolean
  /** Since when it stands so, ms UTC. */
  readonly since: number
  /** Numbers of garments that it shows and that are sewn by now. */
  readonly sewn: readonly number[]
}

const nothing: LaidOut = {
  laid: null,
  answer: null,
  state: null,
  current: false,
  since: 0,
  sewn: [],
}

function stateOf(
  { laid, answer }: Pick<LaidOut, 'answer'> & { readonly laid: Laying },
  current: boolean,
): Pick<LaidOut, 'state' | 'since'> {
  // A wish is open until the quilt is laid out once more, whatever was moved or cut for it meanwhile.
  if (answer?.kind === 'change') return { state: 'change', since: answer.at }
  if (!current) return { state: 'anew', since: (answer ?? laid).at }
  return answer ? { state: 'yes', since: answer.at } : { state: 'asked', since: laid.at }
}

/** `plan`: the sign of what the plan is now. */
function laidOutFrom(
  records: readonly StandingRecord[],
  entries: readonly Entry[],
  plan: string,
): LaidOut {
  const { laid, answer } = answeredOf(records.flatMap((one) => readLaid(one) ?? []))
  if (laid?.kind !== 'laid') return nothing
  const said = answer?.kind === 'laid' ? null : answer
  const current = laid.plan === plan && areStillCut(laid.cuts, entries)
  return {
    laid,
    answer: said,
    ...stateOf({ laid, answer: said }, current),
    current,
    sewn: sewnOf(laid.cuts, entries),
  }
}

/** What a person fixed of the plan. A pin holds a piece where a kept quilt has it already. */
const fixing: readonly MarkKind[] = ['wish', 'role', 'lay']

const summary = z.object({ layout: z.string(), size: z.string(), quilts: z.number().optional() })

/**
 * A short sign of what people settled of a pile's quilt: layout, size, how many, roles, where pieces lie, which garments
 * are declined. Facts are left out: once the cloth is cut, they change no piece of it.
 */
export async function planSign(db: Db, pileId: string): Promise<string> {
  const row = await db
    .selectFrom('standing')
    .select('summary')
    .where('pile_id', '=', pileId)
    .executeTakeFirst()
  const marks = await db
    .selectFrom('plan_mark')
    .select(['kind', 'garment', 'body'])
    .where('pile_id', '=', pileId)
    .where('kind', 'in', fixing)
    .where('undone_at', 'is', null)
    .execute()
  const decisions = await db
    .selectFrom('decision')
    .select(['item', 'verdict'])
    .where('pile_id', '=', pileId)
    .where('item', 'is not', null)
    .orderBy('at')
    .execute()
  const last = new Map(decisions.map(({ item, verdict }) => [item, verdict]))
  const declined = [...last].filter(([, verdict]) => verdict === 'decline').map(([item]) => item)
  const told = [
    row ? summary.parse(JSON.parse(row.summary)) : null,
    marks.map(({ kind, garment, body }) => canonical([kind, garment, JSON.parse(body)])).sort(),
    declined.sort((a, b) => a! - b!),
  ]
  return sha256(canonical(told)).slice(0, 16)
}

/** Of records that were read already. */
export async function laidOutIn(
  db: Db,
  pileId: string,
  records: readonly StandingRecord[],
): Promise<LaidOut> {
  if (!records.some(({ kind }) => kind === 'laid')) return nothing
  return laidOutFrom(records, await entriesOfPile(db, pileId), await planSign(db, pileId))
}

export const laidOutOf = async (db: Db, pileId: string): Promise<LaidOut> =>
  laidOutIn(db, pileId, standingRecords(await recordsOf(db, pileId)))

/**
 * Whether a laying, or a yes that was written down for the customer, may be taken back: it is the last that was written,
 * and nothing was sewn on it. What the customer said on their own page is theirs.
 */
export function mayTakeBackLaid(
  record: Pick<StandingRecord, 'seq' | 'who'>,
  records: readonly StandingRecord[],
  entries: readonly Entry[],
): boolean {
  const acts = records.flatMap((one) => readLaid(one) ?? [])
  const { laid } = answeredOf(acts)
  if (record.who === null || acts.at(-1)?.seq !== record.seq || laid?.kind !== 'laid') return false
  return sewnOf(laid.cuts, entries).length === 0
}

/** Numbers of the garments that may be sewn as far as the customer has seen them. */
export const seenOf = ({ laid, state }: LaidOut): number[] =>
  laid && state === 'yes' ? [...laid.cuts.keys()] : []

/** Writes how it stands, and on whom the pile waits for it, in the transaction of whatever may change that. */
export async function projectLaidOut(db: Db, pileId: string): Promise<void> {
  const { state, since } = await laidOutOf(db, pileId)
  if (state === null) await db.deleteFrom('laid_out').where('pile_id', '=', pileId).execute()
  else {
    await db
      .insertInto('laid_out')
      .values({ pile_id: pileId, state, since })
      .onConflict((conflict) => conflict.column('pile_id').doUpdateSet({ state, since }))
      .execute()
  }
  await refreshWaiting(db, pileId)
}
