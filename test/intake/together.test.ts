import { expect, inject, test } from 'vitest'
import type { Act } from '../../src/flow/grammar.ts'
import { type Conversation, converse } from '../../src/intake/conversation.ts'
import { entriesOf, pileOfKey } from '../../src/intake/rows.ts'
import { migrate } from '../../src/store/migrate.ts'
import type { Store } from '../../src/store/open.ts'
import { lockPile } from '../../src/store/rows.ts'
import { heldClock, learnAt } from '../help/app.ts'
import { startedAt } from '../help/pile.ts'
import { rebuildPile, rowsOfPile } from '../help/projected.ts'
import { eachStore, openBare } from '../help/stores.ts'

const knowledge = learnAt('2026-06-01')
const clock = heldClock(startedAt)

const say = (item: number, question: string, given: string): Act => ({
  act: 'answer',
  item,
  question,
  reply: { given },
})

const conversationOn = (store: Store): Conversation =>
  converse(store, knowledge, clock.read, () => ({ words: {}, figures: null }))

const idOf = async ({ db }: Store, key: string) => (await pileOfKey(db, key, clock.read)).id

const actsIn = async (store: Store, key: string) =>
  (await entriesOf(store.db, await idOf(store, key))).map(({ act }) => act)

/** What the queue reads of the pile is what its acts give. */
async function isProjected(store: Store, key: string): Promise<void> {
  const id = await idOf(store, key)
  const written = await rowsOfPile(store, id)
  await rebuildPile(store, knowledge, await pileOfKey(store.db, key, clock.read))
  expect(await rowsOfPile(store, id)).toEqual(written)
}

