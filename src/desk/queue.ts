import { sql } from 'kysely'
import { days } from '../base/clock.ts'
import { cleanLine } from '../flow/text.ts'
import type { Db, Row } from '../store/schema.ts'
import type { LaidOutState } from '../store/schema-bench.ts'
import type { WaitsOn } from '../store/schema-desk.ts'
import type { PileVerdict } from './decisions.ts'

/** The lists of the desk: piles by whom they wait on. */
export const queueLists = ['us', 'customer', 'held', 'nobody'] as const satisfies WaitsOn[]

/** `due`: what should be looked at first; `since`: who waits longest; `needed`: by the day it is needed; `newest`. */
export const queueOrders = ['due', 'since', 'needed', 'newest'] as const
export type QueueOrder = (typeof queueOrders)[number]

/** Piles with a garment for a person's eyes; with a question of their customer; needed soon. */
export const queueFilters = ['eyes', 'questions', 'soon'] as const
export type QueueFilter = (typeof queueFilters)[number]

export const pageLength = 50

/** Everybody is looked at within so long; so long before it is needed a quilt has to be begun. */
export const dueFigures = { look: days(2), make: days(56) } as const

/** A quilt that is needed within so long is needed soon. */
const soon = days(70)

export interface Wanted {
  readonly list: WaitsOn
  readonly order?: QueueOrder
  readonly only?: QueueFilter | null
  /** A number, a tag, or part of the name of a customer or garment; empty: all. */
  readonly text?: string
  readonly page: number
  readonly length?: number
  /** Now, ms UTC. */
  readonly at: number
}

export interface QueuedPile {
  readonly id: string
  readonly number: number
  readonly contactName: string | null
  readonly garments: number
  /** Garments a person has to look at that nobody has decided of. */
  readonly needsEyes: number
  readonly openNotes: number
  /** Since when it has been waiting on whom it waits, ms UTC. */
  readonly since: number
  readonly needBy: number | null
  readonly layout: string
  readonly size: string
  /** What was last decided of the whole pile; null: nothing yet. */
  readonly verdict: PileVerdict | null
  /** How it stands with the laid-out quilt; null: nothing is laid out. */
  readonly laid: LaidOutState | null
}

export type QueueCounts = Readonly<Record<WaitsOn, number>> & {
  /** Intakes that customers have not confirmed yet: counted, not shown. */
  readonly open: number
}

export interface Queue {
  readonly piles: readonly QueuedPile[]
  /** From 1. */
  readonly page: number
  readonly pages: number
  /** How many there are by the list, the filter and the text. */
  readonly found: number
  readonly counts: QueueCounts
}

async function countsOf(db: Db): Promise<QueueCounts> {
  const rows = await db
    .selectFrom('waiting')
    .select(({ fn }) => ['on_whom', fn.countAll<number>().as('n')])
    .groupBy('on_whom')
    .execute()
  const open = await db
    .selectFrom('pile')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .where('status', '=', 'open')
    .executeTakeFirstOrThrow()
  const of = (on: WaitsOn) => Number(rows.find((row) => row.on_whom === on)?.n ?? 0)
  return {
    us: of('us'),
    customer: of('customer'),
    held: of('held'),
    nobody: of('nobody'),
    open: Number(open.n),
  }
}

/** A part of a text that a pattern of SQL finds as it stands. */
const part = (text: string): string => `%${text.replaceAll(/[\\%_]/g, '\\$&').toLowerCase()}%`

const has = (column: string, text: string) =>
  sql<boolean>`lower(${sql.ref(column)}) like ${part(text)} escape '\\'`

