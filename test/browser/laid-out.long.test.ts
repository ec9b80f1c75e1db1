import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { openCustody } from '../../src/desk/ledger.ts'
import type { Role } from '../../src/store/schema.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { atTheDoor, releaseCut, step } from '../help/custody.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { plain } from '../help/pictures.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { confirmPile, said } from '../help/workshop.ts'

const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
const password = 'needle and thimble'

let opened: TestStore
let app: TestApp
let browser: Browser
let theirs: string

beforeAll(async () => {
  opened = await openSqlite()
  app = await openApp(opened.store, { clock: Date.now, assets })
  browser = await openBrowser()
  const shirt = { kind: said('button-shirt'), size: said('L'), wear: said('sound') }
  const key = await confirmPile(app.conversation, [
    { ...shirt, name: said('Dad’s blue flannel') },
    shirt,
  ])
  theirs = `${app.url}/i/${key}`
  const { id: who } = await addAccount(app.store, Date.now, {
    email: 'odile@thimble.example',
    name: 'Odile',
    role: 'owner',
    password,
  })
  const { id } = await app.store.db.selectFrom('pile').select('id').executeTakeFirstOrThrow()
  await decidePile(app.store, Date.now, id, { verdict: 'accept', reason: '', who, seen: 0 })
  await openCustody({ store: app.store, clock: Date.now }, id, who)
  await atTheDoor(app.store, id, who)
  for (const subject of ['1', '2']) {
    await step(app.store, id, { subject, move: 'receive', via: 'P1', who })
    await step(app.store, id, { subject, move: 'hold', who })
    await step(app.store, id, { subject, move: 'tear-down', who })
    await releaseCut(app.store, id, Number(subject))
    await step(app.store, id, { subject, move: 'cut', who })
  }
})
afterAll(async () => {
  await browser?.close()
  await app?.close()
  await opened?.end()
})

interface Eyes {
  readonly width: number
  readonly dark?: boolean
  readonly script?: boolean
}

const open = async ({ width, dark = false, script = true }: Eyes): Promise<Page> => {
  const context = await browser.newContext({
    viewport: { width, height: 844 },
    colorScheme: dark ? 'dark' : 'light',
    javaScriptEnabled: script,
  })
  return context.newPage()
}

async function come(name: string, role: Role, eyes: Eyes): Promise<Page> {
  const email = `${name.toLowerCase()}@lantern-street.example`
  await addAccount(app.store, Date.now, { email, name, role, password })
  const page = await open(eyes)
  await page.goto(`${app.url}/desk`)
  await page.fill('#field-email', email)
  await page.fill('#field-password', password)
  await page.click('main form button[type=submit]')
  await page.waitForURL(/\/desk(\/bench)?$/)
  return page
}

/** Fit to be shown to anybody: whole, large enough to press, and axe finds nothing. */
async function expectFit(page: Page, name: string): Promise<void> {
  await unfold(page)
  if (process.env.SHOTS) {
    await page.screenshot({ path: `${process.env.SHOTS}/${name}.png`, fullPage: true })
  }
  expect(await complaints(page), name).toEqual([])
  expect(await sideways(page), name).toBeLessThanOrEqual(0)
  expect(await smallTargets(page), name).toEqual([])
}

const shot = async (colour: string, n: number) => ({
  name: `quilt-${n}.jpg`,
  mimeType: 'image/jpeg',
  buffer: await plain(900, 1200, colour).jpeg().toBuffer(),
})

async function lay(page: Page, colours: readonly string[], note: string): Promise<void> {
  await page.goto(`${app.url}/desk/piles/1/laid-out`)
  const form = page.locator('details.move', { has: page.locator('[name=photo]') })
  await form.locator('summary').click()
  await form.locator('[name=photo]').setInputFiles(await Promise.all(colours.map(shot)))
  await form.locator('textarea').fill(note)
  await form.locator('button[type=submit]').click()
  await page.waitForLoadState('load')
}

