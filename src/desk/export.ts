import { setImmediate as turn } from 'node:timers/promises'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { type Cell, decimal, isoTime } from './csv.ts'
import { planMarksOf } from './plan-marks.ts'
import { pileAsKnown } from './spots.ts'

export const exportNames = ['piles', 'garments', 'decisions', 'custody', 'parcels'] as const
export type ExportName = (typeof exportNames)[number]

export interface Exported {
  readonly columns: readonly string[]
  readonly rows: AsyncIterable<readonly Cell[]>
}

/** So many piles are held at once. */
const atOnce = 50

async function* pileBatches(db: Db): AsyncGenerator<readonly PileRow[]> {
  let above = 0
  for (;;) {
    const rows = await db
      .selectFrom('pile')
      .selectAll()
      .where('number', '>', above)
      .orderBy('number')
      .limit(atOnce)
      .execute()
    if (rows.length === 0) return
    above = rows.at(-1)!.number
    yield rows
  }
}

const ids = (piles: readonly PileRow[]): string[] => piles.map(({ id }) => id)

const noEstimate: readonly Cell[] = [null, null, null, null]

/**
 * Low, likely, high and currency as today's files reckon them roughly; nothing where no garment is graded. A pile is
 * derived anew for it.
 */
async function estimateCells(db: Db, knowledge: Knowledge, row: PileRow): Promise<readonly Cell[]> {
  const pile = await pileAsKnown(db, knowledge, row, await planMarksOf(db, row.id))
  const { estimate } = pile
  // Others are served between one pile and the next.
  await turn()
  if (!estimate) return noEstimate
  const { total, currency } = estimate
  return [...[total.low, total.likely, total.high].map((one) => decimal(one, currency)), currency]
}

const pileColumns = [
  'pile',
  'state',
  'language',
  'began_at',
  'changed_at',
  'confirmed_at',
  'needed_by',
  'garments',
  'need_eyes',
  'layout',
  'size',
  'quilts',
  'recipient',
  'customer',
  'estimate_low',
  'estimate_likely',
  'estimate_high',
  'currency',
] as const

async function* pileRows(db: Db, knowledge: Knowledge): AsyncGenerator<readonly Cell[]> {
  for await (const piles of pileBatches(db)) {
    const standing = await db
      .selectFrom('standing')
      .selectAll()
      .where('pile_id', 'in', ids(piles))
      .execute()
    for (const row of piles) {
      const stands = standing.find(({ pile_id }) => pile_id === row.id)
      const summary = JSON.parse(stands?.summary ?? '{}') as Record<string, Cell | undefined>
      yield [
        row.number,
        row.status,
        row.language,
        isoTime(row.started_at),
        isoTime(row.changed_at),
        isoTime(row.confirmed_at),
        isoTime(stands?.need_by ?? null),
        stands?.garments ?? 0,
        stands?.needs_eyes ?? 0,
        summary.layout ?? null,
        summary.size ?? null,
        summary.quilts ?? null,
        summary.recipient ?? null,
        stands?.contact_name ?? null,
        // Intakes that were opened and left are most of those that there are.
        ...(stands?.garments ? await estimateCells(db, knowledge, row) : noEstimate),
      ]
    }
  }
}

const garmentColumns = [
  'pile',
  'garment',
  'tag',
  'name',
  'kind',
  'grade',
  'left_out',
  'reasons',
] as const

async function* garmentRows(db: Db): AsyncGenerator<readonly Cell[]> {
  for await (const piles of pileBatches(db)) {
    const rows = await db
      .selectFrom('garment')
      .innerJoin('pile', 'pile.id', 'garment.pile_id')
      .selectAll('garment')
      .select('pile.number')
      .where('garment.pile_id', 'in', ids(piles))
      .orderBy('pile.number')
      .orderBy('garment.item')
      .execute()
    for (const row of rows) {
      const flags = JSON.parse(row.flags) as { code: string }[]
      const reasons = flags.map(({ code }) => code).join(' ')
      const left = row.dropped === 1 ? 'yes' : 'no'
      yield [row.number, row.item, row.tag, row.name, row.kind, row.grade, left, reasons]
    }
  }
}

