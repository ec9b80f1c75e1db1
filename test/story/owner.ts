import { setTimeout as pause } from 'node:timers/promises'
import { liveFiles } from '../help/drafts.ts'
import { turn } from '../help/driver.ts'
import { open, type Story } from './people.ts'

const ratesFile = 'rates/2026-01-01.yaml'

/** What the owner alone sees: files, a draft with its impact, numbers. */
export async function owned(story: Story): Promise<void> {
  const { owner, look } = story
  for (const [path, name] of [
    ['/desk/files', 'files'],
    [`/desk/files/view?name=${ratesFile}`, 'file'],
  ] as const) {
    await open(owner, story, path)
    await look(owner, name)
  }
  await open(owner, story, `/desk/files/try?name=${ratesFile}`)
  await look(owner, 'file-try')
  const text = liveFiles().get(ratesFile)!.toString('utf8')
  await owner.setInputFiles('#field-upload', {
    name: 'rates.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(text.replace('  button-shirt: 600\n', '  button-shirt: 700\n')),
  })
  await turn(owner, () => owner.click('main form .button.main'))
  await look(owner, 'draft-comparing')
  // The comparing goes on in a thread of the server's; its page says when it is done.
  for (let tries = 0; tries < 120 && !(await owner.$('#counts-title')); tries += 1) {
    await pause(1000)
    await owner.reload()
  }
  await look(owner, 'draft-impact')
  await open(owner, story, '/desk/numbers')
  await look(owner, 'numbers')
}

/** What everybody of the workshop looks up, and papers as pages. */
export async function lookedUp(story: Story): Promise<void> {
  const { owner, bench, customer, look, number } = story
  for (const [path, name] of [
    ['/desk/custody', 'where-is-it'],
    ['/desk/custody?q=shelf', 'where-is-it-found'],
    ['/desk/custody?q=nowhere', 'where-is-it-nothing'],
    ['/desk/custody/map', 'custody-map'],
    ['/desk/mails', 'mails'],
    ['/desk?list=nobody', 'queue-nobody'],
    ['/desk?list=held', 'queue-empty'],
    [`/desk/piles/${number}/what-if?try=without:1`, 'what-if'],
  ] as const) {
    await open(owner, story, path)
    await look(owner, name)
  }
  for (const paper of ['tags', 'tickets', 'quilting', 'care', 'keepsake']) {
    await open(bench, story, `/desk/piles/${number}/papers/${paper}`)
    await look(bench, `paper-${paper}`)
  }
  await open(bench, story, `/desk/piles/${number}/garments/1/bench`)
  await look(bench, 'paper-bench')
  await open(bench, story, `/desk/piles/${number}/garments/1/teardown`)
  await look(bench, 'teardown')
  await customer.goto(`${story.pile}/paper`)
  await look(customer, 'paper-packing')
  await customer.goto(`${story.pile}/papers/keepsake`)
  await look(customer, 'paper-keepsake-customer')
}
