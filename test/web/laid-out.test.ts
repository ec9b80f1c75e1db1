import { parse } from 'node-html-parser'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { layOut } from '../../src/desk/lay-out.ts'
import { atTheDoor, clock, keepPhotoOf, once, releaseCut, step } from '../help/custody.ts'
import { addStaff } from '../help/desk.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const desk = '/desk/piles/1/laid-out'
const phone = `${desk}/phone`

oneStore('the pages of the laid-out quilt', (store) => {
  let workshop: Workshop
  let marta: Visitor
  let bo: Visitor
  let ana: Visitor
  let pileId: string
  let who: string
  let theirs: string

  beforeAll(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterAll(() => workshop.close())

  const page = async (visitor: Visitor, url: string) => {
    const { status, body } = await visitor.get(url)
    expect(status, url).toBe(200)
    return parse(body).querySelector('main')!.text.replaceAll(/\s+/g, ' ').trim()
  }
  const send = async (visitor: Visitor, url: string, fields: Record<string, string>) => {
    await visitor.get(url.startsWith(desk) ? desk : url)
    const hidden = ['seen', 'of', 'idem'].map((name) => [name, visitor.field(name)])
    return visitor.post(url, { ...Object.fromEntries(hidden), ...fields })
  }
  const lay = async (note = '<b>The blue</b> frames it.') =>
    layOut({ store: store(), clock, knowledge: workshop.knowledge }, pileId, {
      photos: [
        await keepPhotoOf(store(), pileId, 0, 'laid-out'),
        await keepPhotoOf(store(), pileId, 0, 'laid-out'),
      ],
      note,
      seen: Number(await newest()),
      idem: once(),
      who,
    })
  const newest = async () => {
    await bo.get(desk)
    return bo.field('seen')
  }

  beforeEach(async () => {
    const shirt = { kind: said('button-shirt'), size: said('L'), wear: said('sound') }
    const key = await confirmPile(workshop.conversation, [
      { ...shirt, name: said('Dad’s blue flannel') },
      shirt,
    ])
    theirs = `/i/${key}/laid-out`
    pileId = (await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()).id
    marta = await signedIn(store(), clock, workshop.app, { name: 'Marta' })
    bo = await signedIn(store(), clock, workshop.app, { name: 'Bo', role: 'bench' })
    ana = new Visitor(workshop.app)
    who = await addStaff(store().db, 'Lena')
    await marta.get('/desk/piles/1')
    await marta.post('/desk/piles/1/decision', { verdict: 'accept', reason: '', seen: '0' })
    await atTheDoor(store(), pileId, who)
    for (const move of ['receive', 'hold', 'tear-down'] as const) {
      await step(store(), pileId, {
        subject: '1',
        move,
        via: move === 'receive' ? 'P1' : null,
        who,
      })
    }
    await releaseCut(store(), pileId, 1)
  })
  const cut = () => step(store(), pileId, { subject: '1', move: 'cut', who })

  test('before anything is cut there is nothing to lay out, and the customer has no such page', async () => {
    expect(await page(bo, desk)).toContain('Pieces are laid out once they are cut')
    const bare = { act: 'laid', seen: '0', idem: once().padEnd(8, 'x') }
    expect((await bo.post(desk, bare)).status).toBe(409)
    const { status, to } = await ana.get(theirs)
    expect([status, to]).toEqual([303, theirs.replace('/laid-out', '')])
  })

  test('the customer sees photos and words, says yes, and the workshop reads so; the bench may lay out', async () => {
    await cut()
    expect(await page(bo, desk)).toContain('Laid out, ask the customer')
    const bare = await send(bo, desk, { act: 'laid', note: 'the red one moved' })
    expect(bare.status).toBe(400)
    // What was typed stands in the form again.
    expect(bare.body).toContain('the red one moved')
    await lay()
    const asked = await ana.get(theirs)
    const main = parse(asked.body).querySelector('main')!
    expect(
      main.querySelectorAll('.laid-out-photos img').map((one) => one.getAttribute('alt')),
    ).toEqual(['Photo 1 of the quilt laid out', 'Photo 2 of the quilt laid out'])
    expect(main.querySelector('.laid-out-note .typed')!.text).toBe('<b>The blue</b> frames it.')
    expect(await page(ana, theirs.replace('/laid-out', ''))).toContain('Please look at your quilt')
    expect(await page(marta, '/desk?list=customer')).toContain('Laid-out quilt, asked')
    const { status, to } = await send(ana, theirs, { answer: 'yes' })
    expect([status, to]).toEqual([303, theirs])
    expect(await page(ana, theirs)).toContain('You said yes on')
    expect(await page(bo, desk)).toContain('Said yes on their page')
    expect(await page(marta, '/desk?list=nobody')).toContain('Laid-out quilt, yes')
    expect(await page(ana, theirs.replace('/laid-out', ''))).toContain('It is being sewn')
  })

  test('a wish needs words, keeps them when it is refused, and stands at the desk as our turn', async () => {
    await cut()
    await lay()
    const empty = await send(ana, theirs, { answer: 'change', text: ' ' })
    expect(empty.status).toBe(422)
    expect(empty.body).toContain('in a few words what should be different')
    const long = 'x'.repeat(2001)
    const refused = await send(ana, theirs, { answer: 'change', text: long })
    expect([refused.status, refused.body.includes(long)]).toEqual([422, true])
    await send(ana, theirs, { answer: 'change', text: 'The <i>red</i> one higher, please.' })
    expect(await page(bo, desk)).toContain('The <i>red</i> one higher, please.')
    expect(await page(marta, '/desk')).toContain('Laid-out quilt, change wished')
    expect(await page(ana, theirs)).toContain('It is right as it is')
  })

  test('a page that is older than the laying says so, and keeps nothing', async () => {
    await cut()
    await lay()
    await ana.get(theirs)
    const late = { of: ana.field('of'), idem: ana.field('idem'), answer: 'yes' }
    await lay('')
    const answer = await ana.post(theirs, late)
    expect(answer.status).toBe(409)
    expect(answer.body).toContain('Please look at it once more')
    expect(await page(bo, desk)).toContain('The customer is asked since')
  })

  test('staff write down a yes on the phone; the bench may not, and is not told who', async () => {
    await cut()
    await lay()
    const told = { by: 'Ana Ruiz', day: '2026-06-01', note: '' }
    expect((await send(bo, phone, told)).status).toBe(403)
    const wrong = await send(marta, phone, { ...told, day: '2026-02-31' })
    expect(wrong.status).toBe(422)
    const form = parse(wrong.body).querySelector('details.move[open]')!
    expect(form.querySelector('[name=by]')!.getAttribute('value')).toBe('Ana Ruiz')
    expect(form.querySelector('[name=day]')!.getAttribute('value')).toBe('2026-02-31')
    expect((await send(marta, phone, told)).status).toBe(303)
    expect(await page(marta, desk)).toContain('Ana Ruiz said yes on the phone')
    expect(await page(bo, desk)).not.toContain('Ana Ruiz')
    expect(await page(ana, theirs)).toContain('Ana Ruiz said yes on the phone')
    const seq = parse((await marta.get(desk)).body).querySelector('[name=record]')!
    const undo = { act: 'undo', note: 'it was another pile', record: seq.getAttribute('value')! }
    expect((await send(marta, desk, undo)).status).toBe(303)
    expect(await page(bo, desk)).toContain('it was another pile')
  })

  test('a form that is none changes nothing', async () => {
    await cut()
    await lay()
    const forms: Record<string, string>[] = [
      { answer: 'maybe' },
      { answer: 'yes', of: '-1' },
      { answer: 'yes', of: 'x' },
    ]
    for (const form of forms) {
      expect((await send(ana, theirs, form)).status).toBe(400)
    }
    expect((await send(ana, theirs, { answer: 'yes', of: '77' })).status).toBe(409)
    expect((await send(bo, desk, { act: 'undo', record: '1', note: 'x' })).status).toBe(422)
    expect((await send(bo, desk, { act: 'sew' })).status).toBe(400)
    expect(await page(bo, desk)).toContain('The customer is asked since')
  })

  test.each(['en', 'es'])('the pages are whole in %s, and led to', async (lang) => {
    await cut()
    await lay()
    await ana.get(`${theirs.replace('/laid-out', '')}/language/${lang}`)
    const key = /laid_out\.|status\.next/
    expect(await page(ana, theirs)).not.toMatch(key)
    expect(await page(ana, theirs.replace('/laid-out', ''))).not.toMatch(key)
    for (const from of ['/desk/piles/1/custody', '/desk/piles/1/custody/1', '/desk/bench']) {
      expect((await bo.get(`${from}?lang=${lang}`)).body).toContain(`href="${desk}"`)
    }
    expect(await page(bo, desk)).not.toMatch(key)
    expect((await marta.get('/desk/piles/1')).body).toContain(`href="${desk}"`)
  })
})
