import { expect, test } from 'vitest'
import type { Followed } from '../../src/flow/follow.ts'
import type { Act, Reply } from '../../src/flow/grammar.ts'
import { type Conversation, converse } from '../../src/intake/conversation.ts'
import { writeHalfTold } from '../../src/intake/half-told.ts'
import { entriesOf, pileOfKey } from '../../src/intake/rows.ts'
import { rules } from '../../src/intake/rules.ts'
import { heldClock, learnAt } from '../help/app.ts'
import { startedAt } from '../help/pile.ts'
import { rebuildPile, rowsOfPile } from '../help/projected.ts'
import { eachStore } from '../help/stores.ts'
import { nextAct, onward, picker } from '../help/wander.ts'
import { leadTo } from '../help/workshop.ts'

const knowledge = learnAt('2026-06-01')
const clock = heldClock(startedAt)

/** What a visitor does, with the place that it leads to. */
async function wanderOn(
  conversation: Conversation,
  key: string,
  { seed, steps }: { seed: number; steps: number },
): Promise<Followed['place']> {
  const pick = picker(seed)
  for (let step = 0; step < steps; step += 1) {
    clock.now += 60_000
    await conversation.act(key, {
      act: (followed) => nextAct(followed, rules, pick),
      idem: `act-${seed}-${step}`,
      seen: 0,
    })
  }
  return (await conversation.open(key)).pile.followed.place
}

