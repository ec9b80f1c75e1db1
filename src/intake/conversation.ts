import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { canonical } from '../base/ids.ts'
import { admit } from '../flow/admit.ts'
import { type Followed, follow } from '../flow/follow.ts'
import type { Act, Flow } from '../flow/grammar.ts'
import { flowHash } from '../flow/pin.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { freeze, type Kept } from './agreement.ts'
import { type ClothOfGarment, clothsOf } from './cloth-colours.ts'
import { pinFlow, pinnedFlow } from './flow-versions.ts'
import type { Knowledge } from './knowledge.ts'
import { reopen, withdraw } from './leaving.ts'
import { answersByWords } from './own-words.ts'
import { derivePile, type Pile } from './pile.ts'
import {
  appendAct,
  type Entry,
  entriesOf,
  insertNote,
  insertPile,
  isKept,
  mintLink,
  pileOfKey,
} from './rows.ts'
import { rules } from './rules.ts'
import { project } from './standing.ts'

/** A pile as it stands, with what it was derived from. */
export interface Open {
  readonly row: PileRow
  readonly flow: Flow
  readonly entries: readonly Entry[]
  readonly pile: Pile
  /** Of its garments, in the same order. */
  readonly cloths: readonly ClothOfGarment[]
}

export interface Sent {
  /** An act, or acts that hang on where the conversation stands when their turn has come: all are taken, or none. */
  readonly act: Act | ((followed: Followed) => Act | readonly Act[])
  /** Sent once by the page: the same key again changes nothing. */
  readonly idem: string
  /** The last act the page knew of. */
  readonly seen: number
}

/** What became of an act. */
export interface Outcome {
  /** True where the key was known: a retry or a double tap. */
  readonly again: boolean
  /** The act by which somebody else had answered here since the page was made; null: none. */
  readonly overtaken: number | null
  /** The act's place in the order; null where nothing was appended. */
  readonly seq: number | null
}

export interface Conversation {
  /** Opens an empty pile. Returns the key of its link. */
  start(language: string): Promise<string>
  open(key: string): Promise<Open>
  /** Appends one act, durable when it resolves. Throws what `admit` refuses, or `pile_confirmed`. */
  act(key: string, sent: Sent): Promise<Outcome>
  /**
   * Gives the pile to the workshop; what was shown is frozen. The first time it opens the closing
   * questions instead; while one of them is open it changes nothing. Throws `nothing_gathered`.
   */
  confirm(key: string, idem: string): Promise<void>
  /** Opens a confirmed pile again, to be changed. Throws `pile_withdrawn`, `too_late_to_change`. */
  reopen(key: string, idem: string): Promise<void>
  /** Takes a confirmed pile back for good, or asks for it once its box is on the way. */
  withdraw(key: string, idem: string, reason: string): Promise<void>
  speak(key: string, language: string): Promise<void>
}

const same = (a: unknown, b: unknown): boolean => canonical(a) === canonical(b)

/** The newest act after `seen` that answered the same question, where it differs from ours. */
function overtakenBy(entries: readonly Entry[], act: Act, seen: number): number | null {
  if (act.act !== 'answer') return null
  const newer = entries.findLast(
    ({ seq, act: theirs }) =>
      seq > seen &&
      theirs.act === 'answer' &&
      theirs.item === act.item &&
      theirs.question === act.question,
  )
  if (newer?.act.act !== 'answer' || same(newer.act.reply, act.reply)) return null
  return newer.seq
}

/** The papers a customer is shown on confirming; made while the pile is locked. */
export type Papers = (open: Open) => Kept | Promise<Kept>