function wantedPiles(db: Db, { list, only = null, text = '', at }: Wanted) {
  const words = cleanLine(text).slice(0, 200)
  const number = /^[^\d-]{0,12}(\d{1,9})$/.exec(words)?.[1]
  return db
    .selectFrom('waiting')
    .where('on_whom', '=', list)
    .$if(only === 'eyes', (all) => all.where('eyes', '>', 0))
    .$if(only === 'questions', (all) => all.where('questions', '>', 0))
    .$if(only === 'soon', (all) => all.where('need_by', '<=', at + soon))
    .$if(words !== '', (all) =>
      all.where((eb) =>
        eb.or([
          ...(number ? [eb('number', '=', Number(number))] : []),
          eb(
            'pile_id',
            'in',
            eb
              .selectFrom('standing')
              .select('standing.pile_id')
              .where(has('standing.contact_name', words)),
          ),
          eb(
            'pile_id',
            'in',
            eb
              .selectFrom('garment')
              .select('garment.pile_id')
              .where(({ or }) =>
                // A number alone is in nearly every tag.
                or([
                  has('garment.name', words),
                  ...(/^\d+$/.test(words) ? [] : [has('garment.tag', words)]),
                ]),
              ),
          ),
        ]),
      ),
    )
}

/** When a pile should be looked at: soon after it came, or earlier where it is needed early. */
const due = sql`case
  when need_by is not null and need_by - ${sql.lit(dueFigures.make)} < since + ${sql.lit(dueFigures.look)}
  then need_by - ${sql.lit(dueFigures.make)}
  else since + ${sql.lit(dueFigures.look)} end`

const neededLast = sql`case when need_by is null then 1 else 0 end`

/** The order that was wished for, or that of the list: newest first where nothing waits on anybody. */
export const orderOf = ({ list, order }: Pick<Wanted, 'list' | 'order'>): QueueOrder =>
  order ?? (list === 'nobody' ? 'newest' : 'due')

/**
 * Piles that the workshop has from its customers, by whom they wait on. A page beyond the last is the last.
 */
export async function queue(db: Db, wanted: Wanted): Promise<Queue> {
  const { list, page, length = pageLength } = wanted
  const order = orderOf(wanted)
  const counts = await countsOf(db)
  const narrowed = Boolean(wanted.only) || Boolean(wanted.text)
  const found = narrowed
    ? Number(
        (
          await wantedPiles(db, wanted)
            .select(({ fn }) => fn.countAll<number>().as('n'))
            .executeTakeFirstOrThrow()
        ).n,
      )
    : counts[list]
  const pages = Math.max(1, Math.ceil(found / length))
  const at = Math.min(Math.max(1, page), pages)

  const sorted = wantedPiles(db, wanted)
    .selectAll()
    .$if(order === 'due', (all) => all.orderBy(due))
    .$if(order === 'needed', (all) => all.orderBy(neededLast).orderBy('need_by'))
    .orderBy('since', order === 'newest' ? 'desc' : 'asc')
    .orderBy('number', order === 'newest' ? 'desc' : 'asc')
    .limit(length)
    .offset((at - 1) * length)
  const shown = await sorted.execute()
  const standings = await standingsOf(
    db,
    shown.map(({ pile_id }) => pile_id),
  )
  const piles = shown.map((row) => queuedPile(row, standings.get(row.pile_id)!))
  return { piles, page: at, pages, found, counts }
}

type Stands = Pick<Row<'standing'>, 'contact_name' | 'garments' | 'summary'> & {
  readonly laid: LaidOutState | null
}

async function standingsOf(db: Db, ids: readonly string[]): Promise<ReadonlyMap<string, Stands>> {
  if (ids.length === 0) return new Map()
  const rows = await db
    .selectFrom('standing')
    .leftJoin('laid_out', 'laid_out.pile_id', 'standing.pile_id')
    .select(['standing.pile_id', 'contact_name', 'garments', 'summary', 'laid_out.state as laid'])
    .where('standing.pile_id', 'in', ids)
    .execute()
  return new Map(rows.map((row) => [row.pile_id, row]))
}

function queuedPile(row: Row<'waiting'>, stands: Stands): QueuedPile {
  const { layout, size } = JSON.parse(stands.summary) as { layout: string; size: string }
  return {
    id: row.pile_id,
    number: row.number,
    contactName: stands.contact_name,
    garments: stands.garments,
    needsEyes: row.eyes,
    openNotes: row.questions,
    since: row.since,
    needBy: row.need_by,
    layout,
    size,
    verdict: row.verdict as PileVerdict | null,
    laid: stands.laid,
  }
}
