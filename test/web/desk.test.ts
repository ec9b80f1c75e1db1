import { afterEach, beforeEach, expect, test } from 'vitest'
import { newId } from '../../src/base/ids.ts'
import { decisionsOf } from '../../src/desk/decisions.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

const garments: readonly Script[] = [
  { name: said('Blue flannel'), kind: said('button-shirt') },
  { name: said('<img src=x onerror=alert(1)>'), kind: said('scarf'), wear: said('shattered') },
  { kind: said('tshirt'), details: { asked: 'Keep the <b>badge</b>?' } },
]

oneStore('the desk', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterEach(() => workshop.close())

  async function atDesk(name = 'Marta'): Promise<Visitor> {
    return signedIn(store(), clock, workshop.app, { name })
  }

  const pile = () =>
    confirmPile(workshop.conversation, garments, { not_to_cut: said('The badge & the "cuffs"') })

  const idOf = async (number: number) =>
    (
      await store()
        .db.selectFrom('pile')
        .select('id')
        .where('number', '=', number)
        .executeTakeFirstOrThrow()
    ).id

  const decisions = async (number = 1) =>
    (await decisionsOf(store().db, await idOf(number))).map(({ item, verdict, reason, who }) => ({
      item,
      verdict,
      reason,
      who: who.name,
    }))

  test('no route of the desk opens without a session, but its door', async () => {
    await pile()
    await workshop.app.ready()
    const { paths } = workshop.app.swagger() as { paths: Record<string, Record<string, unknown>> }
    const routes = Object.entries(paths)
      .filter(([path]) => path.startsWith('/desk'))
      .flatMap(([path, methods]) => Object.keys(methods).map((method) => [method, path] as const))
    const door = ['/desk/sign-in', '/desk/welcome/{token}', '/desk/tag/{tag}']
    const behind = routes.filter(([, path]) => !door.includes(path))
    expect(behind.length).toBeGreaterThanOrEqual(7)

    for (const [method, path] of behind) {
      const url = path
        .replace('{pile}', '1')
        .replace('{n}', '1')
        .replace(/\{\w+\}/g, 'view')
      const reply = await workshop.app.inject({
        method: method.toUpperCase() as 'GET' | 'POST',
        url,
        headers: { 'content-type': 'application/json' },
        ...(method === 'post' && { payload: '{}' }),
      })
      expect([method, path, reply.statusCode]).toEqual([method, path, 401])
      expect(reply.json()).toMatchObject({ code: 'not_signed_in' })
    }
    expect(await decisions()).toEqual([])
  })

  test('a confirmed pile waits in the queue with what needs eyes and what was asked', async () => {
    await pile()
    const { body } = await (await atDesk()).get('/desk')
    expect(body).toContain('Pile 1')
    expect(body).toContain('Ana Ruiz')
    expect(body).toContain('3 garments')
    expect(body).toContain('1 question for us')
    expect(body).toMatch(/\d needs? eyes/)
  })

  test('a pile shows each garment with its grade, reasons, answers and where facts come from', async () => {
    await pile()
    const { body } = await (await atDesk()).get('/desk/piles/1')
    expect(body).toContain('data-garment="1"')
    expect(body).toMatch(/data-garment="2" data-grade="home"/)
    expect(body).toContain('Wear: falling apart (customer)')
    expect(body).toContain('Best kept at home:')
    expect(body).toContain('What the customer said')
    expect(body).toContain('ana@ruiz.example')
  })

  test('what customers typed is shown as they typed it, and never as markup', async () => {
    await pile()
    const { body } = await (await atDesk()).get('/desk/piles/1')
    expect(body).toContain('&lt;img src=x onerror=alert(1)>')
    expect(body).toContain('Keep the &lt;b>badge&lt;/b>?')
    expect(body).toContain('The badge &amp; the &quot;cuffs&quot;')
    expect(body).not.toContain('<img src=x')
    expect(body).not.toContain('<b>badge')
  })

  test('pages of the desk have no style or script of their own, as the policy asks', async () => {
    await pile()
    const { body } = await (await atDesk()).get('/desk/piles/1')
    expect(body).not.toMatch(/<script(?! src="\/assets\/[\w.-]+" defer>)|\sstyle=|\son\w+="/)
  })

  test('a decision is recorded with who and why, and stands on the page', async () => {
    await pile()
    const visitor = await atDesk()
    await visitor.get('/desk/piles/1')
    const answer = await visitor.post('/desk/piles/1/garments/2/decision', {
      verdict: 'decline',
      reason: 'Falls <em>apart</em> — ¿verdad? 李',
      seen: visitor.field('seen'),
    })
    expect(answer).toMatchObject({ status: 303, to: '/desk/piles/1#garment-2' })
    expect(await decisions()).toEqual([
      { item: 2, verdict: 'decline', reason: 'Falls <em>apart</em> — ¿verdad? 李', who: 'Marta' },
    ])
    const { body } = await visitor.get('/desk/piles/1')
    expect(body).toContain('Falls &lt;em>apart&lt;/em> — ¿verdad? 李')
    expect(body).toContain('Declined')
  })

  test.each([
    ['too short a reason', 'decline', 'no', 422, 'Please say why first'],
    ['one of 10,000 characters', 'care', `${'x'.repeat(9_990)} <the end`, 422, 'Please shorten it'],
    ['an unknown verdict', 'burn', 'because of reasons', 400, 'We could not read'],
  ])('%s is refused and still in the form', async (_, verdict, reason, status, words) => {
    await pile()
    const visitor = await atDesk()
    await visitor.get('/desk/piles/1')
    const answer = await visitor.post('/desk/piles/1/garments/2/decision', {
      verdict,
      reason,
      seen: '0',
    })
    expect(answer.status).toBe(status)
    expect(answer.body).toContain(words)
    expect(answer.body).toContain(reason.replace('<', '&lt;'))
    expect(await decisions()).toEqual([])
  })

  test.each([
    ['none', {}],
    ['another', { csrf: 'a'.repeat(32) }],
    ['that of somebody else', 'theirs'],
  ])('a decision whose form brings %s secret is refused, its reason kept', async (_, forged) => {
    await pile()
    const visitor = await atDesk()
    const other = await atDesk('Ivo')
    await other.get('/desk/piles/1')
    const csrf = forged === 'theirs' ? { csrf: other.field('csrf') } : (forged as object)
    const answer = await visitor.postRaw('/desk/piles/1/garments/2/decision', {
      verdict: 'decline',
      reason: 'a long thought',
      seen: '0',
      ...csrf,
    })
    expect(answer.status).toBe(403)
    expect(answer.body).toContain('a long thought')
    expect(await decisions()).toEqual([])
    const again = await visitor.post('/desk/piles/1/garments/2/decision', {
      verdict: 'decline',
      reason: 'a long thought',
      seen: '0',
    })
    expect(again.status).toBe(303)
  })

  test('the second of two at one garment sees what was decided meanwhile', async () => {
    await pile()
    const marta = await atDesk()
    const ivo = await atDesk('Ivo')
    await marta.get('/desk/piles/1')
    await ivo.get('/desk/piles/1')
    await marta.post('/desk/piles/1/garments/2/decision', {
      verdict: 'care',
      reason: 'sew a net behind it',
      seen: marta.field('seen'),
    })
    const told = await ivo.post('/desk/piles/1/garments/2/decision', {
      verdict: 'decline',
      reason: 'too brittle for us',
      seen: ivo.field('seen'),
    })
    expect(told.status).toBe(409)
    expect(told.body).toContain('Somebody decided here')
    expect(told.body).toContain('sew a net behind it')
    expect(told.body).toContain('too brittle for us')
    expect(await decisions()).toHaveLength(1)

    await ivo.post('/desk/piles/1/garments/2/decision', {
      verdict: 'decline',
      reason: 'too brittle for us',
      seen: ivo.field('seen'),
    })
    expect((await decisions()).map(({ who }) => who)).toEqual(['Marta', 'Ivo'])
  })

  test('a pile is accepted once its doubtful garments are decided, and leaves the queue', async () => {
    await pile()
    const visitor = await atDesk()
    const page = await visitor.get('/desk/piles/1')
    const early = await visitor.post('/desk/piles/1/decision', { verdict: 'accept', seen: '0' })
    expect(early.status).toBe(409)
    expect(early.body).toMatch(/still waits? for a decision/)

    const doubtful = [...page.body.matchAll(/data-garment="(\d+)" data-grade="(?:eyes|home)"/g)]
    for (const [, n] of doubtful) {
      await visitor.get('/desk/piles/1')
      const answer = await visitor.post(`/desk/piles/1/garments/${n}/decision`, {
        verdict: 'take',
        seen: visitor.field('seen'),
      })
      expect(answer.status).toBe(303)
    }
    await visitor.get('/desk/piles/1')
    const done = await visitor.post('/desk/piles/1/decision', {
      verdict: 'accept',
      seen: visitor.field('seen'),
    })
    expect(done.status).toBe(303)
    // It was asked about, and is ours until somebody has seen to that.
    expect((await visitor.get('/desk')).body).toContain('Pile 1')
    const [note] = await store().db.selectFrom('note').select('id').execute()
    await visitor.post(`/desk/piles/1/notes/${note!.id}/settle`, {})
    expect((await visitor.get('/desk')).body).toContain('Nothing waits')
    expect((await visitor.get('/desk?list=nobody')).body).toContain('Pile 1')
  })

  test('the reasons of a garment are decided one by one, and with the last the garment is', async () => {
    await pile()
    const marta = await atDesk()
    const forms = (body: string) => [
      ...body.matchAll(/action="(\/desk\/piles\/1\/garments\/2\/flags\/[\w-]+\/decision)"/g),
    ]
    const all = forms((await marta.get('/desk/piles/1')).body).map(([, url]) => url!)
    expect(all.length).toBeGreaterThan(2)
    const refused = await marta.post(all[0]!, { verdict: 'decline', knew: '0', reason: '' })
    expect(refused.status).toBe(422)
    for (const [i, url] of all.entries()) {
      expect(await decisions()).toEqual([])
      await marta.get('/desk/piles/1')
      const verdict = i === 0 ? 'care' : 'take'
      const answer = await marta.post(url, { verdict, knew: '0', reason: `<i>${i}</i>` })
      expect(answer.to).toBe('/desk/piles/1#garment-2')
    }
    expect(await decisions()).toMatchObject([{ item: 2, verdict: 'care', who: 'Marta' }])
    const { body } = await marta.get('/desk/piles/1')
    expect(body).toContain('Looked at, to be minded.')
    expect(body).not.toContain('<i>0')
    const other = '/desk/piles/1/garments/2/flags/no-such-reason/decision'
    expect((await marta.post(other, { verdict: 'take', knew: '0' })).status).toBe(404)
  })

  test('a declined garment changes what the quilt comes to', async () => {
    await pile()
    const visitor = await atDesk()
    const likely = (body: string) => /class="likely">[^$]*<strong>([^<]*)</.exec(body)?.[1]
    const before = likely((await visitor.get('/desk/piles/1')).body)!
    await visitor.post('/desk/piles/1/garments/1/decision', {
      verdict: 'decline',
      reason: 'the family wants it back',
      seen: '0',
    })
    const { body } = await visitor.get('/desk/piles/1')
    expect(body).toContain('The quilt, as decided so far')
    expect(likely(body)).not.toBe(before)
    expect(body).toContain(`It was ${before} as confirmed.`)
  })

  test('a question of the customer is seen to once, and says by whom', async () => {
    await pile()
    const visitor = await atDesk()
    const { body } = await visitor.get('/desk/piles/1')
    const settle = /action="(\/desk\/piles\/1\/notes\/[^"]+)"/.exec(body)![1]!
    expect((await visitor.post(settle, {})).status).toBe(303)
    expect((await visitor.get('/desk/piles/1')).body).toContain('Seen to by Marta')
    expect((await visitor.get('/desk')).body).not.toContain('question for us')
  })

  test.each([
    ['/desk/piles/2'],
    ['/desk/piles/99999999999999999999'],
    ['/desk/piles/-1'],
    ['/desk/piles/%27%20or%201%3D1'],
    ['/desk/piles/1/photos/none/view'],
    ['/desk/nothing-here'],
  ])('%s is not there', async (url) => {
    await pile()
    const answer = await (await atDesk()).get(url)
    expect(answer.status).toBe(404)
    expect(answer.body).toContain('data-trouble="not_found"')
  })

  test('an intake that is still open is nobody’s at the desk', async () => {
    await workshop.conversation.start('en')
    const visitor = await atDesk()
    expect((await visitor.get('/desk/piles/1')).status).toBe(404)
    expect((await visitor.get(`/desk/piles/${await idOf(1)}`)).status).toBe(404)
    expect((await visitor.get('/desk')).body).toContain('1 intake is still open')
  })

  test('a pile opens by its id as by its number', async () => {
    await pile()
    expect((await (await atDesk()).get(`/desk/piles/${await idOf(1)}`)).body).toContain('Pile 1')
  })

  test('a photo is shown under its own pile and under no other', async () => {
    await pile()
    await pile()
    const picture = new Uint8Array([0xff, 0xd8, 0xff, 0xd9])
    const hash = await workshop.photos.keep({
      width: 300,
      height: 300,
      full: picture,
      view: picture,
      thumb: picture,
      cloth: picture,
      seen: { mean: '#35619f', main: [{ colour: '#35619f', share: 1 }] },
    })
    const id = newId()
    await store()
      .db.insertInto('photo')
      .values({
        id,
        pile_id: await idOf(1),
        item: 1,
        question: 'photos',
        hash,
        width: 300,
        height: 300,
        bytes: 4,
        kept: 1,
        at: 1,
        removed_at: null,
      })
      .execute()
    const visitor = await atDesk()
    const own = await visitor.get(`/desk/piles/1/photos/${id}/view`)
    expect(own).toMatchObject({ status: 200, type: 'image/jpeg' })
    expect((await visitor.get(`/desk/piles/2/photos/${id}/view`)).status).toBe(404)
    expect((await visitor.get(`/desk/piles/1/photos/${id}/full`)).status).toBe(404)
  })

  test('a customer’s key opens nothing at the desk', async () => {
    const key = await pile()
    const visitor = new Visitor(workshop.app)
    visitor.cookies.set('pw_desk', key)
    expect((await visitor.get('/desk/piles/1')).status).toBe(303)
  })

  test('a form far too large is refused before it is read', async () => {
    await pile()
    const visitor = await atDesk()
    await visitor.get('/desk/piles/1')
    const answer = await visitor.post('/desk/piles/1/garments/2/decision', {
      verdict: 'care',
      reason: 'x'.repeat(300_000),
    })
    expect(answer.status).toBe(413)
    expect(await decisions()).toEqual([])
  })

  test('programs get problem details, not a page', async () => {
    const visitor = await atDesk()
    const answer = await visitor.get('/desk/piles/7', { accept: 'application/json' })
    expect(answer.type).toContain('application/problem+json')
    expect(JSON.parse(answer.body)).toMatchObject({ status: 404, code: 'not_found' })
  })
})
