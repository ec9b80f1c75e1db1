import { sql } from 'kysely'
import type { Kind, State } from '../custody/states.ts'
import { readSubjectKey } from '../custody/subject.ts'
import type { Db } from '../store/schema.ts'

/** Where one subject is, who moved it there, and when. */
export interface Located {
  readonly pile: number
  readonly pileId: string
  readonly subject: string
  readonly kind: Kind
  /** "K7-3". */
  readonly code: string
  /** What its garment is called, or the garment of a bag; empty: it has no name, or is none. */
  readonly name: string
  /** What somebody called a thing that is no cloth, when they found it; else empty. */
  readonly told: string
  /** The kind of its garment; null: it is none. */
  readonly garment: string | null
  readonly state: State
  readonly place: string | null
  readonly since: number
  /** Null: the customer. */
  readonly by: string | null
  /** Null where nobody may be named to who asks. */
  readonly customer: string | null
}

const located = (db: Db) =>
  db
    .selectFrom('custody')
    .innerJoin('pile', 'pile.id', 'custody.pile_id')
    .innerJoin('custody_move', (join) =>
      join
        .onRef('custody_move.pile_id', '=', 'custody.pile_id')
        .onRef('custody_move.seq', '=', 'custody.last_seq'),
    )
    .leftJoin('account', 'account.id', 'custody_move.who')
    .leftJoin('standing', 'standing.pile_id', 'custody.pile_id')
    .leftJoin('garment', (join) =>
      join.onRef('garment.pile_id', '=', 'custody.pile_id').on((eb) => {
        const item = eb.cast<string>('garment.item', 'text')
        const subject = eb.ref('custody.subject')
        return eb.or([eb(item, '=', subject), eb(subject, 'like', eb(item, '||', sql.lit('-L%')))])
      }),
    )
    .select((eb) =>
      eb
        .selectFrom('custody_move as birth')
        .select('birth.note')
        .whereRef('birth.pile_id', '=', 'custody.pile_id')
        .whereRef('birth.subject', '=', 'custody.subject')
        .where('birth.move', 'in', ['find', 'set-apart'])
        .orderBy('birth.seq')
        .limit(1)
        .as('told'),
    )
    .select([
      'custody.pile_id',
      'pile.number',
      'custody.subject',
      'custody.code',
      'custody.state',
      'custody.place',
      'custody.since',
      'account.name as by',
      'standing.contact_name',
      'garment.name',
      'garment.kind',
    ])

type LocatedRow = Awaited<ReturnType<ReturnType<typeof located>['execute']>>[number]

const asLocated = (row: LocatedRow): Located => ({
  pile: row.number,
  pileId: row.pile_id,
  subject: row.subject,
  kind: readSubjectKey(row.subject)!.kind,
  code: row.code,
  name: row.name ?? '',
  told: row.told ?? '',
  garment: row.kind,
  state: row.state as State,
  place: row.place,
  since: row.since,
  by: row.by,
  customer: row.contact_name,
})

/** As people count: B2-2 before B2-10. */
const counted = new Intl.Collator('en', { numeric: true })
const byCode = (a: Located, b: Located): number => counted.compare(a.code, b.code)

/** Everything that should be in the house, by place. */
export async function shouldBeHere(db: Db): Promise<Located[]> {
  const rows = await located(db)
    .where('custody.whereabouts', '=', 'here')
    .orderBy('custody.place')
    .execute()
  const places = new Map(rows.map(({ place }, n) => [place, n]))
  return rows
    .map(asLocated)
    .sort((a, b) => places.get(a.place)! - places.get(b.place)! || byCode(a, b))
}

/** Everything in the house in one state, the longest there first. */
export async function hereInState(db: Db, state: State): Promise<Located[]> {
  const rows = await located(db)
    .where('custody.whereabouts', '=', 'here')
    .where('custody.state', '=', state)
    .orderBy('custody.since')
    .limit(mostLocated)
    .execute()
  return rows.map((row) => ({ ...asLocated(row), customer: null }))
}

/** Everything of one pile, in the order of its keys. */
export async function locatedOf(db: Db, pileId: string): Promise<Located[]> {
  const rows = await located(db).where('custody.pile_id', '=', pileId).execute()
  const order = (subject: string) => {
    const { kind, of, n } = readSubjectKey(subject)!
    return kind === 'leftover' ? of * 1000 + n : n
  }
  return rows
    .map((row) => ({ ...asLocated(row), customer: null }))
    .sort((a, b) => order(a.subject) - order(b.subject))
}

/** So many answers are shown to one search. */
export const mostLocated = 60

/** `%`, `_` and `\` of a search mean themselves. */
const within = (text: string): string => `%${text.toLowerCase().replaceAll(/[\\%_]/g, '\\$&')}%`

/**
 * Where what somebody looks for is: by the beginning of a code, a part of a garment's name, of a place, or, for
 * those who may know customers, of the customer's name.
 */
export async function whereIs(
  db: Db,
  text: string,
  { customers }: { readonly customers: boolean },
): Promise<Located[]> {
  const part = within(text)
  const code = `${text.toUpperCase().replaceAll(/[\\%_]/g, '\\$&')}%`
  const rows = await located(db)
    .where(({ or }) => {
      const like = (column: string) =>
        sql<boolean>`lower(${sql.ref(column)}) like ${part} escape '\\'`
      return or([
        sql<boolean>`custody.code like ${code} escape '\\'`,
        like('garment.name'),
        like('custody.place'),
        ...(customers ? [like('standing.contact_name')] : []),
      ])
    })
    .orderBy('custody.since', 'desc')
    .limit(mostLocated)
    .execute()
  return rows
    .map(asLocated)
    .map((one) => (customers ? one : { ...one, customer: null }))
    .sort(byCode)
}

/** The pile and key that stand behind a code; null: there is none. */
export async function ofCode(
  db: Db,
  code: string,
): Promise<{ readonly pile: number; readonly subject: string } | null> {
  const kept = await db
    .selectFrom('custody')
    .innerJoin('pile', 'pile.id', 'custody.pile_id')
    .select(['pile.number', 'custody.subject'])
    .where('custody.code', '=', code)
    .executeTakeFirst()
  return kept ? { pile: kept.number, subject: kept.subject } : null
}

/** Places that are in use, the most used first. */
export async function placesUsed(db: Db, most = 30): Promise<string[]> {
  const rows = await db
    .selectFrom('custody')
    .select(({ fn }) => ['place', fn.countAll<number>().as('n')])
    .where('whereabouts', '=', 'here')
    .where('place', 'is not', null)
    .groupBy('place')
    .orderBy('n', 'desc')
    .orderBy('place')
    .limit(most)
    .execute()
  return rows.flatMap(({ place }) => place ?? [])
}
