import { turn } from '../help/driver.ts'
import { plain } from '../help/pictures.ts'
import { fillIn, make, open, type Story } from './people.ts'

const pile = (number: number, rest = '') => `/desk/piles/${number}${rest}`

/** The customer says that two boxes are on their way; one comes soiled, the other is checked. */
export async function received(story: Story): Promise<void> {
  const { bench, customer, look, number } = story
  await customer.goto(story.pile)
  await customer.fill('#field-carrier', 'Parcel post')
  await customer.fill('#field-tracking', 'PW 2216 0042')
  await turn(customer, () => customer.click('#posting button'))
  await look(customer, 'customer-posted')
  await open(bench, story, '/desk/bench')
  await look(bench, 'bench')
  await open(bench, story, pile(number, '/custody'))
  await look(bench, 'custody-pile-announced')
  const soiled = { condition: 'soiled', place: 'porch', carrier: 'Parcel post', insured: '400' }
  await make(bench, 'door', soiled)
  await open(bench, story, pile(number, '/custody/P2'))
  await look(bench, 'subject-parcel-soiled')
  await open(bench, story, pile(number, '/custody/P1'))
  await make(bench, 'arrive', { condition: 'fine', place: 'receiving table' })
  await open(bench, story, pile(number, '/box-check?parcel=P1'))
  await look(bench, 'box-check-empty')
  const results = await bench.locator('[id^=result-][id$=-matched]').count()
  for (let n = 1; n <= results; n += 1) await bench.check(`#result-${n}-matched`)
  const fold = (id: string) => bench.locator('details', { has: bench.locator(id) }).last()
  const unfold = (id: string) =>
    fold(id).evaluate((one) => ((one as HTMLDetailsElement).open = true))
  await unfold('#condition-1-fine')
  await bench.check('#condition-1-fine')
  const buffer = await plain(700, 500, '#1d2a52').jpeg().toBuffer()
  await bench.setInputFiles('#photos-1', { name: 'shirt.jpg', mimeType: 'image/jpeg', buffer })
  await bench.check('#result-2-different')
  await unfold('[name=fact-2-wear]')
  await bench.selectOption('[name=fact-2-wear]', 'holes')
  await bench.check('#result-3-missing')
  await bench.fill('#extra-note', 'A child’s mitten, red wool')
  await bench.check('#emptied')
  await bench.fill('#place', 'shelf 1')
  await look(bench, 'box-check-filled')
  await turn(bench, () => bench.click('.box-form button[type=submit]'))
  await look(bench, 'box-changed')
  await customer.goto(story.pile)
  await look(customer, 'customer-arrived')
}

/** The bench takes the first garment apart and writes down what it finds, until it is sewn. */
export async function worked(story: Story): Promise<void> {
  const { owner, bench, look, number } = story
  const garment = pile(number, '/custody/1')
  const record = pile(number, '/garments/1/record')
  await open(bench, story, garment)
  await look(bench, 'subject-garment-held')
  await make(bench, 'tear-down', { place: 'bench 2', note: 'Buttons in the tin of the pile.' })
  await open(bench, story, record)
  await look(bench, 'record-empty')
  await make(bench, 'found', { note: 'A folded ticket', where: 'Breast pocket', place: 'drawer 3' })
  await bench
    .locator('form [name=interfacing]')
    .first()
    .evaluate((one) => ((one as HTMLInputElement).checked = true))
  await make(bench, 'test', {
    lot: 'L-204',
    sole: '130',
    seconds: '10',
    result: 'passed',
    peel: 'holds',
    look: 'fine',
  })
  await make(bench, 'wash', { how: 'By hand, cool', celsius: '20', bled: 'fast', shrunk: 'no' })
  await make(bench, 'incident', { note: 'The iron stood on the collar for a moment: a shine.' })
  await look(bench, 'record-stopped')
  await open(owner, story, record)
  await look(owner, 'record-staff')
  await make(owner, 'settle', { note: 'The collar is left out; the rest goes on.' })
  await open(bench, story, record)
  await make(bench, 'ask')
  await open(owner, story, record)
  await make(owner, 'release')
  await look(owner, 'record-released')
  await open(bench, story, garment)
  await make(bench, 'stabilise', { place: 'bench 2' })
  await make(bench, 'cut', { place: 'bench 2' })
  const send = await fillIn(bench, 'bag', { place: 'bin 4' })
  await look(bench, 'subject-garment-cut')
  await send()
  await look(bench, 'subject-leftover')
  await laidOut(story)
  await open(bench, story, garment)
  await make(bench, 'sew', { place: 'wall' })
}

/** What lies cut is shown to the customer, who says yes to it. */
async function laidOut({
  base,
  pile: theirs,
  bench,
  customer,
  look,
  number,
}: Story): Promise<void> {
  await bench.goto(`${base}${pile(number, '/laid-out')}`)
  const send = await fillIn(bench, 'laid', { note: 'The blue ones frame it.' })
  const buffer = await plain(900, 1200, '#8a3b2f').jpeg().toBuffer()
  await bench.setInputFiles('[name=photo]', { name: 'quilt.jpg', mimeType: 'image/jpeg', buffer })
  await look(bench, 'laid-out')
  await send()
  await customer.goto(`${theirs}/laid-out`)
  await look(customer, 'customer-laid-out')
  await turn(customer, () => customer.click('[data-act=laid-out-yes]'))
  await look(customer, 'customer-laid-out-yes')
}

/** From the sign-off until everything of the pile is home. */
export async function broughtHome(story: Story): Promise<void> {
  const { owner, bench, customer, look, number } = story
  await customer.goto(story.pile)
  await look(customer, 'customer-sewn')
  await open(owner, story, pile(number, '/custody'))
  await owner.check('#leftovers-return')
  await look(owner, 'sign-off')
  const sign = owner.locator('form:has(#leftovers-return) button[type=submit]')
  await turn(owner, () => sign.click())
  await look(owner, 'signed-off')
  await open(owner, story, pile(number, '/custody/1-L1'))
  await look(owner, 'subject-leftover-signed')
  await make(owner, 'return', { note: 'With the quilt, in a paper bag.' })
  await look(owner, 'subject-leftover-home')
  await open(bench, story, pile(number, '/custody/F1'))
  await make(bench, 'return', { note: 'In an envelope with the quilt.' })
  await open(bench, story, pile(number, '/custody/1'))
  await make(bench, 'go-home')
  await look(bench, 'subject-garment-home')
  await open(owner, story, pile(number, '/custody'))
  await make(owner, 'pack', { carrier: 'Parcel post', tracking: 'PW 2216 0043', place: 'door' })
  await look(owner, 'custody-pile-packed')
  await customer.goto(story.pile)
  await look(customer, 'customer-home')
  await open(bench, story, '/desk/count')
  await bench.locator('main form [name=seen]').first().check()
  await look(bench, 'count')
  await turn(bench, () => bench.click('main form button[type=submit]'))
  await look(bench, 'counted')
}
