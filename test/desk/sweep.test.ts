import { sql } from 'kysely'
import { expect, test } from 'vitest'
import type { Failure } from '../../src/base/failures.ts'
import { newId } from '../../src/base/ids.ts'
import { leftAloneFor, openSweeper, sweep } from '../../src/desk/sweep.ts'
import { eachStore } from '../help/stores.ts'
import { leadTo, openWorkshop } from '../help/workshop.ts'

eachStore('what was begun and left alone', (store) => {
  test('is swept after its time: untouched intakes and drafts, and nothing else', async () => {
    const clock = { now: Date.UTC(2026, 5, 1, 9) }
    const workshop = await openWorkshop(store(), () => clock.now)
    const { conversation } = workshop
    try {
      const untouched = await conversation.start('en')
      const answered = await leadTo('review', conversation, [{}])
      const { row } = await conversation.open(answered)
      const photo = (id: string, kept: 0 | 1, at: number) => ({
        id,
        pile_id: row.id,
        item: 1,
        question: 'photos',
        hash: newId(),
        width: 1,
        height: 1,
        bytes: 1,
        kept,
        at,
      })
      const young = clock.now + 1
      await store()
        .db.insertInto('photo')
        .values([
          photo('draft', 0, clock.now),
          photo('young-draft', 0, young),
          photo('answer', 1, clock.now),
          photo('held-draft', 0, clock.now),
        ])
        .execute()
      // As where the server died between an answer and its photo being no draft any more.
      await conversation.act(answered, {
        act: { act: 'answer', item: 1, question: 'photos', reply: { given: ['held-draft'] } },
        idem: newId(),
        seen: row.seq,
      })

      clock.now += leftAloneFor
      expect(await sweep(store(), clock.now)).toEqual({ intakes: 0, drafts: 0 })
      clock.now += 1
      const fresh = await conversation.start('en')
      expect(await sweep(store(), clock.now)).toEqual({ intakes: 1, drafts: 1 })
      expect(await sweep(store(), clock.now)).toEqual({ intakes: 0, drafts: 0 })

      const { db } = store()
      const links = await db.selectFrom('pile_link').select('pile_id').execute()
      const piles = await db.selectFrom('pile').select('id').execute()
      expect(new Set(links.map(({ pile_id }) => pile_id))).toEqual(
        new Set(piles.map(({ id }) => id)),
      )
      expect(piles).toHaveLength(2)
      await expect(conversation.open(untouched)).rejects.toMatchObject({ code: 'link_unknown' })
      expect((await conversation.open(fresh)).row.seq).toBe(0)
      const there = await db
        .selectFrom('photo')
        .select(['id', 'kept'])
        .where('removed_at', 'is', null)
        .orderBy('id')
        .execute()
      expect(there).toEqual([
        { id: 'answer', kept: 1 },
        { id: 'held-draft', kept: 1 },
        { id: 'young-draft', kept: 0 },
      ])
    } finally {
      await workshop.close()
    }
  })

  test('goes in time where the clock is right, and not where it has jumped by a year', async () => {
    const clock = { now: Date.UTC(2026, 5, 1, 9) }
    const workshop = await openWorkshop(store(), () => clock.now)
    const { conversation, knowledge } = workshop
    const log = { info: () => {}, error: expect.unreachable }
    /** A server's look, hours later. */
    const lookAfter = async (hours: number) => {
      clock.now += hours * 60 * 60 * 1000
      await openSweeper({ store: store(), knowledge, clock: () => clock.now, log }).close()
    }
    const isThere = async (key: string) =>
      conversation.open(key).then(
        () => true,
        ({ code }: Failure) => code !== 'link_unknown',
      )
    try {
      const key = await conversation.start('en')
      await lookAfter(1)
      // Forward by a year and back: nobody has come back to it for so long, says this clock.
      await lookAfter(365 * 24)
      expect(await isThere(key)).toBe(true)
      await lookAfter(-365 * 24)
      await lookAfter(1)
      expect(await isThere(key)).toBe(true)
      // As servers that are stopped for some days now and then.
      await lookAfter(20 * 24)
      await lookAfter(11 * 24)
      expect(await isThere(key)).toBe(false)
    } finally {
      await workshop.close()
    }
  })

  test('within a garment is known to the desk an hour later', async () => {
    const clock = { now: Date.UTC(2026, 5, 1, 9) }
    const workshop = await openWorkshop(store(), () => clock.now)
    const { conversation, knowledge } = workshop
    const told: object[] = []
    const log = { info: (what: object) => told.push(what), error: expect.unreachable }
    const look = () =>
      openSweeper({ store: store(), knowledge, clock: () => clock.now, log }).close()
    const behind = async () => {
      const { rows } = await sql<{ acts: number }>`select pile.seq - standing.seq as acts
        from pile join standing on standing.pile_id = pile.id`.execute(store().db)
      return rows.map(({ acts }) => Number(acts))
    }
    try {
      const key = await leadTo('review', conversation, [{}])
      await conversation.act(key, { act: { act: 'add', item: 2 }, idem: newId(), seen: 0 })
      expect(await behind()).toEqual([1])
      clock.now += 59 * 60 * 1000
      await look()
      expect(await behind()).toEqual([1])
      clock.now += 2 * 60 * 1000
      await look()
      expect(await behind()).toEqual([0])
      expect(told).toEqual([{ piles: 1 }])
    } finally {
      await workshop.close()
    }
  })

  test('leaves SQLite knowing how many rows share a value, for it to choose indexes by', async () => {
    const at = Date.UTC(2026, 5, 1, 9)
    const workshop = await openWorkshop(store(), () => at)
    try {
      await workshop.conversation.start('en')
      const { knowledge } = workshop
      const log = { info: () => {}, error: ({ err }: { err: unknown }) => expect.fail(`${err}`) }
      await openSweeper({ store: store(), knowledge, clock: () => at, log }).close()
      if (store().dialect === 'postgres') return
      const { rows } = await sql<{ tbl: string }>`select tbl from sqlite_stat1`.execute(store().db)
      expect(rows.map(({ tbl }) => tbl)).toContain('pile')
    } finally {
      await workshop.close()
    }
  })
})
