import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { ownerLink } from '../../src/desk/once-links.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { bundle } from '../../src/web/assets/bundle.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openBrowser } from '../help/browser.ts'
import { welcome } from '../help/desk-door.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const place = mkdtempSync(join(tmpdir(), 'agree-'))
const clock = () => Date.UTC(2026, 5, 1, 9)

let store: Store
let workshop: Workshop
let browser: Browser
let desk: Page
let phone: Page
let url: string
let key: string

beforeAll(async () => {
  const assets = pathToFileURL(`${place}/assets/`)
  await bundle(assets)
  store = await openStore({ dataDir: join(place, 'data') })
  await migrate(store)
  workshop = await openWorkshop(store, clock, { assets: openAssets(assets) })
  const token = (await ownerLink(store, clock))!
  key = await confirmPile(workshop.conversation, [
    { name: said("Dad's blue flannel"), kind: said('button-shirt'), size: said('L') },
    { name: said('Choir shirt'), kind: said('tshirt'), size: said('L') },
  ])
  url = await workshop.app.listen({ port: 0, host: '127.0.0.1' })
  browser = await openBrowser()
  desk = await browser.newPage({
    bypassCSP: true,
    locale: 'en-US',
    viewport: { width: 1280, height: 900 },
  })
  // Another person, with cookies of their own, on a phone.
  phone = await browser.newPage({
    bypassCSP: true,
    locale: 'en-US',
    viewport: { width: 390, height: 844 },
  })
  await welcome(desk, `${url}/desk/welcome/${token}`)
})
afterAll(async () => {
  await browser?.close()
  await workshop?.close()
  await store?.close()
  rmSync(place, { recursive: true, force: true })
})

/** Looks at the page that is open as different readers do; leaves a picture of it where one is wanted. */
async function look(page: Page, name: string): Promise<void> {
  await unfold(page)
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 844 })
    expect([name, width, await sideways(page)]).toEqual([name, width, 0])
    const folder = process.env.AGREE_PICTURES
    if (folder) await page.screenshot({ path: `${folder}/${name}-${width}.png`, fullPage: true })
  }
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme })
    expect([name, await complaints(page)]).toEqual([name, []])
  }
  expect([name, await smallTargets(page)]).toEqual([name, []])
}

test('staff offer, the customer says yes on a phone, and staff see it', async () => {
  await desk.goto(`${url}/desk/piles/1`)
  await desk.click('#decide [value="accept"]')
  await desk.goto(`${url}/desk/piles/1/offer`)
  await desk.fill('#offer-label-0', 'Hand-sewn label')
  await desk.fill('#offer-amount-0', '12.50')
  await desk.fill('#offer-reason-0', 'as you asked')
  await desk.fill('#offer-note', 'We would sew the label on the back, at the lower right corner.')
  await desk.click('[value="preview"]')
  await look(desk, 'desk-offer')
  await desk.click('[value="send"]')
  await desk.waitForURL(/\/agreement$/)

  await phone.goto(`${url}/i/${key}`)
  await look(phone, 'status-offered')
  await phone.setViewportSize({ width: 390, height: 844 })
  await phone.click('.status-next a')
  await phone.waitForURL(/\/offer\/2$/)
  await phone.click('[data-act="accept-offer"]')
  await look(phone, 'offer-refused')
  await phone.fill('#field-name', 'Ana Ruiz')
  await phone.check('#field-agree')
  await phone.click('[data-act="accept-offer"]')
  await phone.waitForURL(`${url}/i/${key}`)
  await look(phone, 'status-agreed')

  await desk.reload()
  expect(await desk.textContent('.agree')).toContain('accepted by Ana Ruiz')
  await desk.fill('#take-amount', '100')
  await desk.fill('#take-how', 'Bank transfer')
  await desk.click('#take button')
  await look(desk, 'desk-agreement')
  await desk.goto(`${url}/desk/calendar`)
  await look(desk, 'desk-calendar')
  await phone.goto(`${url}/i/${key}/receipts/1`)
  await look(phone, 'receipt')
})

test('the ways to take a pile back are fit for every reader, in Spanish too', async () => {
  await phone.goto(`${url}/i/${key}/language/es`)
  for (const path of ['', '/offer/2', '/change', '/withdraw']) {
    await phone.goto(`${url}/i/${key}${path}`)
    await look(phone, `es${path.replaceAll('/', '-')}`)
  }
  await desk.goto(`${url}/desk/piles/1/agreement?lang=es`)
  await look(desk, 'es-desk-agreement')
})
