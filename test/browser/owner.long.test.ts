import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { bundle } from '../../src/web/assets/bundle.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openBrowser } from '../help/browser.ts'
import { owner, signIn } from '../help/desk-door.ts'
import { liveFiles } from '../help/drafts.ts'
import { turn } from '../help/driver.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const place = mkdtempSync(join(tmpdir(), 'owner-'))
const shots = new URL('../.out/owner/', import.meta.url).pathname
const clock = () => Date.UTC(2026, 5, 1, 9)
const ratesFile = 'rates/2026-01-01.yaml'

let store: Store
let workshop: Workshop
let browser: Browser
let page: Page
let url: string

beforeAll(async () => {
  mkdirSync(shots, { recursive: true })
  const assets = pathToFileURL(`${place}/assets/`)
  await bundle(assets)
  store = await openStore({ dataDir: join(place, 'data') })
  await migrate(store)
  workshop = await openWorkshop(store, clock, { assets: openAssets(assets) })
  await addAccount(store, clock, { ...owner, role: 'owner' })
  const shirt = { kind: said('button-shirt'), size: said('XL'), name: said("Dad's blue flannel") }
  await confirmPile(workshop.conversation, [shirt, { ...shirt, wear: said('shattered') }], {
    layout_wish: said('plain-squares'),
  })
  url = await workshop.app.listen({ port: 0, host: '127.0.0.1' })
  browser = await openBrowser()
  page = await browser.newPage({ bypassCSP: true, locale: 'en-US' })
  await signIn(page, url)
})
afterAll(async () => {
  await browser?.close()
  await workshop?.close()
  await store?.close()
  rmSync(place, { recursive: true, force: true })
})

/** Looks at the page that is open as different readers do, and keeps a picture of it. */
async function look(name: string): Promise<void> {
  await unfold(page)
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 844 })
    expect([name, width, await sideways(page)]).toEqual([name, width, 0])
    await page.screenshot({ path: join(shots, `${name}-${width}.png`), fullPage: true })
  }
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme })
    expect(await complaints(page)).toEqual([])
  }
  expect(await smallTargets(page)).toEqual([])
}

test('a bench person who is added sets a password, and sees the bench and nothing else', async () => {
  await page.goto(`${url}/desk/people`)
  await page.fill('#field-name', 'Bo Anders')
  await page.fill('#field-email', 'bo@lantern-street.example')
  await page.selectOption('#field-role', 'bench')
  await turn(page, () => page.click('main form .button.main'))
  const link = await page.inputValue('#handed')
  expect(link).toContain(`${url}/desk/welcome/`)
  await look('people')

  const theirs = await browser.newContext({ locale: 'en-US' })
  const bo = await theirs.newPage()
  await bo.goto(link)
  expect(await bo.inputValue('#field-email')).toBe('bo@lantern-street.example')
  await bo.fill('#field-password', 'bobbins and pins')
  await turn(bo, () => bo.click('main form button[type=submit]'))
  expect(new URL(bo.url()).pathname).toBe('/desk/bench')
  const places = await bo
    .locator('nav.places a')
    .evaluateAll((all) =>
      all.map((one) => new URL((one as unknown as { href: string }).href).pathname),
    )
  for (const closed of ['/desk', '/desk/people', '/desk/files', '/desk/numbers']) {
    expect(places).not.toContain(closed)
  }
  expect((await bo.goto(`${url}/desk/numbers`))!.status()).toBe(403)
  await theirs.close()
})

test('a dearer price, sent as a file, shows what it would change', async () => {
  await page.goto(`${url}/desk/files`)
  await look('files')
  await page.goto(`${url}/desk/files/view?name=${ratesFile}`)
  await look('file')
  await page.goto(`${url}/desk/files/try?name=${ratesFile}`)
  await look('try')
  const text = liveFiles().get(ratesFile)!.toString('utf8')
  await page.setInputFiles('#field-upload', {
    name: 'rates.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(text.replace('  button-shirt: 600\n', '  button-shirt: 700\n')),
  })
  await turn(page, () => page.click('main form .button.main'))
  for (let tries = 0; tries < 60; tries += 1) {
    if (!(await page.textContent('main'))!.includes('It is being compared')) break
    await page.reload()
  }
  const told = (await page.textContent('main'))!
  expect(told).toContain('+$1.00')
  expect(told).toContain('Piles with another price')
  await look('draft')
  await page.goto(`${page.url()}?lang=es`)
  await look('draft-es')
}, 240_000)

test('people, files and numbers are fit for every reader in Spanish too', async () => {
  for (const name of ['people', 'files', 'numbers']) {
    await page.goto(`${url}/desk/${name}?lang=es`)
    await look(`${name}-es`)
  }
  await page.goto(`${url}/desk/numbers?lang=en`)
  await look('numbers')
})