export function converse(
  store: Store,
  knowledge: Knowledge,
  clock: Clock,
  papers: Papers,
): Conversation {
  const load = async (db: Db, row: PileRow): Promise<Open> => {
    const flow = await pinnedFlow(db, row.flow_hash, knowledge)
    const entries = await entriesOf(db, row.id)
    const pile = derivePile(knowledge, flow, row, entries)
    return { row, flow, entries, pile, cloths: await clothsOf(db, row, pile.garments) }
  }

  /** Runs `work` on the locked pile, so that two devices take turns. */
  const locked = async <T>(key: string, work: (db: Db, row: PileRow) => Promise<T>): Promise<T> => {
    const { id } = await pileOfKey(store.db, key, clock)
    return store.transaction(async (trx) => {
      const row = await lockPile(trx, id)
      if (!row) throw new Failure('link_unknown')
      return work(trx, row)
    })
  }

  /** Appends acts, after each the answers that follow from confirming the visitor's own words; gives back the first. */
  const append = async (
    db: Db,
    row: PileRow,
    flow: Flow,
    before: readonly Entry[],
    sent: Pick<Sent, 'act' | 'idem'>,
  ): Promise<Act> => {
    const followed = (entries: readonly Entry[]) =>
      follow(
        flow,
        entries.map(({ act }) => act),
        rules,
      )
    let [entries, stands] = [[...before], followed(before)]
    const asked = typeof sent.act === 'function' ? sent.act(stands) : sent.act
    const waiting = 'act' in asked ? [asked] : [...asked]
    const taken: Act[] = []
    for (let act = waiting.shift(); act; act = waiting.shift()) {
      admit(flow, stands, act)
      const nth = taken.push(act)
      const entry: Entry = { seq: row.seq + nth, at: clock(), who: 'customer', act }
      await appendAct(db, row, {
        ...entry,
        idem: nth === 1 ? sent.idem : `${sent.idem}.${nth - 1}`,
      })
      if (act.act === 'answer' && 'asked' in act.reply) {
        const { item, question, reply } = act
        await insertNote(db, { pileId: row.id, item, question, text: reply.asked, at: entry.at })
      }
      entries = [...entries, entry]
      stands = followed(entries)
      waiting.unshift(...answersByWords(stands, act))
    }
    const [first] = taken
    if (!first) throw new Failure('bad_input')
    const after = { ...row, seq: row.seq + taken.length, changed_at: entries.at(-1)!.at }
    const whole = taken.length === 1 ? first : null
    await project(db, after, derivePile(knowledge, flow, after, entries), whole)
    return first
  }

  return {
    start: (language) =>
      store.transaction(async (trx) => {
        const at = clock()
        const hash = flowHash(knowledge.flow)
        await pinFlow(trx, hash, knowledge.flow, at)
        const row = await insertPile(trx, { language, flowHash: hash, at })
        await project(trx, row, derivePile(knowledge, knowledge.flow, row, []), null)
        return mintLink(trx, row.id, { at, lastsDays: knowledge.shop.link_days })
      }),

    open: async (key) => load(store.db, await pileOfKey(store.db, key, clock)),

    act: (key, sent) =>
      locked(key, async (db, row) => {
        if (await isKept(db, row.id, sent.idem)) return { again: true, overtaken: null, seq: null }
        if (row.status !== 'open') throw new Failure('pile_confirmed')
        const flow = await pinnedFlow(db, row.flow_hash, knowledge)
        const before = await entriesOf(db, row.id)
        const act = await append(db, row, flow, before, sent)
        return { again: false, overtaken: overtakenBy(before, act, sent.seen), seq: row.seq + 1 }
      }),

    confirm: (key, idem) =>
      locked(key, async (db, row) => {
        if (row.status !== 'open' || (await isKept(db, row.id, idem))) return
        const open = await load(db, row)
        const { at } = open.pile.followed.place
        if (!open.pile.followed.closed) {
          await append(db, row, open.flow, open.entries, {
            act: { act: 'close' },
            idem,
          })
          return
        }
        if (at === 'gather') throw new Failure('nothing_gathered')
        if (at !== 'end') return
        await freeze(db, row.id, await papers(open), clock())
      }),

    reopen: (key, idem) => locked(key, (db, row) => reopen(db, row, idem, clock())),

    withdraw: (key, idem, reason) =>
      locked(key, (db, row) => withdraw(db, row, { reason, idem, at: clock() })),

    speak: async (key, language) => {
      if (!knowledge.shop.languages.includes(language)) throw new Failure('not_found')
      const { id } = await pileOfKey(store.db, key, clock)
      await store.db.updateTable('pile').set({ language }).where('id', '=', id).execute()
    },
  }
}
