import { Failure } from '../base/failures.ts'
import type { Db, PileRow } from '../store/schema.ts'
import type { NamedGarment } from './garment-words.ts'
import { type Message, messagesOf } from './messages.ts'
import { type Note, notesOf } from './notes.ts'

/** One thing that was written: a message, or a question of the intake that was left to a person. */
export type Entry = ({ readonly kind: 'message' } & Message) | ({ readonly kind: 'note' } & Note)

/** What was written about one garment, or about the pile. */
export interface Thread {
  /** The garment's number; null: the pile. */
  readonly item: number | null
  /** Oldest first. */
  readonly entries: readonly Entry[]
  /** Something of the customer's that nobody has answered or seen to. */
  readonly waitsForStaff: boolean
  /** A question of the shop without an answer: who asks. */
  readonly asks: string | null
}

/** Nothing was written yet. */
export const emptyThread = (item: number | null): Thread => ({
  item,
  entries: [],
  waitsForStaff: false,
  asks: null,
})

const fromCustomer = (entry: Entry): boolean => entry.kind === 'note' || entry.by === null

const isOpenQuestion = (entry: Entry): boolean =>
  entry.kind === 'message' && entry.by !== null && entry.wantsAnswer && entry.settled === null

/** Threads by what they are about: those that wait for the shop first, then by the newest entry. */
export function threadsFrom(messages: readonly Message[], notes: readonly Note[]): Thread[] {
  const entries: Entry[] = [
    ...notes.map((note) => ({ kind: 'note', ...note }) as const),
    ...messages.map((message) => ({ kind: 'message', ...message }) as const),
  ].sort((a, b) => a.at - b.at)
  const about = (entry: Entry) => (entry.kind === 'note' && entry.item === 0 ? null : entry.item)
  const items = [...new Set(entries.map(about))]
  return items
    .map((item): Thread => {
      const its = entries.filter((entry) => about(entry) === item)
      const question = its.findLast(isOpenQuestion)
      return {
        item,
        entries: its,
        waitsForStaff: its.some((entry) => fromCustomer(entry) && entry.settled === null),
        asks: question?.kind === 'message' ? question.by : null,
      }
    })
    .sort(
      (a, b) =>
        Number(b.waitsForStaff) - Number(a.waitsForStaff) ||
        b.entries.at(-1)!.at - a.entries.at(-1)!.at,
    )
}

/** Of one pile. */
export const threadsOf = async (db: Db, pileId: string): Promise<Thread[]> =>
  threadsFrom(await messagesOf(db, pileId), await notesOf(db, pileId))

/** The pile of a number, an open intake too. Throws `not_found`. */
export async function pileWrittenOf(db: Db, number: number): Promise<PileRow> {
  const row = await db
    .selectFrom('pile')
    .selectAll()
    .where('number', '=', number)
    .executeTakeFirst()
  if (!row) throw new Failure('not_found')
  return row
}

/** Something that a customer wrote and that waits, beside the pile that it belongs to. */
export interface Waiting {
  readonly pile: number
  readonly item: number | null
  readonly garment: NamedGarment | null
  readonly text: string
  readonly at: number
}

const mostWaiting = 100

/** Customers' messages of all piles that nobody has answered or seen to, oldest first, a hundred at most. */
export async function waitingMessages(db: Db): Promise<Waiting[]> {
  const rows = await db
    .selectFrom('message')
    .innerJoin('pile', 'pile.id', 'message.pile_id')
    .leftJoin('garment', (join) =>
      join
        .onRef('garment.pile_id', '=', 'message.pile_id')
        .onRef('garment.item', '=', 'message.item'),
    )
    .select(['pile.number', 'message.item', 'message.text', 'message.at'])
    .select(['garment.name', 'garment.kind'])
    .where('message.account_id', 'is', null)
    .where('message.settled_at', 'is', null)
    .orderBy('message.at')
    .orderBy('message.id')
    .limit(mostWaiting)
    .execute()
  return rows.map(({ number, item, name, kind, text, at }) => ({
    pile: number,
    item,
    garment: item === null ? null : { item, name: name ?? '', kind: kind ?? '' },
    text,
    at,
  }))
}
