import type { Page } from 'playwright-core'
import { turn } from '../help/driver.ts'
import { open, type Story } from './people.ts'

const desk = (number: number, rest = '') => `/desk/piles/${number}${rest}`

/** Staff look at what came, set a fact right, ask, and are answered. */
export async function reviewed(story: Story): Promise<void> {
  const { owner, customer, look, number } = story
  await customer.goto(story.pile)
  await look(customer, 'customer-waiting')
  await open(owner, story, '/desk')
  await look(owner, 'queue')
  await open(owner, story, desk(number))
  await look(owner, 'pile')
  await open(owner, story, desk(number, '/garments/1/facts'))
  await owner.selectOption('#set-wear', 'holes')
  await turn(owner, () => owner.click('[name=act][value=try]'))
  await owner.fill('#set-reason', 'A hole under the left arm, in the second photo.')
  await look(owner, 'facts')
  await turn(owner, () => owner.click('[name=act][value=save]'))
  await open(owner, story, desk(number, '/messages'))
  await owner.selectOption('[name=item]', '2')
  await owner.fill(
    'section:has(#write-title) textarea',
    'Could you press a coin against the print? Does it feel like a film?',
  )
  await turn(owner, () => owner.click('section:has(#write-title) button[type=submit]'))
  await look(owner, 'messages-desk')
  await customer.goto(story.pile)
  await look(customer, 'customer-asked')
  await customer.goto(`${story.pile}/messages`)
  await customer
    .locator('.talk-asks textarea')
    .first()
    .fill('It feels soft, more like ink than like a film.')
  await look(customer, 'messages-customer')
  await turn(customer, () => customer.locator('.talk-asks button[type=submit]').first().click())
  await look(customer, 'messages-customer-answered')
  await open(owner, story, '/desk/messages')
  await look(owner, 'messages-written')
}

/** Numbers of the garments that wait for a person's decision. */
const waiting = (page: Page): Promise<string[]> =>
  page
    .locator('section[aria-labelledby="looking"] form[id^="decide-"]')
    .evaluateAll((forms) =>
      forms.map((form) => /garments\/(\d+)\//.exec(form.getAttribute('action')!)![1]!),
    )

/** An offer, the customer's yes, and the deposit. */
export async function agreed(story: Story): Promise<void> {
  const { owner, customer, look, number } = story
  await open(owner, story, desk(number))
  for (const n of await waiting(owner)) {
    const form = owner.locator(`form[action$="/garments/${n}/decision"]`)
    await form.locator('[name=reason]').fill('Its coating would melt under any iron.')
    await turn(owner, () => form.locator('[value=decline]').click())
  }
  await owner.fill('#decide-reason', 'We know these makes; the jumper needs a felted backing.')
  await turn(owner, () => owner.click('#decide [value="accept"]'))
  await look(owner, 'pile-accepted')
  await open(owner, story, desk(number, '/offer'))
  await owner.fill('#offer-label-0', 'Hand-sewn label')
  await owner.fill('#offer-amount-0', '12.50')
  await owner.fill('#offer-reason-0', 'as you asked')
  await owner.fill('#offer-note', 'We would sew the label on the back, at the lower right corner.')
  await turn(owner, () => owner.click('[value="preview"]'))
  await look(owner, 'offer-desk')
  await turn(owner, () => owner.click('[value="send"]'))
  await customer.goto(story.pile)
  await look(customer, 'customer-offered')
  await turn(customer, () => customer.click('.status-next a'))
  await look(customer, 'offer-customer')
  await turn(customer, () => customer.click('[data-act="accept-offer"]'))
  await look(customer, 'offer-refused')
  await customer.fill('#field-name', 'Marta Quillfeather')
  await customer.check('#field-agree')
  await turn(customer, () => customer.click('[data-act="accept-offer"]'))
  await look(customer, 'customer-agreed')
  await open(owner, story, desk(number, '/agreement'))
  await owner.fill('#take-amount', '100')
  await owner.fill('#take-how', 'Bank transfer')
  await turn(owner, () => owner.click('#take button'))
  await look(owner, 'agreement')
  await open(owner, story, '/desk/calendar')
  await look(owner, 'calendar')
  await customer.goto(`${story.pile}/receipts/1`)
  await look(customer, 'receipt')
  for (const leave of ['change', 'withdraw']) {
    await customer.goto(`${story.pile}/${leave}`)
    await look(customer, `leave-${leave}`)
  }
}
