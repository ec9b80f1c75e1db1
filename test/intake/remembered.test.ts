import { expect, test } from 'vitest'
import { sha256 } from '../../src/base/ids.ts'
import type { Act } from '../../src/flow/grammar.ts'
import { type Conversation, converse } from '../../src/intake/conversation.ts'
import { entriesOf, mintLink, pileOfKey } from '../../src/intake/rows.ts'
import type { Store } from '../../src/store/open.ts'
import { heldClock, learnAt } from '../help/app.ts'
import { startedAt } from '../help/pile.ts'
import { rebuildPile, rowsOfPile } from '../help/projected.ts'
import { eachStore } from '../help/stores.ts'

const knowledge = learnAt('2026-06-01')

const say = (item: number, question: string, given: string): Act => ({
  act: 'answer',
  item,
  question,
  reply: { given },
})

eachStore('an answer on a pile that is remembered', (store) => {
  /** A pile that is remembered, and how many transactions were asked for since. */
  async function begin() {
    const clock = heldClock(startedAt)
    let transactions = 0
    const counted: Store = {
      ...store(),
      transaction: (body) => {
        transactions += 1
        return store().transaction(body)
      },
    }
    const on = (kept: Store): Conversation =>
      converse(kept, knowledge, clock.read, () => ({ words: {}, figures: null }))
    const conversation = on(counted)
    const key = await conversation.start('en')
    await conversation.open(key)
    transactions = 0
    const { id } = await pileOfKey(store().db, key, clock.read)
    const send = (act: Act, idem: string) => conversation.act(key, { act, idem, seen: 0 })
    const acts = async () => (await entriesOf(store().db, id)).map(({ act }) => act)
    return {
      clock,
      key,
      id,
      on: conversation,
      send,
      acts,
      other: on(store()),
      transactions: () => transactions,
    }
  }

  /** What the queue reads of the pile is what its acts give. */
  async function isProjected(id: string) {
    const row = await store()
      .db.selectFrom('pile')
      .selectAll()
      .where('id', '=', id)
      .executeTakeFirstOrThrow()
    const written = await rowsOfPile(store(), id)
    await rebuildPile(store(), knowledge, row)
    expect(await rowsOfPile(store(), id)).toEqual(written)
  }

  test('is written without a look at the pile before', async () => {
    const { id, send, acts, transactions } = await begin()
    await send(say(0, 'recipient', 'adult'), 'one')
    await send({ act: 'add', item: 1 }, 'two')
    const asked: Act = { act: 'answer', item: 1, question: 'name', reply: { asked: 'Which name?' } }
    await Promise.all([send(say(1, 'name', 'Choir shirt'), 'three'), send(asked, 'four')])
    expect(transactions()).toBe(0)
    expect(await acts()).toHaveLength(4)
    const notes = await store()
      .db.selectFrom('note')
      .selectAll()
      .where('pile_id', '=', id)
      .execute()
    expect(notes).toMatchObject([
      { item: 1, question: 'name', text: 'Which name?', settled_at: null },
    ])
    await isProjected(id)
  })

  test('is taken on what stands where somebody else has acted since', async () => {
    const { id, key, send, acts, other } = await begin()
    await other.act(key, { act: say(0, 'recipient', 'adult'), idem: 'other', seen: 0 })
    expect(await send(say(0, 'recipient', 'under3'), 'one')).toMatchObject({ seq: 2, overtaken: 1 })
    expect(await acts()).toHaveLength(2)
    await isProjected(id)
  })

  test('is taken where the pile is held in another language since', async () => {
    const { key, id, send, other } = await begin()
    await other.speak(key, 'es')
    expect(await send(say(0, 'recipient', 'adult'), 'one')).toMatchObject({ seq: 1 })
    await isProjected(id)
  })

  test('is refused where its link is revoked since, or has run out', async () => {
    const revoked = await begin()
    await store()
      .db.updateTable('pile_link')
      .set({ revoked_at: startedAt })
      .where('pile_id', '=', revoked.id)
      .execute()
    await expect(revoked.send(say(0, 'recipient', 'adult'), 'one')).rejects.toMatchObject({
      code: 'link_unknown',
    })
    expect(await revoked.acts()).toEqual([])

    const old = await begin()
    old.clock.now = startedAt + (knowledge.shop.link_days + 1) * 24 * 60 * 60 * 1000
    await expect(old.send(say(0, 'recipient', 'adult'), 'one')).rejects.toMatchObject({
      code: 'link_expired',
    })
    expect(await old.acts()).toEqual([])
  })

  test.each(['confirmed', 'withdrawn'] as const)(
    'is refused where it is %s since',
    async (status) => {
      const { id, send, acts } = await begin()
      await store().db.updateTable('pile').set({ status }).where('id', '=', id).execute()
      await expect(send(say(0, 'recipient', 'adult'), 'one')).rejects.toMatchObject({
        code: 'pile_confirmed',
      })
      expect(await acts()).toEqual([])
    },
  )

  test('stays in its order behind one that is refused', async () => {
    const { send, acts, transactions } = await begin()
    const [first, refused, last] = await Promise.allSettled([
      send({ act: 'add', item: 1 }, 'one'),
      send({ act: 'drop', item: 9 }, 'two'),
      send(say(1, 'name', 'Choir shirt'), 'three'),
    ])
    expect(first).toMatchObject({ value: { seq: 1 } })
    expect(refused).toMatchObject({ reason: { code: 'not_found' } })
    expect(last).toMatchObject({ value: { seq: 2 } })
    expect(await acts()).toEqual([{ act: 'add', item: 1 }, say(1, 'name', 'Choir shirt')])
    expect(transactions()).toBe(1)
  })

  test('stays in its order where it comes by two links', async () => {
    const { id, key, on, acts } = await begin()
    const another = await mintLink(store().db, id, { at: startedAt, lastsDays: 1 })
    await on.open(another)
    const sent = (by: string, idem: string, given: string) =>
      on.act(by, { act: say(0, 'recipient', given), idem, seen: 0 })
    await Promise.all([
      sent(key, 'one', 'adult'),
      sent(another, 'two', 'under1'),
      sent(key, 'three', 'under3'),
    ])
    expect(await acts()).toEqual(
      ['adult', 'under1', 'under3'].map((given) => say(0, 'recipient', given)),
    )
    await isProjected(id)
  })

  test('between two questions of a garment is written for each pile that stands so, and for no other', async () => {
    const { key, id, on, other, acts, transactions } = await begin()
    const steady = await on.start('en')
    await on.open(steady)
    for (const by of [key, steady]) {
      await on.act(by, { act: { act: 'add', item: 1 }, idem: `add ${by}`, seen: 0 })
    }
    await other.act(key, { act: say(1, 'name', 'Fair jumper'), idem: 'other', seen: 1 })
    const before = transactions()
    const name = (by: string, idem: string) =>
      on.act(by, { act: say(1, 'name', 'Choir shirt'), idem, seen: 1 })
    expect(await Promise.all([name(key, 'one'), name(steady, 'two')])).toMatchObject([
      { seq: 3, overtaken: 2 },
      { seq: 2, overtaken: null },
    ])
    expect(transactions()).toBe(before + 1)
    expect(await acts()).toEqual([
      { act: 'add', item: 1 },
      say(1, 'name', 'Fair jumper'),
      say(1, 'name', 'Choir shirt'),
    ])

    await store()
      .db.updateTable('pile_link')
      .set({ revoked_at: startedAt })
      .where('pile_id', '=', id)
      .execute()
    const [revoked, kept] = await Promise.allSettled([name(key, 'three'), name(steady, 'four')])
    expect(revoked).toMatchObject({ reason: { code: 'link_unknown' } })
    expect(kept).toMatchObject({ value: { seq: 3 } })
    expect(await acts()).toHaveLength(3)
  })

  test('is refused by one link that is revoked since, and kept by another', async () => {
    const { id, key, on, acts } = await begin()
    const another = await mintLink(store().db, id, { at: startedAt, lastsDays: 1 })
    await on.open(another)
    await store()
      .db.updateTable('pile_link')
      .set({ revoked_at: startedAt })
      .where('key_hash', '=', sha256(key))
      .execute()
    const outcomes = await Promise.allSettled(
      [key, another].map((by, nth) =>
        on.act(by, { act: { act: 'add', item: 1 + nth }, idem: `no-${nth}`, seen: 0 }),
      ),
    )
    expect(outcomes).toMatchObject([{ reason: { code: 'link_unknown' } }, { value: { seq: 1 } }])
    expect(await acts()).toEqual([{ act: 'add', item: 2 }])
  })
})
