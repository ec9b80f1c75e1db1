import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { newId } from '../../src/base/ids.ts'
import { checkOpenVersions } from '../../src/intake/flow-versions.ts'
import { migrate } from '../../src/store/migrate.ts'
import { migrations } from '../../src/store/migrations/list.ts'
import { type ReleasedPiles, releasedPiles, releasedStores, releases } from '../help/released.ts'
import type { TestStore } from '../help/stores.ts'
import { leadOn, openWorkshop, type Workshop } from '../help/workshop.ts'

const all = releases.flatMap((release) =>
  releasedStores.map(([store, open]) => ({ release, store, open })),
)

test('the stores of a release are kept', () => {
  expect(releases).toContain('0.1.0')
})

describe.each(all)('what release $release left ($store)', ({ release, open }) => {
  let opened: TestStore
  let shop: Workshop
  let piles: ReleasedPiles
  beforeAll(async () => {
    opened = await open(release)
    await migrate(opened.store)
    piles = releasedPiles(release, opened.store.dialect)
    shop = await openWorkshop(opened.store, () => piles.at + 1000)
  })
  afterAll(async () => {
    await shop?.close()
    await opened?.end()
  })

  test('is brought up to this version', async () => {
    const { rows } = await sql<{ name: string }>`select name from kysely_migration`.execute(
      opened.store.db,
    )
    expect(rows.map(({ name }) => name).sort()).toEqual(Object.keys(migrations).sort())
    await checkOpenVersions(opened.store.db, shop.knowledge)
  })

  test('keeps every answer', async () => {
    const { entries, row } = await shop.conversation.open(piles.begun)
    expect(row.language).toBe('es')
    expect(entries.map(({ act }) => act)).toEqual([
      { act: 'answer', item: 0, question: 'recipient', reply: { given: 'adult' } },
    ])
    const confirmed = await shop.conversation.open(piles.confirmed)
    expect(confirmed.row.status).toBe('confirmed')
    expect(confirmed.pile.garments).toHaveLength(2)
  })

  test('shows the pages of its piles', async () => {
    for (const key of [piles.begun, piles.review, piles.confirmed, piles.accepted]) {
      const page = await shop.app.inject(`/i/${key}`)
      expect(page.statusCode, page.body.slice(0, 300)).toBe(200)
    }
    const paper = await shop.app.inject(`/i/${piles.confirmed}/paper`)
    expect(paper.statusCode).toBe(200)
  })

  test('lets open conversations go on to their end, on the flow they began with', async () => {
    for (const key of [piles.begun, piles.review]) {
      const before = await shop.conversation.open(key)
      await leadOn('confirmed', shop.conversation, key, [{}])
      const after = await shop.conversation.open(key)
      expect(after.row).toMatchObject({ status: 'confirmed', flow_hash: before.row.flow_hash })
      expect(after.entries.slice(0, before.entries.length)).toEqual(before.entries)
    }
  })

  test('lets a confirmed pile be opened again', async () => {
    await shop.conversation.reopen(piles.confirmed, newId())
    expect((await shop.conversation.open(piles.confirmed)).row.status).toBe('open')
  })
})
