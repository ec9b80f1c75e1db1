import { afterEach, expect, test, vi } from 'vitest'
import { converse } from '../../src/intake/conversation.ts'
import { actsOf, pileOfKey } from '../../src/intake/rows.ts'
import { rememberPiles, type Stood, standing } from '../../src/intake/stood.ts'
import type { Db } from '../../src/store/schema.ts'
import { heldClock, learnAt } from '../help/app.ts'
import { rowOf, startedAt } from '../help/pile.ts'
import { oneStore } from '../help/stores.ts'

const knowledge = learnAt('2026-06-01')
const clock = heldClock(startedAt)

afterEach(() => {
  vi.useRealTimers()
})

/** A pile of so many acts, with nothing derived from them. */
const pileOf = (id: string, acts: number): Stood => ({
  row: { ...rowOf(knowledge, acts), id },
  flow: knowledge.flow,
  following: {} as Stood['following'],
  derived: {} as Stood['derived'],
  entries: Array.from({ length: acts }, (_, n) => ({
    seq: n + 1,
    at: startedAt,
    who: 'customer',
    act: { act: 'add', item: n + 1 },
    idem: `${n}`,
  })),
  unwritten: null,
})

test('no more acts are remembered than the limit, those of the least used piles first forgotten', () => {
  const memory = rememberPiles({ mostActs: 10, keepMs: 60_000 })
  for (const id of ['a', 'b', 'c']) memory.keep(pileOf(id, 3), `link of ${id}`)
  memory.keep(pileOf('a', 4), 'link of a')
  memory.keep(pileOf('d', 3), 'link of d')
  const known = () => ['a', 'b', 'c', 'd', 'e'].filter((id) => memory.of(id))
  expect(known()).toEqual(['a', 'c', 'd'])
  expect(memory.behind('link of a')).toMatchObject({ row: { id: 'a' } })
  expect(memory.behind('link of b')).toBeUndefined()
  memory.keep(pileOf('e', 11), 'link of e')
  expect(known()).toEqual([])
  memory.keep(pileOf('b', 10), 'link of b')
  expect(known()).toEqual(['b'])
})

test('a pile that nobody uses is forgotten after a time', () => {
  vi.useFakeTimers()
  const memory = rememberPiles({ mostActs: 10, keepMs: 1_000 })
  memory.keep(pileOf('a', 1), 'link of a')
  vi.advanceTimersByTime(900)
  memory.keep(pileOf('b', 1), 'link of b')
  vi.advanceTimersByTime(900)
  memory.keep(pileOf('b', 1), 'link of b')
  vi.advanceTimersByTime(1_100)
  expect([memory.of('a'), memory.of('b')?.row.id]).toEqual([undefined, 'b'])
  vi.advanceTimersByTime(2_000)
  expect(memory.of('b')).toBeUndefined()
  expect(vi.getTimerCount()).toBe(0)
})

oneStore('a pile that is remembered', (store) => {
  const begin = async () => {
    const conversation = converse(store(), knowledge, clock.read, () => ({
      words: {},
      figures: null,
    }))
    const key = await conversation.start('en')
    const answer = (given: string) =>
      conversation.act(key, {
        act: { act: 'answer', item: 0, question: 'recipient', reply: { given } },
        idem: given,
        seen: 0,
      })
    for (const given of ['adult', 'under3']) await answer(given)
    const row = () => pileOfKey(store().db, key, clock.read)
    return { answer, row, at: { knowledge, memory: rememberPiles() } }
  }
  const nowhere = {} as Db

  test('is not read again while its row stays', async () => {
    const { row, at } = await begin()
    const first = await standing(store().db, await row(), at)
    await expect(standing(nowhere, await row(), at)).rejects.toThrow()
    at.memory.keep(first, 'link')
    const again = await standing(nowhere, { ...(await row()), language: 'es' }, at)
    expect(again).toEqual({ ...first, row: { ...first.row, language: 'es' } })
  })

  test('is what deriving all of it anew gives, once others have acted', async () => {
    const { answer, row, at } = await begin()
    at.memory.keep(await standing(store().db, await row(), at), 'link')
    await answer('under1')
    const caughtUp = await standing(store().db, await row(), at)
    const anew = await standing(store().db, await row(), { knowledge, memory: rememberPiles() })
    expect(caughtUp.entries).toHaveLength(3)
    expect(caughtUp.entries).toEqual(anew.entries)
    expect(caughtUp.derived.pile.replies).toEqual(anew.derived.pile.replies)
  })

  test('is read whole where the store was put back and went another way', async () => {
    const { answer, row, at } = await begin()
    at.memory.keep(await standing(store().db, await row(), at), 'link')
    const { id } = await row()
    await store().db.deleteFrom('act').where('pile_id', '=', id).where('seq', '=', 2).execute()
    await store().db.updateTable('pile').set({ seq: 1 }).where('id', '=', id).execute()
    for (const given of ['under1', 'child']) await answer(given)
    const stood = await standing(store().db, await row(), at)
    expect(stood.entries.map(({ idem }) => idem)).toEqual(['adult', 'under1', 'child'])
    expect(stood.entries).toEqual(
      (await actsOf(store().db, await row())).map(({ idem: _, ...entry }) =>
        expect.objectContaining(entry),
      ),
    )
  })
})
