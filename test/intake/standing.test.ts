import { expect, test } from 'vitest'
import { type Conversation, converse } from '../../src/intake/conversation.ts'
import { entriesOf, pileOfKey } from '../../src/intake/rows.ts'
import { rules } from '../../src/intake/rules.ts'
import { heldClock, learnAt } from '../help/app.ts'
import { startedAt } from '../help/pile.ts'
import { rebuildPile, rowsOfPile } from '../help/projected.ts'
import { eachStore } from '../help/stores.ts'
import { nextAct, picker } from '../help/wander.ts'

const knowledge = learnAt('2026-06-01')
const clock = heldClock(startedAt)

async function wanderOn(conversation: Conversation, key: string, seed: number, steps: number) {
  const pick = picker(seed)
  for (let step = 0; step < steps; step += 1) {
    clock.now += 60_000
    await conversation.act(key, {
      act: (followed) => nextAct(followed, rules, pick),
      idem: `act-${seed}-${step}`,
      seen: 0,
    })
  }
}

eachStore('what the queue reads', (store) => {
  const conversation = () =>
    converse(store(), knowledge, clock.read, () => ({ words: {}, figures: null }))

  test('is what a rebuild from the acts gives, whatever was answered', async () => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const key = await conversation().start('en')
      await wanderOn(conversation(), key, seed, 40)
      const { id } = await pileOfKey(store().db, key, clock.read)
      const kept = await rowsOfPile(store(), id)
      await rebuildPile(store(), knowledge, await pileOfKey(store().db, key, clock.read))
      expect(await rowsOfPile(store(), id)).toEqual(kept)
      // What a customer confirms of their own words is answered by further acts.
      expect(kept.standing.seq).toBeGreaterThanOrEqual(40)
    }
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