eachStore('answers that come at once', (store, name) => {
  const begin = async (count: number) => {
    const conversation = conversationOn(store())
    const keys: string[] = []
    for (let n = 0; n < count; n += 1) keys.push(await conversation.start('en'))
    return { conversation, keys }
  }

  test('are all kept, but for one that is refused', async () => {
    const { conversation, keys } = await begin(3)
    const [a, b, c] = keys as [string, string, string]
    const sent = (act: Act) => ({ act, idem: 'one', seen: 0 })
    const outcomes = await Promise.allSettled([
      conversation.act(a, sent(say(0, 'recipient', 'adult'))),
      conversation.act(b, sent({ act: 'drop', item: 9 })),
      conversation.act('no-such-link', sent(say(0, 'recipient', 'adult'))),
      conversation.act(c, sent({ act: 'add', item: 1 })),
    ])
    const done = { again: false, overtaken: null, seq: 1 }
    expect(outcomes).toMatchObject([
      { value: done },
      { reason: { code: 'not_found' } },
      { reason: { code: 'link_unknown' } },
      { value: done },
    ])
    expect(await actsIn(store(), b)).toEqual([])
    for (const key of keys) await isProjected(store(), key)
  })

  test('on one pile are taken in their order, each after the one before', async () => {
    const { conversation, keys } = await begin(2)
    const [a, b] = keys as [string, string]
    const sent = (idem: string, act: Act) => ({ act, idem, seen: 0 })
    const outcomes = await Promise.all([
      conversation.act(a, sent('one', { act: 'add', item: 1 })),
      conversation.act(b, sent('one', say(0, 'recipient', 'adult'))),
      conversation.act(a, sent('two', say(1, 'name', 'Choir sweatshirt'))),
      conversation.act(a, sent('three', say(1, 'name', 'Sweatshirt of the choir'))),
    ])
    expect(outcomes.map(({ seq }) => seq)).toEqual([1, 1, 2, 3])
    expect(outcomes.map(({ overtaken }) => overtaken)).toEqual([null, null, null, 2])
    expect(await actsIn(store(), a)).toEqual([
      { act: 'add', item: 1 },
      say(1, 'name', 'Choir sweatshirt'),
      say(1, 'name', 'Sweatshirt of the choir'),
    ])
    await isProjected(store(), a)
    await isProjected(store(), b)
  })

  test('under one key are one answer, a key on two piles two', async () => {
    const { conversation, keys } = await begin(2)
    const sent = { act: say(0, 'recipient', 'adult'), idem: 'the-same', seen: 0 }
    const outcomes = await Promise.all(
      [keys[0]!, keys[0]!, keys[1]!, keys[0]!].map((key) => conversation.act(key, sent)),
    )
    expect(outcomes.map(({ again }) => again)).toEqual([false, true, false, true])
    for (const key of keys) expect(await actsIn(store(), key)).toHaveLength(1)
  })

  test('cost nobody else anything where one of them cannot be written', async () => {
    const { conversation, keys } = await begin(3)
    const [a, b, c] = keys as [string, string, string]
    const sent = (act: Act) => ({ act, idem: 'one', seen: 0 })
    // PostgreSQL holds no zero byte in a text, SQLite does.
    const zero: Act = {
      act: 'answer',
      item: 0,
      question: 'recipient',
      reply: { asked: 'For whom\u0000?' },
    }
    const outcomes = await Promise.allSettled([
      conversation.act(a, sent(say(0, 'recipient', 'adult'))),
      conversation.act(b, sent(zero)),
      conversation.act(c, sent({ act: 'add', item: 1 })),
    ])
    const isKept = name === 'SQLite'
    expect(outcomes.map(({ status }) => status === 'fulfilled')).toEqual([true, isKept, true])
    const kept = await Promise.all(keys.map((key) => actsIn(store(), key)))
    expect(kept.map((acts) => acts.length)).toEqual([1, isKept ? 1 : 0, 1])
    for (const key of keys) await isProjected(store(), key)
  })

  test('of two conversations, as of two processes, are each taken on what stands, whatever either remembers', async () => {
    const { conversation: one, keys } = await begin(1)
    const other = conversationOn(store())
    const [key] = keys as [string]
    const act = (by: Conversation, what: Act, idem: string) =>
      by.act(key, { act: what, idem, seen: 0 })
    await act(one, say(0, 'recipient', 'adult'), 'one-1')
    await act(other, { act: 'add', item: 1 }, 'other-1')
    await act(one, say(1, 'name', 'Choir sweatshirt'), 'one-2')
    expect((await other.open(key)).pile.garments.map(({ name: told }) => told)).toEqual([
      'Choir sweatshirt',
    ])
    await act(other, { act: 'drop', item: 1 }, 'other-2')
    await expect(act(one, say(1, 'name', 'Sweatshirt'), 'one-3')).rejects.toMatchObject({
      code: 'question_moved_on',
    })
    // What one of them has kept is known to the other by its key.
    expect(await act(one, { act: 'drop', item: 1 }, 'other-2')).toMatchObject({ again: true })
    expect(await act(other, say(0, 'recipient', 'under1'), 'other-3')).toMatchObject({
      seq: 5,
      overtaken: 1,
    })
    expect((await one.open(key)).pile.recipient).toBe('under1')
    await isProjected(store(), key)
  })

  test('of two conversations at once on the same piles are all kept, in one order', async () => {
    const { conversation: one, keys } = await begin(4)
    const other = conversationOn(store())
    await Promise.all(
      [0, 1, 2, 3, 4].flatMap((nth) =>
        [one, other].flatMap((by, n) =>
          // One goes through the piles upwards, the other downwards.
          (n === 0 ? keys : keys.toReversed()).map((key) =>
            by.act(key, {
              act: say(0, 'recipient', nth % 2 ? 'adult' : 'under3'),
              idem: `${n}-${nth}`,
              seen: 0,
            }),
          ),
        ),
      ),
    )
    for (const key of keys) {
      const entries = await entriesOf(store().db, await idOf(store(), key))
      expect(entries.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
      await isProjected(store(), key)
    }
  })
})

test.skipIf(inject('postgres') === null)(
  'an answer on a pile that somebody holds waits, and no other with it',
  async () => {
    const { store, end } = await openBare()
    try {
      await migrate(store)
      const conversation = conversationOn(store)
      const [held, free] = [await conversation.start('en'), await conversation.start('en')]
      const id = await idOf(store, held)
      let release = () => {}
      const released = new Promise<void>((resolve) => {
        release = resolve
      })
      let holding: Promise<void> | null = null
      await new Promise<void>((isHeld) => {
        holding = store.transaction(async (trx) => {
          await lockPile(trx, id)
          isHeld()
          await released
        })
      })
      let isKept = false
      const sent = { act: say(0, 'recipient', 'adult'), idem: 'one', seen: 0 }
      const waits = conversation.act(held, sent).then((outcome) => {
        isKept = true
        return outcome
      })
      expect(await conversation.act(free, sent)).toMatchObject({ seq: 1 })
      expect(isKept).toBe(false)
      release()
      await holding
      expect(await waits).toMatchObject({ seq: 1 })
    } finally {
      await end()
    }
  },
)
