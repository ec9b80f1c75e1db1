import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { sha256 } from '../base/ids.ts'
import type { Flow } from '../flow/grammar.ts'
import { groupCommit } from '../store/group-commit.ts'
import { sendLast } from '../store/last.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { type Answer, type Ask, actAsRemembered, actTogether } from './acts-together.ts'
import { freeze, type Kept } from './agreement.ts'
import { type ClothOfGarment, clothsOf } from './cloth-colours.ts'
import { pinFlow } from './flow-versions.ts'
import type { Knowledge } from './knowledge.ts'
import { reopen, withdraw } from './leaving.ts'
import { derivePile, type Pile } from './pile.ts'
import { type KeptAct, newLink, newPile, pileOfKey } from './rows.ts'
import { project, projections } from './standing.ts'
import { knows, rememberPiles, type Stood, standing } from './stood.ts'
import { type Outcome, type Sent, take, takeOnce } from './taking.ts'
import { writeActs } from './write-acts.ts'

export type { Outcome, Sent } from './taking.ts'

/** A pile as it stands, with what it was derived from. */
export interface Open {
  readonly row: PileRow
  readonly flow: Flow
  /** What was sent under the idempotency key of one of them is kept. */
  readonly entries: readonly KeptAct[]
  readonly pile: Pile
  /** Of its garments, in the same order. */
  readonly cloths: readonly ClothOfGarment[]
}

export interface Conversation {
  /** Opens an empty pile. Returns the key of its link. */
  start(language: string): Promise<string>
  open(key: string): Promise<Open>
  /** A pile that was opened here of late, whatever became of it since; null: it has to be opened. */
  remembered(key: string): { readonly pileId: string; readonly flow: Flow } | null
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

/** The papers a customer is shown on confirming; made while the pile is locked. */
export type Papers = (open: Open) => Kept | Promise<Kept>

export function converse(
  store: Store,
  knowledge: Knowledge,
  clock: Clock,
  papers: Papers,
): Conversation {
  const memory = rememberPiles()

  const openOf = async (db: Db, { row, flow, entries, derived }: Stood): Promise<Open> => {
    const { pile } = derived
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

  const turns = { knowledge, clock, memory }
  const together = groupCommit(
    store,
    (trx, asks: readonly Ask[]) => actTogether(turns, trx, asks),
    { early: (asks) => actAsRemembered(turns, store.db, asks) },
  )

  /** In a transaction of its own, which waits for whoever holds the pile. */
  const alone = (key: string, sent: Sent): Promise<Answer> =>
    locked(key, async (trx, row) => {
      const answer = takeOnce(await standing(trx, row, turns), sent, clock)
      await writeActs(trx, [answer])
      return answer
    })

  return {
    start: (language) =>
      store.transaction(async (trx) => {
        const { flow, flowHash } = knowledge
        const at = clock()
        await pinFlow(trx, flowHash, flow, at)
        // Whoever takes a number keeps others from theirs until the end.
        const row = await newPile(trx, { language, flowHash, at })
        const made = newLink(row.id, { at, lastsDays: knowledge.shop.link_days })
        const pile = derivePile(knowledge, flow, row, [])
        await sendLast(trx, [
          trx.insertInto('pile').values(row).compile(),
          ...projections(trx, [{ row, pile, since: null }]),
          trx.insertInto('pile_link').values(made.row).compile(),
        ])
        return made.key
      }),

    open: async (key) => {
      const stood = await standing(store.db, await pileOfKey(store.db, key, clock), turns)
      memory.keep(stood, sha256(key))
      return openOf(store.db, stood)
    },

    // A pile stays on its flow, whatever became of it since.
    remembered: (key) => {
      const stood = memory.behind(sha256(key))
      return stood ? { pileId: stood.row.id, flow: stood.flow } : null
    },

    act: async (key, sent) => {
      const ask = { hash: sha256(key), sent }
      const { outcome, stood } = (await together(ask)) ?? (await alone(key, sent))
      memory.keep(stood, ask.hash)
      return outcome
    },

    confirm: (key, idem) =>
      locked(key, async (db, row) => {
        if (row.status !== 'open') return
        const stood = await standing(db, row, turns)
        if (knows(stood, idem)) return
        const { place, closed } = stood.following.followed
        if (!closed) {
          await writeActs(db, [take(stood, { act: { act: 'close' }, idem }, clock)])
          return
        }
        if (place.at === 'gather') throw new Failure('nothing_gathered')
        if (place.at !== 'end') return
        // The desk works by these from here on.
        await project(db, row, stood.derived.pile)
        await freeze(db, row.id, await papers(await openOf(db, stood)), clock())
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