test('bench and customer come to a yes over the laid-out quilt, without a script at the customer', async () => {
  const bench = await come('Bo', 'bench', { width: 390 })
  const desk = await come('Marta', 'staff', { width: 1280 })
  const customer = await open({ width: 390, script: false })
  const garment = `${app.url}/desk/piles/1/custody/1`

  await bench.goto(garment)
  expect(await bench.textContent('main')).toContain('has not said yes to the quilt')
  await lay(bench, ['#1d2a52', '#8a3b2f'], 'The blue ones frame it.')
  expect(await bench.textContent('[role=status]')).toContain('The customer is asked since')
  expect(await bench.locator('.history img').count()).toBe(2)
  await expectFit(bench, 'bench-asked')

  await customer.goto(theirs)
  await customer.click('text=Look at it')
  expect(await customer.locator('.laid-out-photos img').count()).toBe(2)
  const whole = await customer
    .locator('.laid-out-photos img')
    .first()
    .evaluate((img: HTMLImageElement) => img.naturalWidth)
  expect(whole).toBeGreaterThan(600)
  await customer.fill('#field-text', 'Could the red one lie higher?')
  await customer.click('[data-act=laid-out-change]')
  expect(await customer.textContent('main')).toContain('We lay it out once more')

  await desk.goto(`${app.url}/desk`)
  expect(await desk.textContent('main')).toContain('Laid-out quilt, change wished')
  await desk.goto(`${app.url}/desk/piles/1/laid-out`)
  expect(await desk.textContent('main')).toContain('Could the red one lie higher?')
  await expectFit(desk, 'desk-change')
  await lay(bench, ['#8a3b2f'], '')

  await customer.goto(`${theirs}/laid-out`)
  await customer.click('[data-act=laid-out-yes]')
  expect(await customer.textContent('[role=status]')).toContain('You said yes on')
  await bench.goto(garment)
  const sewn = bench.locator('details.move', { has: bench.locator('summary:text-is("Sewn")') })
  await sewn.locator('summary').click()
  await sewn.locator('button[type=submit]').click()
  await bench.waitForLoadState('load')
  expect(await bench.textContent('.now-at')).toContain('sewn')
  await customer.goto(`${theirs}/laid-out`)
  expect(await customer.textContent('[role=status]')).toContain('We have begun to sew')
  expect(await customer.locator('[data-act]').count()).toBe(0)
})

test('the customer’s page and the desk’s are fit in both languages, either width, light and dark', async () => {
  for (const [width, lang, dark] of [
    [390, 'es', true],
    [1280, 'en', false],
  ] as const) {
    const staff = await come(`Ida${width}`, 'staff', { width, dark })
    await lay(staff, ['#1d2a52', '#e7e2d3', '#8a3b2f'], 'Mit Liebe — 12 piezas, mírela con calma.')
    await staff.goto(`${app.url}/desk/piles/1/laid-out?lang=${lang}`)
    await expectFit(staff, `desk-${width}`)
    await staff.goto(`${app.url}/desk/bench?lang=${lang}`)
    await expectFit(staff, `bench-home-${width}`)
    const customer = await open({ width, dark })
    await customer.goto(`${theirs}/language/${lang}`)
    await expectFit(customer, `status-${width}`)
    await customer.goto(`${theirs}/laid-out`)
    await expectFit(customer, `customer-asked-${width}`)
    // Empty words, then too few: the page says what is missing where it is missing.
    await customer.click('[data-act=laid-out-change]')
    await customer.waitForSelector('#error-field-text')
    await expectFit(customer, `customer-refused-${width}`)
    await customer.fill('#field-text', 'Subir la roja un poco.')
    await customer.click('[data-act=laid-out-change]')
    await customer.waitForSelector('[data-laid-out=change]')
    await expectFit(customer, `customer-change-${width}`)
    await customer.click('[data-act=laid-out-yes]')
    await customer.waitForSelector('[data-laid-out=yes]')
    await expectFit(customer, `customer-yes-${width}`)
  }
})
