import type { Grade } from '../garment/grade.ts'
import type { Db } from '../store/schema.ts'

export interface BenchedGarment {
  readonly item: number
  readonly tag: string
  /** Empty: it has none. */
  readonly name: string
  readonly kind: string
  readonly grade: Grade | null
}

/** A pile that the workshop took, as the bench knows it: garments alone. */
export interface BenchedPile {
  readonly number: number
  readonly layout: string
  readonly size: string
  readonly needBy: number | null
  /** In the order they were added. */
  readonly garments: readonly BenchedGarment[]
}

export const benchPageLength = 25

export interface Bench {
  readonly piles: readonly BenchedPile[]
  /** From 1. */
  readonly page: number
  readonly pages: number
}

const accepted = (db: Db) =>
  db
    .selectFrom('pile')
    .where('pile.status', '=', 'decided')
    .where((eb) =>
      eb(
        eb
          .selectFrom('decision')
          .select('decision.verdict')
          .whereRef('decision.pile_id', '=', 'pile.id')
          .where('decision.item', 'is', null)
          .orderBy('decision.at', 'desc')
          .limit(1),
        '=',
        'accept',
      ),
    )

/** Piles that are accepted, those needed first on top, then the longest here. A page beyond the last is the last. */
export async function bench(
  db: Db,
  { page, length = benchPageLength }: { page: number; length?: number },
): Promise<Bench> {
  const { n } = await accepted(db)
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .executeTakeFirstOrThrow()
  const pages = Math.max(1, Math.ceil(Number(n) / length))
  const at = Math.min(Math.max(1, page), pages)
  const rows = await accepted(db)
    .innerJoin('standing', 'standing.pile_id', 'pile.id')
    .select(['pile.id', 'pile.number', 'standing.need_by', 'standing.summary'])
    .orderBy((eb) => eb.case().when('standing.need_by', 'is', null).then(1).else(0).end())
    .orderBy('standing.need_by')
    .orderBy('pile.confirmed_at')
    .orderBy('pile.number')
    .limit(length)
    .offset((at - 1) * length)
    .execute()
  const garments = await garmentsOf(
    db,
    rows.map(({ id }) => id),
  )
  return {
    piles: rows.map(({ id, number, need_by, summary }) => {
      const { layout, size } = JSON.parse(summary) as { layout: string; size: string }
      return { number, layout, size, needBy: need_by, garments: garments.get(id) ?? [] }
    }),
    page: at,
    pages,
  }
}

async function garmentsOf(
  db: Db,
  ids: readonly string[],
): Promise<ReadonlyMap<string, readonly BenchedGarment[]>> {
  if (ids.length === 0) return new Map()
  const rows = await db
    .selectFrom('garment')
    .select(['pile_id', 'item', 'tag', 'name', 'kind', 'grade'])
    .where('pile_id', 'in', ids)
    .where('dropped', '=', 0)
    .orderBy('item')
    .execute()
  const byPile = new Map<string, BenchedGarment[]>()
  for (const { pile_id, grade, ...row } of rows) {
    const garment = { ...row, grade: grade as Grade | null }
    byPile.set(pile_id, [...(byPile.get(pile_id) ?? []), garment])
  }
  return byPile
}
