import { parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { checkedTag, tagCode } from '../../src/base/tag.ts'
import { moves } from '../../src/custody/moves.ts'
import { kinds, statesOf } from '../../src/custody/states.ts'
import { subjectCode } from '../../src/custody/subject.ts'
import type { Role } from '../../src/store/schema.ts'
import { agreeLaidOut, clock, releaseCut } from '../help/custody.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { drawPdf } from '../help/read-pdf.ts'
import { scanCodes } from '../help/scan-code.ts'
import { signedIn } from '../help/signed-in.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const squeezed = (text: string) => text.replaceAll(/\s+/g, ' ').trim()

eachStore('where things are, at the desk', (store) => {
  let workshop: Workshop
  let marta: Visitor
  let bo: Visitor
  let key: string

  const person = async (name: string, role: Role) => {
    return signedIn(store(), clock, workshop.app, { name, role })
  }

  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
    const shirt = { kind: said('button-shirt'), size: said('L'), wear: said('sound') }
    key = await confirmPile(workshop.conversation, [
      { ...shirt, name: said('Dad’s blue flannel') },
      shirt,
      shirt,
    ])
    marta = await person('Marta', 'staff')
    bo = await person('Bo', 'bench')
    await marta.get('/desk/piles/1')
    await marta.post('/desk/piles/1/decision', { verdict: 'accept', reason: '', seen: '0' })
  })
  afterEach(() => workshop.close())

  const page = async (who: Visitor, url: string) => {
    const { status, body } = await who.get(url)
    expect(status, url).toBe(200)
    return squeezed(parse(body).querySelector('main')!.text)
  }
  const send = async (who: Visitor, url: string, fields: Record<string, string>, from = url) => {
    await who.get(from)
    return who.post(url, { idem: `idem-${Math.trunc(performance.now() * 1e6)}`, ...fields })
  }
  const door = (condition = 'fine') =>
    send(
      bo,
      '/desk/piles/1/parcels',
      { act: 'door', condition, place: 'receiving table', carrier: 'by hand' },
      '/desk/piles/1/custody',
    )
  const field = (who: Visitor, name: string) => who.field(name)
  const move = async (who: Visitor, subject: string, fields: Record<string, string>) => {
    const url = `/desk/piles/1/custody/${subject}`
    await who.get(url)
    return who.post(url, {
      seen: field(who, 'seen'),
      idem: field(who, 'idem'),
      place: 'shelf 2',
      note: 'as it should be',
      ...fields,
    })
  }
  const check = async (who: Visitor, fields: Record<string, string>) => {
    const url = '/desk/piles/1/box-check'
    await who.get(`${url}?parcel=P1`)
    const seen = Object.fromEntries(
      [1, 2, 3].flatMap((n) => [
        [`seen-${n}`, field(who, `seen-${n}`)],
        [`facts-seen-${n}`, field(who, `facts-seen-${n}`)],
      ]),
    )
    return who.post(url, {
      idem: field(who, 'idem'),
      parcel: 'P1',
      place: 'shelf 2',
      ...seen,
      ...fields,
    })
  }
  const states = async () =>
    Object.fromEntries(
      (await store().db.selectFrom('custody').select(['subject', 'state']).execute()).map(
        ({ subject, state }) => [subject, state],
      ),
    )

  test('accepting a pile makes its garments expected', async () => {
    expect(await states()).toEqual({ 1: 'expected', 2: 'expected', 3: 'expected' })
    expect(await page(bo, '/desk/piles/1/custody')).toContain('expected')
  })

  test('a box check moves, grades anew, tells what changed, and writes to the customer', async () => {
    await door()
    const answer = await check(bo, {
      'result-1': 'matched',
      'condition-1': 'fine',
      'result-2': 'different',
      'fact-2-wear': 'shattered',
      'note-2': 'the back is shattered',
      'result-3': 'missing',
      'extra-note': 'a red scarf',
      emptied: 'yes',
    })
    expect([answer.status, answer.to]).toEqual([303, '/desk/piles/1/box-check/changed'])
    expect(await states()).toEqual({
      1: 'held',
      2: 'held',
      3: 'missing',
      P1: 'unpacked',
      X1: 'set-apart',
    })
    const changed = await page(bo, '/desk/piles/1/box-check/changed')
    expect(changed).toMatch(/(good to send|we prepare it) before, /)
    expect(changed).toContain(`${subjectCode(1, 'X1')}: a red scarf`)
    expect(changed).toContain('is missing')
    const [garment] = await store()
      .db.selectFrom('garment')
      .select(['facts', 'grade'])
      .where('item', '=', 2)
      .execute()
    expect(JSON.parse(garment!.facts)).toMatchObject({ wear: 'shattered' })
    const [mail] = await store().db.selectFrom('mail').selectAll().execute()
    expect(mail!.body).toContain('One was not in the box')
    expect(mail!.body).toContain('One thing was not on your list')
    const customer = await page(new Visitor(workshop.app), `/i/${key}`)
    expect(customer).toContain('Your pile is with us')
    expect(customer).toContain('As you described it: Dad’s blue flannel.')
    expect(customer).toContain('Not on your list: a red scarf.')
  })

  test('what is refused stands in the form again, and nothing of it was kept', async () => {
    await door()
    const answer = await check(bo, {
      'result-1': 'matched',
      'result-2': 'different',
      'note-2': 'something is odd here',
    })
    expect(answer.status).toBe(422)
    expect(answer.body).toContain('something is odd here')
    expect(await states()).toMatchObject({ 1: 'expected', 2: 'expected' })
  })

  test('two check one box: the second is told, and overwrites nothing', async () => {
    await door()
    const url = '/desk/piles/1/box-check'
    await marta.get(url)
    const late = { idem: field(marta, 'idem'), 'seen-1': field(marta, 'seen-1') }
    await check(bo, { 'result-1': 'matched', 'condition-1': 'fine' })
    const answer = await marta.post(url, {
      ...late,
      parcel: 'P1',
      place: 'elsewhere',
      'result-1': 'missing',
    })
    expect(answer.status).toBe(409)
    expect(answer.body).toContain('Somebody moved this')
    expect(await states()).toMatchObject({ 1: 'held' })
  })

  test('an isolated parcel has no list; its page tells what to do, and to lift it wants a reason', async () => {
    await door('infested')
    expect(await page(bo, '/desk/piles/1/box-check')).toContain('This parcel is kept apart')
    expect((await check(bo, { 'result-1': 'matched' })).status).toBe(409)
    const told = await page(bo, '/desk/piles/1/custody/P1')
    // Conserve O Gram 3/6 (US National Park Service, 1994): 6 to 10 days at -20 °C for most museum pests.
    expect(told).toContain('−20 °C (−4 °F) for 6 to 10 days')
    expect((await move(bo, 'P1', { act: 'lift', note: '' })).status).toBe(422)
    await move(bo, 'P1', { act: 'lift', note: 'eight days in the freezer, thawed closed' })
    expect(await page(bo, '/desk/piles/1/box-check')).toContain('Is it here?')
  })

  test('a garment goes on by its page; what may not be yet says why; the bench cannot sign off', async () => {
    await door()
    await check(bo, { 'result-1': 'matched', 'condition-1': 'fine' })
    const { id: pileId } = await store()
      .db.selectFrom('pile')
      .select('id')
      .executeTakeFirstOrThrow()
    await move(bo, '1', { act: 'tear-down' })
    expect((await move(bo, '1', { act: 'cut' })).status).toBe(409)
    expect(await page(bo, '/desk/piles/1/custody/1')).toContain('cutting is not released')
    await releaseCut(store(), pileId, 1)
    for (const act of ['cut', 'sew']) {
      if (act === 'sew') {
        expect((await move(bo, '1', { act })).status).toBe(409)
        expect(await page(bo, '/desk/piles/1/custody/1')).toContain(
          'the customer has not said yes to the quilt as it is laid out now',
        )
        await agreeLaidOut(store(), pileId)
      }
      const { status, to } = await move(bo, '1', { act })
      expect([act, status, to]).toEqual([act, 303, '/desk/piles/1/custody/1'])
    }
    const sewn = await page(bo, '/desk/piles/1/custody/1')
    expect(sewn).toContain('Goes home with the quilt: the quilt is not signed off.')
    expect((await move(bo, '1', { act: 'go-home' })).status).toBe(409)
    const sign = { act: 'sign', leftovers: 'return' }
    const url = '/desk/piles/1/sign-off'
    expect((await send(bo, url, sign, '/desk/piles/1/custody')).status).toBe(403)
    expect((await send(marta, url, sign, '/desk/piles/1/custody')).status).toBe(303)
    expect((await move(bo, '1', { act: 'go-home' })).status).toBe(303)
    expect(await states()).toMatchObject({ 1: 'home-with-quilt' })
  })

  test('an entry is taken back by the page, with a reason', async () => {
    await door()
    await check(bo, { 'result-1': 'matched', 'condition-1': 'fine' })
    await move(bo, '1', { act: 'tear-down' })
    expect((await move(marta, '1', { act: 'undo', note: '' })).status).toBe(422)
    expect((await move(marta, '1', { act: 'undo', note: 'that was garment 2' })).status).toBe(303)
    expect(await states()).toMatchObject({ 1: 'held' })
    expect(await page(bo, '/desk/piles/1/custody/1')).toContain('that was garment 2')
  })

  test('a tag leads the workshop to the garment, and a stranger to whose it is, without any data', async () => {
    const tag = tagCode(1, 1)
    const stranger = new Visitor(workshop.app)
    const led = await stranger.get(`/t/${tag}`)
    expect([led.status, led.to]).toEqual([303, `/desk/tag/${tag}`])
    const shown = await stranger.get(led.to!)
    expect(shown.status).toBe(200)
    expect(shown.body).toContain('This tag belongs to Lantern Street Quilts')
    expect(shown.body).not.toContain('flannel')
    expect(shown.body).not.toContain('Ana')
    // A tag that is none shows the same: nothing is told by trying.
    const none = await stranger.get('/desk/tag/Q9-999')
    expect(none.body).toBe(shown.body)
    expect((await bo.get(`/desk/tag/${tag}`)).to).toBe('/desk/piles/1/custody/1')
  })

  test('the code of a printed tag opens its own garment at the workshop, and only whose it is elsewhere', async () => {
    const cookie = [...marta.cookies].map(([name, value]) => `${name}=${value}`).join('; ')
    const { rawPayload } = await workshop.app.inject({
      url: '/desk/piles/1/papers/tags.pdf',
      headers: { cookie },
    })
    const codes = await scanCodes(await drawPdf(rawPayload, 1, 200))
    expect(codes).toHaveLength(3)
    for (const [i, { text }] of codes.entries()) {
      const { pathname } = new URL(text)
      expect(pathname).toBe(`/t/${checkedTag(tagCode(1, i + 1))}`)
      const led = await marta.get(pathname)
      expect((await marta.get(led.to!)).to).toBe(`/desk/piles/1/custody/${i + 1}`)
      const stranger = new Visitor(workshop.app)
      const shown = await stranger.get((await stranger.get(pathname)).to!)
      expect(shown.body).toContain('This tag belongs to Lantern Street Quilts')
    }
  })

  test('the scan field knows a tag as it is scanned or typed', async () => {
    const tag = tagCode(1, 2)
    const ways = [
      tag.toLowerCase(),
      ` ${tag.replace('-', ' ')} `,
      `https://quilts.example/t/${tag}`,
      tag.replace('-', '–'),
      checkedTag(tag),
      checkedTag(tag).toLowerCase().replaceAll('-', ' '),
      `https://quilts.example/t/${checkedTag(tag)}`,
    ]
    for (const way of ways) {
      const { to } = await bo.get(`/desk/custody?q=${encodeURIComponent(way)}`)
      expect(to, way).toBe('/desk/piles/1/custody/2')
    }
  })

  test('a tag that was mistyped opens nothing, and a hint says what to look at', async () => {
    // Garment 3 is there; its tag with the check sign of garment 2 is somebody's slip.
    const wrong = `${tagCode(1, 3)}-${checkedTag(tagCode(1, 2)).at(-1)}`
    for (const path of [`/desk/custody?q=${wrong}`, (await bo.get(`/desk/tag/${wrong}`)).to!]) {
      expect(await page(bo, path)).toContain('its last sign does not fit the others')
    }
  })

  test('what is looked for by name or place is found; the customer’s name by staff alone', async () => {
    await door()
    await check(bo, { 'result-1': 'matched', 'condition-1': 'fine' })
    expect(await page(bo, '/desk/custody?q=flannel')).toContain('checked and held · shelf 2')
    expect(await page(bo, '/desk/custody?q=SHELF%202')).toContain('Dad’s blue flannel')
    expect(await page(marta, '/desk/custody?q=ruiz')).toContain('Ana Ruiz')
    expect(await page(bo, '/desk/custody?q=ruiz')).toContain('Nothing is known by')
    expect(await page(bo, '/desk/custody?q=flannel')).not.toContain('Ana')
    for (const q of ['%25', '_', '%5C', "'%20or%201=1"]) {
      expect(await page(marta, `/desk/custody?q=${q}`)).toContain('Nothing is known by')
    }
  })

  test('the count names what was not seen, and is kept with who', async () => {
    await door()
    await check(bo, { 'result-1': 'matched', 'result-2': 'matched', emptied: 'yes' })
    const counted = { seen: '1 1', idem: 'a-count-of-this-test' }
    const answer = await send(bo, '/desk/count', counted)
    expect(answer.status).toBe(303)
    await send(bo, '/desk/count', counted)
    expect(await store().db.selectFrom('day_count').select('id').execute()).toHaveLength(1)
    const told = await page(marta, '/desk/count')
    expect(told).toMatch(/Counted by Bo, .*: 1 of 2/)
    expect(told).toContain('One thing is not accounted for')
    expect(told).toContain(`${subjectCode(1, '2')} · shelf 2`)
  })

  test('a customer says that a box is posted, once, and it stands at the desk', async () => {
    const customer = new Visitor(workshop.app)
    // Nothing is agreed yet, so nobody is asked; a box that went off all the same is told of.
    expect((await customer.get(`/i/${key}`)).body).not.toContain('Have you posted it?')
    const told = { carrier: 'Post', tracking: 'AB 12 34', idem: 'a-parcel-of-this-test' }
    await customer.postRaw(`/i/${key}/posted`, told)
    await customer.postRaw(`/i/${key}/posted`, told)
    expect((await customer.get(`/i/${key}`)).body).toContain('Post AB 12 34: on its way')
    expect(await states()).toMatchObject({ P1: 'announced' })
    const desk = await page(bo, '/desk/piles/1/custody')
    expect(desk.match(/AB 12 34/g)).toHaveLength(1)
  })

  test('what is of no pile, or of another, is not found', async () => {
    for (const subject of ['9', '1-L1', 'X', '1;2', 'P1']) {
      expect((await bo.get(`/desk/piles/1/custody/${encodeURIComponent(subject)}`)).status).toBe(
        404,
      )
    }
    expect((await move(bo, '1', { act: 'constructor' })).status).toBeGreaterThanOrEqual(400)
    expect((await bo.get('/desk/piles/2/custody')).status).toBe(404)
  })

  test('a photo that does not belong, and a parcel of nobody, change nothing', async () => {
    await door()
    const answer = await move(bo, '1', { act: 'receive', parcel: 'P7' })
    expect(answer.status).toBe(409)
    expect(await states()).toMatchObject({ 1: 'expected' })
  })

  test.each(['en', 'es'])('every page is there in %s, without a key for words', async (lang) => {
    await door('torn')
    await check(bo, { 'result-1': 'matched', 'result-2': 'different', 'fact-2-size': 'XL' })
    for (const url of [
      '/desk/custody',
      '/desk/custody/map',
      '/desk/piles/1/custody',
      '/desk/piles/1/custody/1',
      '/desk/piles/1/custody/P1',
      '/desk/piles/1/box-check',
      '/desk/piles/1/box-check/changed',
      '/desk/count',
    ]) {
      const text = await page(bo, `${url}?lang=${lang}`)
      expect(text, url).not.toMatch(/\b(custody|desk|intake|failures)\.[a-z_]+/)
      expect(text, url).not.toContain('Ana')
      expect(text, url).not.toContain('ruiz.example')
    }
  })

  test('the drawing shows every state and every move of the tables', async () => {
    const root = parse((await bo.get('/desk/custody/map')).body)
    const maps = root.querySelectorAll('.custody-map')
    expect(maps).toHaveLength(kinds.length)
    const [garments] = maps
    const sewn = garments!.querySelectorAll('.custody-legend li').map(({ text }) => text)
    expect(sewn.find((text) => text.includes('Sewn:'))).toContain('has not said yes to the quilt')
    kinds.forEach((kind, at) => {
      const lines = maps[at]!.querySelectorAll('.custody-legend li')
      expect(lines).toHaveLength(moves.filter((one) => one.kind === kind).length)
      expect(maps[at]!.querySelectorAll('rect')).toHaveLength(Object.keys(statesOf[kind]).length)
      const guarded = moves.filter((one) => one.kind === kind && one.guards.length > 0)
      expect(lines.filter(({ text }) => text.includes('Not while'))).toHaveLength(guarded.length)
    })
  })
})