eachStore('what the queue reads', (store) => {
  const conversation = () =>
    converse(store(), knowledge, clock.read, () => ({ words: {}, figures: null }))

  const idOf = async (key: string) => (await pileOfKey(store().db, key, clock.read)).id

  async function isWhole(key: string) {
    const row = await pileOfKey(store().db, key, clock.read)
    const kept = await rowsOfPile(store(), row.id)
    await rebuildPile(store(), knowledge, row)
    expect(await rowsOfPile(store(), row.id)).toEqual(kept)
    return kept
  }

  test('is what a rebuild from the acts gives wherever a customer rests', async () => {
    let rested = 0
    for (let seed = 1; seed <= 6; seed += 1) {
      const one = conversation()
      const key = await one.start('en')
      for (let n = 1; n <= 12; n += 1) {
        // One server, or one that is new to the pile.
        const on = n % 4 === 0 ? conversation() : one
        const place = await wanderOn(on, key, { seed: 100 * seed + n, steps: 4 })
        if (place.at === 'question' && place.item > 0) continue
        await isWhole(key)
        rested += 1
      }
    }
    expect(rested).toBeGreaterThan(12)
  })

  test('is whole after a time, where a customer leaves within a garment', async () => {
    const left: string[] = []
    for (let seed = 1; seed <= 6; seed += 1) {
      const key = await conversation().start('en')
      const place = await wanderOn(conversation(), key, { seed, steps: 40 })
      if (place.at === 'question' && place.item > 0) left.push(key)
    }
    expect(left.length).toBeGreaterThan(1)
    const seqs = async () =>
      Promise.all(
        left.map(async (key) => (await rowsOfPile(store(), await idOf(key))).standing.seq),
      )
    const before = await seqs()
    expect(await writeHalfTold(store(), knowledge, startedAt)).toBe(0)
    expect(await seqs()).toEqual(before)
    const written = await writeHalfTold(store(), knowledge, clock.now + 1)
    expect(written).toBeGreaterThan(1)
    for (const key of left) await isWhole(key)
    expect(await writeHalfTold(store(), knowledge, clock.now + 1)).toBe(0)
  })

  test('is written between the questions of a garment only where somebody is asked', async () => {
    const on = conversation()
    const key = await on.start('en')
    let sent = 0
    const act = (one: Act) => {
      sent += 1
      return on.act(key, { act: one, idem: `number-${sent}`, seen: 0 })
    }
    const seq = async () => (await rowsOfPile(store(), await idOf(key))).standing.seq
    const answer = (item: number, question: string, reply: Reply) =>
      act({ act: 'answer', item, question, reply })
    const pick = picker(3)
    const opening = async () => onward((await on.open(key)).pile.followed, rules, pick)
    for (let one = await opening(); one; one = await opening()) await act(one)
    expect(await seq()).toBe(sent)
    const begun = sent
    await act({ act: 'add', item: 1 })
    await answer(1, 'name', { given: 'Choir shirt' })
    await answer(1, 'kind', { given: 'button-shirt' })
    expect(await seq()).toBe(begun)
    await answer(1, 'size', { asked: 'Of the collar?' })
    expect(await seq()).toBe(sent)
    const { garments } = await isWhole(key)
    expect(garments).toMatchObject([{ name: 'Choir shirt', kind: 'button-shirt' }])
    const asked = sent
    await answer(1, 'kind', { given: 'tee' })
    expect(await seq()).toBe(asked)
    // The pile's own answers tell of all garments.
    await answer(0, 'recipient', { given: 'under1' })
    expect(await seq()).toBe(sent)
    await isWhole(key)
  })

  test('is written whole on confirming, whatever stood there', async () => {
    const on = conversation()
    const key = await leadTo('review', on, [{}, {}])
    const id = await idOf(key)
    const { db } = store()
    await db
      .updateTable('standing')
      .set({ garments: 9, need_by: 1 })
      .where('pile_id', '=', id)
      .execute()
    await db
      .updateTable('garment')
      .set({ grade: null, name: 'x' })
      .where('pile_id', '=', id)
      .execute()
    await on.confirm(key, 'confirmed-once')
    expect((await on.open(key)).row.status).toBe('confirmed')
    const { garments } = await isWhole(key)
    expect(garments.map(({ name }) => name)).not.toContain('x')
  })

  test('changes for every garment when an answer of the pile does', async () => {
    const key = await conversation().start('en')
    const say = (item: number, question: string, given: string | string[]) =>
      conversation().act(key, {
        act: { act: 'answer', item, question, reply: { given } },
        idem: `${item}-${question}-${given}`,
        seen: 0,
      })
    const skip = (item: number, question: string) =>
      conversation().act(key, {
        act: { act: 'answer', item, question, reply: { skipped: true } },
        idem: `${question}-${item}`,
        seen: 0,
      })
    await say(0, 'recipient', 'adult')
    for (const item of [1, 2]) {
      await conversation().act(key, { act: { act: 'add', item }, idem: `add-${item}`, seen: 0 })
      await conversation().act(key, {
        act: { act: 'answer', item, question: 'name', reply: { skipped: true } },
        idem: `name-${item}`,
        seen: 0,
      })
      await say(item, 'kind', 'button-shirt')
      await say(item, 'size', 'L')
      await conversation().act(key, {
        act: {
          act: 'answer',
          item,
          question: 'label',
          reply: { given: { found: 'none', words: '', iron: null } },
        },
        idem: `label-${item}`,
        seen: 0,
      })
      await skip(item, 'photos')
      await say(item, 'wear', 'sound')
      await say(item, 'history', ['none'])
      await say(item, 'pattern', 'solid')
      await say(item, 'colours', [])
      await say(item, 'details', ['hard-trims'])
      await skip(item, 'story')
    }
    const { id } = await pileOfKey(store().db, key, clock.read)
    const flags = async () =>
      (await rowsOfPile(store(), id)).garments.map((garment) => garment.flags)
    const before = await flags()
    await say(0, 'recipient', 'under1')
    const after = await flags()
    expect(after).toHaveLength(2)
    expect(after.filter((one, at) => one === before[at])).toEqual([])
  })

  test('an act sent twice is kept once, and one that is refused leaves nothing', async () => {
    const key = await conversation().start('en')
    const { id } = await pileOfKey(store().db, key, clock.read)
    const sent = {
      act: { act: 'answer', item: 0, question: 'recipient', reply: { given: 'adult' } },
      idem: 'one-and-the-same',
      seen: 0,
    } as const
    const outcomes = await Promise.all([1, 2, 3].map(() => conversation().act(key, sent)))
    expect(outcomes.map(({ again }) => again).sort()).toEqual([false, true, true])
    const before = await rowsOfPile(store(), id)
    const refused = { act: { act: 'drop', item: 9 }, idem: 'refused-1', seen: 0 } as const
    await expect(conversation().act(key, refused)).rejects.toMatchObject({ code: 'not_found' })
    expect(await rowsOfPile(store(), id)).toEqual(before)
    expect(await entriesOf(store().db, id)).toHaveLength(1)
  })
})
