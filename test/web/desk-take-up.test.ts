import { parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { decisionsOf } from '../../src/desk/decisions.ts'
import { review } from '../../src/desk/review.ts'
import type { Visitor } from '../help/desk-visitor.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const address = '/desk/piles/1/what-if'
const reason = 'We spoke on the phone.'

const shirt: Script = { kind: said('button-shirt'), size: said('XL') }
const wish: Script = { quilt_size: said('crib'), layout_wish: said('plain-squares') }

oneStore('a way that is taken up', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
    await confirmPile(
      workshop.conversation,
      [shirt, { ...shirt, name: said('Old <i>one</i>') }],
      wish,
    )
  })
  afterEach(() => workshop.close())

  async function atDesk(name = 'Marta'): Promise<Visitor> {
    return signedIn(store(), clock, workshop.app, { name })
  }

  const now = async () => {
    const { row, pile, roles } = await review(store().db, workshop.knowledge, '1')
    const decisions = await decisionsOf(store().db, row.id)
    return { wish: pile.wish, roles, decisions, price: pile.estimate!.total.likely }
  }

  /** The fields of the form to take a way up, as the page shows it; null: there is none. */
  const formIn = (html: string): Record<string, string> | null => {
    const form = parse(html).querySelector('.take-up form')
    return (
      form &&
      Object.fromEntries(
        form
          .querySelectorAll('input[type=hidden]')
          .map((one) => [one.getAttribute('name')!, one.getAttribute('value')!]),
      )
    )
  }

  test('layout, size, roles and garments become the pile’s own, with reason and who', async () => {
    const marta = await atDesk()
    const before = await now()
    const way = 'layout:quartered-nine-patch,size:throw,without:2,roles:1:focal'
    const page = await marta.get(`${address}?try=${way}`)
    expect(page.body).toContain(`value="${way}"`)
    const done = await marta.postRaw(address, { ...formIn(page.body)!, way, reason })
    expect(done).toMatchObject({ status: 303, to: '/desk/piles/1' })

    const after = await now()
    expect(after.wish).toMatchObject({ layout: { id: 'quartered-nine-patch' }, size: 'throw' })
    expect(after.roles.get(1)).toMatchObject({ roles: ['focal'], by: 'Marta' })
    expect(after.decisions).toMatchObject([
      { item: 2, verdict: 'decline', reason, who: { name: 'Marta' } },
    ])
    expect(after.price).toBeGreaterThan(before.price)
    const standing = await store().db.selectFrom('standing').select('summary').executeTakeFirst()
    expect(JSON.parse(standing!.summary)).toMatchObject({
      layout: 'quartered-nine-patch',
      size: 'throw',
    })
    expect((await marta.get('/desk/piles/1')).body).toContain('Turned patchwork')
  })

  test('taken up twice it is the same, and another choice takes its place', async () => {
    const marta = await atDesk()
    for (const way of ['size:throw', 'size:throw', 'layout:quartered-nine-patch', 'size:twin']) {
      const { body } = await marta.get(`${address}?try=${way}`)
      await marta.postRaw(address, { ...formIn(body)!, way, reason })
    }
    expect((await now()).wish).toMatchObject({
      layout: { id: 'quartered-nine-patch' },
      size: 'twin',
    })
    const marks = await store().db.selectFrom('plan_mark').select('undone_at').execute()
    expect(marks.filter(({ undone_at }) => undone_at === null)).toHaveLength(1)
    expect(marks).toHaveLength(3)
  })

  test('one garment more is nothing to take up', async () => {
    const marta = await atDesk()
    const { body } = await marta.get(`${address}?try=more:focal`)
    expect(formIn(body)).toBeNull()
    const fields = formIn((await marta.get(`${address}?try=size:throw`)).body)!
    const refused = await marta.postRaw(address, { ...fields, way: 'more:focal', reason })
    expect(refused.status).toBe(422)
    expect(refused.body).toContain('nobody has sent')
  })

  test.each([
    ['no reason', 'size:throw', ' ', 422],
    ['a size that is none', 'size:giant', reason, 400],
    ['a layout that is none', 'layout:no-such', reason, 404],
    ['a garment that is not there', 'without:9', reason, 404],
    ['nothing that can be read', '%%%', reason, 400],
  ])('%s is refused and changes nothing', async (_, way, why, status) => {
    const marta = await atDesk()
    const before = await now()
    const fields = formIn((await marta.get(`${address}?try=size:throw`)).body)!
    const refused = await marta.postRaw(address, { ...fields, way, reason: why })
    expect(refused.status).toBe(status)
    expect((await now()).wish.size).toBe(before.wish.size)
    expect(await store().db.selectFrom('plan_mark').selectAll().execute()).toEqual([])
  })

  test('the later of two is told what was decided meanwhile, in either language', async () => {
    const [marta, ivo] = [await atDesk('Marta'), await atDesk('Ivo')]
    const hers = formIn((await marta.get(`${address}?try=size:throw`)).body)!
    const his = formIn((await ivo.get(`${address}?try=size:twin&lang=es`)).body)!
    await marta.postRaw(address, { ...hers, way: 'size:throw', reason })
    const late = await ivo.postRaw(address, { ...his, way: 'size:twin', reason: 'Lo pidió él.' })
    expect(late.status).toBe(409)
    expect(late.body).toContain('Lo pidió él.')
    expect(late.body).toContain('Adoptar una variante')
    expect((await now()).wish.size).toBe('throw')
  })
})
