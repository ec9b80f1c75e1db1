import { afterEach, beforeEach, expect, test } from 'vitest'
import { factSetsOf } from '../../src/desk/fact-sets.ts'
import { sourcedFacts } from '../../src/desk/provenance.ts'
import { review } from '../../src/desk/review.ts'
import { type SettingFacts, setFacts, undoFact } from '../../src/desk/set-facts.ts'
import { addStaff } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

eachStore('facts that the workshop sets', (store) => {
  let workshop: Workshop
  let pileId: string
  let who: string
  const at = () => ({ store: store(), clock, knowledge: workshop.knowledge })
  const garment = async () =>
    (await review(store().db, workshop.knowledge, pileId)).garments[0]!.garment
  const setting = (facts: Record<string, string>, more: Partial<SettingFacts> = {}) =>
    setFacts(at(), pileId, {
      item: 1,
      facts,
      source: 'bench',
      reason: 'seen at the box check',
      who,
      seen: 0,
      ...more,
    })
  const code = (code: string) => expect.objectContaining({ code })

  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
    await confirmPile(workshop.conversation, [
      {
        kind: { given: 'tshirt' },
        size: { given: 'L' },
        wear: { given: 'sound' },
        history: { given: ['none'] },
      },
    ])
    pileId = (await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()).id
    who = await addStaff(store().db)
  })
  afterEach(() => workshop.close())

  test('one that is set stands above what was said, grades anew, and the queue follows', async () => {
    const before = await garment()
    expect(before.grading!.grade).toBe('sound')
    await setting({ wear: 'shattered' })
    const after = await garment()
    expect(after.facts.wear).toBe('shattered')
    expect(after.grading!.grade).not.toBe('sound')
    expect(sourcedFacts(after).find(({ fact }) => fact === 'wear')).toMatchObject({ from: 'bench' })
    const row = await store().db.selectFrom('garment').selectAll().executeTakeFirstOrThrow()
    expect(JSON.parse(row.facts)).toMatchObject({ wear: 'shattered' })
    expect(row.grade).toBe(after.grading!.grade)
  })

  test('it is undone with who and when, and what was said stands again', async () => {
    const before = await garment()
    await setting({ wear: 'shattered', soil: 'mould' })
    const [first, second] = await factSetsOf(store().db, pileId)
    await undoFact(at(), pileId, first!.id, who)
    await undoFact(at(), pileId, second!.id, who)
    expect((await garment()).facts).toEqual(before.facts)
    const sets = await factSetsOf(store().db, pileId)
    expect(sets.map(({ undone }) => undone?.by)).toEqual(['Marta', 'Marta'])
    await expect(undoFact(at(), pileId, first!.id, who)).rejects.toEqual(code('not_found'))
  })

  test('another kind brings what that kind surely is, and another size other panels', async () => {
    await setting({ kind: 'button-shirt', size: '3XL' })
    const { facts, told, panels } = await garment()
    expect(facts).toMatchObject({ kind: 'button-shirt', surface: 'woven' })
    expect(told.size).toBe('3XL')
    expect(panels.length).toBeGreaterThan(0)
  })

  test('the label as it truly is gives fibres, ironing and heat, hotter ones too', async () => {
    await setting({ label: '100 % acrylic. Cool iron.' })
    const cool = await garment()
    expect(cool.facts).toMatchObject({ iron: 'cool', labelDoubt: 'no' })
    expect(cool.told.blocks.flatMap(({ fibres }) => fibres.map(({ fibre }) => fibre))).toEqual([
      'acrylic',
    ])
    const [set] = await factSetsOf(store().db, pileId)
    await setting({ label: '100 % linen. Hot iron.' }, { seen: set!.at })
    expect((await garment()).facts).toMatchObject({ iron: 'hot', heat: 'hot' })
    const sets = await factSetsOf(store().db, pileId)
    await setting({ label: '' }, { seen: sets.at(-1)!.at })
    expect((await garment()).facts).toMatchObject({ iron: 'missing' })
    expect((await garment()).told.blocks).toEqual([])
  })

  test('colours are words for colours', async () => {
    await setting({ colours: 'red blue' })
    expect((await garment()).told.colours).toEqual(['red', 'blue'])
    await expect(setting({ colours: 'red chartreuse' })).rejects.toEqual(code('answer_not_offered'))
  })

  test('what the bench saw stands above what staff set, earlier or later', async () => {
    await setting({ wear: 'holes' })
    const [set] = await factSetsOf(store().db, pileId)
    await setting({ wear: 'sound' }, { source: 'staff', seen: set!.at })
    expect((await garment()).facts.wear).toBe('holes')
  })

  test('the same sent twice is set once; another after somebody else set one is refused', async () => {
    await setting({ wear: 'holes' })
    await setting({ wear: 'holes' })
    expect(await factSetsOf(store().db, pileId)).toHaveLength(1)
    await expect(setting({ wear: 'thin' })).rejects.toEqual(code('decided_meanwhile'))
    expect((await garment()).facts.wear).toBe('holes')
  })

  test('nothing is set of what is not there, is no fact, is counted, or without a reason', async () => {
    const refused = [
      [() => setting({ wear: 'holes' }, { item: 2 }), 'not_found'],
      [() => setting({ wear: 'golden' }), 'answer_not_offered'],
      [() => setting({ yield: 'enough' }), 'answer_not_offered'],
      [() => setting({ labelDoubt: 'no' }), 'answer_not_offered'],
      [() => setting({ constructor: 'x' }), 'answer_not_offered'],
      [() => setting({ label: 'x'.repeat(2001) }), 'answer_not_offered'],
      [() => setting({ wear: 'holes' }, { reason: ' ' }), 'reason_missing'],
    ] as const
    for (const [sent, why] of refused) await expect(sent()).rejects.toEqual(code(why))
    expect(await factSetsOf(store().db, pileId)).toEqual([])
  })

  test('a fact of another pile is not undone by way of this one', async () => {
    await setting({ wear: 'holes' })
    const [set] = await factSetsOf(store().db, pileId)
    await confirmPile(workshop.conversation, [{}])
    const other = await store()
      .db.selectFrom('pile')
      .select('id')
      .where('id', '!=', pileId)
      .executeTakeFirstOrThrow()
    await expect(undoFact(at(), other.id, set!.id, who)).rejects.toEqual(code('not_found'))
  })
})
