import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { openCustody } from '../../src/desk/ledger.ts'
import type { Role } from '../../src/store/schema.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { agreeLaidOut } from '../help/custody.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { plain } from '../help/pictures.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { lookOf, toldLane } from '../help/told-lane.ts'
import { confirmPile, said } from '../help/workshop.ts'

const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
const password = 'needle and thimble'

let opened: TestStore
let app: TestApp
let browser: Browser

beforeAll(async () => {
  opened = await openSqlite()
  const lane = toldLane()
  lane.tells = lookOf()
  app = await openApp(opened.store, { clock: Date.now, assets, lane })
  browser = await openBrowser()
  const shirt = { kind: said('button-shirt'), size: said('L'), wear: said('sound') }
  await confirmPile(app.conversation, [{ ...shirt, name: said('Dad’s blue flannel') }, shirt])
  const at = { store: app.store, clock: Date.now }
  const { id: who } = await addAccount(app.store, Date.now, {
    email: 'odile@thimble.example',
    name: 'Odile',
    role: 'owner',
    password,
  })
  const { id } = await app.store.db.selectFrom('pile').select('id').executeTakeFirstOrThrow()
  await decidePile(app.store, Date.now, id, { verdict: 'accept', reason: '', who, seen: 0 })
  await openCustody(at, id, who)
})
afterAll(async () => {
  await browser?.close()
  await app?.close()
  await opened?.end()
})

async function come(name: string, role: Role, width: number): Promise<Page> {
  const email = `${name.toLowerCase()}@lantern-street.example`
  await addAccount(app.store, Date.now, { email, name, role, password })
  const context = await browser.newContext({ viewport: { width, height: 844 } })
  const page = await context.newPage()
  await page.goto(`${app.url}/desk`)
  await page.fill('#field-email', email)
  await page.fill('#field-password', password)
  await page.click('main form button[type=submit]')
  await page.waitForURL(/\/desk(\/bench)?$/)
  return page
}

/** Fit to be shown to anybody: whole, large enough to press, and axe finds nothing. */
async function expectFit(page: Page): Promise<void> {
  await unfold(page)
  expect(await complaints(page)).toEqual([])
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  expect(await smallTargets(page)).toEqual([])
}

/** Opens a move on a thing's page, fills in its form and sends it. */
async function make(page: Page, label: string, place = 'shelf 1'): Promise<void> {
  const move = page.locator('details.move', { has: page.locator(`summary:text-is("${label}")`) })
  await move.locator('summary').click()
  const where = move.locator('[name=place]')
  if ((await where.count()) > 0) await where.fill(place)
  await move.locator('textarea').fill('as it should be')
  await move.locator('button[type=submit]').click()
  await page.waitForLoadState('load')
}

test('a receiver with a phone and staff at a desk carry a garment from the box to its return', async () => {
  const phone = await come('Bo', 'bench', 390)
  const desk = await come('Marta', 'staff', 1280)

  await phone.goto(`${app.url}/desk/piles/1/custody`)
  await expectFit(phone)
  await phone.fill('#door-place', 'receiving table')
  await phone.check('#door-fine')
  await phone.click('details:has(#door-place) button[type=submit]')
  await phone.click('text=Box check out of')
  await expectFit(phone)
  await phone.check('#result-1-matched')
  await phone.check('#condition-1-fine')
  const bytes = await plain(700, 500, '#1d2a52').jpeg().toBuffer()
  await phone.setInputFiles('#photos-1', {
    name: 'shirt.jpg',
    mimeType: 'image/jpeg',
    buffer: bytes,
  })
  await phone.check('#result-2-different')
  await phone.selectOption('[name=fact-2-wear]', 'holes')
  await phone.check('#emptied')
  await phone.fill('#place', 'shelf 1')
  await phone.click('button:text-is("Save the box check")')
  await phone.waitForURL(/changed$/)
  expect(await phone.textContent('main')).toContain('Wear: ')
  await expectFit(phone)
  const photo = await app.store.db.selectFrom('photo').select(['item', 'kept']).execute()
  expect(photo).toEqual([{ item: 1, kept: 1 }])

  // Both look at the same garment; the desk moves it first, the phone is told.
  const garment = `${app.url}/desk/piles/1/custody/1`
  await phone.goto(garment)
  await desk.goto(garment)
  await expectFit(desk)
  await desk.goto(garment)
  await make(desk, 'Taken apart')
  await make(phone, 'Keep apart')
  expect(await phone.textContent('[role=alert]')).toContain('Somebody moved this')
  await expectFit(phone)

  // The box check's photo shows the garment; the cut is asked for at the bench and released at the desk.
  const record = `${app.url}/desk/piles/1/garments/1/record`
  await phone.goto(record)
  await expectFit(phone)
  await phone.goto(record)
  await make(phone, 'Ask for the release')
  await desk.goto(record)
  await make(desk, 'Release it for the cut')
  await expectFit(desk)

  await phone.goto(garment)
  await make(phone, 'Cut')
  await make(phone, 'Bag what is left over', 'bin 4')
  expect(await phone.textContent('h1')).toContain('-1-L1')
  // The customer has to see what lies cut before it is sewn: laid-out.long.test.ts walks that.
  const { id: pileId } = await app.store.db
    .selectFrom('pile')
    .select('id')
    .executeTakeFirstOrThrow()
  await agreeLaidOut(app.store, pileId)
  await phone.goto(garment)
  await make(phone, 'Sewn')
  await desk.goto(`${app.url}/desk/piles/1/custody`)
  await desk.check('#leftovers-return')
  await desk.click('button:text-is("Sign the quilt off")')
  await desk.waitForSelector('text=Signed off by Marta')
  await expectFit(desk)
  await desk.goto(`${garment}-L1`)
  await make(desk, 'Send back')
  expect(await desk.textContent('.now-at')).toContain('sent back')
  await phone.goto(garment)
  await make(phone, 'Goes home with the quilt')
  expect(await phone.textContent('.now-at')).toContain('gone home with the quilt')
})

test('the pages of both languages are fit, in either width, and in the dark', async () => {
  for (const [width, lang, colorScheme] of [
    [390, 'es', 'dark'],
    [1280, 'en', 'light'],
  ] as const) {
    const page = await come(`Ida${width}`, 'staff', width)
    await page.emulateMedia({ colorScheme })
    for (const path of [
      '/desk/custody?q=shelf',
      '/desk/custody/map',
      '/desk/count',
      '/desk/piles/1/custody/2',
      '/desk/piles/1/box-check',
    ]) {
      await page.goto(`${app.url}${path}${path.includes('?') ? '&' : '?'}lang=${lang}`)
      await expectFit(page)
      if (process.env.SHOTS)
        await page.screenshot({
          path: `${process.env.SHOTS}/${width}-${path.replaceAll(/\W+/g, '-')}.png`,
          fullPage: true,
        })
    }
    await page.context().close()
  }
  const stranger = await browser.newPage()
  await stranger.goto(`${app.url}/t/A2-1`)
  await expectFit(stranger)
  expect(await stranger.textContent('h1')).toContain('This tag belongs to')
  await stranger.close()
})
