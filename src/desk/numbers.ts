import type { Act } from '../flow/grammar.ts'
import type { Severity } from '../garment/grade.ts'
import { printSeen, type SeenPhoto, tellingLook } from '../intake/garment-look.ts'
import { labelSeen } from '../intake/replies.ts'
import { type Db, type PileStatus, pileStatuses } from '../store/schema.ts'

/*
 * What the owner counts over a time: of piles that began in it, the newest few thousand. Nothing of it is stored;
 * it is read off the same rows that the desk reads.
 */

/** Piles of the period beyond these are not counted: every number below is bounded by them. */
export const mostCounted = 2_000

/** An open intake that nobody has touched for so long has been left, milliseconds. */
export const leftAfter = 7 * 24 * 60 * 60 * 1000

/** Milliseconds UTC; `to` is not in it. */
export interface Period {
  readonly from: number
  readonly to: number
}

/** How often what a photo told was sent on otherwise by the customer. */
export interface Corrected {
  readonly read: number
  readonly otherwise: number
}

export interface FlagCount {
  readonly code: string
  readonly severity: Severity
  readonly count: number
  /** Of these garments, by the last decision of each. */
  readonly taken: number
  readonly declined: number
  readonly asked: number
}

export interface Numbers {
  /** Piles that began in the period; those beyond the newest `mostCounted` are told and not counted. */
  readonly piles: number
  readonly uncounted: number
  readonly states: readonly { readonly status: PileStatus; readonly count: number }[]
  /** The most frequent first. */
  readonly flags: readonly FlagCount[]
  readonly labels: Corrected
  readonly prints: Corrected
  /** Where open intakes stand that were left: a question's id, or `gather` or `end`; the most frequent first. */
  readonly left: readonly { readonly place: string; readonly count: number }[]
  /** Medians, milliseconds; null: there is none. */
  readonly toConfirm: number | null
  readonly toDecide: number | null
}

/** Ids of the piles that are counted. */
const counted = (db: Db, { from, to }: Period) =>
  db
    .selectFrom('pile')
    .select('pile.id')
    .where('pile.started_at', '>=', from)
    .where('pile.started_at', '<', to)
    .orderBy('pile.started_at', 'desc')
    .limit(mostCounted)

async function begun(db: Db, { from, to }: Period): Promise<number> {
  const row = await db
    .selectFrom('pile')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .where('started_at', '>=', from)
    .where('started_at', '<', to)
    .executeTakeFirst()
  return Number(row?.n ?? 0)
}

async function statesOf(db: Db, period: Period): Promise<Numbers['states']> {
  const rows = await db
    .selectFrom('pile')
    .select(({ fn }) => ['status', fn.countAll<number>().as('n')])
    .where('id', 'in', counted(db, period))
    .groupBy('status')
    .execute()
  return pileStatuses.map((status) => ({
    status,
    count: Number(rows.find((row) => row.status === status)?.n ?? 0),
  }))
}

const garmentKey = (pile: string, item: number | null): string => `${pile} ${item}`

/** The last verdict of every garment that was decided of. */
async function verdictsOf(db: Db, period: Period): Promise<ReadonlyMap<string, string>> {
  const rows = await db
    .selectFrom('decision')
    .select(['pile_id', 'item', 'verdict'])
    .where('pile_id', 'in', counted(db, period))
    .where('item', 'is not', null)
    .orderBy('at')
    .execute()
  return new Map(rows.map((row) => [garmentKey(row.pile_id, row.item), row.verdict]))
}

async function flagsOf(db: Db, period: Period): Promise<Numbers['flags']> {
  const verdicts = await verdictsOf(db, period)
  const rows = await db
    .selectFrom('garment')
    .select(['pile_id', 'item', 'flags'])
    .where('pile_id', 'in', counted(db, period))
    .where('dropped', '=', 0)
    .execute()
  const found = new Map<string, { severity: Severity; verdicts: (string | undefined)[] }>()
  for (const { pile_id, item, flags } of rows) {
    for (const { code, severity } of JSON.parse(flags) as { code: string; severity: Severity }[]) {
      const one = found.get(code) ?? { severity, verdicts: [] }
      one.verdicts.push(verdicts.get(garmentKey(pile_id, item)))
      found.set(code, one)
    }
  }
  return [...found]
    .map(([code, one]) => {
      const having = (...wanted: string[]) =>
        one.verdicts.filter((verdict) => verdict && wanted.includes(verdict)).length
      return {
        code,
        severity: one.severity,
        count: one.verdicts.length,
        taken: having('take', 'care'),
        declined: having('decline'),
        asked: having('ask'),
      }
    })
    .toSorted((a, b) => b.count - a.count || (a.code < b.code ? -1 : 1))
}

