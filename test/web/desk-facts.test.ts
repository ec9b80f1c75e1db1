import { parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { Visitor } from '../help/desk-visitor.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const address = '/desk/piles/1/garments/1/facts'

const garments: readonly Script[] = [
  { name: said('Blue <b>flannel</b>'), kind: said('button-shirt'), size: said('XL') },
  { kind: said('tshirt'), size: said('L') },
]

oneStore('what staff know better of a garment', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
    await confirmPile(workshop.conversation, garments)
  })
  afterEach(() => workshop.close())

  async function atDesk(name = 'Marta'): Promise<Visitor> {
    return signedIn(store(), clock, workshop.app, { name })
  }

  /** Every field of the form as the page shows it. */
  const shown = (html: string): Record<string, string> => {
    const form = parse(html).querySelector('form.card')!
    return Object.fromEntries([
      ...form
        .querySelectorAll('input[type=hidden]')
        .map((one) => [one.getAttribute('name')!, one.getAttribute('value')!] as const),
      ...form.querySelectorAll('select').map((one) => {
        const chosen = one.querySelector('option[selected]')
        return [one.getAttribute('name')!, chosen?.getAttribute('value') ?? ''] as const
      }),
    ])
  }

  const kept = () => store().db.selectFrom('fact_set').selectAll().orderBy('at').execute()
  const grade = async () =>
    (
      await store()
        .db.selectFrom('garment')
        .select('grade')
        .where('item', '=', 1)
        .executeTakeFirstOrThrow()
    ).grade

  test('the garment leads to its page, in both languages, and its name stays words', async () => {
    const marta = await atDesk()
    expect((await marta.get('/desk/piles/1')).body).toContain(`href="${address}"`)
    for (const [language, title] of [
      ['en', 'What is known of Blue &lt;b>flannel'],
      ['es', 'Lo que se sabe de Blue &lt;b>flannel'],
    ] as const) {
      const { status, body } = await marta.get(`${address}?lang=${language}`)
      expect(status).toBe(200)
      expect(body).toContain(title)
      expect(body).not.toContain('<b>flannel')
    }
  })

  test('what a fact would do is shown with grade, reasons and price before anything is kept', async () => {
    const marta = await atDesk()
    const page = shown((await marta.get(address)).body)
    expect(page.wear).toBe('sound')
    const tried = await marta.postRaw(address, { ...page, wear: 'shattered', act: 'try' })
    expect(tried.status).toBe(200)
    const words = parse(tried.body).querySelector('.set-effect')!.text.replaceAll(/\s+/g, ' ')
    expect(words).toContain('best kept at home')
    expect(words).toContain('New reason: Shattering cloth')
    expect(words).toMatch(/less in all|less\./)
    expect(words).toMatch(/Most likely price then: \$\d/)
    expect(shown(tried.body).wear).toBe('shattered')
    expect(await kept()).toEqual([])
  })

  test('a fact that is set regrades the garment, and undone it is as before', async () => {
    const marta = await atDesk()
    const before = await grade()
    const page = shown((await marta.get(address)).body)
    const reason = 'Split along the fold when I held it up.'
    const saved = await marta.postRaw(address, { ...page, wear: 'shattered', act: 'save', reason })
    expect(saved).toMatchObject({ status: 303, to: '/desk/piles/1#garment-1' })
    expect(await grade()).toBe('home')
    expect(await kept()).toMatchObject([
      { item: 1, fact: 'wear', value: 'shattered', source: 'staff', reason },
    ])
    const after = (await marta.get(address)).body
    expect(after).toContain(reason)
    expect(after).toContain('falling apart (workshop)')

    const [set] = await kept()
    await marta.post(`${address}/undo`, { set: set!.id })
    expect(await grade()).toBe(before)
    expect((await marta.get(address)).body).toContain('Undone by Marta')
  })

  test('without a reason nothing is kept, and what was chosen stays chosen', async () => {
    const marta = await atDesk()
    const page = shown((await marta.get(address)).body)
    const refused = await marta.postRaw(address, {
      ...page,
      wear: 'thin',
      act: 'save',
      reason: ' ',
    })
    expect(refused.status).toBe(422)
    expect(parse(refused.body).querySelector('[role=alert]')).not.toBeNull()
    expect(shown(refused.body).wear).toBe('thin')
    expect(await kept()).toEqual([])
  })

  test.each([
    ['a value that is none', { wear: 'glorious' }, 422],
    ['a value of another fact', { wear: 'none' }, 422],
    ['constructor', { wear: 'constructor' }, 422],
  ])('%s is refused', async (_, sent, status) => {
    const marta = await atDesk()
    const page = shown((await marta.get(address)).body)
    for (const act of ['try', 'save']) {
      const answer = await marta.postRaw(address, { ...page, ...sent, act, reason: 'because' })
      expect(answer.status).toBe(status)
    }
    expect(await kept()).toEqual([])
  })

  test('of two who set the same garment the later is told, and neither is lost', async () => {
    const [marta, ivo] = [await atDesk('Marta'), await atDesk('Ivo')]
    const hers = shown((await marta.get(address)).body)
    const his = shown((await ivo.get(address)).body)
    await marta.postRaw(address, {
      ...hers,
      wear: 'thin',
      act: 'save',
      reason: 'thin at the elbow',
    })
    const late = await ivo.postRaw(address, {
      ...his,
      wear: 'holes',
      act: 'save',
      reason: 'a hole',
    })
    expect(late.status).toBe(409)
    expect(shown(late.body).wear).toBe('holes')
    expect(late.body).toContain('thin at the elbow')
    const again = { ...shown(late.body), act: 'save', reason: 'a hole' }
    expect((await ivo.postRaw(address, again)).status).toBe(303)
    expect((await kept()).map(({ value }) => value)).toEqual(['thin', 'holes'])
  })

  test('a garment that is not there, and another pile’s set, are not found', async () => {
    const marta = await atDesk()
    expect((await marta.get('/desk/piles/1/garments/9/facts')).status).toBe(404)
    await marta.get(address)
    expect((await marta.post(`${address}/undo`, { set: 'x'.repeat(20) })).status).toBe(404)
    const page = shown((await marta.get(address)).body)
    await marta.postRaw(address, {
      ...page,
      wear: 'thin',
      act: 'save',
      reason: 'thin at the elbow',
    })
    const [set] = await kept()
    const other = await marta.post('/desk/piles/1/garments/2/facts/undo', { set: set!.id })
    expect(other.status).toBe(404)
    expect((await kept())[0]!.undone_at).toBeNull()
  })
})
