import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { simpleParser } from 'mailparser'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { openSender, type Sender } from '../../src/desk/mail/sender.ts'
import { ownerLink } from '../../src/desk/once-links.ts'
import { openMailFolder } from '../../src/mail/post.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { bundle } from '../../src/web/assets/bundle.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openBrowser } from '../help/browser.ts'
import { owner, welcome } from '../help/desk-door.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { plain } from '../help/pictures.ts'
import { toldLane } from '../help/told-lane.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const place = mkdtempSync(join(tmpdir(), 'messages-'))
let time = Date.UTC(2026, 5, 1, 9)
const clock = () => time
const mails = join(place, 'mail')
const lane = toldLane()

let store: Store
let workshop: Workshop
let sender: Sender
let browser: Browser
let marta: Page
let ana: Page
let url: string

beforeAll(async () => {
  const assets = pathToFileURL(`${place}/assets/`)
  await bundle(assets)
  store = await openStore({ dataDir: join(place, 'data') })
  await migrate(store)
  workshop = await openWorkshop(store, clock, { assets: openAssets(assets), lane })
  await confirmPile(workshop.conversation, [
    { name: said("Dad's blue flannel"), kind: said('button-shirt') },
    {
      name: said('Choir sweatshirt'),
      kind: said('sweatshirt'),
      details: { asked: 'May it stay whole?' },
    },
  ])
  url = await workshop.app.listen({ port: 0, host: '127.0.0.1' })
  sender = openSender(
    {
      store,
      knowledge: workshop.knowledge,
      clock,
      post: openMailFolder(mails),
      log: openLog('silent'),
      url,
    },
    () => Promise.resolve(),
  )
  browser = await openBrowser()
  marta = await browser.newPage({ bypassCSP: true, locale: 'en-US', javaScriptEnabled: true })
  ana = await browser.newPage({ bypassCSP: true, locale: 'en-US' })
  await welcome(marta, `${url}/desk/welcome/${await ownerLink(store, clock)}`)
})
afterAll(async () => {
  await browser?.close()
  await sender?.close()
  await workshop?.close()
  await lane.close()
  await store?.close()
  rmSync(place, { recursive: true, force: true })
})

/** Looks at the page that is open as different readers do; leaves pictures where they are asked for. */
async function look(page: Page, name: string): Promise<void> {
  await unfold(page)
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 844 })
    expect([name, width, await sideways(page)]).toEqual([name, width, 0])
    const folder = process.env.PICTURES_INTO
    if (folder)
      await page.screenshot({ path: join(folder, `${name}-${width}.png`), fullPage: true })
  }
  expect(await complaints(page)).toEqual([])
  expect(await smallTargets(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await complaints(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'light' })
}

test('staff ask, the customer answers by the link out of the mail, and staff see it', async () => {
  await marta.goto(`${url}/desk/piles/1/messages`)
  await marta.selectOption('#about-write', '1')
  await marta.fill('#field-write', 'Is the collar torn, or only worn?')
  await marta.click('main section:last-of-type button.main')
  await marta.waitForURL(/#thread-1$/)
  await look(marta, 'desk-pile')

  // It waited for others that might go with it.
  time += workshop.knowledge.shop.question_minutes * 60 * 1000
  await sender.round()
  const [file] = readdirSync(mails)
  const mail = await simpleParser(readFileSync(join(mails, file!)))
  expect(mail.subject).toBe("Lantern Street Quilts: a question about Dad's blue flannel")
  await ana.goto(new RegExp(`${url}/i/[\\w-]+/messages`).exec(mail.text!)![0])
  await look(ana, 'customer-messages')
  await ana.fill('#field-answer-1', 'Only worn. 李 would know more.')
  await ana.setInputFiles('#photo-answer-1', {
    name: 'collar.jpg',
    mimeType: 'image/jpeg',
    buffer: await plain(700, 500, '#1d2a52').jpeg().toBuffer(),
  })
  await ana.click('#thread-1 button.main')
  await ana.waitForURL(/#messages$/)
  await look(ana, 'customer-finished')

  await marta.goto(`${url}/desk/piles/1/messages`)
  const photo = marta.locator('#thread-1 .talk-photos img')
  expect(await photo.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(100)
  await look(marta, 'desk-answer-with-photo')
  await marta.goto(`${url}/desk/messages`)
  await look(marta, 'desk-written')
  expect(await marta.textContent('main')).toContain('Only worn. 李 would know more.')
  await marta.goto(`${url}/desk`)
  expect(await marta.textContent('.queue')).toContain('question')
  await look(marta, 'desk-queue')
  await marta.goto(`${url}/desk/mails`)
  await look(marta, 'desk-mails')
  expect(await marta.textContent('.visitor')).toBe(owner.name)
})

test('the same pages are fit for every reader in Spanish', async () => {
  const row = await store.db.selectFrom('mail').selectAll().executeTakeFirstOrThrow()
  const key = /\/i\/([\w-]+)/.exec(ana.url())![1]!
  await workshop.conversation.speak(key, 'es')
  await ana.goto(`${url}/i/${key}/messages`)
  await look(ana, 'customer-messages-es')
  await ana.goto(`${url}/stop/${row.id}`)
  await look(ana, 'stop-es')
  for (const [name, path] of [
    ['pile', '/desk/piles/1?lang=es'],
    ['pile-messages', '/desk/piles/1/messages?lang=es'],
    ['mails', '/desk/mails?lang=es'],
  ] as const) {
    await marta.goto(url + path)
    await look(marta, `desk-${name}-es`)
  }
})
