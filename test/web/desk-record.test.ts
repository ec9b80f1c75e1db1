import { parse } from 'node-html-parser'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import type { Role } from '../../src/store/schema.ts'
import { atTheDoor, clock, keepPhotoOf, step } from '../help/custody.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const password = 'needle and thimble'
const record = '/desk/piles/1/garments/1/record'

oneStore('the bench record of a garment', (store) => {
  let workshop: Workshop
  let marta: Visitor
  let bo: Visitor
  let pileId: string
  let key: string

  const signedIn = async (name: string, role: Role) => {
    const email = `${name.toLowerCase()}@lantern-street.example`
    await addAccount(store(), clock, { email, name, role, password })
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email, password })
    return visitor
  }

  beforeAll(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterAll(() => workshop.close())

  beforeEach(async () => {
    const shirt = { kind: said('button-shirt'), size: said('L'), wear: said('thin') }
    key = await confirmPile(workshop.conversation, [
      { ...shirt, name: said('Dad’s <blue> flannel') },
    ])
    const row = await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()
    pileId = row.id
    marta = await signedIn('Marta', 'staff')
    bo = await signedIn('Bo', 'bench')
    await marta.get('/desk/piles/1')
    await marta.post('/desk/piles/1/decision', { verdict: 'accept', reason: '', seen: '0' })
    const { id: who } = await store()
      .db.selectFrom('account')
      .select('id')
      .limit(1)
      .executeTakeFirstOrThrow()
    await atTheDoor(store(), pileId, who)
    await step(store(), pileId, { subject: '1', move: 'receive', via: 'P1', who })
    for (const move of ['hold', 'tear-down'] as const) {
      await step(store(), pileId, { subject: '1', move, who })
    }
  })

  const page = async (who: Visitor, url = record) => {
    const { status, body } = await who.get(url)
    expect(status, url).toBe(200)
    return parse(body).querySelector('main')!.text.replaceAll(/\s+/g, ' ').trim()
  }
  const send = async (who: Visitor, fields: Record<string, string>, url = record) => {
    await who.get(record)
    const hidden = { seen: who.field('seen'), idem: who.field('idem') }
    return who.post(url, { ...hidden, ...fields })
  }
  const test12 = {
    act: 'test',
    interfacing: 'light',
    lot: 'lot 12',
    sole: '110',
    seconds: '12',
    peel: 'holds',
    look: 'fine',
    result: 'passed',
  }
  const kinds = async () =>
    (await store().db.selectFrom('bench_record').select('kind').orderBy('seq').execute()).map(
      ({ kind }) => kind,
    )

  test('one asks, the same person is offered no release, another releases, and it is taken back', async () => {
    expect(await page(bo)).toContain('still lacking: a photo of the garment')
    await keepPhotoOf(store(), pileId, 1)
    expect((await send(bo, { act: 'ask' })).to).toBe(`${record}#release`)
    expect(await page(bo)).toContain('Another person has to release it')
    const alone = await send(bo, { act: 'release' })
    expect([alone.status, alone.body.includes('You asked for this cut')]).toEqual([409, true])
    expect(await page(marta)).toContain('Release it for the cut')
    expect((await send(marta, { act: 'release' })).status).toBe(303)
    expect(await page(bo)).toContain('Released. It can be cut.')
    const undone = await send(marta, { act: 'undo', record: '2', note: 'the wrong tag' })
    expect(undone.status).toBe(303)
    expect(await page(bo)).toContain('the wrong tag')
    expect(await kinds()).toEqual(['ask', 'release', 'undo'])
  })

  test('what is refused stands in its form again; what is right is told in a line', async () => {
    const hot = await send(bo, { ...test12, sole: '240', note: 'the old iron' })
    expect(hot.status).toBe(422)
    const form = parse(hot.body).querySelector('details[open]')!
    expect(form.querySelector('[name=sole]')!.getAttribute('value')).toBe('240')
    expect(form.text).toContain('the old iron')
    expect(form.querySelector('[value=light]')!.hasAttribute('checked')).toBe(true)
    expect(parse(hot.body).querySelector('[role=alert]')!.text).toContain('hotter than this cloth')
    expect(await kinds()).toEqual([])
    expect((await send(bo, test12)).status).toBe(303)
    const told = await page(bo)
    expect(told).toContain('light interfacing, lot lot 12: 110 °C, 12 s')
    expect(told).toContain('cold peel: it holds · looks fine · passed')
  })

  test('what was found is a message to the customer, and stands in custody; no way leads past that', async () => {
    const found = { act: 'found', note: 'a <b>ticket</b>', where: 'hem', place: 'drawer 2' }
    expect((await send(bo, found)).to).toBe(`${record}#found`)
    expect(await page(bo, '/desk/piles/1/custody/F1')).toContain('drawer 2')
    const told = await new Visitor(workshop.app).get(`/i/${key}/messages`)
    expect(told.body).toContain('a &lt;b>ticket&lt;/b>')
    expect(told.body).not.toContain('<b>ticket')
    await bo.get('/desk/piles/1/custody/1')
    const past = { act: 'find', place: 'drawer 2', note: 'a key', seen: bo.field('seen') }
    expect((await bo.post('/desk/piles/1/custody/1', past)).status).toBe(409)
  })

  test('an incident stops it; staff alone decide and write; the bench never sees how to reach anybody', async () => {
    await send(bo, { act: 'incident', note: 'scorched at the hem' })
    const shown = await page(bo)
    expect(shown).toContain('Stopped: something happened to it')
    expect(shown).not.toContain('Tell the customer')
    expect(shown).not.toContain('ruiz.example')
    const incident = '/desk/piles/1/garments/1/incident'
    expect((await send(bo, { act: 'settle', note: 'go on' }, incident)).status).toBe(403)
    const empty = await send(marta, { act: 'tell', note: '' }, incident)
    expect(empty.status).toBe(422)
    await send(marta, { act: 'tell', note: 'We scorched a hem. We are sorry.' }, incident)
    const customer = new Visitor(workshop.app)
    expect((await customer.get(`/i/${key}/messages`)).body).toContain('We scorched a hem')
    expect(await page(marta)).toContain('Stopped')
    await send(marta, { act: 'settle', note: 'we cut around it' }, incident)
    expect(await page(bo)).not.toContain('Stopped:')
  })

  test('a wash tells what it made of the garment', async () => {
    const wash = { act: 'wash', how: 'by hand', celsius: '30', bled: 'bleeds', shrunk: 'no' }
    expect((await send(bo, wash)).status).toBe(303)
    expect(await page(bo)).toMatch(/by hand, 30 °C · colours ran · it did not shrink · grade/)
  })

  test('forms that are none change nothing', async () => {
    const before = await kinds()
    const none: readonly Record<string, string>[] = [
      { act: 'constructor' },
      { act: 'undo', record: '-1', note: 'because' },
      { act: 'undo', record: '99', note: 'because' },
      { act: 'release' },
      { act: 'picture' },
      { act: 'wash', how: 'by hand', bled: 'toString', shrunk: 'no' },
      { act: 'found', note: 'a key', where: 'hem', place: 'x'.repeat(300) },
      { ...test12, interfacing: '__proto__' },
    ]
    for (const fields of none) {
      const { status } = await send(bo, fields)
      expect([400, 409, 413, 422], JSON.stringify(fields)).toContain(status)
    }
    expect((await bo.post(record, { act: 'ask', seen: '7' })).status).toBe(409)
    expect((await bo.postRaw(record, { csrf: 'stolen', act: 'ask' })).status).toBe(403)
    for (const url of ['/desk/piles/1/garments/9/record', '/desk/piles/2/garments/1/record']) {
      expect((await bo.get(url)).status).toBe(404)
    }
    expect(await kinds()).toEqual(before)
  })

  test.each(['en', 'es'])('the page is whole in %s, and led to', async (lang) => {
    await send(bo, test12)
    await send(bo, { act: 'incident', note: 'ink on the collar' })
    const text = await page(marta, `${record}?lang=${lang}`)
    expect(text).not.toMatch(/\b(records|custody|desk|trade|failures)\.[a-z_]+/)
    for (const url of ['/desk/piles/1/custody/1', '/desk/piles/1/garments/1/bench']) {
      expect((await bo.get(url)).body, url).toContain(`href="${record}"`)
    }
  })
})
