import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { follow } from '../custody/follow.ts'
import { type LeftoverChoice, leftoverChoices } from '../custody/guards.ts'
import type { State } from '../custody/states.ts'
import { cleanText } from '../flow/text.ts'
import { pinnedFlow } from '../intake/flow-versions.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { derivePile } from '../intake/pile.ts'
import { chosen } from '../intake/replies.ts'
import { entriesOf } from '../intake/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { onLedger } from './ledger.ts'
import type { At } from './moving.ts'

/** The quilt is done and the customer said yes. */
export interface SignOff {
  readonly leftovers: LeftoverChoice
  readonly note: string
  readonly who: string
  readonly at: number
}

/** The one that stands; null: the quilt is not signed off. `who` is a name. */
export async function signOffOf(db: Db, pileId: string): Promise<SignOff | null> {
  const row = await db
    .selectFrom('sign_off')
    .innerJoin('account', 'account.id', 'sign_off.who')
    .select(['leftovers', 'note', 'at', 'account.name'])
    .where('pile_id', '=', pileId)
    .where('undone_at', 'is', null)
    .executeTakeFirst()
  return row
    ? { leftovers: row.leftovers as LeftoverChoice, note: row.note, who: row.name, at: row.at }
    : null
}

/** What the customer told the intake about what is left over; null: nothing. */
export async function leftoversTold(
  db: Db,
  knowledge: Knowledge,
  row: PileRow,
): Promise<string | null> {
  const flow = await pinnedFlow(db, row.flow_hash, knowledge)
  const { replies } = derivePile(knowledge, flow, row, await entriesOf(db, row.id))
  return chosen(replies, 'leftovers') ?? null
}

/**
 * Signs the finished quilt off: the customer said yes to it, and what becomes of what is left over. The same sent
 * twice is one. Throws `answer_not_offered`, `nothing_sewn`, `decided_meanwhile` where it is signed off otherwise.
 */
export const signOff = (
  at: At,
  pileId: string,
  { leftovers, note, who }: { leftovers: string; note: string; who: string },
): Promise<void> =>
  onLedger(at, pileId, who, async ({ db, entries, facts }) => {
    const choice = leftoverChoices.find((one) => one === leftovers)
    if (!choice) throw new Failure('answer_not_offered')
    if (facts.signedOff?.leftovers === choice) return
    if (facts.signedOff) throw new Failure('decided_meanwhile')
    const sewn = [...follow(entries).values()].some(({ state }) => state === 'sewn')
    if (!facts.accepted || !sewn) throw new Failure('nothing_sewn')
    await db
      .insertInto('sign_off')
      .values({
        id: newId(),
        pile_id: pileId,
        leftovers: choice,
        note: cleanText(note).slice(0, 2000),
        who,
        at: at.clock(),
        undone_at: null,
        undone_by: null,
      })
      .execute()
  })

/** What rests on the sign-off: none of it may be there when it is taken back. */
const restsOnIt: readonly State[] = [
  'home-with-quilt',
  'returned',
  'given-away',
  'discarded',
  'kept-for-repair',
]

/** Takes the sign-off back. Throws `not_found`, or `undo_not_now` once something was released by it. */
export const undoSignOff = (at: At, pileId: string, who: string): Promise<void> =>
  onLedger(at, pileId, who, async ({ db, entries }) => {
    const released = [...follow(entries).values()].some(
      ({ state, subject }) => restsOnIt.includes(state) && !/^[FX]/.test(subject),
    )
    if (released) throw new Failure('undo_not_now')
    const { numUpdatedRows } = await db
      .updateTable('sign_off')
      .set({ undone_at: at.clock(), undone_by: who })
      .where('pile_id', '=', pileId)
      .where('undone_at', 'is', null)
      .executeTakeFirst()
    if (numUpdatedRows === 0n) throw new Failure('not_found')
  })
