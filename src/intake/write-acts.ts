import { type CompiledQuery, sql } from 'kysely'
import { sendLast } from '../store/last.ts'
import { inPieces } from '../store/rows.ts'
import type { Db, NewRow } from '../store/schema.ts'
import { noteRow } from './rows.ts'
import { projections } from './standing.ts'
import type { Taken } from './taking.ts'

const actRows = ({ acts, stood }: Taken): NewRow<'act'>[] =>
  acts.map(({ act, ...entry }) => ({ pile_id: stood.row.id, ...entry, act: JSON.stringify(act) }))

/** Where a person was asked. */
const noteRows = ({ acts, stood }: Taken): NewRow<'note'>[] =>
  acts.flatMap(({ act, at }) => {
    if (act.act !== 'answer' || !('asked' in act.reply)) return []
    const { item, question, reply } = act
    return [noteRow({ pileId: stood.row.id, item, question, text: reply.asked, at })]
  })

function movePiles(db: Db, taken: readonly Taken[]): CompiledQuery {
  const rows = taken.map(({ stood: { row } }) => sql`(${row.id}, ${row.seq}, ${row.changed_at})`)
  // Columns of bare values have these names in both stores; PostgreSQL takes their parameters for text.
  return sql`update pile
    set seq = cast(given.column2 as bigint), changed_at = cast(given.column3 as bigint)
    from (values ${sql.join(rows)}) as given
    where pile.id = given.column1`.compile(db)
}

/** Writes what was taken, as the last thing of the transaction that holds the piles; each pile is named once. */
export async function writeActs(db: Db, taken: readonly Taken[]): Promise<void> {
  const some = taken.filter(({ acts }) => acts.length > 0)
  if (some.length === 0) return
  const projected = some.map(({ stood: { row, derived }, acts }) => ({
    row,
    pile: derived.pile,
    acts: acts.map(({ act }) => act),
  }))
  await sendLast(db, [
    ...inPieces(some.flatMap(actRows)).map((rows) => db.insertInto('act').values(rows).compile()),
    movePiles(db, some),
    ...inPieces(some.flatMap(noteRows)).map((rows) => db.insertInto('note').values(rows).compile()),
    ...projections(db, projected),
  ])
}
