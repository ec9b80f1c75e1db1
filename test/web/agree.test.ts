import { afterEach, beforeEach, expect, test } from 'vitest'
import { newId, sha256 } from '../../src/base/ids.ts'
import { formOf, sayYes, sendOffer, staffMember, takePile } from '../help/agreeing.ts'
import { heldClock } from '../help/app.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const begun = Date.UTC(2026, 5, 1, 9)
const dayMs = 24 * 60 * 60 * 1000
const garments = [
  { name: said('Blue flannel'), kind: said('button-shirt'), size: said('L') },
  { name: said('Choir shirt'), kind: said('tshirt'), size: said('L') },
]

oneStore('from estimate to agreement', (store) => {
  const clock = heldClock(begun)
  let workshop: Workshop
  beforeEach(async () => {
    clock.now = begun
    workshop = await openWorkshop(store(), clock.read)
  })
  afterEach(() => workshop.close())

  const desk = () => staffMember(store(), clock.read, workshop.app, 'Marta')
  const customer = () => new Visitor(workshop.app)
  const offered = async (typed: Readonly<Record<string, string>> = {}) => {
    const key = await confirmPile(workshop.conversation, garments)
    const marta = await desk()
    await takePile(marta, 1)
    const sent = await sendOffer(marta, 1, typed)
    expect([sent.status, sent.to]).toEqual([303, '/desk/piles/1/agreement'])
    return { key, marta }
  }
  const body = async (key: string, path = '') => (await customer().get(`/i/${key}${path}`)).body
  const words = (html: string) =>
    /<div class="offer-words">.*?<\/dl>/s.exec(html)?.[0].replaceAll(/<[^>]+>|\s+/g, ' ') ?? ''

  test('a customer reads what was sent, says yes once, and both sides see it', async () => {
    const { key, marta } = await offered({
      label: 'Hand-sewn label',
      amount: '12.50',
      reason: 'as you asked',
    })
    expect(await body(key)).toContain('Your offer is here')
    const page = await body(key, '/offer/2')
    expect(page).toContain('Hand-sewn label')
    expect(page).toContain('$12.50')
    expect(page).toContain('as you asked')
    // TRADE's rule: the finished quilt's care is told before agreement.
    expect(page).toContain('How to care for your quilt')
    expect(page).toContain(`href="/i/${key}/messages">Ask us, or say no`)
    expect(page).not.toContain('mailto:hello@lantern-street.example?')
    expect(await body(key)).not.toContain('Have you posted it?')

    expect((await sayYes(workshop, key, 2)).to).toBe(`/i/${key}`)
    const { accepted_at } = await store()
      .db.selectFrom('offer')
      .selectAll()
      .executeTakeFirstOrThrow()
    clock.now += 5_000
    expect((await sayYesAgain(key)).status).toBe(303)
    const offer = await store().db.selectFrom('offer').selectAll().executeTakeFirstOrThrow()
    expect(offer).toMatchObject({ accepted_at, accepted_name: 'Ana Ruiz', ended_at: null })
    expect(words(await body(key, '/offer/2'))).toBe(words(page))

    expect(await body(key)).not.toContain('not a promise')
    const { body: agreed } = await marta.get('/desk/piles/1/agreement')
    expect(agreed).toContain('accepted by Ana Ruiz')
    const { body: calendar } = await marta.get('/desk/calendar')
    expect(calendar).toMatch(/href="\/desk\/piles\/1\/agreement">Pile 1</)
    const mails = await store()
      .db.selectFrom('mail')
      .select(['template', 'body'])
      .where('template', '=', 'agreed')
      .execute()
    expect(mails).toHaveLength(1)
    expect(mails[0]!.body).toMatch(/our offer of \$\d/)
  })

  test('once it is agreed the customer tells of the box; a refusal keeps what was typed', async () => {
    const { key } = await offered()
    await sayYes(workshop, key, 2)
    expect(await body(key)).toContain('Have you posted it?')
    const visitor = customer()
    const long = 'A carrier called '.repeat(10)
    const refused = await visitor.postRaw(`/i/${key}/posted`, { carrier: long, tracking: 'AB 12' })
    expect(refused.status).toBe(422)
    expect(refused.body).toContain('shorten it to 80')
    expect(refused.body).toContain(`value="${long}"`)
    expect(refused.body).toContain('value="AB 12"')
    await visitor.postRaw(`/i/${key}/posted`, { carrier: 'Post', tracking: 'AB 12' })
    expect(await body(key)).toContain('Post AB 12: on its way')
  })

  const sayYesAgain = async (key: string) => {
    const { hash } = await store()
      .db.selectFrom('offer')
      .select('accepted_words as hash')
      .executeTakeFirstOrThrow()
    return customer().postRaw(`/i/${key}/offer/2/accept`, {
      hash: hash!,
      name: 'Eve',
      agree: 'yes',
    })
  }

  test('a name and a tick are asked for, and what was typed stays', async () => {
    const { key } = await offered()
    const noTick = await sayYes(workshop, key, 2, { agree: '', name: '' })
    expect(noTick.status).toBe(422)
    expect(noTick.body).toContain('Please type your name')
    const page = await body(key, '/offer/2')
    const { hash } = formOf(page, `/i/${key}/offer/2/accept`)
    const unticked = await customer().postRaw(`/i/${key}/offer/2/accept`, {
      hash: hash!,
      name: 'Ana "A" <b>',
    })
    expect(unticked.status).toBe(422)
    expect(unticked.body).toContain('value="Ana &quot;A&quot; &lt;b>"')
    expect(unticked.body).toContain('Please tick')
    expect(await body(key)).toContain('Your offer is here')
  })

  test('an offer that ran out, was replaced or is somebody else’s is not accepted', async () => {
    const { key, marta } = await offered({ validDays: '3' })
    const other = await confirmPile(workshop.conversation, garments)
    expect((await customer().get(`/i/${other}/offer/2`)).status).toBe(404)
    expect(
      (
        await customer().postRaw(`/i/${other}/offer/2/accept`, {
          hash: 'x',
          name: 'Eve',
          agree: 'yes',
        })
      ).status,
    ).toBe(404)
    const first = await body(key, '/offer/2')

    await sendOffer(marta, 1, { note: 'With the smaller backing.' })
    const { hash } = formOf(first, `/i/${key}/offer/2/accept`)
    const late = await customer().postRaw(`/i/${key}/offer/2/accept`, {
      hash: hash!,
      name: 'Ana',
      agree: 'yes',
    })
    expect(late.status).toBe(409)
    expect(late.body).toContain('no longer holds')
    expect(late.body).toContain(`/i/${key}/offer/3`)

    clock.now += 32 * dayMs
    expect(await body(key)).toContain('Your offer has run out')
    const third = await store()
      .db.selectFrom('agreed')
      .selectAll()
      .where('version', '=', 3)
      .executeTakeFirstOrThrow()
    const expired = await customer().postRaw(`/i/${key}/offer/3/accept`, {
      hash: sha256(third.body),
      name: 'Ana',
      agree: 'yes',
    })
    expect(expired.status).toBe(410)
    expect(expired.body).toContain('mailto:')
  })

  test('two at the desk: the second sees the first one’s offer before sending another', async () => {
    const key = await confirmPile(workshop.conversation, garments)
    const marta = await desk()
    await takePile(marta, 1)
    const ivo = await staffMember(store(), clock.read, workshop.app, 'Ivo')
    const path = '/desk/piles/1/offer'
    const page = await ivo.get(path)
    const shown = await ivo.post(path, { ...formOf(page.body, path), act: 'preview' })
    await sendOffer(marta, 1)
    const refused = await ivo.post(path, { ...formOf(shown.body, path), act: 'send' })
    expect(refused.status).toBe(409)
    expect(refused.body).toContain('Somebody sent an offer')
    expect(await store().db.selectFrom('offer').selectAll().execute()).toHaveLength(1)
    expect(await body(key)).toContain('Your offer is here')
  })

  test('the same form twice is one offer and one mail; what was not shown is not sent', async () => {
    await confirmPile(workshop.conversation, garments)
    const marta = await desk()
    await takePile(marta, 1)
    const path = '/desk/piles/1/offer'
    const page = await marta.get(path)
    const fields = formOf(page.body, path)
    const unseen = await marta.post(path, { ...fields, act: 'send' })
    expect([unseen.status, /changed since the totals/.test(unseen.body)]).toEqual([409, true])
    const shown = await marta.post(path, { ...fields, act: 'preview' })
    const whole = formOf(shown.body, path)
    expect((await marta.post(path, { ...whole, act: 'send' })).status).toBe(303)
    expect((await marta.post(path, { ...whole, csrf: whole.csrf!, act: 'send' })).status).toBe(303)
    expect(await store().db.selectFrom('offer').selectAll().execute()).toHaveLength(1)
    const mails = await store().db.selectFrom('mail').select(['template', 'subject']).execute()
    expect(mails).toMatchObject([{ template: 'offer' }])
  })

  test.each([
    [{ label: 'x', amount: '1e9', reason: 'because' }, 'could not read that amount'],
    [{ label: 'x', amount: '99999999', reason: 'because' }, 'too large'],
    [{ label: 'x', amount: '1.005', reason: 'because' }, 'with 2 decimals at most'],
    [{ label: 'x', amount: '-999999', reason: 'because' }, 'more than the offer'],
    [{ label: 'x', amount: '5', reason: '' }, 'and why'],
    [{ deposit: '999999' }, 'between nothing and the total'],
    [{ deposit: '-5' }, 'between nothing and the total'],
    [{ promised: '2020-01-01' }, 'still to come'],
    [{ promised: '2026-06-03' }, 'no room for that day'],
    [{ promised: 'soon' }, 'still to come'],
    [{ validDays: '0' }, 'from 1 to 365'],
    [{ note: 'x'.repeat(2_001) }, 'shorten it'],
  ])('an offer with %o is refused and stays on the page', async (typed, sentence) => {
    await confirmPile(workshop.conversation, garments)
    const marta = await desk()
    await takePile(marta, 1)
    const refused = await sendOffer(marta, 1, typed as Record<string, string>)
    expect(refused.status).toBe(422)
    expect(refused.body).toContain(sentence)
    expect(formOf(refused.body, '/desk/piles/1/offer')).toMatchObject(typed)
    expect(await store().db.selectFrom('offer').selectAll().execute()).toEqual([])
  })

  test('a day that the benches have no room for needs a reason, which the customer does not read', async () => {
    const reason = 'Ivo comes in on Saturdays'
    const { key, marta } = await offered({ promised: '2026-06-05', overReason: reason })
    expect((await marta.get('/desk/piles/1/agreement')).body).toContain(reason)
    const page = await body(key, '/offer/2')
    expect(page).toContain('June 5, 2026')
    expect(page).not.toContain('Saturdays')
  })

  test('money comes in, goes back and is put right; every entry has the next receipt', async () => {
    const { key, marta } = await offered()
    const path = '/desk/piles/1/payments'
    const pay = async (fields: Record<string, string>) => {
      const { body: page } = await marta.get('/desk/piles/1/agreement')
      return marta.post(path, { ...formOf(page, path), kind: 'deposit', ...fields })
    }
    const early = await pay({ amount: '10', how: 'cash' })
    expect([early.status, /no accepted offer/.test(early.body)]).toEqual([409, true])
    await sayYes(workshop, key, 2)
    expect(await body(key)).toContain('Please pay the deposit')

    for (const [amount, how, status] of [
      ['-5', 'cash', 422],
      ['0', 'cash', 422],
      ['100', '', 422],
      ['999999', 'cash', 422],
      ['100', 'Card 4111 1111 1111 1111', 422],
      ['100', 'Bank transfer <i>7</i>', 303],
    ] as const) {
      expect([amount, how, (await pay({ amount, how })).status]).toEqual([amount, how, status])
    }
    const idem = newId()
    expect((await pay({ amount: '20', how: 'cash', idem })).status).toBe(303)
    expect((await pay({ amount: '20', how: 'cash', idem })).status).toBe(303)
    expect((await pay({ kind: 'refund', amount: '121', how: 'cash' })).status).toBe(422)
    expect((await pay({ kind: 'refund', amount: '5', how: 'cash' })).status).toBe(303)

    const rows = () => store().db.selectFrom('payment').selectAll().orderBy('receipt').execute()
    const wrong = (await rows())[1]!
    const counter = `${path}/${wrong.id}/counter`
    const { body: page } = await marta.get('/desk/piles/1/agreement')
    const fields = { ...formOf(page, counter), how: 'typed twice' }
    expect((await marta.post(counter, fields)).status).toBe(303)
    expect((await marta.post(counter, { ...fields, idem: newId() })).status).toBe(409)
    expect((await rows()).map(({ receipt, minor }) => [receipt, minor])).toEqual([
      [1, 10_000],
      [2, 2_000],
      [3, -500],
      [4, -2_000],
    ])
    const mails = await store()
      .db.selectFrom('mail')
      .select(['once', 'body'])
      .where('template', '=', 'receipt')
      .orderBy('once')
      .execute()
    expect(mails.map(({ once }) => once)).toEqual(
      (await rows()).map((row) => `receipt ${row.receipt}`),
    )
    expect(mails[0]!.body).toContain('We have received $100.00.')
    const receipt = await body(key, '/receipts/1')
    expect(receipt).toContain('Receipt 1')
    expect(receipt).toContain('$100.00')
    expect(receipt).toContain('Bank transfer &lt;i>7&lt;/i>')
    expect(await body(key, '/receipts/2')).toContain('Receipt 4 puts it right')
    expect(await body(key)).toContain('$95.00')
    const other = await confirmPile(workshop.conversation, garments)
    expect((await customer().get(`/i/${other}/receipts/1`)).status).toBe(404)
  })

  test('a pile is opened again, changed and confirmed: both sides read the difference', async () => {
    const { key, marta } = await offered()
    await sayYes(workshop, key, 2)
    const change = formOf(await body(key, '/change'), `/i/${key}/change`)
    expect((await customer().postRaw(`/i/${key}/change`, change)).status).toBe(303)
    expect((await customer().postRaw(`/i/${key}/change`, change)).status).toBe(303)
    expect(await body(key)).toContain('You are changing your pile')
    expect((await marta.get('/desk')).body).toContain('is being changed since')
    expect((await marta.get('/desk/piles/1')).status).toBe(404)
    expect((await marta.get('/desk/piles/1/agreement')).body).toContain('Still promised for')

    await workshop.conversation.act(key, { act: { act: 'drop', item: 2 }, idem: newId(), seen: 0 })
    await workshop.conversation.confirm(key, newId())
    const page = await body(key)
    expect(page).toContain('What you changed')
    expect(page).toContain('Left out: 2 · Choir shirt')
    expect(page).toContain('was agreed stands')
    const { body: atDesk } = await marta.get('/desk/piles/1')
    expect(atDesk).toContain('Left out: 2 · Choir shirt')

    await takePile(marta, 1)
    await sendOffer(marta, 1)
    expect((await sayYes(workshop, key, 4)).status).toBe(303)
    const offers = await store().db.selectFrom('offer').selectAll().orderBy('version').execute()
    expect(
      offers.map(({ accepted_at, ended_at }) => [accepted_at !== null, ended_at !== null]),
    ).toEqual([
      [true, true],
      [true, false],
    ])
  })

  test('a pile is withdrawn before it is posted; after that a person is asked', async () => {
    const { key, marta } = await offered()
    await sayYes(workshop, key, 2)
    const path = `/i/${key}/withdraw`
    await marta.get('/desk/piles/1/agreement')
    await marta.post('/desk/piles/1/milestones', { step: 'posted', act: 'reach' })
    expect(await body(key, '/withdraw')).toContain('a person has to see to it')
    const asked = { ...formOf(await body(key, '/withdraw'), path), reason: 'We <b>moved</b>' }
    await customer().postRaw(path, asked)
    expect((await marta.get('/desk/piles/1')).body).toContain('We &lt;b>moved&lt;/b>')
    expect((await customer().postRaw(`/i/${key}/change`, { idem: newId() })).status).toBe(409)

    await marta.get('/desk/piles/1/agreement')
    await marta.post('/desk/piles/1/milestones', { step: 'posted', act: 'unreach' })
    const form = formOf(await body(key, '/withdraw'), path)
    expect((await customer().postRaw(path, { ...form, reason: 'x'.repeat(2_001) })).status).toBe(
      422,
    )
    expect((await customer().postRaw(path, { ...form, reason: '' })).status).toBe(303)
    const page = await body(key)
    expect(page).toContain('Your pile is withdrawn')
    expect(page).toContain('Blue flannel')
    expect(page).not.toContain('Withdraw my pile')
    expect((await marta.get('/desk')).body).toContain('was withdrawn on')
    expect((await marta.get('/desk/calendar')).body).not.toContain('/desk/piles/1/agreement')
    const refused = await customer().postRaw(`/i/${key}/offer/2/accept`, {
      hash: 'x',
      name: 'Ana',
      agree: 'yes',
    })
    expect(refused.status).toBe(409)
  })

  test('every page of it speaks Spanish', async () => {
    const { key, marta } = await offered()
    await workshop.conversation.speak(key, 'es')
    expect(await body(key)).toContain('Aquí está su oferta')
    expect(await body(key, '/offer/2')).toContain('Nuestra oferta para su colcha')
    await sayYes(workshop, key, 2)
    expect(await body(key)).toContain('Por favor, pague el anticipo')
    for (const path of ['/change', '/withdraw']) expect(await body(key, path)).toContain('conjunto')
    for (const path of ['offer', 'agreement']) {
      expect((await marta.get(`/desk/piles/1/${path}?lang=es`)).body).toContain('Acuerdo')
    }
    expect((await marta.get('/desk/calendar?lang=es')).body).toContain('Calendario')
  })
})