const decisionColumns = ['pile', 'garment', 'verdict', 'reason', 'by', 'at'] as const

async function* decisionRows(db: Db): AsyncGenerator<readonly Cell[]> {
  for await (const piles of pileBatches(db)) {
    const rows = await db
      .selectFrom('decision')
      .innerJoin('pile', 'pile.id', 'decision.pile_id')
      .innerJoin('account', 'account.id', 'decision.who')
      .selectAll('decision')
      .select(['pile.number', 'account.name'])
      .where('decision.pile_id', 'in', ids(piles))
      .orderBy('pile.number')
      .orderBy('decision.at')
      .execute()
    for (const row of rows) {
      yield [row.number, row.item, row.verdict, row.reason, row.name, isoTime(row.at)]
    }
  }
}

const custodyColumns = [
  'pile',
  'entry',
  'what',
  'move',
  'from_state',
  'to_state',
  'place',
  'out_of',
  'note',
  'by',
  'at',
  'takes_back',
] as const

async function* custodyRows(db: Db): AsyncGenerator<readonly Cell[]> {
  for await (const piles of pileBatches(db)) {
    const rows = await db
      .selectFrom('custody_move')
      .innerJoin('pile', 'pile.id', 'custody_move.pile_id')
      .leftJoin('account', 'account.id', 'custody_move.who')
      .selectAll('custody_move')
      .select(['pile.number', 'account.name'])
      .where('custody_move.pile_id', 'in', ids(piles))
      .orderBy('pile.number')
      .orderBy('custody_move.seq')
      .execute()
    for (const row of rows) {
      yield [
        row.number,
        row.seq,
        row.subject,
        row.move,
        row.from_state,
        row.to_state,
        row.place,
        row.via,
        row.note,
        row.name ?? 'customer',
        isoTime(row.at),
        row.undoes,
      ]
    }
  }
}

const parcelColumns = [
  'pile',
  'parcel',
  'carrier',
  'tracking',
  'insured',
  'currency',
  'posted_at',
  'expected_at',
  'arrived_at',
  'condition',
] as const

async function* parcelRows(db: Db, { shop }: Knowledge): AsyncGenerator<readonly Cell[]> {
  for await (const piles of pileBatches(db)) {
    const rows = await db
      .selectFrom('parcel')
      .innerJoin('pile', 'pile.id', 'parcel.pile_id')
      .selectAll('parcel')
      .select('pile.number')
      .where('parcel.pile_id', 'in', ids(piles))
      .orderBy('pile.number')
      .orderBy('parcel.subject')
      .execute()
    for (const row of rows) {
      yield [
        row.number,
        row.subject,
        row.carrier,
        row.tracking,
        decimal(row.insured, shop.currency),
        row.insured === null ? null : shop.currency,
        isoTime(row.posted_at),
        isoTime(row.expected_at),
        isoTime(row.arrived_at),
        row.condition,
      ]
    }
  }
}

const exports = {
  piles: (db, knowledge) => ({ columns: pileColumns, rows: pileRows(db, knowledge) }),
  garments: (db) => ({ columns: garmentColumns, rows: garmentRows(db) }),
  decisions: (db) => ({ columns: decisionColumns, rows: decisionRows(db) }),
  custody: (db) => ({ columns: custodyColumns, rows: custodyRows(db) }),
  parcels: (db, knowledge) => ({ columns: parcelColumns, rows: parcelRows(db, knowledge) }),
} as const satisfies Record<ExportName, (db: Db, knowledge: Knowledge) => Exported>

/** Every row of one kind, by pile; piles that are added meanwhile come at the end or not at all. */
export const exported = (name: ExportName, db: Db, knowledge: Knowledge): Exported =>
  exports[name](db, knowledge)
