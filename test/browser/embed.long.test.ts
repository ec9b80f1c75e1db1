import type { Browser, BrowserContext, Frame, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { complaints } from '../help/eyes.ts'
import { openSite, type Site } from '../help/site.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'

/** What the last build wrote. */
const assets = openAssets(new URL('../../dist/assets/', import.meta.url))

let opened: TestStore
let site: Site
let app: TestApp
let browser: Browser
let context: BrowserContext
let page: Page
let faults: string[]

beforeAll(async () => {
  opened = await openSqlite()
  site = await openSite()
  app = await openApp(opened.store, { clock: Date.now, assets, embedOrigins: [site.origin] })
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await app?.close()
  await site?.close()
  await opened?.end()
})

beforeEach(() => open({}))
afterEach(async () => {
  await context.close()
  expect(faults).toEqual([])
})

async function open(how: { javaScriptEnabled?: boolean; colorScheme?: 'dark' }): Promise<void> {
  await context?.close()
  context = await browser.newContext({
    viewport: { width: 390, height: 500 },
    reducedMotion: 'reduce',
    ...how,
  })
  page = await context.newPage()
  faults = []
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()))
}

/** The two directives that DEVELOPERS.md names, and nothing else. */
const policy = () => `default-src 'none'; script-src ${app.url}; frame-src ${app.url}`

const lines = (attributes = '', link = 'Begin your quilt') =>
  `<script src="${app.url}/embed.js" async></script>
   <pieceworth-intake ${attributes}><a href="${app.url}/">${link}</a></pieceworth-intake>`

const framesOfOurs = () => page.frames().filter((frame) => frame.url().startsWith(app.url))

async function visit(body: string, given = policy()): Promise<Frame> {
  site.show(body, given)
  await page.goto(site.origin)
  await page.locator('pieceworth-intake iframe:visible').first().waitFor()
  return framesOfOurs()[0]!
}

async function begin(frame: Frame): Promise<void> {
  await frame.click('[data-start] button')
  await frame.waitForSelector('form[data-question]')
}

const piles = async () =>
  Number(
    (
      await opened.store.db
        .selectFrom('pile')
        .select(({ fn }) => fn.countAll().as('n'))
        .execute()
    )[0]!.n,
  )
const style = (frame: Frame, selector: string, property: string) =>
  frame
    .locator(selector)
    .first()
    .evaluate((one, name) => getComputedStyle(one).getPropertyValue(name), property)

test('stands on a strict page of another site, as high as what it shows, and is read there', async () => {
  const frame = await visit(lines())
  await begin(frame)
  const question = await frame.textContent('h1')
  const iframe = page.locator('pieceworth-intake iframe')
  await expect.poll(() => iframe.getAttribute('title')).toContain(question)
  await expect
    .poll(async () => {
      const height = (await iframe.boundingBox())!.height
      return Math.abs(height - (await frame.evaluate(() => document.body.scrollHeight)))
    })
    .toBeLessThanOrEqual(1)
  expect(await page.locator('pieceworth-intake a').isVisible()).toBe(false)
  expect(await complaints(page)).toEqual([])
})

test('comes back where it was, and without storage begins anew', async () => {
  await begin(await visit(lines()))
  await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(1)
  const before = await piles()
  const again = await visit(lines())
  await again.waitForSelector('form[data-question]')
  expect(await piles()).toBe(before)

  await context.addInitScript(() =>
    Object.defineProperty(window, 'localStorage', {
      get: () => {
        throw new DOMException('blocked', 'SecurityError')
      },
    }),
  )
  const anew = await visit(lines())
  await anew.waitForSelector('[data-start]')
})

test('goes on where the browser blocks storage and cookies of its own site', async () => {
  await context.addInitScript((ours) => {
    if (location.origin !== ours) return
    const blocked = {
      get: () => {
        throw new DOMException('blocked', 'SecurityError')
      },
    }
    for (const name of ['localStorage', 'sessionStorage', 'indexedDB', 'caches'])
      Object.defineProperty(window, name, blocked)
    Object.defineProperty(document, 'cookie', blocked)
  }, app.url)
  const frame = await visit(lines())
  await begin(frame)
  const first = await frame.getAttribute('form[data-question]', 'data-question')
  await frame.click('form[data-question] .option label')
  await expect
    .poll(() => frame.getAttribute('form[data-question]', 'data-question').catch(() => first))
    .not.toBe(first)
  expect(await context.cookies()).toEqual([])
})

