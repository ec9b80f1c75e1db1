import { type ExpressionBuilder, sql } from 'kysely'
import type { Database, Db } from '../store/schema.ts'
import type { PileVerdict } from './decisions.ts'

export const queueStates = ['waiting', 'decided'] as const
export type QueueState = (typeof queueStates)[number]

export const pageLength = 50

export interface QueuedPile {
  readonly id: string
  readonly number: number
  readonly contactName: string | null
  readonly garments: number
  /** Garments a person has to look at that nobody has decided of. */
  readonly needsEyes: number
  readonly openNotes: number
  readonly confirmedAt: number
  readonly needBy: number | null
  readonly layout: string
  readonly size: string
  /** What was last decided of the whole pile; null: nothing yet. */
  readonly verdict: PileVerdict | null
}

export interface Queue {
  readonly piles: readonly QueuedPile[]
  /** From 1. */
  readonly page: number
  readonly pages: number
  readonly counts: {
    readonly waiting: number
    readonly decided: number
    /** Intakes that customers have not confirmed yet: counted, not shown. */
    readonly open: number
  }
}

type Piles = ExpressionBuilder<Database, 'pile' | 'standing'>

const needsEyes = (eb: Piles) =>
  eb
    .selectFrom('garment')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .whereRef('garment.pile_id', '=', 'pile.id')
    .where('garment.dropped', '=', 0)
    .where('garment.grade', 'in', ['eyes', 'home'])
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('decision')
            .select('decision.id')
            .whereRef('decision.pile_id', '=', 'garment.pile_id')
            .whereRef('decision.item', '=', 'garment.item'),
        ),
      ),
    )

const openNotes = (eb: Piles) =>
  eb
    .selectFrom('note')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .whereRef('note.pile_id', '=', 'pile.id')
    .where('note.settled_at', 'is', null)

const lastVerdict = (eb: Piles) =>
  eb
    .selectFrom('decision')
    .select('decision.verdict')
    .whereRef('decision.pile_id', '=', 'pile.id')
    .where('decision.item', 'is', null)
    .orderBy('decision.at', 'desc')
    .limit(1)

async function countsOf(db: Db): Promise<Queue['counts']> {
  const rows = await db
    .selectFrom('pile')
    .select(({ fn }) => ['status', fn.countAll<number>().as('n')])
    .groupBy('status')
    .execute()
  const of = (status: string) => Number(rows.find((row) => row.status === status)?.n ?? 0)
  return { waiting: of('confirmed'), decided: of('decided'), open: of('open') }
}

/**
 * Confirmed piles: those with something for a person's eyes first, then the longest waiting. Decided
 * ones the other way about. A page beyond the last is the last.
 */
export async function queue(
  db: Db,
  { state, page, length = pageLength }: { state: QueueState; page: number; length?: number },
): Promise<Queue> {
  const counts = await countsOf(db)
  const pages = Math.max(1, Math.ceil(counts[state] / length))
  const at = Math.min(Math.max(1, page), pages)
  const waiting = state === 'waiting'

  const rows = await db
    .selectFrom('pile')
    .innerJoin('standing', 'standing.pile_id', 'pile.id')
    .select((eb) => [
      'pile.id',
      'pile.number',
      'pile.confirmed_at',
      'standing.contact_name',
      'standing.garments',
      'standing.need_by',
      'standing.summary',
      needsEyes(eb).as('needs_eyes'),
      openNotes(eb).as('open_notes'),
      lastVerdict(eb).as('verdict'),
    ])
    .where('pile.status', '=', waiting ? 'confirmed' : 'decided')
    .$if(waiting, (all) =>
      all.orderBy((eb) => sql`case when ${needsEyes(eb)} + ${openNotes(eb)} > 0 then 0 else 1 end`),
    )
    .orderBy('pile.confirmed_at', waiting ? 'asc' : 'desc')
    .orderBy('pile.number', waiting ? 'asc' : 'desc')
    .limit(length)
    .offset((at - 1) * length)
    .execute()

  return { piles: rows.map(queuedPile), page: at, pages, counts }
}

interface QueueRow {
  readonly id: string
  readonly number: number
  readonly confirmed_at: number | null
  readonly contact_name: string | null
  readonly garments: number
  readonly need_by: number | null
  readonly summary: string
  readonly needs_eyes: number | null
  readonly open_notes: number | null
  readonly verdict: string | null
}

function queuedPile(row: QueueRow): QueuedPile {
  const { layout, size } = JSON.parse(row.summary) as { layout: string; size: string }
  return {
    id: row.id,
    number: row.number,
    contactName: row.contact_name,
    garments: row.garments,
    needsEyes: Number(row.needs_eyes),
    openNotes: Number(row.open_notes),
    confirmedAt: row.confirmed_at!,
    needBy: row.need_by,
    layout,
    size,
    verdict: row.verdict as PileVerdict | null,
  }
}
