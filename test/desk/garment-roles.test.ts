import { expect, test } from 'vitest'
import { type GivingRoles, givenRoles, giveRoles } from '../../src/desk/garment-roles.ts'
import { changeMarks, planMarksOf, standingMarks } from '../../src/desk/plan-marks.ts'
import { addStaff, queuePile } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'

eachStore('roles that staff give garments', (store) => {
  let now = 1_000
  const clock = () => now

  async function desk() {
    now = 1_000
    const pile = await queuePile(store().db, { number: 1, grades: ['sound', 'sound'] })
    const marta = await addStaff(store().db, 'Marta')
    const ivo = await addStaff(store().db, 'Ivo')
    const give = (garment: number, roles: GivingRoles['roles'], over: Partial<GivingRoles> = {}) =>
      giveRoles({ store: store(), clock }, pile, garment, { roles, who: marta, seen: 0, ...over })
    const marks = () => planMarksOf(store().db, pile)
    const given = async () => [...givenRoles(await marks())]
    return { pile, marta, ivo, give, marks, given }
  }

  test('a garment plays what was last given, and who gave it and when is told', async () => {
    const { give, given, ivo } = await desk()
    await give(1, ['accent', 'focal', 'accent'])
    await give(2, ['background'])
    now = 2_000
    await give(1, ['background'], { who: ivo, seen: 1_000 })
    expect(await given()).toEqual([
      [2, { roles: ['background'], by: 'Marta', at: 1_001 }],
      [1, { roles: ['background'], by: 'Ivo', at: 2_000 }],
    ])
  })

  test('what stood before stays, and who undid it and when', async () => {
    const { give, marks, given, ivo } = await desk()
    await give(1, ['focal', 'accent'])
    now = 2_000
    await give(1, [], { who: ivo, seen: 1_000 })
    expect(await given()).toEqual([])
    expect(await marks()).toMatchObject([
      {
        kind: 'role',
        garment: 1,
        body: { roles: ['focal', 'accent'] },
        who: { name: 'Marta' },
        at: 1_000,
        undone: { at: 2_000, by: 'Ivo' },
      },
    ])
  })

  test('the same once more is one mark, and a clock set back changes no order', async () => {
    const { give, marks } = await desk()
    await give(1, ['focal'])
    await give(1, ['focal'])
    now = 5
    await give(1, ['accent'], { seen: 1_000 })
    const all = await marks()
    expect(all.map(({ body, at }) => [body, at])).toEqual([
      [{ roles: ['focal'] }, 1_000],
      [{ roles: ['accent'] }, 1_001],
    ])
  })

  test('whoever did not see the roles of a colleague does not overrule them', async () => {
    const { give, given, ivo } = await desk()
    await give(1, ['focal'])
    const late = give(1, ['accent'], { who: ivo })
    await expect(late).rejects.toMatchObject({ code: 'decided_meanwhile' })
    await expect(give(1, [], { who: ivo, seen: 7 })).rejects.toMatchObject({
      code: 'decided_meanwhile',
    })
    expect(await given()).toMatchObject([[1, { roles: ['focal'], by: 'Marta' }]])
  })

  test('there is no role for a garment that is not there, nor in a pile of the customer', async () => {
    const { give, marks } = await desk()
    await expect(give(3, ['focal'])).rejects.toMatchObject({ code: 'not_found' })
    await store().db.updateTable('garment').set({ dropped: 1 }).where('item', '=', 2).execute()
    await expect(give(2, ['focal'])).rejects.toMatchObject({ code: 'not_found' })
    await store().db.updateTable('pile').set({ status: 'open' }).execute()
    await expect(give(1, ['focal'])).rejects.toMatchObject({ code: 'not_found' })
    expect(await marks()).toEqual([])
  })

  test('two at once take turns: one of them is told', async () => {
    const { give, given, ivo } = await desk()
    const both = await Promise.allSettled([give(1, ['focal']), give(1, ['accent'], { who: ivo })])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await given()).toHaveLength(1)
  })

  test('marks of another kind stand beside them, of bought cloth too', async () => {
    const { pile, marta, give, marks } = await desk()
    await give(1, ['focal'])
    const pin = { kind: 'pin', garment: null, body: { quilt: 0, cell: 7 } } as const
    await changeMarks({ store: store(), clock }, pile, marta, () => ({ undo: [], add: [pin] }))
    expect(standingMarks(await marks(), 'pin')).toMatchObject([pin])
    const { id } = standingMarks(await marks(), 'pin')[0]!
    await changeMarks({ store: store(), clock }, pile, marta, () => ({ undo: [id], add: [] }))
    expect(standingMarks(await marks(), 'pin')).toEqual([])
    expect(givenRoles(await marks()).get(1)).toMatchObject({ roles: ['focal'] })
  })

  test('a change that fails leaves nothing of itself', async () => {
    const { pile, give, marks } = await desk()
    await give(1, ['focal'])
    const { id } = (await marks())[0]!
    const nobody = { kind: 'role', garment: 1, body: {} } as const
    const failing = changeMarks({ store: store(), clock }, pile, 'nobody', () => ({
      undo: [id],
      add: [nobody],
    }))
    await expect(failing).rejects.toThrow()
    expect(await marks()).toMatchObject([{ undone: null }])
  })
})