test('two on one page keep two quilts apart by their names', async () => {
  const two = `${lines('name="one"')}${lines('name="two" lang="es"')}`
  await visit(two)
  await expect.poll(() => page.locator('pieceworth-intake iframe:visible').count()).toBe(2)
  const [one, other] = framesOfOurs() as [Frame, Frame]
  await begin(one)
  await begin(other)
  await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(2)
  expect(new Set(framesOfOurs().map((each) => each.url())).size).toBe(2)
  expect(await other.getAttribute('html', 'lang')).toBe('es')
  await page.reload()
  await expect
    .poll(() => framesOfOurs().filter((each) => each.url().includes('/i/')).length)
    .toBe(2)
})

test('takes accent, ground, letters and corners of the page, and leaves out what cannot be read', async () => {
  const frame = await visit(lines('accent="#2f6f73" ground="#101820" font="Georgia" corner="3"'))
  expect(await style(frame, 'body', 'background-color')).toBe('rgb(16, 24, 32)')
  expect(await style(frame, '[data-start] .button', 'background-color')).toBe('rgb(47, 111, 115)')
  expect(await style(frame, 'body', 'font-family')).toContain('Georgia')
  expect(await style(frame, '.card', 'border-top-left-radius')).toBe('3px')
  // A dark ground brings the dark colours along, whatever the machine prefers.
  expect(await style(frame, 'body', 'color')).toBe('rgb(243, 235, 220)')
  expect(await complaints(page)).toEqual([])

  const other = await visit(lines('accent="red;}*{" ground="#808080" font="a;b" corner="900"'))
  expect(await style(other, 'body', 'background-color')).toBe('rgb(245, 239, 227)')
  expect(await style(other, '.card', 'border-top-left-radius')).toBe('12px')
})

test('a light ground stays light where the machine prefers dark', async () => {
  await open({ colorScheme: 'dark' })
  const frame = await visit(lines('ground="#ffffff"'))
  expect(await style(frame, 'body', 'color')).toBe('rgb(35, 48, 74)')
})

test('the focus stays with the page around until the reader goes on in the frame', async () => {
  await begin(await visit(lines()))
  const again = await visit(`<input id="own" autofocus>${lines()}`)
  await again.waitForSelector('form[data-question]')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('own')
})

test('a page that goes on begins at its top', async () => {
  const frame = await visit(lines(), '')
  const top = () =>
    page.locator('pieceworth-intake').evaluate((one) => one.getBoundingClientRect().top)
  await page.locator('pieceworth-intake').evaluate((one) => one.scrollIntoView({ block: 'end' }))
  const before = await page.evaluate(() => scrollY)
  expect(before).toBeGreaterThan(0)
  expect(await top()).toBeLessThan(0)
  await begin(frame)
  await expect.poll(async () => Math.abs(await top())).toBeLessThan(2)
})

test('a link that is gone is told, and forgotten', async () => {
  await begin(await visit(lines()))
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) localStorage.setItem(key, `/i/${'a'.repeat(32)}`)
  })
  const frame = await visit(lines())
  // Chromium notes every answer that is a failure.
  faults = []
  await frame.waitForSelector('[data-code=link_unknown]')
  await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(0)
  faults = []
})

test('a site that the shop does not name, and a reader without scripts, get the plain link', async () => {
  site.show(lines())
  await page.goto(site.origin.replace('localhost', '127.0.0.1'))
  await page.waitForTimeout(1500)
  expect(await page.locator('pieceworth-intake a').isVisible()).toBe(true)
  expect(await page.locator('pieceworth-intake iframe:visible').count()).toBe(0)
  expect(faults.join()).toContain('frame-ancestors')

  await open({ javaScriptEnabled: false })
  site.show(lines())
  await page.goto(site.origin)
  await page.click('pieceworth-intake a')
  await page.waitForSelector('[data-start]')
  faults = []
})