/** The last answer to a question of every garment. */
async function answersTo(db: Db, period: Period, question: 'label' | 'pattern') {
  const rows = await db
    .selectFrom('act')
    .select(['pile_id', 'act'])
    .where('pile_id', 'in', counted(db, period))
    // Found as it is written; what only looks like it is left out below.
    .where('act', 'like', `%"question":"${question}"%`)
    .orderBy('pile_id')
    .orderBy('seq')
    .execute()
  const last = new Map<string, Extract<Act, { act: 'answer' }>>()
  for (const { pile_id, act: text } of rows) {
    const act = JSON.parse(text) as Act
    if (act.act === 'answer' && act.question === question) {
      last.set(garmentKey(pile_id, act.item), act)
    }
  }
  return last
}

/** Labels with words that were read off a photo, and those of them that were sent on with other words. */
async function labelsOf(db: Db, period: Period): Promise<Corrected> {
  const answers = [...(await answersTo(db, period, 'label')).values()]
  const read = answers.flatMap(({ reply }) => {
    const seen = labelSeen({ label: reply })
    if (!seen.read || !('given' in reply)) return []
    const { words } = reply.given as { words?: string }
    return [{ seen: seen.read, words }]
  })
  return {
    read: read.length,
    otherwise: read.filter(({ seen, words }) => words !== undefined && words !== seen).length,
  }
}

/** Garments whose photo surely told a print, and those of them whose customer says another. */
async function printsOf(db: Db, period: Period): Promise<Corrected> {
  const answers = await answersTo(db, period, 'pattern')
  const rows = await db
    .selectFrom('photo')
    .select(['id', 'pile_id', 'item', 'look', 'shows'])
    .where('pile_id', 'in', counted(db, period))
    .where('kept', '=', 1)
    .where('removed_at', 'is', null)
    .where('look', 'is not', null)
    .orderBy('at')
    .orderBy('id')
    .execute()
  const seen = new Map<string, SeenPhoto[]>()
  for (const row of rows) {
    const key = garmentKey(row.pile_id, row.item)
    const photo = { photo: row.id, look: JSON.parse(row.look!), shows: row.shows } as SeenPhoto
    seen.set(key, [...(seen.get(key) ?? []), photo])
  }
  const told = [...seen].flatMap(([key, photos]) => {
    const telling = tellingLook(photos)
    const print = telling && printSeen(telling.look)
    const reply = answers.get(key)?.reply
    return print && reply && 'given' in reply ? [{ print, said: reply.given }] : []
  })
  return {
    read: told.length,
    otherwise: told.filter(({ print, said }) => said !== print).length,
  }
}

interface PlaceKept {
  readonly at: string
  readonly question?: { readonly id: string }
}

async function leftOf(db: Db, period: Period, now: number): Promise<Numbers['left']> {
  const rows = await db
    .selectFrom('standing')
    .innerJoin('pile', 'pile.id', 'standing.pile_id')
    .select('standing.place')
    .where('pile.id', 'in', counted(db, period))
    .where('pile.status', '=', 'open')
    .where('pile.changed_at', '<', now - leftAfter)
    .execute()
  const counts = new Map<string, number>()
  for (const { place } of rows) {
    const { at, question } = JSON.parse(place) as PlaceKept
    const name = question?.id ?? at
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  return [...counts]
    .map(([place, count]) => ({ place, count }))
    .toSorted((a, b) => b.count - a.count || (a.place < b.place ? -1 : 1))
}

/** The middle one, or the mean of the two in the middle; null of none. */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length / 2
  return Number.isInteger(half) ? (sorted[half - 1]! + sorted[half]!) / 2 : sorted[half - 0.5]!
}

async function timesOf(db: Db, period: Period): Promise<Pick<Numbers, 'toConfirm' | 'toDecide'>> {
  const piles = await db
    .selectFrom('pile')
    .select(['id', 'started_at', 'confirmed_at'])
    .where('id', 'in', counted(db, period))
    .where('confirmed_at', 'is not', null)
    .execute()
  const decided = await db
    .selectFrom('decision')
    .select(({ fn }) => ['pile_id', fn.min('at').as('first')])
    .where('pile_id', 'in', counted(db, period))
    .where('item', 'is', null)
    .where('verdict', 'in', ['accept', 'decline'])
    .groupBy('pile_id')
    .execute()
  const first = new Map(decided.map((row) => [row.pile_id, Number(row.first)]))
  return {
    toConfirm: median(piles.map((pile) => pile.confirmed_at! - pile.started_at)),
    toDecide: median(
      piles.flatMap(({ id, confirmed_at }) => {
        const at = first.get(id)
        return at === undefined ? [] : [at - confirmed_at!]
      }),
    ),
  }
}

/** Everything that is counted over a period. `now` says which open intakes were left. */
export async function numbersOf(db: Db, period: Period, now: number): Promise<Numbers> {
  const all = await begun(db, period)
  return {
    piles: Math.min(all, mostCounted),
    uncounted: Math.max(0, all - mostCounted),
    states: await statesOf(db, period),
    flags: await flagsOf(db, period),
    labels: await labelsOf(db, period),
    prints: await printsOf(db, period),
    left: await leftOf(db, period, now),
    ...(await timesOf(db, period)),
  }
}
