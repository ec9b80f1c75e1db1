import { expect, test } from 'vitest'
import type { Act } from '../../src/flow/grammar.ts'
import { converse } from '../../src/intake/conversation.ts'
import { entriesOf, pileOfKey } from '../../src/intake/rows.ts'
import { heldClock, learnAt } from '../help/app.ts'
import { startedAt } from '../help/pile.ts'
import { eachStore } from '../help/stores.ts'

const knowledge = learnAt('2026-06-01')
const clock = heldClock(startedAt)

const say = (item: number, question: string, given: string): Act => ({
  act: 'answer',
  item,
  question,
  reply: { given },
})
const add: Act = { act: 'add', item: 1 }
const named = say(1, 'name', 'Choir sweatshirt')

eachStore('acts that are sent together', (store) => {
  const begin = async () => {
    const conversation = converse(store(), knowledge, clock.read, () => ({
      words: {},
      figures: null,
    }))
    return { conversation, key: await conversation.start('en') }
  }
  const kept = async (key: string) => {
    const { id, seq } = await pileOfKey(store().db, key, clock.read)
    return { seq, acts: (await entriesOf(store().db, id)).map(({ act }) => act) }
  }
  const all = (acts: readonly Act[], idem: string) => ({ act: () => acts, idem, seen: 0 })

  test('are all kept, under one key', async () => {
    const { conversation, key } = await begin()
    const both = all([add, named], 'both')
    expect(await conversation.act(key, both)).toMatchObject({ again: false, seq: 1 })
    expect(await kept(key)).toEqual({ seq: 2, acts: [add, named] })
    expect(await conversation.act(key, both)).toEqual({ again: true, overtaken: null, seq: null })
    expect(await kept(key)).toEqual({ seq: 2, acts: [add, named] })
  })

  test('are none of them kept where one is refused, and what comes next is', async () => {
    const { conversation, key } = await begin()
    const refused = conversation.act(key, all([add, { act: 'drop', item: 9 }], 'refused'))
    await expect(refused).rejects.toMatchObject({ code: 'not_found' })
    expect(await kept(key)).toEqual({ seq: 0, acts: [] })
    // Its key was not used up by that.
    expect(await conversation.act(key, all([add], 'refused'))).toMatchObject({ seq: 1 })
  })

  test('are refused where there is none, or where what they hang on fails', async () => {
    const { conversation, key } = await begin()
    await expect(conversation.act(key, all([], 'none'))).rejects.toMatchObject({
      code: 'bad_input',
    })
    const thrown = new Error('of whoever asks')
    const failing = () => {
      throw thrown
    }
    const beside = { act: say(0, 'recipient', 'adult'), idem: 'beside', seen: 0 }
    const [fails, stands] = await Promise.allSettled([
      conversation.act(key, { act: failing, idem: 'fails', seen: 0 }),
      conversation.act(key, beside),
    ])
    expect(fails).toMatchObject({ reason: thrown })
    expect(stands).toMatchObject({ value: { seq: 1 } })
  })

  test('are refused once the pile was given away, but for what was kept before', async () => {
    const { conversation, key } = await begin()
    await conversation.act(key, all([add], 'before'))
    const { id } = await pileOfKey(store().db, key, clock.read)
    await store().db.updateTable('pile').set({ status: 'confirmed' }).where('id', '=', id).execute()
    expect(await conversation.act(key, all([add], 'before'))).toMatchObject({ again: true })
    await expect(conversation.act(key, all([named], 'after'))).rejects.toMatchObject({
      code: 'pile_confirmed',
    })
    expect((await kept(key)).acts).toEqual([add])
  })

  test('are overtaken by another answer since, not by the same one', async () => {
    const { conversation, key } = await begin()
    const answer = (given: string, idem: string, seen: number) =>
      conversation.act(key, { act: say(0, 'recipient', given), idem, seen })
    await answer('adult', 'one', 0)
    expect(await answer('adult', 'same', 0)).toMatchObject({ seq: 2, overtaken: null })
    expect(await answer('under3', 'other', 0)).toMatchObject({ seq: 3, overtaken: 2 })
    expect(await answer('adult', 'knows', 3)).toMatchObject({ seq: 4, overtaken: null })
  })
})
